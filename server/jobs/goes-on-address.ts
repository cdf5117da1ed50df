import { targetUnder } from '../../procedures/ways.ts';
import type { BareCall } from '../http/route.ts';
import type { Catalogue } from './catalogue.ts';
import { jobKind } from './job-stream.ts';

/**
 * The page on which the procedure is opened that goes on from the open card: it wants its gear chosen first, and carries
 * the answer along.
 */
export async function goesOnAddress(
  { services, params }: Pick<BareCall, 'services' | 'params'>,
  {
    catalogue,
    again,
  }: { readonly catalogue: Catalogue; readonly again: { readonly typed: Readonly<Record<string, string>> } },
): Promise<string> {
  const job = await services.log.state(jobKind, params.id ?? '');
  const { steps } = (await catalogue.of(job, services.log)).definition;
  const step = steps[job.step];
  const choice = again.typed.choice ?? '';
  const chosen = step?.kind === 'question' ? step.choices[choice] : undefined;
  const end = chosen === undefined ? undefined : steps[targetUnder(chosen.to, job.facts)];
  const procedure = end?.kind === 'end' ? (end.handsOver?.procedure ?? '') : '';
  const query = new URLSearchParams({
    tag: job.tag,
    procedure,
    place: job.facts.place,
    from: job.id,
    fromPlace: String(job.place),
    fromStep: job.step,
    fromChoice: choice,
    fromReason: again.typed.reason ?? '',
  });
  return `/jobs/new?${query.toString()}`;
}
