import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  BLANK_CASE_RATING_PA,
  DRAIN_HOLD_S,
  GAS_TEST_MINUTES,
  HELD_AIR_MINUTES,
  MARGIN_OVER_SIGNAL_PA,
  PROOF_AGE_HOURS,
  SAFE_LIMIT_PA,
  SAFE_TOUCH_C,
  SIGN_OFF_HOURS,
  testAirLimit,
} from '../../safety/limits.ts';

/** NIST SP 811, appendix B.8. */
const PSI_PA = 6894.757293168361;
const psi = (value: number) => value * PSI_PA;

describe('[SAF-08] Test air on a case', () => {
  test('goes 5 psi past the highest signal and no further', () => {
    const limit = testAirLimit({ caseRatingPa: psi(50), signalHighPa: psi(15) });
    expect(limit.because).toBe('signal and margin');
    expect(limit.limitPa / PSI_PA).toBeCloseTo(20, 9);
  });

  test('stays at the case rating where that is lower', () => {
    const limit = testAirLimit({ caseRatingPa: psi(18), signalHighPa: psi(15) });
    expect(limit).toEqual({ limitPa: psi(18), because: 'case rating' });
  });

  test('stays at 40 psi where the sheet has no case rating', () => {
    const limit = testAirLimit({ caseRatingPa: null, signalHighPa: psi(60) });
    expect(limit).toEqual({ limitPa: psi(40), because: 'blank case rating' });
    expect(testAirLimit({ caseRatingPa: null, signalHighPa: psi(15) }).because).toBe('signal and margin');
  });

  const POSITIONED = {
    caseRatingPa: psi(50),
    signalHighPa: psi(15),
    actuatorKind: 'diaphragm',
    positioner: 'pneumatic',
    benchSetHighPa: psi(30),
    supplyHighPa: psi(40),
  } as const;

  // Common practice, no source: a spring that only a positioner can compress is compressed by as much on the bench.
  test.each([
    ['the end of its bench set and 5 psi', {}, 35, 'bench set and margin'],
    ['its supply where that is lower', { supplyHighPa: psi(32) }, 32, 'supply'],
    ['the case rating where that is lower', { caseRatingPa: psi(25) }, 25, 'case rating'],
    ['the signal where no supply is named', { supplyHighPa: null }, 20, 'signal and margin'],
    ['the signal where that is enough', { benchSetHighPa: psi(12) }, 20, 'signal and margin'],
    ['the signal without a positioner', { positioner: 'none' }, 20, 'signal and margin'],
    ['the signal on a cylinder', { actuatorKind: 'piston' }, 20, 'signal and margin'],
    [
      '40 psi where no rating is named',
      { caseRatingPa: null, benchSetHighPa: psi(38), supplyHighPa: psi(60) },
      40,
      'blank case rating',
    ],
  ] as const)('with a positioner reaches %s', (_, facts, limitPsi, because) => {
    const limit = testAirLimit({ ...POSITIONED, ...facts });
    expect([limit.limitPa / PSI_PA, limit.because]).toEqual([expect.closeTo(limitPsi, 9), because]);
  });

  test('is never above rating, nor past signal and bench set by more than 5 psi, nor above a supply that it rests on', () => {
    const pascal = fc.integer({ min: 0, max: 120 }).map(psi);
    const blank = fc.option(pascal, { nil: null });
    const facts = fc.record({
      caseRatingPa: blank,
      signalHighPa: pascal,
      benchSetHighPa: pascal,
      supplyHighPa: blank,
      actuatorKind: fc.constantFrom('diaphragm', 'piston'),
      positioner: fc.constantFrom('none', 'pneumatic', 'electropneumatic'),
    });
    let restedOnBench = 0;
    fc.assert(
      fc.property(facts, (of) => {
        const { limitPa } = testAirLimit(of);
        const bySignalPa = of.signalHighPa + MARGIN_OVER_SIGNAL_PA;
        expect(limitPa).toBeLessThanOrEqual(of.caseRatingPa ?? BLANK_CASE_RATING_PA);
        expect(limitPa).toBeLessThanOrEqual(Math.max(bySignalPa, of.benchSetHighPa + MARGIN_OVER_SIGNAL_PA));
        if (limitPa <= bySignalPa) return;
        restedOnBench += 1;
        expect([of.actuatorKind, of.positioner]).toEqual(['diaphragm', expect.not.stringContaining('none')]);
        expect(limitPa).toBeLessThanOrEqual(of.supplyHighPa ?? 0);
      }),
      { seed: 7, numRuns: 500 },
    );
    expect(restedOnBench).toBeGreaterThan(10);
  });

  test('is never above either bound', () => {
    const pascal = fc.double({ min: 0, max: psi(200), noNaN: true });
    fc.assert(
      fc.property(fc.option(pascal, { nil: null }), pascal, (caseRatingPa, signalHighPa) => {
        const { limitPa } = testAirLimit({ caseRatingPa, signalHighPa });
        expect(limitPa).toBeLessThanOrEqual(caseRatingPa ?? BLANK_CASE_RATING_PA);
        expect(limitPa).toBeLessThanOrEqual(signalHighPa + MARGIN_OVER_SIGNAL_PA);
      }),
      { seed: 7 },
    );
  });
});

// Common practice, no source: a change of any of these is a decision, not an edit.
test('The stated limits are these', () => {
  const inPsi = Object.fromEntries(Object.entries(SAFE_LIMIT_PA).map(([id, pa]) => [id, pa / PSI_PA]));
  expect(inPsi).toEqual({ supplyAir: 3, secondSupply: 3, signalAir: 0.5, processInlet: 3, processOutlet: 3 });
  expect({
    SAFE_TOUCH_C,
    SIGN_OFF_HOURS,
    PROOF_AGE_HOURS,
    HELD_AIR_MINUTES,
    GAS_TEST_MINUTES,
    DRAIN_HOLD_S,
  }).toEqual({
    SAFE_TOUCH_C: 50,
    SIGN_OFF_HOURS: 8,
    PROOF_AGE_HOURS: 4,
    HELD_AIR_MINUTES: 30,
    GAS_TEST_MINUTES: 60,
    DRAIN_HOLD_S: 300,
  });
});
