import { ABOVE_ZERO, oneOf, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { type ClassViFigure, classViFigure } from './class-vi-table.ts';
import { fromSi, toSi } from './units.ts';

export type IecCapacityClass = 'II' | 'III' | 'IV' | 'IV-S1';

/** IEC 60534-4 and GB/T 4213: share of the rated capacity [S-20]. */
export const IEC_CAPACITY_SHARES: Readonly<Record<IecCapacityClass, number>> = {
  II: 5e-3,
  III: 1e-3,
  IV: 1e-4,
  'IV-S1': 5e-6,
};

/**
 * Allowed leak of classes II, III, IV and IV-S1 by IEC 60534-4.
 *
 * Shape: class and rated capacity in, a leak in the same unit out.
 * Valid: capacity of the test fluid at the test drop, in any one unit of flow (m³/s of liquid, mol/s of gas).
 * @param leakageClass   II, III, IV or IV-S1
 * @param ratedCapacity  0 or more
 * @returns share and allowed leak, in the unit of ratedCapacity
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the class is not one of them
 * @source [S-20] class table; the power of ten of IV-S1 from memory
 * @example iecCapacityLimit({ leakageClass: 'IV-S1', ratedCapacity: 117.862 }) // { share: 5e-6, allowedLeak: 5.8931e-4 }
 */
export function iecCapacityLimit(input: {
  readonly leakageClass: IecCapacityClass;
  readonly ratedCapacity: number;
}): { readonly share: number; readonly allowedLeak: number } {
  const { ratedCapacity } = input;
  refuseOutside({ ratedCapacity }, ZERO_OR_MORE);
  const choices = Object.keys(IEC_CAPACITY_SHARES) as IecCapacityClass[];
  const share = IEC_CAPACITY_SHARES[oneOf({ name: 'leakageClass', value: input.leakageClass, choices })];
  return { share, allowedLeak: share * ratedCapacity };
}

/** l/h of water for each mm of seat and each kPa of drop: 5e-12 m³/s for each mm and bar. */
export const IEC_CLASS_V_L_PER_H_PER_MM_PER_KPA = 1.8e-7;

/**
 * Allowed leak of class V with water by IEC 60534-4.
 *
 * Shape: seat and drop in, a liquid flow out. 1.8e-7 l/h · mm of seat · kPa
 * Valid: water at the service drop. 5 % above the US form: use the constant of the standard that was agreed.
 * @param seatDiameterM  above 0
 * @param testDropPa     above 0
 * @returns allowed leak in m³/s
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-20] class V
 * @example iecClassVM3PerS({ seatDiameterM: 0.05, testDropPa: 4e6 }) // 1e-8
 */
export function iecClassVM3PerS(input: {
  readonly seatDiameterM: number;
  readonly testDropPa: number;
}): number {
  const { seatDiameterM, testDropPa } = input;
  refuseOutside({ seatDiameterM, testDropPa }, ABOVE_ZERO);
  return toSi({
    value: IEC_CLASS_V_L_PER_H_PER_MM_PER_KPA * millimetres(seatDiameterM) * kilopascals(testDropPa),
    unit: 'l/h',
  });
}

/**
 * Allowed leak of class VI by IEC 60534-4.
 *
 * Shape: seat and drop in, a flow out. 0.003 · kPa · tabled figure
 * Valid: gas at low pressure. The US form has no factor for the drop: 1.05 at 350 kPa.
 * @param seatDiameterM  above 0, at most 0.402
 * @param testDropPa     above 0
 * @returns tabled figure, and allowed leak in m³/s
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-20] class VI
 * @example iecClassVi({ seatDiameterM: 0.1, testDropPa: 350e3 }).allowedLeakM3PerS // 2.975e-8
 */
export function iecClassVi(input: { readonly seatDiameterM: number; readonly testDropPa: number }): {
  readonly tabled: ClassViFigure;
  readonly allowedLeakM3PerS: number;
} {
  const { seatDiameterM, testDropPa } = input;
  refuseOutside({ seatDiameterM, testDropPa }, ABOVE_ZERO);
  const tabled = classViFigure({ portDiameterM: seatDiameterM, sizes: 'millimetre' });
  return { tabled, allowedLeakM3PerS: 0.003 * kilopascals(testDropPa) * tabled.flowM3PerS };
}

/**
 * Allowed leak of class IV-S2, which only GB/T 4213-92 has.
 *
 * Shape: seat and drop in, a gas flow out. 2e-4 l/h · kPa · mm of seat, counted at 0 °C and 101.325 kPa
 * Valid: gas at low pressure.
 * @param seatDiameterM  above 0
 * @param testDropPa     above 0
 * @returns allowed leak in mol/s
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-20] class IV-S2
 * @example gbClassIvS2MolPerS({ seatDiameterM: 0.05, testDropPa: 350e3 }) // 4.33757e-5
 */
export function gbClassIvS2MolPerS(input: {
  readonly seatDiameterM: number;
  readonly testDropPa: number;
}): number {
  const { seatDiameterM, testDropPa } = input;
  refuseOutside({ seatDiameterM, testDropPa }, ABOVE_ZERO);
  const litresPerHour = 2e-4 * kilopascals(testDropPa) * millimetres(seatDiameterM);
  return toSi({ value: litresPerHour / 1000, unit: 'Nm3/h' });
}

function millimetres(lengthM: number): number {
  return fromSi({ valueSi: lengthM, unit: 'mm' });
}

function kilopascals(pressurePa: number): number {
  return fromSi({ valueSi: pressurePa, unit: 'kPa' });
}
