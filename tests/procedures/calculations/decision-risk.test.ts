import { describe, expect, it } from 'vitest';
import { decisionRisk, type Prior, type RiskInput } from '../../../procedures/calculations/decision-risk.ts';
import { expectClose, expectMonotone, expectRefused } from './support.ts';

const normal: Prior = { kind: 'normal', mean: 0, standardDeviation: 4 };
const good: RiskInput = { prior: normal, standardUncertainty: 1, lowerLimit: -8, upperLimit: 8 };

describe('the risk of a decision', () => {
  it('accepts fewer bad and rejects more good items the tighter it accepts', () => {
    const at = (half: number) => decisionRisk({ ...good, acceptLower: -half, acceptUpper: half });
    expectMonotone({ of: (half) => at(half).wrongAccept, from: 5, to: 9, rises: true });
    expectMonotone({ of: (half) => at(half).wrongReject, from: 5, to: 9, rises: false });
  });

  it('is that of the items alone before they are measured: 4.55 % beyond two deviations', () => {
    expect(decisionRisk(good).nonconforming).toBeCloseTo(0.0455, 4);
    expect(decisionRisk({ ...good, lowerLimit: null }).nonconforming).toBeCloseTo(0.02275, 5);
  });

  it('for precision bearings asks for acceptance at 1.67 of 2 to get down to 0.1 %', () => {
    const bearings: RiskInput = {
      prior: { kind: 'gamma', shape: 4, scale: 0.25 },
      standardUncertainty: 0.25,
      upperLimit: 2,
    };
    expect(decisionRisk({ ...bearings, acceptUpper: 1.67 }).wrongAccept).toBeCloseTo(0.001, 4);
    expect(decisionRisk(bearings).nonconforming).toBeCloseTo(0.04238, 4);
  });

  it('never is below none nor above all', () => {
    for (const standardUncertainty of [1e-6, 0.1, 1, 100]) {
      const risk = decisionRisk({ ...good, standardUncertainty });
      for (const share of Object.values(risk)) {
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
      }
    }
  });

  it('of a prior far outside its limits is certain', () => {
    expectClose(
      decisionRisk({ ...good, prior: { kind: 'normal', mean: 1000, standardDeviation: 1 } }).nonconforming,
      1,
      1e-6,
    );
  });

  it('of impossible figures is refused by name', () => {
    const changed = (change: object) => () => decisionRisk({ ...good, ...change });
    expectRefused(changed({ standardUncertainty: 0 }), { code: 'CALC-002', name: 'standardUncertainty' });
    expectRefused(changed({ lowerLimit: null, upperLimit: null }), { code: 'CALC-003', name: 'upperLimit' });
    expectRefused(changed({ acceptUpper: -9 }), { code: 'CALC-003', name: 'upperLimit' });
    expectRefused(changed({ prior: { ...normal, standardDeviation: 0 } }), {
      code: 'CALC-002',
      name: 'standardDeviation',
    });
    expectRefused(changed({ prior: { ...normal, mean: Number.NaN } }), { code: 'CALC-001', name: 'mean' });
    expectRefused(changed({ prior: { kind: 'gamma', shape: 0.5, scale: 1 } }), {
      code: 'CALC-002',
      name: 'shape',
    });
    expectRefused(changed({ prior: { kind: 'gamma', shape: 2, scale: 0 } }), {
      code: 'CALC-002',
      name: 'scale',
    });
    expectRefused(changed({ prior: { kind: 'beta' } }), { code: 'CALC-005', name: 'prior' });
  });
});
