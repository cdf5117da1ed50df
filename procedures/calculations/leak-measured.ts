import { ABOVE_ZERO, oneOf, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { FCI_CAPACITY_SHARES } from './seat-leakage-fci.ts';
import { IEC_CAPACITY_SHARES } from './seat-leakage-iec.ts';

export type LeakStandard = 'ANSI/FCI 70-2' | 'IEC 60534-4';

export interface ClassReached {
  /** Limit of each class in the unit of the capacity, loosest first. */
  readonly limits: Readonly<Record<string, number>>;
  /** Tightest class whose limit is kept; null if not even the loosest. */
  readonly classReached: string | null;
}

/**
 * Tightest class by rated capacity that a measured leak keeps.
 *
 * Shape: standard, capacity and leak of one unit in, limits and a class out.
 * Valid: leak and capacity of the same fluid at the same drop. Classes V and VI have tests of their own.
 * @param standard       ANSI/FCI 70-2 (II, III, IV) or IEC 60534-4 (and IV-S1)
 * @param ratedCapacity  above 0
 * @param measuredLeak   0 or more
 * @returns limits by class, and the class reached
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the standard is unknown
 * @source [S-19] and [S-20] class tables
 * @example classReached({ standard: 'IEC 60534-4', ratedCapacity: 1964370, measuredLeak: 20 }).classReached // 'IV'
 */
export function classReached(input: {
  readonly standard: LeakStandard;
  readonly ratedCapacity: number;
  readonly measuredLeak: number;
}): ClassReached {
  const { ratedCapacity, measuredLeak } = input;
  refuseOutside({ ratedCapacity }, ABOVE_ZERO);
  refuseOutside({ measuredLeak }, ZERO_OR_MORE);
  const choices: readonly LeakStandard[] = ['ANSI/FCI 70-2', 'IEC 60534-4'];
  const standard = oneOf({ name: 'standard', value: input.standard, choices });
  const shares = standard === 'ANSI/FCI 70-2' ? FCI_CAPACITY_SHARES : IEC_CAPACITY_SHARES;
  const limits = Object.fromEntries(
    Object.entries(shares).map(([name, share]) => [name, share * ratedCapacity]),
  );
  const kept = Object.entries(limits).filter(([, limit]) => measuredLeak <= limit * (1 + 1e-12));
  const tightest = kept.sort(([, a], [, b]) => a - b)[0];
  return { limits, classReached: tightest?.[0] ?? null };
}

/**
 * Leak from a volume collected in a time.
 *
 * Shape: two numbers in, a flow out.
 * Valid: liquid in a measuring glass, or gas over water at the pressure and temperature of the room.
 * @param volumeM3  0 or more
 * @param elapsedS  above 0
 * @returns flow in m³/s
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source none: volume over time
 * @example collectedM3PerS({ volumeM3: 1.5e-5, elapsedS: 300 }) // 5e-8
 */
export function collectedM3PerS(input: { readonly volumeM3: number; readonly elapsedS: number }): number {
  const { volumeM3, elapsedS } = input;
  refuseOutside({ volumeM3 }, ZERO_OR_MORE);
  refuseOutside({ elapsedS }, ABOVE_ZERO);
  return volumeM3 / elapsedS;
}

/**
 * Gas flow from bubbles of a known size.
 *
 * Shape: diameter and count in, a flow out. π/6 · d³ each
 * Valid: bubbles that are counted under water; the class VI tube gives about 0.15 ml each, which the table rounds. A
 *   film of soap shows where, not how much.
 * @param bubbleDiameterM  above 0
 * @param bubblesPerMin    0 or more
 * @returns volume of one bubble and flow in m³/s
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source none: volume of a sphere
 * @example bubbleFlow({ bubbleDiameterM: 0.0066, bubblesPerMin: 10 }) // { bubbleM3: 1.505326e-7, flowM3PerS: 2.508876e-8 }
 */
export function bubbleFlow(input: { readonly bubbleDiameterM: number; readonly bubblesPerMin: number }): {
  readonly bubbleM3: number;
  readonly flowM3PerS: number;
} {
  const { bubbleDiameterM, bubblesPerMin } = input;
  refuseOutside({ bubbleDiameterM }, ABOVE_ZERO);
  refuseOutside({ bubblesPerMin }, ZERO_OR_MORE);
  const bubbleM3 = (Math.PI / 6) * bubbleDiameterM ** 3;
  return { bubbleM3, flowM3PerS: (bubbleM3 * bubblesPerMin) / 60 };
}

/**
 * A variable-area meter read at another pressure or temperature than its scale is made for.
 *
 * Shape: reading and two states in, a corrected flow out. q · √(p/p(scale) · T(scale)/T)
 * Valid: scale in volume at a reference state, same gas, turbulent past the float.
 * @param read               scale reading, in any unit of gas flow; 0 or more
 * @param pressurePaAbs      at the meter; above 0
 * @param temperatureK       at the meter; above 0
 * @param scalePressurePaAbs above 0
 * @param scaleTemperatureK  above 0
 * @returns factor, and flow in the unit of the reading at the scale's reference state
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-22] drag on the float
 * @example rotameterFlow({ read: 10, pressurePaAbs: 202650, temperatureK: 293.15, scalePressurePaAbs: 101325,
 *   scaleTemperatureK: 293.15 }) // { factor: 1.414214, flow: 14.14214 }
 */
export function rotameterFlow(input: {
  readonly read: number;
  readonly pressurePaAbs: number;
  readonly temperatureK: number;
  readonly scalePressurePaAbs: number;
  readonly scaleTemperatureK: number;
}): { readonly factor: number; readonly flow: number } {
  const { read, pressurePaAbs, temperatureK, scalePressurePaAbs, scaleTemperatureK } = input;
  refuseOutside({ read }, ZERO_OR_MORE);
  refuseOutside({ pressurePaAbs, temperatureK, scalePressurePaAbs, scaleTemperatureK }, ABOVE_ZERO);
  const factor = Math.sqrt((pressurePaAbs / scalePressurePaAbs) * (scaleTemperatureK / temperatureK));
  return { factor, flow: read * factor };
}
