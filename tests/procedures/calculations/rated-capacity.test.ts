import { describe, expect, it } from 'vitest';
import {
  ratedCapacityGas,
  ratedCapacityGasSimplified,
  ratedCapacityLiquidM3PerS,
} from '../../../procedures/calculations/rated-capacity.ts';
import { expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const water = { ratedKv: 25, testDropPa: 350e3, relativeDensity: 1 };
const air = {
  ratedKv: 40,
  inletPa: 350e3,
  outletPa: 0,
  atmospherePaAbs: 101325,
  temperatureK: 293.15,
  molarMassKgPerMol: 0.02897,
  heatRatio: 1.4,
  compressibility: 1,
  pressureDropRatioXt: 0.72,
  form: 'iec-normal' as const,
};

describe('the rated capacity at the test', () => {
  it('with water goes with the coefficient and the root of the drop', () => {
    const one = ratedCapacityLiquidM3PerS(water);
    expectClose(ratedCapacityLiquidM3PerS({ ...water, ratedKv: 50 }), 2 * one);
    expectClose(ratedCapacityLiquidM3PerS({ ...water, testDropPa: 4 * 350e3 }), 2 * one);
  });

  it('with air hangs on the xT of the open valve, since it chokes at 350 kPa', () => {
    const tight = ratedCapacityGas({ ...air, pressureDropRatioXt: 0.6 });
    const wide = ratedCapacityGas({ ...air, pressureDropRatioXt: 0.75 });
    expect([tight.choked, wide.choked]).toEqual([true, true]);
    expect(wide.flowMolPerS / tight.flowMolPerS).toBeCloseTo(Math.sqrt(0.75 / 0.6), 9);
  });

  it('takes gauge pressures and adds the barometer', () => {
    expectClose(ratedCapacityGas(air).dropRatio, 350e3 / 451325);
  });

  it('by the simplified form lies about 12 % above the equation when choked at xT 0.72', () => {
    const simple = ratedCapacityGasSimplified({
      ratedKv: 40,
      inletPaAbs: 451325,
      outletPaAbs: 101325,
      specificGravity: 1,
      temperatureK: 293.15,
    });
    expect(simple.flowMolPerS / ratedCapacityGas(air).flowMolPerS).toBeCloseTo(1.12, 2);
  });

  it('by the simplified form has two branches that meet within a few percent at half the inlet', () => {
    const at = (outletPaAbs: number) =>
      ratedCapacityGasSimplified({
        ratedKv: 40,
        inletPaAbs: 4e5,
        outletPaAbs,
        specificGravity: 1,
        temperatureK: 293.15,
      });
    expect([at(2.01e5).choked, at(2e5).choked]).toEqual([false, true]);
    expect(Math.abs(at(2.01e5).flowMolPerS / at(2e5).flowMolPerS - 1)).toBeLessThan(0.03);
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => ratedCapacityGas({ ...air, inletPa: 0 }), { code: 'CALC-003', name: 'inletPaAbs' });
    expectRefused(() => ratedCapacityGas({ ...air, outletPa: -1 }), { code: 'CALC-002', name: 'outletPa' });
    refusesEachNonNumber(ratedCapacityLiquidM3PerS, water);
    refusesOrAnswers(ratedCapacityLiquidM3PerS, water);
    refusesOrAnswers(ratedCapacityGas, air);
    const simple = { ratedKv: 40, inletPaAbs: 4e5, outletPaAbs: 1e5, specificGravity: 1, temperatureK: 293 };
    refusesEachNonNumber(ratedCapacityGasSimplified, simple);
    refusesOrAnswers(ratedCapacityGasSimplified, simple);
  });
});
