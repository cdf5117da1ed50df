import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  convertSignal,
  expectedTravel,
  percentOfRange,
  relativeFlowCoefficient,
  signalAtPercent,
  splitRange,
} from '../../../procedures/calculations/signal-travel.ts';
import type { UnitId } from '../../../procedures/calculations/unit-table.ts';
import { toSi } from '../../../procedures/calculations/units.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const range = { rangeLow: 3, rangeHigh: 15 };

describe('a signal on its range', () => {
  it('subtracts the live zero: 8.33 psi is 44.4 %, not 69.4 %', () => {
    expect(percentOfRange({ signal: 25 / 3, ...range }).percent).toBeCloseTo(44.4444, 3);
  });

  it('keeps the raw percent beside the clamped one', () => {
    expect(percentOfRange({ signal: 15.6, ...range })).toEqual({
      percent: expect.closeTo(105, 9),
      percentClamped: 100,
    });
    expect(percentOfRange({ signal: 2.4, ...range, reverse: true }).percentClamped).toBe(100);
  });

  it('and back again is the same signal, forward and reverse', () => {
    fc.assert(
      fc.property(between(-20, 40), fc.boolean(), (signal, reverse) => {
        const { percent } = percentOfRange({ signal, ...range, reverse });
        expectClose(signalAtPercent({ percent, ...range, reverse }), signal);
      }),
    );
  });

  it('does not care which unit it is given in', () => {
    fc.assert(
      fc.property(
        between(0, 20),
        fc.constantFrom<UnitId>('psi', 'kPa', 'bar', 'kgf/cm2', 'inH2O'),
        (signal, unit) => {
          const si = percentOfRange({
            signal: toSi({ value: signal, unit }),
            rangeLow: toSi({ value: 3, unit }),
            rangeHigh: toSi({ value: 15, unit }),
          });
          expectClose(si.percent, percentOfRange({ signal, ...range }).percent);
        },
      ),
    );
  });

  it('whose ends do not rise is refused by name', () => {
    expectRefused(() => percentOfRange({ signal: 9, rangeLow: 15, rangeHigh: 3 }), {
      code: 'CALC-003',
      name: 'rangeHigh',
    });
    expectRefused(() => signalAtPercent({ percent: 9, rangeLow: 3, rangeHigh: 3 }), {
      code: 'CALC-003',
      name: 'rangeHigh',
    });
  });

  it('goes through a converter with the same percent', () => {
    expect(convertSignal({ signal: 12, inLow: 4, inHigh: 20, outLow: 20, outHigh: 100 })).toBeCloseTo(60, 12);
  });

  it('is refused where it is no number, and never answered with one that is none', () => {
    const good = { signal: 9, ...range };
    refusesEachNonNumber(percentOfRange, good);
    refusesOrAnswers(percentOfRange, good);
    refusesOrAnswers(signalAtPercent, { percent: 50, ...range });
    refusesOrAnswers(convertSignal, { signal: 12, inLow: 4, inHigh: 20, outLow: 3, outHigh: 15 });
  });
});

describe('the expected travel', () => {
  const good = { signal: 9, ...range, airAction: 'air-to-open' as const, ratedTravelM: 0.02 };

  it('is the same at mid signal, whichever way the air acts', () => {
    expect(expectedTravel(good).travelM).toBeCloseTo(0.01, 12);
    expect(expectedTravel({ ...good, airAction: 'air-to-close' }).travelM).toBeCloseTo(0.01, 12);
  });

  it('of both air actions adds up to the stroke', () => {
    fc.assert(
      fc.property(between(0, 20), (signal) => {
        const open = expectedTravel({ ...good, signal });
        const shut = expectedTravel({ ...good, signal, airAction: 'air-to-close' });
        expectClose(open.travelM + shut.travelM, 0.02);
        expectClose(open.openPercent + shut.openPercent, 100);
      }),
    );
  });

  it('rises with the signal for air-to-open and falls for air-to-close', () => {
    const travel = (airAction: 'air-to-open' | 'air-to-close') => (signal: number) =>
      expectedTravel({ ...good, signal, airAction }).travelM;
    expectMonotone({ of: travel('air-to-open'), from: 0, to: 20, rises: true });
    expectMonotone({ of: travel('air-to-close'), from: 0, to: 20, rises: false });
  });

  it('refuses what it cannot work with', () => {
    expectRefused(() => expectedTravel({ ...good, ratedTravelM: 0 }), {
      code: 'CALC-002',
      name: 'ratedTravelM',
    });
    expectRefused(() => expectedTravel({ ...good, airAction: 'direct' as 'air-to-open' }), {
      code: 'CALC-005',
      name: 'airAction',
    });
    refusesEachNonNumber(expectedTravel, good);
    refusesOrAnswers(expectedTravel, good);
  });
});

describe('valves on a split range', () => {
  const valves = [
    { name: 'A', rangeLow: 3, rangeHigh: 9, airAction: 'air-to-close' as const },
    { name: 'B', rangeLow: 9, rangeHigh: 15, airAction: 'air-to-open' as const },
  ];

  it('are both shut in the middle of an exclusive pair, and never open together', () => {
    fc.assert(
      fc.property(between(3, 15), (signal) => {
        const [a, b] = splitRange({ signal, valves });
        expect(Math.min(a?.openPercentClamped ?? 1, b?.openPercentClamped ?? 1)).toBe(0);
      }),
    );
  });

  it('with an unknown action are refused', () => {
    const odd = [{ name: 'A', ...range, airAction: 'sideways' as 'air-to-open' }];
    expectRefused(() => splitRange({ signal: 9, valves: odd }), { code: 'CALC-005', name: 'airAction' });
  });
});

describe('an inherent characteristic', () => {
  const good = { characteristic: 'equal percentage' as const, rangeability: 50, relativeTravel: 0.5 };

  it('passes the whole at full lift, and equal percentage 1/R at none', () => {
    expect(relativeFlowCoefficient({ ...good, relativeTravel: 1 })).toBe(1);
    expect(relativeFlowCoefficient({ ...good, relativeTravel: 0 })).toBeCloseTo(0.02, 12);
    expect(relativeFlowCoefficient({ ...good, characteristic: 'linear', relativeTravel: 0.3 })).toBe(0.3);
  });

  it('never falls as the lift grows', () => {
    expectMonotone({
      of: (relativeTravel) => relativeFlowCoefficient({ ...good, relativeTravel }),
      from: 0,
      to: 1,
      rises: true,
    });
  });

  it('refuses a lift beyond the stroke, a rangeability of one and an unknown shape', () => {
    expectRefused(() => relativeFlowCoefficient({ ...good, relativeTravel: 1.01 }), {
      code: 'CALC-002',
      name: 'relativeTravel',
    });
    expectRefused(() => relativeFlowCoefficient({ ...good, rangeability: 1 }), {
      code: 'CALC-002',
      name: 'rangeability',
    });
    expectRefused(() => relativeFlowCoefficient({ ...good, characteristic: 'square' as 'linear' }), {
      code: 'CALC-005',
      name: 'characteristic',
    });
    refusesOrAnswers(relativeFlowCoefficient, good);
  });
});
