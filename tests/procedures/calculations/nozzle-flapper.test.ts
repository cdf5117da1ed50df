import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  nozzleBackPressure,
  nozzleBackPressureSimplePa,
  nozzleGapSimpleM,
} from '../../../procedures/calculations/nozzle-flapper.ts';
import { AIR } from '../../../procedures/calculations/orifice-flow.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const geometry = { restrictionDiameterM: 0.25e-3, nozzleDiameterM: 0.8e-3, supplyPa: 140e3 };
const good = {
  ...geometry,
  ...AIR,
  gapM: 0.02e-3,
  atmospherePaAbs: 101325,
  temperatureK: 293.15,
  dischargeFactorRestriction: 0.8,
  dischargeFactorNozzle: 0.8,
  restrictionOpenShare: 1,
};

describe('a nozzle and its flapper', () => {
  it('by the textbook form and back give the same gap', () => {
    fc.assert(
      fc.property(between(1e-6, 2e-4), (gapM) => {
        const backPressurePa = nozzleBackPressureSimplePa({ ...geometry, gapM });
        expect(Math.abs(nozzleGapSimpleM({ ...geometry, backPressurePa }) / gapM - 1)).toBeLessThan(1e-6);
      }),
    );
  });

  it('closed have the supply behind the nozzle, wide open next to nothing', () => {
    expect(nozzleBackPressure({ ...good, gapM: 0 }).backPressurePa).toBeCloseTo(140e3, 3);
    expect(nozzleBackPressure({ ...good, gapM: 2e-4 }).backPressurePa).toBeLessThan(2e3);
  });

  it('lose back pressure as the gap opens', () => {
    expectMonotone({
      of: (gapM) => nozzleBackPressure({ ...good, gapM }).backPressurePa,
      from: 0,
      to: 1e-4,
      rises: false,
    });
  });

  it('lose back pressure as the restriction plugs, down to nothing', () => {
    const of = (restrictionOpenShare: number) =>
      nozzleBackPressure({ ...good, restrictionOpenShare }).backPressurePa;
    expectMonotone({ of, from: 0, to: 1, rises: true });
    expect(of(0)).toBeCloseTo(0, 3);
  });

  it('are never both choked at this supply', () => {
    for (let gapM = 0; gapM < 2e-4; gapM += 2e-6) {
      const { restrictionChoked, nozzleChoked } = nozzleBackPressure({ ...good, gapM });
      expect(restrictionChoked && nozzleChoked).toBe(false);
    }
  });

  it('differ by a third between the two forms, so that it must be said which is used', () => {
    const compressible = nozzleBackPressure(good).backPressurePa;
    expect(compressible / nozzleBackPressureSimplePa(good)).toBeCloseTo(1.34, 2);
  });

  it('no longer notice a gap beyond a quarter of the nozzle', () => {
    const wide = nozzleBackPressure({ ...good, gapM: 0.3e-3 });
    const wider = nozzleBackPressure({ ...good, gapM: 0.6e-3 });
    expect([wide.gapSaturated, wider.gapSaturated]).toEqual([true, true]);
    expectClose(wide.backPressurePa, wider.backPressurePa);
    expect(nozzleBackPressure({ ...good, gapM: 0.19e-3 }).gapSaturated).toBe(false);
  });

  it('feed through the restriction just what leaves through the gap', () => {
    const state = nozzleBackPressure(good);
    expect(state.massFlowKgPerS).toBeGreaterThan(0);
    expect(nozzleBackPressure({ ...good, gapM: 0 }).massFlowKgPerS).toBe(0);
  });

  it('with impossible figures are refused by name', () => {
    expectRefused(() => nozzleGapSimpleM({ ...geometry, backPressurePa: 150e3 }), {
      code: 'CALC-002',
      name: 'backPressurePa',
    });
    expectRefused(() => nozzleBackPressure({ ...good, restrictionOpenShare: 1.1 }), {
      code: 'CALC-002',
      name: 'restrictionOpenShare',
    });
    refusesEachNonNumber(nozzleBackPressureSimplePa, { ...geometry, gapM: 1e-5 });
    refusesOrAnswers(nozzleBackPressureSimplePa, { ...geometry, gapM: 1e-5 });
    refusesOrAnswers(nozzleGapSimpleM, { ...geometry, backPressurePa: 60e3 });
    refusesOrAnswers(nozzleBackPressure, good);
  });
});
