import { capital } from '../../../procedures/capital.ts';
import { type Compiled, proofUnder } from '../../../procedures/compile.ts';
import type { Job } from '../../../procedures/job.ts';
import { fill } from '../../../procedures/say.ts';
import type { OpenStep } from '../../../procedures/vocabulary.ts';
import { clock, short } from './words.ts';

export type StepState = 'done' | 'asked again' | 'open' | 'not reached' | 'not for this valve';

/** One card of the procedure as it can be read ahead of time, with how it stands on this job. */
export interface StepView {
  readonly step: string;
  readonly title: string;
  readonly how: string;
  readonly caution: string;
  readonly do: readonly string[];
  readonly isHold: boolean;
  readonly state: StepState;
  readonly more: string;
}

export interface PhaseView {
  readonly title: string;
  readonly steps: readonly StepView[];
}

/** Every card of the job's own revision, phase by phase. Looking at it does nothing. */
export function stepViews(job: Job, compiled: Compiled): readonly PhaseView[] {
  const { phases, steps } = compiled.definition;
  return phases.map(({ id, title }) => ({
    title,
    steps: Object.entries(steps).flatMap(([step, card]) =>
      card.phase === id && card.kind !== 'end' ? [stepView(step, { card, job, compiled })] : [],
    ),
  }));
}

function stepView(
  id: string,
  { card, job, compiled }: { readonly card: OpenStep; readonly job: Job; readonly compiled: Compiled },
): StepView {
  const { caution } = card;
  const texts = caution === undefined ? [] : [caution.hazard, caution.consequence, caution.avoid];
  return {
    step: id,
    title: fill(card.title, job),
    how: capital(fill(card.how ?? '', job)),
    caution:
      caution === undefined
        ? ''
        : `${caution.word.toUpperCase()}: ${texts.map((text) => fill(text, job)).join(' ')}`,
    do: 'do' in card ? (card.do ?? []).map((line) => fill(line, job)) : [],
    isHold: card.kind === 'hold',
    ...stateOf(id, { job, compiled }),
  };
}

function stateOf(
  id: string,
  { job, compiled }: { readonly job: Job; readonly compiled: Compiled },
): Pick<StepView, 'state' | 'more'> {
  if (job.step === id && job.status !== 'closed') return { state: 'open', more: '' };
  const last = job.answers.findLast((one) => one.step === id);
  const isDone = job.answers.some((one) => one.step === id && !one.superseded);
  if (last !== undefined)
    return {
      state: isDone ? 'done' : 'asked again',
      more: `line ${last.place}, ${short(last.person)} ${clock(last.at)} UTC`,
    };
  const reach = proofUnder(compiled, job.facts)?.reach;
  return { state: reach?.has(id) === false ? 'not for this valve' : 'not reached', more: '' };
}
