import { describe, expect, it } from 'vitest';
import { fittingLosses, pipingFactors } from '../../../procedures/calculations/fittings.ts';
import { expectMonotone, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const sizes = { valveM: 0.05, pipeInM: 0.08, pipeOutM: 0.1 };

describe('reducers at a valve', () => {
  it('of line size are none', () => {
    expect(fittingLosses({ valveM: 0.05, pipeInM: 0.05, pipeOutM: 0.05 })).toEqual({ sum: 0, inlet: 0 });
  });

  it('take capacity, the more the larger the valve is for its size', () => {
    const of = (kv: number) => pipingFactors({ kv, fittings: sizes }).pipingFactor;
    expect(of(1e-6)).toBeCloseTo(1, 9);
    expectMonotone({ of, from: 1, to: 200, rises: false });
  });

  it('leave a valve of a pipe alone as it is', () => {
    expect(pipingFactors({ kv: 50, recoveryFl: 0.9, pressureDropRatioXt: 0.7 })).toEqual({
      losses: { sum: 0, inlet: 0 },
      pipingFactor: 1,
      recoveryWithPiping: 0.9,
      dropRatioWithPiping: 0.7,
      tested: true,
    });
  });

  it('say where the equations leave their tested range', () => {
    expect(pipingFactors({ kv: 100, fittings: sizes }).tested).toBe(true);
    expect(pipingFactors({ kv: 110, fittings: sizes }).tested).toBe(false);
  });

  it('that only recover pressure have no answer for a coefficient too large', () => {
    const outletOnly = { valveM: 0.05, pipeInM: 0.05, pipeOutM: 0.07 };
    expect(fittingLosses(outletOnly).sum).toBeLessThan(0);
    expectRefused(() => pipingFactors({ kv: 1e4, fittings: outletOnly }), { code: 'CALC-006', name: 'kv' });
  });

  it('narrower than the valve are refused', () => {
    expectRefused(() => fittingLosses({ ...sizes, pipeInM: 0.04 }), { code: 'CALC-002', name: 'pipeInM' });
    refusesEachNonNumber(fittingLosses, sizes);
    refusesOrAnswers(fittingLosses, sizes);
    const good = { kv: 50, recoveryFl: 0.9, pressureDropRatioXt: 0.7, fittings: sizes };
    refusesEachNonNumber(pipingFactors, good);
    refusesOrAnswers(pipingFactors, good);
  });
});
