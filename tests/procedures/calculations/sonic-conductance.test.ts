import { describe, expect, it } from 'vitest';
import { chokedDischarge, restrictionFlow } from '../../../procedures/calculations/sonic-conductance.ts';
import {
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const good = {
  conductanceM3PerSPa: 1e-8,
  criticalPressureRatio: 0.3,
  inletPaAbs: 7e5,
  outletPaAbs: 6e5,
  inletK: 293.15,
};

describe('air through a part of known conductance', () => {
  it('chokes at the critical ratio without a step', () => {
    const at = (ratio: number) => restrictionFlow({ ...good, outletPaAbs: ratio * 7e5 });
    expect([at(0.3).choked, at(0.3001).choked]).toEqual([true, false]);
    expect(Math.abs(at(0.3001).flowAnrM3PerS / at(0.3).flowAnrM3PerS - 1)).toBeLessThan(1e-6);
    expect(at(1).flowAnrM3PerS).toBe(0);
  });

  it('passes less the higher the pressure behind it, and the warmer the air', () => {
    expectMonotone({
      of: (outletPaAbs) => restrictionFlow({ ...good, outletPaAbs }).massFlowKgPerS,
      from: 0,
      to: 7e5,
      rises: false,
    });
    expectMonotone({
      of: (inletK) => restrictionFlow({ ...good, inletK }).massFlowKgPerS,
      from: 250,
      to: 350,
      rises: false,
    });
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => restrictionFlow({ ...good, outletPaAbs: 8e5 }), {
      code: 'CALC-002',
      name: 'outletPaAbs',
    });
    expectRefused(() => restrictionFlow({ ...good, criticalPressureRatio: 1 }), {
      code: 'CALC-002',
      name: 'criticalPressureRatio',
    });
    refusesEachNonNumber(restrictionFlow, good);
    refusesOrAnswers(restrictionFlow, good);
  });
});

describe('a volume that empties through a choked part', () => {
  const tank = {
    volumeM3: 0.002,
    conductanceM3PerSPa: 2e-11,
    criticalPressureRatio: 0.5,
    startPa: 4e5,
    atmospherePaAbs: 101325,
    temperatureK: 293.15,
    elapsedS: 120,
  };

  it('falls to 37 % of its absolute pressure in one time constant', () => {
    const { timeConstantS } = chokedDischarge(tank);
    expectClose(chokedDischarge({ ...tank, elapsedS: timeConstantS }).endPaAbs, 501325 / Math.E);
  });

  it('stays choked until the atmosphere is the critical part of what is left', () => {
    const { chokedForS } = chokedDischarge(tank);
    const end = chokedDischarge({ ...tank, elapsedS: chokedForS ?? 0 });
    expectClose(101325 / end.endPaAbs, 0.5);
    expect(chokedDischarge({ ...tank, startPa: 1000 }).chokedForS).toBe(0);
    expect(chokedDischarge({ ...tank, criticalPressureRatio: null }).chokedForS).toBeNull();
  });

  it('with impossible figures is refused by name', () => {
    refusesEachNonNumber(chokedDischarge, tank);
    refusesOrAnswers(chokedDischarge, tank);
  });
});
