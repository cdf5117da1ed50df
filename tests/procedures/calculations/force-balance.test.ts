import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  forcesAtLift,
  frictionFromPressures,
  shutEnd,
} from '../../../procedures/calculations/force-balance.ts';
import type { AirAction } from '../../../procedures/calculations/signal-travel.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const actuator = {
  effectiveAreaM2: 0.05,
  benchSetLowPa: 40000,
  benchSetHighPa: 120000,
  plugForceOpeningN: 1000,
  frictionN: 200,
};
const seat = { ...actuator, airAction: 'air-to-close' as AirAction, supplyPa: 200000, portDiameterM: 0.05 };
const lift = {
  ...actuator,
  airAction: 'air-to-open' as AirAction,
  travelM: 0.02,
  liftM: 0.01,
  pressurePa: 80000,
};

describe('the shut end', () => {
  // Hand: 1000 N over 0.05 m² is 20 kPa, 200 N is 4 kPa.
  it.each([
    [
      'air-to-close',
      1000,
      { contactPa: 144000, firstLiftPa: null, endThatMoves: 'upper', moves: 'up', seatLoadN: 2800 },
    ],
    [
      'air-to-close',
      -1000,
      { contactPa: 104000, firstLiftPa: null, endThatMoves: 'upper', moves: 'down', seatLoadN: 4800 },
    ],
    [
      'air-to-open',
      1000,
      { contactPa: null, firstLiftPa: 24000, endThatMoves: 'lower', moves: 'down', seatLoadN: 800 },
    ],
    [
      'air-to-open',
      -1000,
      { contactPa: null, firstLiftPa: 64000, endThatMoves: 'lower', moves: 'up', seatLoadN: 2800 },
    ],
  ] as const)('%s with %d N on the plug', (airAction, plugForceOpeningN, wanted) => {
    expect(shutEnd({ ...seat, airAction, plugForceOpeningN })).toMatchObject(wanted);
  });

  it('counts the seat load at full supply for air-to-close and without air for air-to-open', () => {
    expect(shutEnd(seat).seatLoadAtPa).toBe(200000);
    expect(shutEnd({ ...seat, airAction: 'air-to-open' }).seatLoadAtPa).toBe(0);
  });

  it('is the sum of the forces that it lists', () => {
    fc.assert(
      fc.property(
        between(-5000, 5000),
        between(0, 500),
        between(0, 4e5),
        (plugForceOpeningN, frictionN, supplyPa) => {
          for (const airAction of ['air-to-open', 'air-to-close'] as const) {
            const end = shutEnd({ ...seat, airAction, plugForceOpeningN, frictionN, supplyPa });
            expectClose(end.springOrAirN + end.plugForceN + end.frictionN, end.seatLoadN);
            expect(end.heldShut).toBe(end.seatLoadN > 0);
          }
        },
      ),
    );
  });

  it('that is not held reports a negative load', () => {
    expect(shutEnd({ ...seat, supplyPa: 0 })).toMatchObject({ seatLoadN: -7200, heldShut: false });
  });

  it('is held better by more supply, worse by more force under the plug and by friction', () => {
    expectMonotone({
      of: (supplyPa) => shutEnd({ ...seat, supplyPa }).seatLoadN,
      from: 0,
      to: 1e6,
      rises: true,
    });
    expectMonotone({
      of: (plugForceOpeningN) => shutEnd({ ...seat, plugForceOpeningN }).seatLoadN,
      from: -1e4,
      to: 1e4,
      rises: false,
    });
    expectMonotone({
      of: (frictionN) => shutEnd({ ...seat, frictionN }).seatLoadN,
      from: 0,
      to: 1e4,
      rises: false,
    });
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => shutEnd({ ...seat, frictionN: -1 }), { code: 'CALC-002', name: 'frictionN' });
    expectRefused(() => shutEnd({ ...seat, airAction: 'both' as AirAction }), {
      code: 'CALC-005',
      name: 'airAction',
    });
    refusesEachNonNumber(shutEnd, seat);
    refusesOrAnswers(shutEnd, seat);
  });
});

describe('the forces at a lift', () => {
  it('balance at the pressure that is named so', () => {
    fc.assert(
      fc.property(
        between(0, 0.02),
        fc.constantFrom<AirAction>('air-to-open', 'air-to-close'),
        (liftM, airAction) => {
          const at = (pressurePa: number) => forcesAtLift({ ...lift, airAction, liftM, pressurePa });
          expect(Math.abs(at(at(0).balancedPa).netN)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it('stand still within the friction and move outside it', () => {
    const { openingPa, closingPa, balancedPa } = forcesAtLift(lift);
    const what = (pressurePa: number) => forcesAtLift({ ...lift, pressurePa }).tendsTo;
    expect(openingPa - balancedPa).toBeCloseTo(4000, 6);
    expect(balancedPa - closingPa).toBeCloseTo(4000, 6);
    expect([what(openingPa + 1), what(balancedPa), what(closingPa - 1)]).toEqual([
      'open',
      'stand still',
      'close',
    ]);
  });

  it('for air-to-close need more air to shut further', () => {
    const shut = { ...lift, airAction: 'air-to-close' as const };
    expectMonotone({
      of: (liftM) => forcesAtLift({ ...shut, liftM }).closingPa,
      from: 0,
      to: 0.02,
      rises: false,
    });
  });

  it('agree with the shut end at no lift', () => {
    expectClose(
      forcesAtLift({ ...lift, liftM: 0 }).openingPa,
      shutEnd({ ...seat, airAction: 'air-to-open' }).firstLiftPa ?? 0,
    );
    expectClose(
      forcesAtLift({ ...lift, airAction: 'air-to-close', liftM: 0 }).closingPa,
      shutEnd(seat).contactPa ?? 0,
    );
  });

  it('beyond the stroke are refused', () => {
    expectRefused(() => forcesAtLift({ ...lift, liftM: 0.021 }), { code: 'CALC-002', name: 'liftM' });
    refusesEachNonNumber(forcesAtLift, lift);
    refusesOrAnswers(forcesAtLift, lift);
  });
});

describe('friction from two pressures', () => {
  const good = { effectiveAreaM2: 0.05, risingPa: 66000, fallingPa: 58000 };

  it('is half the difference, and what is left is the balance', () => {
    expect(frictionFromPressures(good)).toEqual({ frictionN: 200, balancedPa: 62000 });
  });

  it('is negative where the readings stand the wrong way round', () => {
    expect(frictionFromPressures({ ...good, risingPa: 58000, fallingPa: 66000 }).frictionN).toBe(-200);
  });

  it('of impossible figures is refused by name', () => {
    refusesEachNonNumber(frictionFromPressures, good);
    refusesOrAnswers(frictionFromPressures, good);
  });
});
