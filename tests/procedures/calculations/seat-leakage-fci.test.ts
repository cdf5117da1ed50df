import { describe, expect, it } from 'vitest';
import {
  type FciCapacityClass,
  fciCapacityLimit,
  fciClassV,
  fciClassVAir,
  fciClassVi,
} from '../../../procedures/calculations/seat-leakage-fci.ts';
import { convert, toSi } from '../../../procedures/calculations/units.ts';
import { expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

describe('ANSI/FCI 70-2', () => {
  it('allows 0.5, 0.1 and 0.01 % of the rated capacity', () => {
    const of = (leakageClass: FciCapacityClass) =>
      fciCapacityLimit({ leakageClass, ratedCapacity: 100 }).allowedLeak;
    expect([of('II'), of('III'), of('IV')].map((leak) => leak.toFixed(6))).toEqual([
      '0.500000',
      '0.100000',
      '0.010000',
    ]);
  });

  it('has no class IV-S1, which is the other standard’s', () => {
    expectRefused(() => fciCapacityLimit({ leakageClass: 'IV-S1' as 'IV', ratedCapacity: 1 }), {
      code: 'CALC-005',
      name: 'leakageClass',
    });
  });

  it('allows class V 0.0005 ml/min for each inch and psi, at a drop of 100 psi or more', () => {
    const at = (psi: number) =>
      fciClassV({ portDiameterM: 0.0254, testDropPa: toSi({ value: psi, unit: 'psi' }) });
    expectClose(convert({ value: at(1000).allowedLeakM3PerS, from: 'm3/s', to: 'ml/min' }), 0.5);
    expect([at(100).dropEnough, at(99).dropEnough]).toEqual([true, false]);
  });

  it('allows class V with air by the inch at one fixed drop', () => {
    const one = fciClassVAir({ orificeDiameterM: 0.0254 });
    expectClose(fciClassVAir({ orificeDiameterM: 0.0508 }).allowedLeakMolPerS, 2 * one.allowedLeakMolPerS);
    expectClose(one.testDropPa, toSi({ value: 50, unit: 'psi' }));
  });

  it('takes class VI from the table by inches, without a factor for the drop', () => {
    expect(fciClassVi({ portDiameterM: 3 * 0.0254 }).mlPerMin).toBe(0.9);
  });

  it('with impossible figures is refused by name', () => {
    const limit = { leakageClass: 'IV' as const, ratedCapacity: 1 };
    refusesEachNonNumber(fciCapacityLimit, limit);
    refusesOrAnswers(fciCapacityLimit, limit);
    const classV = { portDiameterM: 0.05, testDropPa: 4e6 };
    refusesEachNonNumber(fciClassV, classV);
    refusesOrAnswers(fciClassV, classV);
    refusesEachNonNumber(fciClassVAir, { orificeDiameterM: 0.05 });
    refusesOrAnswers(fciClassVAir, { orificeDiameterM: 0.05 });
    refusesEachNonNumber(fciClassVi, { portDiameterM: 0.05 });
  });
});
