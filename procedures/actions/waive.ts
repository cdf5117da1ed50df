import type { JobDraft } from '../evolve.ts';
import { shownAtHold } from '../hold.ts';
import type { Job } from '../job.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { move } from './move.ts';
import { checkMayClose, mayNot, noteOf, openPoint, refusedHold, signatoryOf } from './signer.ts';

/**
 * Passes a point without its being accepted: by the role that the definition names for it, with a reason, before work
 * goes past. A definition names nobody for a point that stands over an isolation.
 */
export function waive(job: Job, action: ActionOf<'waive'>, around: Surroundings): JobDraft {
  const step = openPoint(job, around);
  const { signer } = signatoryOf(around);
  if (step.waivedBy === undefined || signer.role !== step.waivedBy) {
    throw refusedHold({
      kind: 'not-allowed',
      code: 'HLD-006',
      what:
        step.waivedBy === undefined
          ? 'This hold is never waived.'
          : `This is waived by the ${step.waivedBy}.`,
      next: 'Have it signed, or make safe and park.',
    });
  }
  const { performers, signing } = job;
  if (performers.includes(signer.id)) throw mayNot('did the work');
  if (signing.acknowledgers.includes(signer.id)) throw mayNot('acknowledged it');
  const reason = action.reason.trim();
  if (reason === '') {
    throw refusedHold({
      kind: 'unreadable',
      code: 'HLD-012',
      what: 'A waiver wants its reason.',
      next: 'Write why.',
      fields: { reason: 'Write why it is waived.' },
    });
  }
  const effects = move(job, { event: { type: 'WAIVE', outcome: '' }, words: {}, around });
  checkMayClose(job, effects);
  return {
    kind: 'hold-waived',
    inputs: {
      step: job.step,
      reason,
      signature: noteOf('waived', around),
      shown: shownAtHold(job, around.compiled.definition),
    },
    outcome: { name: 'waived', figures: {} },
    effects: { ...effects, shownDigest: around.shownDigest },
  };
}
