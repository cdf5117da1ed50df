import { Refusal, type RefusalText } from '../../safety/refusal.ts';
import { type MayNotSign, mayNotSign } from '../../safety/sign-off.ts';
import type { JobEffects } from '../evolve.ts';
import { workBefore } from '../hold.ts';
import type { Job } from '../job.ts';
import type { SignatureNote } from '../signing.ts';
import type { HoldStep } from '../vocabulary.ts';
import type { Signatory, Surroundings } from './action.ts';
import { openStepOf } from './move.ts';
import { noWay } from './refusals.ts';

const WHY_NOT: Readonly<Record<MayNotSign, string>> = {
  role: 'A hold is signed by a supervisor.',
  'not named': 'This hold is signed by the people whom it names.',
  'not competent': 'Nobody has named this person as competent to sign where no supervisor can come.',
  'did the work': 'Whoever did or recorded part of this work since the last hold does not sign it.',
  'acknowledged it': 'Whoever acknowledged part of this work since the last hold does not sign it.',
};

const CODES: Readonly<Record<MayNotSign, string>> = {
  role: 'HLD-001',
  'not named': 'HLD-001',
  'not competent': 'HLD-001',
  'did the work': 'HLD-002',
  'acknowledged it': 'HLD-002',
};

export function refusedHold(text: Omit<RefusalText, 'kept'> & { readonly kept?: string }): Refusal {
  return new Refusal({ kept: 'Nothing was signed.', ...text });
}

/** Who signs: the person at the screen, unless the server has checked somebody else. */
export function signatoryOf({ signatory, person }: Surroundings): Signatory {
  return signatory ?? { signer: person, name: '', way: 'walk-up', why: '', nonce: '', radio: null };
}

/** What the line keeps of a signature: who, by what name and role, what it means. */
export function noteOf(meaning: SignatureNote['meaning'], around: Surroundings): SignatureNote {
  const { signer, name, way, why, nonce, radio } = signatoryOf(around);
  return { person: signer.id, name, role: signer.role, meaning, way, why, nonce, radio };
}

export function openPoint(job: Job, around: Surroundings): HoldStep<string> {
  const step = openStepOf(job, around);
  if (step.kind !== 'hold') throw noWay('No hold is open on this job.', 'Look at the open card.');
  return step;
}

/** @throws Refusal HLD-001 or HLD-002 */
export function checkMaySign(job: Job, around: Surroundings): void {
  const { signer, way } = signatoryOf(around);
  const why = mayNotSign(signer, { ...workBefore(job, around.compiled.definition), way });
  if (why !== null) throw mayNot(why);
}

export function mayNot(why: MayNotSign): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: CODES[why],
    what: WHY_NOT[why],
    kept: 'Nothing was signed; the try is in the log.',
    next: 'Ask a supervisor who had no hand in this work.',
  });
}

/** The work is not done, nor handed on, while somebody still has to look at its record. @throws Refusal HLD-013 */
export function checkMayClose(job: Job, { closedAs }: JobEffects): void {
  const open = job.signing.reviews.filter((one) => one.reviewedAt === null);
  if (closedAs === undefined || closedAs === 'stopped' || open.length === 0) return;
  throw refusedHold({
    kind: 'conflict',
    code: 'HLD-013',
    what: `This job does not close yet: ${open.length === 1 ? 'a review is' : `${open.length} reviews are`} open.`,
    next: 'Ask a supervisor to review it on the page "To sign".',
  });
}
