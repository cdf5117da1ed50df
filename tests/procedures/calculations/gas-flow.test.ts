import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gasChokingOutletPaAbs, gasFlow, gasKv } from '../../../procedures/calculations/gas-flow.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const good = {
  kv: 40,
  inletPaAbs: 451325,
  outletPaAbs: 301325,
  temperatureK: 293.15,
  molarMassKgPerMol: 0.02897,
  heatRatio: 1.4,
  compressibility: 1,
  pressureDropRatioXt: 0.72,
  form: 'iec-normal' as const,
};
const fittings = { valveM: 0.05, pipeInM: 0.08, pipeOutM: 0.1 };

describe('a gas through a valve', () => {
  it('has an expansion factor from one down to two thirds, and no further', () => {
    expect(gasFlow({ ...good, outletPaAbs: 451324 }).expansionFactor).toBeCloseTo(1, 4);
    expect(gasFlow({ ...good, outletPaAbs: 0 }).expansionFactor).toBeCloseTo(2 / 3, 12);
  });

  it('flows no faster once it chokes', () => {
    const outlet = gasChokingOutletPaAbs(good);
    const at = (outletPaAbs: number) => gasFlow({ ...good, outletPaAbs });
    expectClose(at(outlet * 0.99).flowMolPerS, at(0).flowMolPerS);
    expect([at(outlet * 1.01).choked, at(outlet * 0.99).choked]).toEqual([false, true]);
    expectMonotone({ of: (outletPaAbs) => at(outletPaAbs).flowMolPerS, from: 0, to: 450000, rises: false });
  });

  it('may choke with reducers where it does not without', () => {
    const nearly = { ...good, kv: 90, pressureDropRatioXt: 0.7, outletPaAbs: 451325 * (1 - 0.695) };
    expect(gasFlow(nearly).choked).toBe(false);
    expect(gasFlow({ ...nearly, fittings: { ...fittings, pipeOutM: 0.07 } }).choked).toBe(true);
  });

  it('and the coefficient that passes it are each other’s inverse, with and without reducers', () => {
    fc.assert(
      fc.property(between(0.01, 90), between(0, 4e5), fc.boolean(), (kv, outletPaAbs, reduced) => {
        const input = { ...good, outletPaAbs, fittings: reduced ? fittings : null };
        const { flowMolPerS } = gasFlow({ ...input, kv });
        expectClose(gasKv({ ...input, flowMolPerS }).kv, kv, 1e-8);
      }),
      { numRuns: 40 },
    );
  });

  it('by the rounded constants of three forms is the same within half a percent', () => {
    const normal = gasFlow(good).flowMolPerS;
    for (const form of ['iec-standard', 'isa-scfh'] as const) {
      expect(Math.abs(gasFlow({ ...good, form }).flowMolPerS / normal - 1)).toBeLessThan(0.005);
    }
  });

  it('of a heat ratio outside the tested range is answered with a warning', () => {
    expect(gasFlow({ ...good, heatRatio: 1.67 }).heatRatioTested).toBe(false);
    expect(gasFlow(good).heatRatioTested).toBe(true);
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => gasFlow({ ...good, outletPaAbs: 451325 }), { code: 'CALC-003', name: 'inletPaAbs' });
    expectRefused(() => gasFlow({ ...good, heatRatio: 1 }), { code: 'CALC-002', name: 'heatRatio' });
    expectRefused(() => gasFlow({ ...good, pressureDropRatioXt: 0 }), {
      code: 'CALC-002',
      name: 'pressureDropRatioXt',
    });
    expectRefused(() => gasFlow({ ...good, form: 'metric' as 'iec-normal' }), {
      code: 'CALC-005',
      name: 'form',
    });
    expectRefused(() => gasKv({ ...good, flowMolPerS: 0 }), { code: 'CALC-002', name: 'flowMolPerS' });
    refusesEachNonNumber(gasFlow, good);
    refusesOrAnswers(gasFlow, { ...good, fittings });
    refusesEachNonNumber(gasChokingOutletPaAbs, {
      inletPaAbs: 1e5,
      heatRatio: 1.3,
      pressureDropRatioXt: 0.7,
    });
  });
});
