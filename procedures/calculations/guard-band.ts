import { oneOf, refuseOutside } from './checks.ts';

export type GuardBandMethod = 'root sum of squares' | 'one U' | 'RP-10' | 'managed 2 %';

/**
 * How much of a tolerance is left for acceptance, by the usual guard bands.
 *
 * Shape: method and uncertainty ratio in, a factor on the tolerance out.
 *   √(1 − 1/TUR²); 1 − 1/TUR; 1.25 − 1/TUR; 1 − (1.04 − e^(0.38 ln TUR − 0.54))/TUR
 * Valid: U at k = 2. The factor is 1 at most: a good instrument does not widen the tolerance. The rule that was used
 *   is named with the verdict.
 * @param method  which guard band
 * @param ratio   test uncertainty ratio; at least 1
 * @returns acceptance limit over tolerance, from 0 to 1
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the method is unknown
 * @source [S-11] multipliers as tested there
 * @example guardBandFactor({ method: 'root sum of squares', ratio: 2.5 }) // 0.9165151
 * @example guardBandFactor({ method: 'managed 2 %', ratio: 2 }) // 0.859177
 */
export function guardBandFactor(input: { readonly method: GuardBandMethod; readonly ratio: number }): number {
  const { ratio } = input;
  refuseOutside({ ratio }, { atLeast: 1 });
  const choices: readonly GuardBandMethod[] = ['root sum of squares', 'one U', 'RP-10', 'managed 2 %'];
  const method = oneOf({ name: 'method', value: input.method, choices });
  return Math.min(1, Math.max(0, FACTORS[method](ratio)));
}

const FACTORS: Readonly<Record<GuardBandMethod, (ratio: number) => number>> = {
  'root sum of squares': (ratio) => Math.sqrt(1 - 1 / ratio ** 2),
  'one U': (ratio) => 1 - 1 / ratio,
  'RP-10': (ratio) => 1.25 - 1 / ratio,
  'managed 2 %': (ratio) => 1 - (1.04 - Math.exp(0.38 * Math.log(ratio) - 0.54)) / ratio,
};
