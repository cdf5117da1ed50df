import { mayNotSign } from '../../safety/sign-off.ts';
import type { JobDraft } from '../evolve.ts';
import { shownAtReview } from '../hold.ts';
import type { Job } from '../job.ts';
import type { OpenReview } from '../signing.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { move } from './move.ts';
import { noWay } from './refusals.ts';
import { whatIsDone } from './send-back.ts';
import { mayNot, noteOf, openPoint, signatoryOf } from './signer.ts';

/** How long a witness still has to come, in seconds. */
export function noticeLeftS(
  job: Job,
  { noticeS, nowMs }: { readonly noticeS: number; readonly nowMs: number },
): number {
  return Math.max(0, Math.ceil(noticeS - (nowMs - Date.parse(job.arrivedAt)) / 1000));
}

/** Goes past a witness who was told and did not come, or past a review that is done meanwhile. A hold is never passed so. */
export function goOn(job: Job, _: ActionOf<'go-on'>, around: Surroundings): JobDraft {
  const step = openPoint(job, around);
  if (step.point === 'hold') throw noWay('A hold is signed or sent back.', 'Ask for a signature.');
  const leftS =
    step.point === 'witness' ? noticeLeftS(job, { noticeS: step.noticeS ?? 0, nowMs: around.nowMs }) : 0;
  if (leftS > 0)
    throw noWay(`The witness was told and has ${leftS} s left to come.`, 'Wait, or have it signed.');
  return {
    kind: step.point === 'witness' ? 'not-witnessed' : 'review-opened',
    inputs: { step: job.step },
    outcome: { name: step.point === 'witness' ? 'not witnessed' : 'review asked for', figures: {} },
    effects: move(job, { event: { type: 'GO_ON', outcome: '' }, words: {}, around }),
  };
}

/** Accepts a record that was left open for review; work is at another card by now, or waits for this to close. */
export function review(job: Job, action: ActionOf<'review'>, around: Surroundings): JobDraft {
  const open = openReview(job, { about: action.about, around });
  return {
    kind: 'reviewed',
    inputs: {
      step: job.step,
      about: open.place,
      signature: noteOf('reviewed', around),
      shown: shownAtReview(job, { about: open.place, definition: around.compiled.definition }),
    },
    outcome: { name: 'reviewed', figures: { line: open.place } },
    effects: { to: job.step },
  };
}

/**
 * Does not accept it: what is wrong, and what is done about it. The review is over by that, for a valve that is back in
 * service cannot be measured again by this job; the refusal stands in its record, and is counted.
 */
export function reviewBack(job: Job, action: ActionOf<'review-back'>, around: Surroundings): JobDraft {
  const open = openReview(job, { about: action.about, around });
  const { reason, disposition } = whatIsDone(action);
  return {
    kind: 'review-sent-back',
    inputs: {
      step: job.step,
      about: open.place,
      reason,
      disposition,
      signature: noteOf('sent back', around),
      shown: shownAtReview(job, { about: open.place, definition: around.compiled.definition }),
    },
    outcome: { name: 'sent back', figures: { line: open.place } },
    effects: { to: job.step },
  };
}

function openReview(
  job: Job,
  { about, around }: { readonly about: number; readonly around: Surroundings },
): OpenReview {
  const open = job.signing.reviews.find((one) => one.place === about && one.reviewedAt === null);
  if (open === undefined) throw noWay('That review is not open.', 'Look at the page "To sign".');
  const { signer } = signatoryOf(around);
  const why = mayNotSign(signer, { performers: open.performers, acknowledgers: [] });
  if (why !== null) throw mayNot(why);
  return open;
}
