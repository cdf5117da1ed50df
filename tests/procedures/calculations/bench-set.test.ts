import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  adjusterTurns,
  adjusterTurnsForShift,
  benchSet,
  benchSetFromInstalled,
  installedRange,
  rangeShift,
} from '../../../procedures/calculations/bench-set.ts';
import type { AirAction } from '../../../procedures/calculations/signal-travel.ts';
import { between, expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const good = { effectiveAreaM2: 0.064516, benchSetLowPa: 20000, benchSetHighPa: 100000, travelM: 0.019 };
const anyAction = fc.constantFrom<AirAction>('air-to-open', 'air-to-close');

describe('a bench set', () => {
  it('stands for a spring: its force runs from preload to full travel', () => {
    const spring = benchSet(good);
    expectClose(spring.preloadN + spring.springRateNPerM * good.travelM, spring.forceAtFullTravelN);
    expectClose(spring.preloadM * spring.springRateNPerM, spring.preloadN);
  });

  it('from 0 on has no preload', () => {
    expect(benchSet({ ...good, benchSetLowPa: 0 })).toMatchObject({ preloadN: 0, preloadM: 0 });
  });

  it('that cannot be is refused by name', () => {
    expectRefused(() => benchSet({ ...good, effectiveAreaM2: 0 }), {
      code: 'CALC-002',
      name: 'effectiveAreaM2',
    });
    expectRefused(() => benchSet({ ...good, travelM: -1 }), { code: 'CALC-002', name: 'travelM' });
    expectRefused(() => benchSet({ ...good, benchSetLowPa: -5 }), {
      code: 'CALC-002',
      name: 'benchSetLowPa',
    });
    expectRefused(() => benchSet({ ...good, benchSetHighPa: 20000 }), {
      code: 'CALC-003',
      name: 'benchSetHighPa',
    });
    refusesEachNonNumber(benchSet, good);
    refusesOrAnswers(benchSet, good);
  });
});

describe('the spring adjuster', () => {
  const thread = { springRateNPerM: 140000, effectiveAreaM2: 0.0645, threadPitchM: 0.0016 };

  it('shifts both ends alike, loses no lift, and turns back to where it was', () => {
    fc.assert(
      fc.property(between(-10, 10), (turns) => {
        const there = adjusterTurns({ ...thread, turns });
        const back = adjusterTurnsForShift({ ...thread, wantedShiftPa: there.benchSetShiftPa });
        expectClose(back.turns, Math.abs(turns));
        expect(there).toMatchObject({ spanChangePa: 0, liftLostM: 0 });
      }),
    );
  });

  it('is tightened for a higher bench set, slackened for a lower one, left where none is wanted', () => {
    expect(adjusterTurnsForShift({ ...thread, wantedShiftPa: 100 }).turn).toBe('tighten');
    expect(adjusterTurnsForShift({ ...thread, wantedShiftPa: -100 }).turn).toBe('slacken');
    expect(adjusterTurnsForShift({ ...thread, wantedShiftPa: 0 })).toEqual({ turns: 0, turn: 'leave' });
  });

  it('with impossible figures is refused by name', () => {
    refusesEachNonNumber(adjusterTurns, { ...thread, turns: 1 });
    refusesOrAnswers(adjusterTurns, { ...thread, turns: 1 });
    refusesOrAnswers(adjusterTurnsForShift, { ...thread, wantedShiftPa: 1000 });
    expectRefused(() => adjusterTurns({ ...thread, turns: 1, threadPitchM: 0 }), {
      code: 'CALC-002',
      name: 'threadPitchM',
    });
  });
});

describe('from the bench to the line', () => {
  // The published table of the four combinations, for an installed 20-100 kPa and 13.5 kPa of plug force.
  it.each([
    ['air-to-open', 393, 'lower', 33.55, 100],
    ['air-to-open', -393, 'lower', 6.45, 100],
    ['air-to-close', 393, 'upper', 20, 86.45],
    ['air-to-close', -393, 'upper', 20, 113.55],
  ] as const)(
    '%s with %d N on the plug moves the %s end',
    (airAction, plugForceOpeningN, end, lowKpa, highKpa) => {
      const bench = benchSetFromInstalled({
        airAction,
        plugForceOpeningN,
        effectiveAreaM2: 0.029,
        installedLowPa: 20000,
        installedHighPa: 100000,
      });
      expect(bench.endThatMoves).toBe(end);
      expect(bench.lowPa / 1000).toBeCloseTo(lowKpa, 1);
      expect(bench.highPa / 1000).toBeCloseTo(highKpa, 1);
    },
  );

  it('and back again is the bench set that it was', () => {
    fc.assert(
      fc.property(
        anyAction,
        between(-5000, 5000),
        between(0, 5e4),
        between(1e3, 1e5),
        (airAction, force, low, span) => {
          const actuator = { airAction, effectiveAreaM2: 0.05, plugForceOpeningN: force };
          const line = installedRange({ ...actuator, benchSetLowPa: low, benchSetHighPa: low + span });
          fc.pre(line.highPa - line.lowPa > 1);
          const bench = benchSetFromInstalled({
            ...actuator,
            installedLowPa: line.lowPa,
            installedHighPa: line.highPa,
          });
          expect(Math.abs(bench.lowPa - low)).toBeLessThan(1e-6);
          expect(Math.abs(bench.highPa - (low + span))).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('nothing moves without a force on the plug', () => {
    expect(rangeShift({ airAction: 'air-to-open', effectiveAreaM2: 0.05, plugForceOpeningN: 0 })).toEqual({
      endThatMoves: 'lower',
      moves: 'not at all',
      shiftPa: 0,
    });
  });

  it('with impossible figures is refused by name', () => {
    const shift = { airAction: 'air-to-open' as const, effectiveAreaM2: 0.05, plugForceOpeningN: 100 };
    expectRefused(() => rangeShift({ ...shift, effectiveAreaM2: 0 }), {
      code: 'CALC-002',
      name: 'effectiveAreaM2',
    });
    expectRefused(() => rangeShift({ ...shift, airAction: 'up' as AirAction }), {
      code: 'CALC-005',
      name: 'airAction',
    });
    const bench = { ...shift, benchSetLowPa: 20000, benchSetHighPa: 1e5 };
    refusesEachNonNumber(installedRange, bench);
    refusesOrAnswers(installedRange, bench);
    refusesOrAnswers(benchSetFromInstalled, { ...shift, installedLowPa: 20000, installedHighPa: 1e5 });
  });
});
