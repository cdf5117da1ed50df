import type { JobDraft } from '../evolve.ts';
import type { Job } from '../job.ts';
import { isSameCode } from '../read-back.ts';
import type { RadioNote } from '../signing.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { noWay } from './refusals.ts';
import { noteOf, refusedHold, signatoryOf } from './signer.ts';

/**
 * Confirms at the own screen what was said by radio. The code that was read back then is written again, from the
 * paper: it follows from what the screen showed, so whoever heard another one did not agree to this.
 */
export function confirmRadio(job: Job, action: ActionOf<'confirm-radio'>, around: Surroundings): JobDraft {
  const open = openRadio(job, { about: action.about, around });
  if (!isSameCode(action.code, open.code)) {
    throw refusedHold({
      kind: 'unreadable',
      code: 'RAD-002',
      what: 'That is not the code that was read back on this hold.',
      kept: 'The signature by radio stays unconfirmed.',
      next: 'Write the code that you heard. If you heard another one, or none, say that you did not give it.',
      fields: { code: 'This is not the code.' },
    });
  }
  return drafted('radio-confirmed', { job, open, around });
}

/** Says that the radio signature was not given: what it allowed ends at once. */
export function denyRadio(job: Job, action: ActionOf<'deny-radio'>, around: Surroundings): JobDraft {
  const open = openRadio(job, { about: action.about, around });
  const draft = drafted('radio-denied', { job, open, around });
  const mine = job.envelope?.signedBy === open.person && job.envelope.hold === open.step;
  return {
    ...draft,
    inputs: { ...draft.inputs, reason: action.reason.trim() },
    effects: {
      ...draft.effects,
      ...(mine ? { envelope: null } : {}),
      lapses: { conditions: ['workSignOff', 'returnSignOff'], reason: 'corrected' },
    },
  };
}

function openRadio(
  job: Job,
  { about, around }: { readonly about: number; readonly around: Surroundings },
): RadioNote {
  const open = job.signing.radio.find((one) => one.place === about && one.stands === 'open');
  if (open === undefined) throw noWay('No signature by radio is open there.', 'Look at the page "To sign".');
  if (open.person === signatoryOf(around).signer.id) return open;
  throw refusedHold({
    kind: 'not-allowed',
    code: 'RAD-001',
    what: 'Only the person who was heard confirms a signature by radio.',
    next: 'Ask them to.',
  });
}

function drafted(
  kind: 'radio-confirmed' | 'radio-denied',
  { job, open, around }: { readonly job: Job; readonly open: RadioNote; readonly around: Surroundings },
): JobDraft {
  return {
    kind,
    inputs: { step: job.step, about: open.place, signature: noteOf('signed', around) },
    outcome: { name: kind === 'radio-confirmed' ? 'confirmed' : 'denied', figures: { line: open.place } },
    effects: { to: job.step },
  };
}
