import { describe, expect, it } from 'vitest';
import { fciClassV } from '../../../procedures/calculations/seat-leakage-fci.ts';
import {
  gbClassIvS2MolPerS,
  type IecCapacityClass,
  iecCapacityLimit,
  iecClassVi,
  iecClassVM3PerS,
} from '../../../procedures/calculations/seat-leakage-iec.ts';
import { convert } from '../../../procedures/calculations/units.ts';
import { expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const seat = { seatDiameterM: 0.05, testDropPa: 350e3 };

describe('IEC 60534-4', () => {
  it('allows IV-S1 a twentieth of class IV', () => {
    const of = (leakageClass: IecCapacityClass) =>
      iecCapacityLimit({ leakageClass, ratedCapacity: 1 }).allowedLeak;
    expectClose(of('IV-S1'), of('IV') / 20);
    expectRefused(() => iecCapacityLimit({ leakageClass: 'V' as 'IV', ratedCapacity: 1 }), {
      code: 'CALC-005',
      name: 'leakageClass',
    });
  });

  it('allows class V 5 % more than the US form: the two constants are kept apart', () => {
    const us = fciClassV({ portDiameterM: 0.05, testDropPa: 4e6 }).allowedLeakM3PerS;
    expect(us / iecClassVM3PerS({ seatDiameterM: 0.05, testDropPa: 4e6 })).toBeCloseTo(0.95169, 5);
  });

  it('allows class VI the tabled figure times 0.003 for each kPa: 1.05 at 350 kPa', () => {
    const { tabled, allowedLeakM3PerS } = iecClassVi(seat);
    expect(allowedLeakM3PerS / tabled.flowM3PerS).toBeCloseTo(1.05, 12);
  });

  it('in its Chinese edition has a class IV-S2 by seat and drop, counted at 0 °C', () => {
    const litresPerHour = convert({ value: gbClassIvS2MolPerS(seat), from: 'mol/s', to: 'Nl/min' }) * 60;
    expectClose(litresPerHour, 2e-4 * 350 * 50);
  });

  it('with impossible figures is refused by name', () => {
    refusesEachNonNumber(iecCapacityLimit, { leakageClass: 'IV' as const, ratedCapacity: 1 });
    for (const of of [iecClassVM3PerS, iecClassVi, gbClassIvS2MolPerS]) {
      refusesEachNonNumber(of, seat);
      refusesOrAnswers(of, seat);
      expectRefused(() => of({ ...seat, testDropPa: 0 }), { code: 'CALC-002', name: 'testDropPa' });
    }
  });
});
