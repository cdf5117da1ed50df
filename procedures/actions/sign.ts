import { SIGN_OFF_HOURS, testAirLimit } from '../../safety/limits.ts';
import { type Envelope, workByRadio } from '../../safety/sign-off.ts';
import type { JobDraft } from '../evolve.ts';
import { holdEvidence, notReadAgain, shownToSigner, unshown } from '../hold.ts';
import type { Job } from '../job.ts';
import { readLate } from '../late.ts';
import type { HoldStep } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { move, situationNow } from './move.ts';
import { checkMayClose, checkMaySign, noteOf, openPoint, refusedHold, signatoryOf } from './signer.ts';

const HOUR_MS = 3_600_000;

/** Signs the open point: everything shown, by somebody else, over exactly what was on the page. */
export function sign(job: Job, action: ActionOf<'sign'>, around: Surroundings): JobDraft {
  const step = openPoint(job, around);
  checkMaySign(job, around);
  checkWay(step, around);
  checkShown(job, { step, around });
  if (action.shownDigest !== around.shownDigest) {
    throw refusedHold({
      kind: 'conflict',
      code: 'HLD-004',
      what: 'What you were shown is no longer what stands.',
      next: 'Read the card again, then sign.',
    });
  }
  const effects = move(job, { event: { type: 'SIGN', outcome: '' }, words: {}, around });
  checkMayClose(job, effects);
  const shown = shownToSigner(job, { definition: around.compiled.definition, readIn: around.readIn });
  const inputs = {
    step: job.step,
    signature: noteOf('signed', around),
    shown,
    ...(action.late === undefined ? {} : { late: readLate(action.late, around) }),
  };
  const figures = { evidence: holdEvidence(step, job).length };
  if (step.point !== 'hold') {
    const meaning = step.point === 'witness' ? 'witnessed' : 'reviewed';
    return {
      kind: 'witnessed',
      inputs: { ...inputs, signature: noteOf(meaning, around) },
      outcome: { name: meaning, figures },
      effects: { ...effects, shownDigest: around.shownDigest },
    };
  }
  return {
    kind: 'hold-signed',
    inputs,
    outcome: { name: 'signed', figures },
    effects: {
      ...effects,
      signed: true,
      shownDigest: around.shownDigest,
      envelope: envelopeOf(job, { step, around }),
    },
  };
}

/** Where no supervisor stands there, that is said and why; by radio only what a voice may allow. */
function checkWay(step: HoldStep<string>, around: Surroundings): void {
  const { way, why } = signatoryOf(around);
  if (way !== 'second person' && way !== 'radio') return;
  if (way === 'radio' && workByRadio(step.allows) === null) {
    throw refusedHold({
      kind: 'not-allowed',
      code: 'HLD-011',
      what: 'This hold is never signed by radio: spring, case or line is opened after it.',
      next: 'Wait for somebody who sees it, or make safe and park.',
    });
  }
  if (why !== '') return;
  throw refusedHold({
    kind: 'unreadable',
    code: 'HLD-008',
    what: 'Without a supervisor on the spot a hold is signed with the reason why none can come.',
    next: 'Write why.',
    fields: { why: 'Write why no supervisor can come.' },
  });
}

function checkShown(
  job: Job,
  { step, around }: { readonly step: HoldStep<string>; readonly around: Surroundings },
): void {
  const left = job.signing.sentBack.findLast((one) => one.step === job.step && one.acceptedAt === null);
  if (left?.disposition === 'leave') {
    throw refusedHold({
      kind: 'conflict',
      code: 'HLD-010',
      what: 'This hold was sent back for good: the valve is left as it is.',
      next: 'Make safe and stop. A new job begins with what is to be done.',
    });
  }
  const missing = unshown(step, { ...job, situation: situationNow(job, around.nowMs) });
  if (missing.length > 0) {
    throw refusedHold({
      kind: 'unsafe',
      code: 'HLD-003',
      what: `Not shown safe: ${missing.join(', ')}.`,
      next: 'Send it back, or have it shown again.',
    });
  }
  const once = notReadAgain(step, job);
  if (once.length === 0) return;
  throw refusedHold({
    kind: 'unsafe',
    code: 'HLD-009',
    what: `Read by one person only: ${once.join(', ')}.`,
    next: 'Have a second person read the gauge again, on the line of the reading.',
  });
}

function envelopeOf(
  job: Job,
  { step, around }: { readonly step: HoldStep<string>; readonly around: Surroundings },
): Envelope {
  const { way, signer } = signatoryOf(around);
  return {
    hold: job.step,
    work: way === 'radio' ? (workByRadio(step.allows) ?? []) : step.allows,
    testAirPaMax: testAirLimit(job.sheet).limitPa,
    untilMs: around.nowMs + SIGN_OFF_HOURS * HOUR_MS,
    signedBy: signer.id,
    shownDigest: around.shownDigest,
  };
}
