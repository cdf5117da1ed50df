import type { Action, ActionKind, ActionOf, Decision, Surroundings } from './actions/action.ts';
import { answer } from './actions/answer.ts';
import { correct } from './actions/correct.ts';
import { goBack, makeSafe, park, takeUp } from './actions/leave.ts';
import { handOver, removeLocks } from './actions/lock-owners.ts';
import { noteFinding, notePart, notePhoto, strikeNote } from './actions/notes.ts';
import { override } from './actions/override.ts';
import { goOn, review, reviewBack } from './actions/points.ts';
import { proveAgain } from './actions/prove-again.ts';
import { confirmRadio, denyRadio } from './actions/radio.ts';
import { readAgain } from './actions/read-again.ts';
import { cardMoved, notOpen, wrongStep } from './actions/refusals.ts';
import { sendBack } from './actions/send-back.ts';
import { sign } from './actions/sign.ts';
import { waive } from './actions/waive.ts';
import type { Job } from './job.ts';
import { workedPlace } from './notes/note.ts';

type Acts = { readonly [K in ActionKind]: (job: Job, action: ActionOf<K>, around: Surroundings) => Decision };

const ACTS: Acts = {
  answer,
  sign,
  'send-back': sendBack,
  'make-safe': makeSafe,
  'go-back': goBack,
  correct,
  park,
  'take-up': takeUp,
  'hand-over': handOver,
  'remove-locks': removeLocks,
  'prove-again': proveAgain,
  waive,
  'go-on': goOn,
  override,
  review,
  'review-back': reviewBack,
  'read-again': readAgain,
  'confirm-radio': confirmRadio,
  'deny-radio': denyRadio,
  'note-finding': noteFinding,
  'note-part': notePart,
  'note-photo': notePhoto,
  'strike-note': strikeNote,
};

/** Acts on a line of the past: whatever card is open by now, also on a closed job. */
const ON_A_LINE: readonly ActionKind[] = [
  'review',
  'review-back',
  'confirm-radio',
  'deny-radio',
  'strike-note',
];

/** Beside the work: whatever line came in between, and while a job is parked as well. */
const NOTES: readonly ActionKind[] = ['note-finding', 'note-part', 'note-photo'];

/** What a parked job takes: whoever is there takes it up, makes it safe, or sees to the locks of somebody away. */
const WHILE_PARKED: readonly ActionKind[] = ['take-up', 'make-safe', 'remove-locks'];

/**
 * Decides one act of a person on a job: a refusal with its reason, or one line to store. Pure: the same job,
 * act and surroundings give the same decision, and nothing outside is touched.
 *
 * @throws Refusal where the act may not be done; nothing is written then
 * @example advance(job, { kind: 'answer', place: 12, step: 'shutSupply', given: { supplyBeforePa: '62' } }, around).effects.to
 */
export function advance(job: Job, action: Action, around: Surroundings): Decision {
  const onLine = ON_A_LINE.includes(action.kind);
  if (job.status === 'none' || (job.status === 'closed' && !onLine))
    throw notOpen(job.status === 'none' ? 'not there' : 'closed');
  const isNote = NOTES.includes(action.kind);
  if (job.status === 'parked' && !WHILE_PARKED.includes(action.kind) && !onLine && !isNote)
    throw notOpen('parked');
  // A stop is never too late: whatever another screen did meanwhile, the way to safe is open.
  if (action.kind !== 'make-safe' && !onLine && !isNote && hasMoved(job, action)) throw cardMoved(job);
  if ('step' in action && action.step !== job.step) throw wrongStep(action.step);
  const act = ACTS[action.kind] as (job: Job, action: Action, around: Surroundings) => Decision;
  const decision = act(job, action, around);
  return action.kind === 'make-safe' && job.status === 'parked' && decision.effects.status === undefined
    ? { ...decision, effects: { ...decision.effects, status: 'open' } }
    : decision;
}

/** A note changes no card, so an answer still counts; whoever signs is to have seen it. */
function hasMoved(job: Job, { kind, place }: Action): boolean {
  return kind === 'answer' ? place < workedPlace(job) || place > job.place : place !== job.place;
}
