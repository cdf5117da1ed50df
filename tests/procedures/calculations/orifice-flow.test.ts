import { describe, expect, it } from 'vitest';
import {
  AIR,
  chokingOutletPa,
  conductanceOfHole,
  criticalPressureRatio,
  orificeFlow,
} from '../../../procedures/calculations/orifice-flow.ts';
import { restrictionFlow } from '../../../procedures/calculations/sonic-conductance.ts';
import {
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const good = {
  areaM2: 1e-7,
  dischargeFactor: 0.8,
  inletPaAbs: 240e3,
  outletPaAbs: 101.3e3,
  inletK: 293.15,
  ...AIR,
};

describe('air through a small hole', () => {
  it('chokes at 0.528, and flows by 0.0404 Cd A p/√T then', () => {
    expect(criticalPressureRatio(AIR)).toBeCloseTo(0.52828, 5);
    const { massFlowKgPerS } = orificeFlow(good);
    expect(massFlowKgPerS / ((0.8 * 1e-7 * 240e3) / Math.sqrt(293.15))).toBeCloseTo(0.040415, 5);
  });

  it('passes no less the lower the pressure behind it, and nothing without a drop', () => {
    expectMonotone({
      of: (outletPaAbs) => orificeFlow({ ...good, outletPaAbs }).massFlowKgPerS,
      from: 0,
      to: 240e3,
      rises: false,
    });
    expect(orificeFlow({ ...good, outletPaAbs: 240e3 }).massFlowKgPerS).toBe(0);
  });

  it('as a conductance passes the same choked flow', () => {
    const { conductanceM3PerSPa } = conductanceOfHole({ diameterM: 0.001, dischargeFactor: 0.8, ...AIR });
    const hole = orificeFlow({ ...good, areaM2: (Math.PI / 4) * 1e-6, inletPaAbs: 5e5, outletPaAbs: 1e5 });
    const part = restrictionFlow({
      conductanceM3PerSPa,
      criticalPressureRatio: 0.528,
      inletPaAbs: 5e5,
      outletPaAbs: 1e5,
      inletK: 293.15,
    });
    expectClose(part.massFlowKgPerS, hole.massFlowKgPerS);
  });

  it('chokes by absolute pressures, although gauges are read', () => {
    expectClose(chokingOutletPa({ inletPa: 1e5, atmospherePaAbs: 1e5, criticalPressureRatio: 0.5 }) + 1, 1);
    expect(chokingOutletPa({ inletPa: 0, atmospherePaAbs: 1e5, criticalPressureRatio: 0.5 })).toBe(-50000);
  });

  it('with impossible figures is refused by name', () => {
    expectRefused(() => orificeFlow({ ...good, outletPaAbs: 250e3 }), {
      code: 'CALC-002',
      name: 'outletPaAbs',
    });
    expectRefused(() => orificeFlow({ ...good, dischargeFactor: 1.1 }), {
      code: 'CALC-002',
      name: 'dischargeFactor',
    });
    expectRefused(() => criticalPressureRatio({ heatRatio: 1 }), { code: 'CALC-002', name: 'heatRatio' });
    refusesEachNonNumber(orificeFlow, good);
    refusesOrAnswers(orificeFlow, good);
    const hole = { diameterM: 0.001, dischargeFactor: 0.8, ...AIR };
    refusesEachNonNumber(conductanceOfHole, hole);
    refusesOrAnswers(conductanceOfHole, hole);
    refusesOrAnswers(chokingOutletPa, { inletPa: 1e5, atmospherePaAbs: 1e5, criticalPressureRatio: 0.5 });
  });
});
