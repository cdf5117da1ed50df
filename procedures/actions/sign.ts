import { SIGN_OFF_HOURS, testAirLimit } from '../../safety/limits.ts';
import { Refusal } from '../../safety/refusal.ts';
import { type Envelope, mayNotSign } from '../../safety/sign-off.ts';
import type { JobDraft } from '../evolve.ts';
import { holdEvidence, unshown } from '../hold.ts';
import type { Job } from '../job.ts';
import type { HoldStep } from '../vocabulary.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { move, openStepOf, situationNow } from './move.ts';
import { noWay } from './refusals.ts';

const HOUR_MS = 3_600_000;

const WHY_NOT = {
  role: 'A hold is signed by a supervisor.',
  'did the work': 'You did or recorded part of this work since the last hold.',
  'acknowledged it': 'You acknowledged part of this work since the last hold.',
} as const;

/** Signs the open hold: everything shown, by somebody else, over exactly what was on the page. */
export function sign(job: Job, action: ActionOf<'sign'>, around: Surroundings): JobDraft {
  const step = openHold(job, around);
  checkSigner(job, around);
  const situation = situationNow(job, around.nowMs);
  const missing = unshown(step, situation);
  if (missing.length > 0) {
    throw new Refusal({
      kind: 'unsafe',
      code: 'HLD-003',
      what: `Not shown safe: ${missing.join(', ')}.`,
      kept: 'Nothing was signed.',
      next: 'Send it back, or have it shown again.',
    });
  }
  if (action.shownDigest !== around.shownDigest) {
    throw new Refusal({
      kind: 'conflict',
      code: 'HLD-004',
      what: 'What you were shown is no longer what stands.',
      kept: 'Nothing was signed.',
      next: 'Read the card again, then sign.',
    });
  }
  const effects = move(job, { event: { type: 'SIGN', outcome: '' }, words: {}, around });
  return {
    kind: 'hold-signed',
    inputs: { step: job.step },
    outcome: { name: 'signed', figures: { evidence: holdEvidence(step, job).length } },
    effects: {
      ...effects,
      signed: true,
      shownDigest: around.shownDigest,
      envelope: envelopeOf(job, { step, around }),
    },
  };
}

/** Refuses a hold to another person's card, with what is missing said. */
export function sendBack(job: Job, action: ActionOf<'send-back'>, around: Surroundings): JobDraft {
  openHold(job, around);
  checkSigner(job, around);
  const reason = action.reason.trim();
  if (reason === '') {
    throw new Refusal({
      kind: 'unreadable',
      code: 'HLD-005',
      what: 'A hold goes back with its reason.',
      kept: 'Nothing was sent.',
      next: 'Write what is missing.',
      fields: { reason: 'Write what is missing.' },
    });
  }
  return {
    kind: 'hold-sent-back',
    inputs: { step: job.step, reason },
    outcome: { name: 'sent back', figures: {} },
    effects: move(job, { event: { type: 'SEND_BACK', outcome: '' }, words: {}, around }),
  };
}

function openHold(job: Job, around: Surroundings): HoldStep<string> {
  const step = openStepOf(job, around);
  if (step.kind !== 'hold') throw noWay('No hold is open on this job.', 'Look at the open card.');
  return step;
}

function checkSigner(job: Job, { person }: Surroundings): void {
  const why = mayNotSign(person, { performers: job.performers });
  if (why === null) return;
  throw new Refusal({
    kind: 'not-allowed',
    code: why === 'role' ? 'HLD-001' : 'HLD-002',
    what: WHY_NOT[why],
    kept: 'Nothing was signed; the try is in the log.',
    next: 'Ask a supervisor who did none of this work.',
  });
}

function envelopeOf(
  job: Job,
  { step, around }: { readonly step: HoldStep<string>; readonly around: Surroundings },
): Envelope {
  return {
    hold: job.step,
    work: step.allows,
    testAirPaMax: testAirLimit(job.sheet).limitPa,
    untilMs: around.nowMs + SIGN_OFF_HOURS * HOUR_MS,
    signedBy: around.person.id,
    shownDigest: around.shownDigest,
  };
}
