import { CalcError } from './calc-error.ts';
import { ABOVE_ZERO, ANY_NUMBER, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { normalBelow } from './probability.ts';

export type Verdict = 'inside' | 'outside' | 'too close';

export interface GuardedVerdict {
  readonly verdict: Verdict;
  /** Largest size of a value that is accepted: limit minus uncertainty; below 0 the gauge cannot accept anything. */
  readonly acceptanceLimit: number;
  /** Smallest size of a value that is rejected: limit plus uncertainty. */
  readonly rejectionLimit: number;
  /** Probability that the true value lies beyond the limit although this value is accepted as it stands. */
  readonly wrongAcceptChance: number;
}

/**
 * Whether a value lies within a limit, as far as its uncertainty lets anyone say.
 *
 * Shape: three numbers of one unit in. inside: |value| + U at most the limit; outside: |value| − U above the limit;
 *   between them too close to call
 * Valid: limits −L and +L around 0; normal distribution with U at about 95 % (two standard uncertainties). The guard
 *   is taken off the limit once, not off limit and reading both.
 * @param value        error, shift or leak as measured; any number
 * @param limit        largest allowed size; 0 or more
 * @param uncertainty  expanded, about 95 %; 0 or more
 * @returns verdict, the two decision limits and the chance of a wrong accept from 0 to 1
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-08] guarded acceptance and guarded rejection
 * @example guardedVerdict({ value: 0.9, limit: 1, uncertainty: 0.12 })
 *   // { verdict: 'too close', acceptanceLimit: 0.88, rejectionLimit: 1.12, wrongAcceptChance: 0.04779 }
 */
export function guardedVerdict(input: {
  readonly value: number;
  readonly limit: number;
  readonly uncertainty: number;
}): GuardedVerdict {
  const { value, limit, uncertainty } = input;
  refuseOutside({ value }, ANY_NUMBER);
  refuseOutside({ limit, uncertainty }, ZERO_OR_MORE);
  const size = Math.abs(value);
  // Decimal readings on the limit must not turn on the last bit of their binary form.
  const hair = 1e-12 * Math.max(limit, uncertainty, size);
  const inside = size + uncertainty <= limit + hair;
  const outside = size - uncertainty > limit + hair;
  return {
    verdict: inside ? 'inside' : outside ? 'outside' : 'too close',
    acceptanceLimit: limit - uncertainty,
    rejectionLimit: limit + uncertainty,
    wrongAcceptChance: beyond({ size, limit, standard: uncertainty / 2 }),
  };
}

function beyond({ size, limit, standard }: { size: number; limit: number; standard: number }): number {
  if (standard < 1e-15) return size > limit ? 1 : 0;
  return normalBelow(bounded((size - limit) / standard)) + normalBelow(bounded((-limit - size) / standard));
}

export interface ConformanceInput {
  readonly estimate: number;
  readonly standardUncertainty: number;
  /** Blank: no limit on that side; at least one is given. */
  readonly lowerLimit?: number | null;
  readonly upperLimit?: number | null;
}

/**
 * Probability that the true value lies within its limits.
 *
 * Shape: estimate, standard uncertainty and one or two limits of one unit in, a probability out.
 * Valid: normal distribution.
 * @param estimate             as measured; any number
 * @param standardUncertainty  one standard deviation; above 0
 * @param lowerLimit           blank: none
 * @param upperLimit           blank: none; above lowerLimit
 * @returns probability from 0 to 1
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-003 if there is no limit or they do not rise
 * @source [S-08] clause 7
 * @example conformanceProbability({ estimate: 13.6, standardUncertainty: 1.8, lowerLimit: 12.5, upperLimit: 16.3 }) // 0.66263
 */
export function conformanceProbability(input: ConformanceInput): number {
  const { estimate, standardUncertainty } = input;
  refuseOutside({ estimate }, ANY_NUMBER);
  refuseOutside({ standardUncertainty }, ABOVE_ZERO);
  const { lower, upper } = limitsOf(input);
  return (
    normalBelow(bounded((upper - estimate) / standardUncertainty)) -
    normalBelow(bounded((lower - estimate) / standardUncertainty))
  );
}

/**
 * The two limits with infinity for a side that has none.
 *
 * Shape: one or two limits in, both sides out.
 * @param lowerLimit  blank: none
 * @param upperLimit  blank: none; above lowerLimit
 * @returns lower and upper
 * @throws CalcError CALC-003 if there is no limit or they do not rise
 * @source none: a rule of this code
 * @example limitsOf({ lowerLimit: -1, upperLimit: 1 }) // { lower: -1, upper: 1 }
 */
export function limitsOf(input: {
  readonly lowerLimit?: number | null;
  readonly upperLimit?: number | null;
}): { readonly lower: number; readonly upper: number } {
  const { lowerLimit = null, upperLimit = null } = input;
  if (lowerLimit !== null) refuseOutside({ lowerLimit }, ANY_NUMBER);
  if (upperLimit !== null) refuseOutside({ upperLimit }, ANY_NUMBER);
  const lower = lowerLimit ?? Number.NEGATIVE_INFINITY;
  const upper = upperLimit ?? Number.POSITIVE_INFINITY;
  if ((lowerLimit === null && upperLimit === null) || upper <= lower) {
    throw new CalcError({
      code: 'CALC-003',
      name: 'upperLimit',
      value: upperLimit,
      range: 'at least one limit, and the upper above the lower',
      unit: '',
    });
  }
  return { lower, upper };
}

/** Infinite and far values are cut where the normal distribution has long since ended. */
function bounded(z: number): number {
  return Math.min(1e6, Math.max(-1e6, z));
}
