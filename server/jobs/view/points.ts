import type { Compiled } from '../../../procedures/compile.ts';
import type { Job } from '../../../procedures/job.ts';
import { fill } from '../../../procedures/say.ts';
import { straightWay } from '../../../procedures/straight-way.ts';
import { clock, short } from './words.ts';

export type PointState =
  | 'not reached'
  | 'open'
  | 'passed'
  | 'sent back'
  | 'waived'
  | 'not witnessed'
  | 'review open';

/** How a point of the job stands, so that none is passed over by oversight. */
export interface PointView {
  readonly step: string;
  readonly title: string;
  readonly state: PointState;
  /** By whom and when, or what it waits for. */
  readonly more: string;
}

/** Every point of the straight way, and those off it that this job came to, in order. */
export function pointViews(job: Job, { definition }: Compiled): readonly PointView[] {
  const way = straightWay(definition, job.facts);
  const met = job.answers.map((answer) => answer.step);
  const ids = [...new Set([...way, ...met, job.step])];
  return ids.flatMap((id) => {
    const step = definition.steps[id];
    return step?.kind === 'hold' ? [{ step: id, title: fill(step.title, job), ...stateOf(id, job) }] : [];
  });
}

/** The newest line about it decides; the open card stands above all. */
function stateOf(id: string, job: Job): Pick<PointView, 'state' | 'more'> {
  if (job.step === id && job.status !== 'closed')
    return { state: 'open', more: `since ${clock(job.arrivedAt)} UTC` };
  const { sentBack, passed, reviews } = job.signing;
  const signed = job.holds.findLast((one) => one.step === id);
  const witnessed = job.answers.findLast((one) => one.step === id && one.act === 'witnessed');
  const back = sentBack.findLast((one) => one.step === id);
  const by = passed.findLast((one) => one.step === id);
  const review = reviews.findLast((one) => one.step === id);
  const lines: readonly (Pick<PointView, 'state' | 'more'> & { readonly place: number })[] = [
    ...(signed === undefined
      ? []
      : [{ place: signed.place, state: 'passed' as const, more: byWhom(signed, signed.way) }]),
    ...(witnessed === undefined
      ? []
      : [{ place: witnessed.place, state: 'passed' as const, more: byWhom(witnessed, 'walk-up') }]),
    ...(back === undefined
      ? []
      : [
          {
            place: back.place,
            state: 'sent back' as const,
            more: `${byWhom(back, 'walk-up')}: ${back.reason}`,
          },
        ]),
    ...(by === undefined ? [] : [{ place: by.place, state: by.how, more: lineWords(by.place, job) }]),
    ...(review === undefined
      ? []
      : [
          review.reviewedAt === null
            ? { place: review.place, state: 'review open' as const, more: 'the job does not close before' }
            : {
                place: review.reviewedAt,
                state: review.sentBack === '' ? ('passed' as const) : ('sent back' as const),
                more: lineWords(review.reviewedAt, job),
              },
        ]),
  ];
  const newest = lines.toSorted((one, other) => other.place - one.place)[0];
  return newest === undefined
    ? { state: 'not reached', more: '' }
    : { state: newest.state, more: newest.more };
}

/** Who wrote a line, with the reason that stands in it. */
function lineWords(place: number, job: Job): string {
  const line = job.answers.find((one) => one.place === place);
  if (line === undefined) return `line ${place}`;
  return [byWhom(line, 'walk-up'), line.reason].filter((text) => text !== '').join(': ');
}

function byWhom({ person, at }: { readonly person: string; readonly at: string }, way: string): string {
  const how = way === 'walk-up' || way === 'own screen' ? '' : `, ${way === 'radio' ? 'by radio' : way}`;
  return `${short(person)} ${clock(at)} UTC${how}`;
}
