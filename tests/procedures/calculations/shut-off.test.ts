import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plugForce } from '../../../procedures/calculations/plug-force.ts';
import {
  largestShutOffDrop,
  shutOffMargin,
  smallestSupply,
} from '../../../procedures/calculations/shut-off.ts';
import type { AirAction } from '../../../procedures/calculations/signal-travel.ts';
import { between, expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const good = {
  airAction: 'air-to-close' as AirAction,
  effectiveAreaM2: 0.05,
  benchSetLowPa: 20000,
  benchSetHighPa: 100000,
  plugForceOpeningN: 1000,
  frictionN: 200,
  portDiameterM: 0.05,
  seatLoadNeedNPerM: 5000,
};

describe('the smallest supply', () => {
  it('of air-to-close gives just the seat load needed', () => {
    fc.assert(
      fc.property(between(0, 5000), between(0, 20000), (plugForceOpeningN, seatLoadNeedNPerM) => {
        const input = { ...good, plugForceOpeningN, seatLoadNeedNPerM };
        const { smallestSupplyPa } = smallestSupply(input);
        const at = shutOffMargin({ ...input, supplyPa: smallestSupplyPa });
        expect(Math.abs(at.marginN)).toBeLessThan(1e-6);
        expect(at.enough).toBe(true);
      }),
    );
  });

  it('of air-to-open opens fully, and says whether the spring alone shuts tight', () => {
    const open = smallestSupply({ ...good, airAction: 'air-to-open', plugForceOpeningN: -500 });
    expect(open.atTheOpenEndPa).toBe(104000);
    expect(open.smallestSupplyPa).toBe(104000);
    expect(open.springIsEnough).toBe(true);
    expect(smallestSupply({ ...good, airAction: 'air-to-open' }).springIsEnough).toBe(false);
  });

  it('of air-to-open lifts the plug off its seat where that takes more', () => {
    const held = smallestSupply({ ...good, airAction: 'air-to-open', plugForceOpeningN: -10000 });
    expect(held.smallestSupplyPa).toBe(held.atTheSeatPa);
    expect(held.atTheSeatPa).toBeGreaterThan(held.atTheOpenEndPa);
  });

  it('is never below nothing', () => {
    expect(smallestSupply({ ...good, plugForceOpeningN: -1e6 }).smallestSupplyPa).toBe(0);
  });

  it('of impossible figures is refused by name', () => {
    refusesEachNonNumber(smallestSupply, good);
    refusesOrAnswers(smallestSupply, good);
  });
});

describe('the shut-off margin', () => {
  it('that falls short is negative', () => {
    expect(shutOffMargin({ ...good, supplyPa: 100000 })).toMatchObject({ seatLoadN: -1200, enough: false });
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => shutOffMargin({ ...good, supplyPa: 1e5, seatLoadNeedNPerM: -1 }), {
      code: 'CALC-002',
      name: 'seatLoadNeedNPerM',
    });
    refusesEachNonNumber(shutOffMargin, { ...good, supplyPa: 140000 });
    refusesOrAnswers(shutOffMargin, { ...good, supplyPa: 140000 });
  });
});

describe('the largest drop that is shut off', () => {
  const { plugForceOpeningN: _, ...unloaded } = good;
  const input = { ...unloaded, supplyPa: 240000 };

  it('put on the plug uses up the margin', () => {
    const { dropPa } = largestShutOffDrop(input);
    const { openingN } = plugForce({
      flow: 'under',
      inletPa: dropPa,
      outletPa: 0,
      portDiameterM: 0.05,
      stemDiameterM: 0,
    });
    expectClose(shutOffMargin({ ...input, plugForceOpeningN: openingN }).marginN + 1, 1, 1e-6);
  });

  it('is negative where the seat lacks load without any drop', () => {
    expect(largestShutOffDrop({ ...input, supplyPa: 100000 }).dropPa).toBeLessThan(0);
  });

  it('of impossible figures is refused by name', () => {
    refusesEachNonNumber(largestShutOffDrop, input);
    refusesOrAnswers(largestShutOffDrop, input);
  });
});
