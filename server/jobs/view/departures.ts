import type { Compiled } from '../../../procedures/compile.ts';
import { type DepartureKind, departureOf } from '../../../procedures/departures.ts';
import type { Answer, Job } from '../../../procedures/job.ts';
import { fill } from '../../../procedures/say.ts';
import { DISPOSITIONS } from '../../../safety/sign-off.ts';
import { clock, given } from './words.ts';

/** Something that did not go the straight way, with who said why. */
export interface Departure {
  readonly place: number;
  readonly at: string;
  readonly person: string;
  readonly what: string;
  /** What stood before, struck but readable; blank where nothing did. */
  readonly struck: string;
  readonly now: string;
  readonly reason: string;
}

/** Answers with a reason, corrections, holds sent back, stops, pauses and air above its limit, oldest first. */
export function departuresOf(job: Job, compiled: Compiled): readonly Departure[] {
  return job.answers.flatMap((answer) => {
    const what = whatOf(answer, { job, compiled });
    if (what === null) return [];
    const { place, at, person } = answer;
    const corrected = answer.act === 'corrected' ? correctedBy(answer, job) : undefined;
    return [
      {
        place,
        at,
        person,
        what,
        struck: corrected === undefined ? '' : given(corrected.readings),
        now: answer.act === 'corrected' ? given(answer.readings) : moreOf(answer, job),
        reason: answer.reason || answer.late?.reason || (answer.words.reason ?? ''),
      },
    ];
  });
}

const SAID: Readonly<Record<Exclude<DepartureKind, 'departs'>, string>> = {
  corrected: 'Corrected',
  'sent back': 'Sent back',
  stopped: 'Stopped at',
  parked: 'Parked at',
  overridden: 'Judged otherwise than the figures do',
  waived: 'Waived',
  'not witnessed': 'Passed without its witness',
  'read again and differs': 'Read again, and the two readings differ',
  'radio denied': 'Signature by radio denied',
  'locks removed': 'Locks taken off in their owner’s absence, the job at',
  'above limit': 'Air above its limit',
  'written late': 'Written later than it was read',
};

function whatOf(
  answer: Answer,
  { job, compiled }: { readonly job: Job; readonly compiled: Compiled },
): string | null {
  const kind = departureOf(answer, compiled.definition);
  if (kind === null) return null;
  // A line about another line is told by the card of that one.
  const about = job.answers.find((one) => one.place === answer.figures.line);
  const step =
    compiled.definition.steps[(answer.act === 'review-sent-back' ? (about ?? answer) : answer).step];
  const title = step === undefined ? answer.step : fill(step.title, job);
  if (kind !== 'departs') return `${SAID[kind]}: ${title}`;
  const label = step?.kind === 'question' ? step.choices[answer.outcome]?.label : undefined;
  return `${title}: ${label ?? answer.outcome}`;
}

/** What a sent-back hold, an overridden judgement or a late line says beside its reason. */
function moreOf(answer: Answer, job: Job): string {
  const back = job.signing.sentBack.find((one) => one.place === answer.place);
  if (back !== undefined) {
    const signed = back.acceptedAt === null ? 'not signed since' : `signed on line ${back.acceptedAt}`;
    return `${DISPOSITIONS[back.disposition]}; ${signed}`;
  }
  if (answer.act === 'overridden') return `${String(answer.figures.judged)}, taken as ${answer.outcome}`;
  if (answer.late !== null) return `read at ${clock(answer.late.claimedAt)} UTC by the word of its writer`;
  return '';
}

/** The line that a correction stands for: the newest of its step and row that was corrected before it. */
function correctedBy(correction: Answer, job: Job): Answer | undefined {
  return job.answers.findLast(
    (one) =>
      one.corrected &&
      one.place < correction.place &&
      one.step === correction.step &&
      one.row === correction.row,
  );
}
