import { DISPOSITIONS, type Disposition, isDisposition } from '../../safety/sign-off.ts';
import type { JobDraft } from '../evolve.ts';
import { shownAtHold } from '../hold.ts';
import type { Job } from '../job.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { move } from './move.ts';
import { checkMaySign, noteOf, openPoint, refusedHold } from './signer.ts';

/** Refuses a hold: what is missing, and what is done about it. Work stays stopped until the hold is signed after all. */
export function sendBack(job: Job, action: ActionOf<'send-back'>, around: Surroundings): JobDraft {
  openPoint(job, around);
  checkMaySign(job, around);
  const { reason, disposition } = whatIsDone(action);
  return {
    kind: 'hold-sent-back',
    inputs: {
      step: job.step,
      reason,
      disposition,
      signature: noteOf('sent back', around),
      shown: shownAtHold(job, around.compiled.definition),
    },
    outcome: { name: 'sent back', figures: {} },
    effects: {
      ...move(job, { event: { type: 'SEND_BACK', outcome: '' }, words: {}, around }),
      shownDigest: around.shownDigest,
    },
  };
}

/** What is missing, and what is done about it: neither is left out. @throws Refusal HLD-005 */
export function whatIsDone(action: { readonly reason: string; readonly disposition: string }): {
  readonly reason: string;
  readonly disposition: Disposition;
} {
  const reason = action.reason.trim();
  const { disposition } = action;
  if (reason === '' || !isDisposition(disposition)) {
    const fields = {
      ...(reason === '' ? { reason: 'Write what is missing.' } : {}),
      ...(isDisposition(disposition)
        ? {}
        : { disposition: `Choose what is done about it: ${Object.values(DISPOSITIONS).join('; ')}.` }),
    };
    throw refusedHold({
      kind: 'unreadable',
      code: 'HLD-005',
      what: 'What goes back says what is missing and what is done about it.',
      kept: 'Nothing was sent.',
      next: Object.values(fields).join(' '),
      fields,
    });
  }
  return { reason, disposition };
}
