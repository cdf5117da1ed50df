import { expect, test } from 'vitest';
import { answerCheck, LOOKS } from '../../../procedures/practice/answer.ts';
import { seeded } from '../../../procedures/practice/random.ts';
import { simulatedValve } from '../../../procedures/practice/simulated.ts';
import type { CauseId } from '../../../procedures/troubleshooting/causes.ts';
import { CHECK_IDS, type CheckId, checkOf } from '../../../procedures/troubleshooting/checks.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { demoSheet } from './demo-sheets.ts';

function said(tag: string, of: { readonly cause: CauseId; readonly check: CheckId }): Evidence {
  const faults = of.cause === 'nothingWrong' ? [] : [{ cause: of.cause, severity: 0.7 }];
  const valve = simulatedValve(demoSheet(tag), { faults, seed: 9 });
  const [hub] = checkOf(of.check).hubs;
  if (hub === undefined) throw new Error('a check that can be made nowhere');
  return answerCheck(valve, { check: of.check, hub, random: seeded(2) });
}

test('the simulated valve has an answer to every check', () => {
  expect(CHECK_IDS.filter((id) => LOOKS[id] === undefined)).toEqual([]);
});

test.each([
  ['FV-202', 'equaliserOpen', 'equaliser', 'open'],
  ['FV-202', 'restrictionTop', 'pressBothPlungers', 'top comes back'],
  ['FV-202', 'tubesCrossed', 'traceTubing', 'crossed'],
  ['FV-202', 'nothingWrong', 'cylinderGaugesOnStep', 'one up, one down'],
  ['LV-201', 'supplyLost', 'supplyPressure', 'none'],
  ['LV-201', 'caseJoint', 'soapCaseJoint', 'bubbles'],
  ['FV-214', 'diaphragmTorn', 'springSideVent', 'air comes'],
  ['FV-102', 'diaphragmTorn', 'springSideVent', 'air comes'],
  ['LV-201', 'plugSeized', 'outputGauge', 'without the stem'],
  ['FV-214', 'wiringOpen', 'loopCurrent', 'none'],
  ['FV-214', 'packingTight', 'handwheelFeel', 'heavy all over'],
  ['FV-214', 'springTooTight', 'benchSetUncoupled', 'both high'],
] as const)('%s with %s: the check %s says “%s”', (tag, cause, check, outcome) => {
  expect(said(tag, { cause, check })).toMatchObject({ kind: 'answer', check, outcome });
});

test('a word that is said is one of the words of its check', () => {
  for (const check of ['traceTubing', 'equaliser', 'feedbackLinkage', 'lineUp', 'noise'] as const) {
    const answer = said('FV-202', { cause: 'linkageOff', check });
    expect(answer.kind === 'answer' && Object.keys(checkOf(check).outcomes)).toContain(
      answer.kind === 'answer' ? answer.outcome : '',
    );
  }
});

test('a gauge reads with its error: a sound supply is near its set value and seldom on it', () => {
  const answer = said('FV-214', { cause: 'nothingWrong', check: 'supplyPressure' });
  if (answer.kind !== 'answer' || answer.value === undefined) throw new Error('no number was read');
  expect(Math.abs(answer.value)).toBeLessThan(6);
  expect(answer.readSigma ?? 0).toBeGreaterThan(0);
});
