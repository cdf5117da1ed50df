import { ABOVE_ZERO, oneOf, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { type ClassViFigure, classViFigure } from './class-vi-table.ts';
import { convert, toSi } from './units.ts';

export type FciCapacityClass = 'II' | 'III' | 'IV';

/** ANSI/FCI 70-2: share of the rated capacity [S-19]. Class I has no test. */
export const FCI_CAPACITY_SHARES: Readonly<Record<FciCapacityClass, number>> = {
  II: 5e-3,
  III: 1e-3,
  IV: 1e-4,
};

/**
 * Allowed leak of classes II, III and IV by ANSI/FCI 70-2.
 *
 * Shape: class and rated capacity in, a leak in the same unit out.
 * Valid: capacity of the test fluid at the test drop, in any one unit of flow (m³/s of liquid, mol/s of gas).
 * @param leakageClass   II, III or IV
 * @param ratedCapacity  0 or more
 * @returns share and allowed leak, in the unit of ratedCapacity
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the class is not one of them
 * @source [S-19] class table
 * @example fciCapacityLimit({ leakageClass: 'IV', ratedCapacity: 707.107 }) // { share: 0.0001, allowedLeak: 0.0707107 }
 */
export function fciCapacityLimit(input: {
  readonly leakageClass: FciCapacityClass;
  readonly ratedCapacity: number;
}): { readonly share: number; readonly allowedLeak: number } {
  const { ratedCapacity } = input;
  refuseOutside({ ratedCapacity }, ZERO_OR_MORE);
  const choices = Object.keys(FCI_CAPACITY_SHARES) as FciCapacityClass[];
  const share = FCI_CAPACITY_SHARES[oneOf({ name: 'leakageClass', value: input.leakageClass, choices })];
  return { share, allowedLeak: share * ratedCapacity };
}

/** ml/min of water for each inch of port and each psi of drop. The SI constant of the other standard is 5 % larger. */
export const FCI_CLASS_V_ML_PER_MIN_PER_IN_PER_PSI = 5e-4;

/** Smallest drop of the class V water test. */
const CLASS_V_DROP_PSI_MIN = 100;

/**
 * Allowed leak of class V with water by ANSI/FCI 70-2.
 *
 * Shape: port and drop in, a liquid flow out. 0.0005 ml/min · inches of port · psi
 * Valid: water of 10 to 52 °C at the service drop, at least 100 psi, not above the body's rating.
 * @param portDiameterM  above 0
 * @param testDropPa     above 0
 * @returns allowed leak in m³/s, and whether the drop reaches the smallest one of the test
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-19] class V, US form
 * @example fciClassV({ portDiameterM: 0.0508, testDropPa: 4136854.4 }) // { allowedLeakM3PerS: 1e-8, dropEnough: true }
 */
export function fciClassV(input: { readonly portDiameterM: number; readonly testDropPa: number }): {
  readonly allowedLeakM3PerS: number;
  readonly dropEnough: boolean;
} {
  const { portDiameterM, testDropPa } = input;
  refuseOutside({ portDiameterM, testDropPa }, ABOVE_ZERO);
  const portIn = convert({ value: portDiameterM, from: 'm', to: 'in' });
  const dropPsi = convert({ value: testDropPa, from: 'Pa', to: 'psi' });
  return {
    allowedLeakM3PerS: toSi({
      value: FCI_CLASS_V_ML_PER_MIN_PER_IN_PER_PSI * portIn * dropPsi,
      unit: 'ml/min',
    }),
    dropEnough: dropPsi >= CLASS_V_DROP_PSI_MIN * (1 - 1e-9),
  };
}

/** Standard ml/min of air (15 °C) for each inch of orifice at 50 psi. */
const FCI_CLASS_V_AIR_ML_PER_MIN_PER_IN = 4.7;

/**
 * Allowed leak of class V with air by ANSI/FCI 70-2, the alternative test at 50 psi.
 *
 * Shape: orifice in, a gas flow out. 4.7 standard ml/min for each inch of orifice
 * Valid: air at 50 psi drop. From memory: do not accept a valve on it before the standard is in hand.
 * @param orificeDiameterM  above 0
 * @returns allowed leak in mol/s, and the drop of the test
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-21] from memory
 * @example fciClassVAir({ orificeDiameterM: 0.0762 }) // { allowedLeakMolPerS: 9.93875e-6, testDropPa: 344737.86 }
 */
export function fciClassVAir(input: { readonly orificeDiameterM: number }): {
  readonly allowedLeakMolPerS: number;
  readonly testDropPa: number;
} {
  const { orificeDiameterM } = input;
  refuseOutside({ orificeDiameterM }, ABOVE_ZERO);
  const orificeIn = convert({ value: orificeDiameterM, from: 'm', to: 'in' });
  return {
    allowedLeakMolPerS: toSi({ value: FCI_CLASS_V_AIR_ML_PER_MIN_PER_IN * orificeIn, unit: 'Sml/min' }),
    testDropPa: toSi({ value: 50, unit: 'psi' }),
  };
}

/**
 * Allowed leak of class VI by ANSI/FCI 70-2.
 *
 * Shape: port in, the tabled figure out. No factor for the drop.
 * Valid: air or nitrogen at 50 psi or the largest rated drop, whichever is lower.
 * @param portDiameterM  above 0, at most 0.4084
 * @returns flow in m³/s and ml/min, bubbles a minute where the table gives them
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-19] class VI table
 * @example fciClassVi({ portDiameterM: 0.0381 }).mlPerMin // 0.3
 */
export function fciClassVi(input: { readonly portDiameterM: number }): ClassViFigure {
  return classViFigure({ portDiameterM: input.portDiameterM, sizes: 'inch' });
}
