import { capital } from '../../../procedures/capital.ts';
import { type Compiled, proofUnder } from '../../../procedures/compile.ts';
import type { Job } from '../../../procedures/job.ts';
import { fill } from '../../../procedures/say.ts';
import type { OpenStep } from '../../../procedures/vocabulary.ts';
import { type NamedWay, targetUnder, waysOf } from '../../../procedures/ways.ts';
import { WAY_WORDS } from '../../procedures/way-words.ts';
import { clock, short } from './words.ts';

export type StepState = 'done' | 'asked again' | 'open' | 'not reached' | 'not for this valve';

/** One card of the procedure as it can be read ahead of time, with how it stands on this job. */
export interface StepView {
  readonly step: string;
  readonly title: string;
  readonly how: string;
  readonly caution: string;
  readonly do: readonly string[];
  /** Which kind of point it is; blank for a card that is none. */
  readonly point: string;
  readonly state: StepState;
  readonly more: string;
  /** Once it is answered: every way that it had, the one that was taken and those that were not. */
  readonly ways: readonly WayView[];
}

export interface WayView {
  readonly way: string;
  readonly leads: string;
  readonly state: 'taken' | 'not taken';
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
    point: card.kind === 'hold' ? capital(card.point) : '',
    ...stateOf(id, { job, compiled }),
    ways: wayViews(id, { card, job, compiled }),
  };
}

/** A way is told apart from the others by its answer, at a hold by what was done there. */
function wayViews(
  id: string,
  { card, job, compiled }: { readonly card: OpenStep; readonly job: Job; readonly compiled: Compiled },
): readonly WayView[] {
  const last = job.answers.findLast((one) => one.step === id && BY_ACT[one.act] !== undefined);
  const ways = waysOf(card).filter(({ event }) => event !== 'STOP');
  if (last === undefined || ways.length < 2) return [];
  return ways.map(({ event, outcome, way }) => {
    const label = card.kind === 'question' ? card.choices[outcome ?? '']?.label : outcome;
    const isTaken = BY_ACT[last.act] === event && (outcome === null || outcome === last.outcome);
    const to = compiled.definition.steps[targetUnder(way.to, job.facts)];
    return {
      way: fill(label ?? WAY_WORDS[event as AnswerEvent], job),
      leads: to === undefined ? '' : fill(to.title, job),
      state: isTaken ? 'taken' : 'not taken',
    };
  });
}

type AnswerEvent = Exclude<NamedWay['event'], 'STOP'>;

/** Lines that take a way out of a card, by the event that they are. */
const BY_ACT: Readonly<Record<string, AnswerEvent>> = {
  'step-answered': 'ANSWER',
  'row-read': 'ANSWER',
  overridden: 'ANSWER',
  'hold-signed': 'SIGN',
  witnessed: 'SIGN',
  'hold-sent-back': 'SEND_BACK',
  'not-witnessed': 'GO_ON',
  'review-opened': 'GO_ON',
  'hold-waived': 'WAIVE',
};

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
