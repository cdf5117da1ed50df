import { ABOVE_ZERO, ANY_NUMBER, oneOf, refuseCount, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { integrate, logGamma } from './probability.ts';

/** What a stated half width or uncertainty is divided by to make a standard uncertainty. */
export const DIVISORS = {
  rectangular: Math.sqrt(3),
  triangular: Math.sqrt(6),
  'U-shaped': Math.SQRT2,
  'normal, k = 2': 2,
  'normal, k = 1': 1,
} as const;

export type Distribution = keyof typeof DIVISORS;

/**
 * Standard uncertainty of one influence.
 *
 * Shape: a half width (or U, or u) and its distribution in, one number of the same unit out.
 * Valid: rectangular, triangular and U-shaped take the half width; `normal, k = 2` an expanded uncertainty from a
 *   certificate; `normal, k = 1` a standard one. A digital step d has the half width d/2.
 * @param size          0 or more
 * @param distribution  one of the list
 * @returns standard uncertainty in the unit of size
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the distribution is unknown
 * @source [S-09] divisors of the usual distributions
 * @example standardUncertainty({ size: 1, distribution: 'rectangular' }) // 0.5773503
 */
export function standardUncertainty(input: {
  readonly size: number;
  readonly distribution: Distribution;
}): number {
  const choices = Object.keys(DIVISORS) as Distribution[];
  refuseOutside({ size: input.size }, ZERO_OR_MORE);
  return input.size / DIVISORS[oneOf({ name: 'distribution', value: input.distribution, choices })];
}

export interface Influence {
  readonly name: string;
  readonly size: number;
  readonly distribution: Distribution;
  /** Change of the result for one unit of the influence; 1 where left out. */
  readonly sensitivity?: number;
  /** Blank: known so well that it does not count. */
  readonly degreesOfFreedom?: number | null;
}

export interface UncertaintyBudget {
  readonly parts: readonly {
    readonly name: string;
    readonly standard: number;
    readonly sharePercent: number;
  }[];
  readonly combined: number;
  /** Null: infinitely many. */
  readonly degreesOfFreedom: number | null;
  readonly coverageFactor: number;
  readonly expanded: number;
}

/**
 * Uncertainty budget: the parts, the combined and the expanded uncertainty.
 *
 * Shape: a list of independent influences in. u = √Σ(c · u)²; U = k · u
 * Valid: independent influences of one unit after their sensitivities. With few degrees of freedom in a part that
 *   counts, k is larger than 2 (Welch-Satterthwaite).
 * @param influences      each with size and distribution; sensitivity and degrees of freedom where they matter
 * @param coverageFactor  blank: 2 where degrees of freedom are infinite, else from Student's distribution at 95.45 %
 * @returns each part with its share of the variance, combined u, degrees of freedom, k and U
 * @throws CalcError CALC-001, CALC-002 or CALC-005 by the name of the input; CALC-004 if the list is empty
 * @source [S-09] law of propagation and effective degrees of freedom
 * @example uncertaintyBudget({ influences: [
 *   { name: 'gauge', size: 0.075, distribution: 'rectangular' },
 *   { name: 'certificate', size: 0.03, distribution: 'normal, k = 2' },
 *   { name: 'reading', size: 0.05, distribution: 'rectangular' },
 * ] }).expanded // 0.1083205
 */
export function uncertaintyBudget(input: {
  readonly influences: readonly Influence[];
  readonly coverageFactor?: number | null;
}): UncertaintyBudget {
  if (input.influences.length === 0) {
    throw refuseCount({ name: 'influences', value: 0, range: 'at least 1 influence' });
  }
  const standards = input.influences.map((influence) => {
    const { sensitivity = 1, degreesOfFreedom = null } = influence;
    refuseOutside({ sensitivity }, ANY_NUMBER);
    if (degreesOfFreedom !== null) refuseOutside({ degreesOfFreedom }, { atLeast: 1 });
    return {
      name: influence.name,
      standard: Math.abs(sensitivity) * standardUncertainty(influence),
      degreesOfFreedom,
    };
  });
  const combined = Math.hypot(...standards.map(({ standard }) => standard));
  const degreesOfFreedom = effectiveDegrees({ standards, combined });
  const coverageFactor =
    input.coverageFactor ?? (degreesOfFreedom === null ? 2 : coverageFactorFor({ degreesOfFreedom }));
  refuseOutside({ coverageFactor }, ABOVE_ZERO);
  return {
    parts: standards.map(({ name, standard }) => ({
      name,
      standard,
      sharePercent: combined === 0 ? 0 : 100 * (standard / combined) ** 2,
    })),
    combined,
    degreesOfFreedom,
    coverageFactor,
    expanded: coverageFactor * combined,
  };
}

/**
 * Coverage factor for 95.45 % with few degrees of freedom.
 *
 * Shape: one number in, one out; the value that Student's distribution leaves 2.275 % above.
 * @param degreesOfFreedom  1 or more; from 100 000 on the factor is 2
 * @returns coverage factor, 2 or more
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-09] Student's distribution at 95.45 %, computed
 * @example coverageFactorFor({ degreesOfFreedom: 10 }) // 2.284
 */
export function coverageFactorFor({ degreesOfFreedom }: { readonly degreesOfFreedom: number }): number {
  refuseOutside({ degreesOfFreedom }, { atLeast: 1 });
  if (degreesOfFreedom >= 1e5) return 2;
  const scale = Math.exp(logGamma((degreesOfFreedom + 1) / 2) - logGamma(degreesOfFreedom / 2));
  const top = scale / Math.sqrt(Math.PI * degreesOfFreedom);
  const density = (t: number) => top * (1 + (t * t) / degreesOfFreedom) ** (-(degreesOfFreedom + 1) / 2);
  let [low, high] = [1.9, 20];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (2 * integrate({ of: density, from: 0, to: middle, parts: 40 }) < WITHIN_TWO_SIGMA) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of a normal distribution within two standard deviations. */
const WITHIN_TWO_SIGMA = 0.9544997361;

function effectiveDegrees(of: {
  readonly standards: readonly { readonly standard: number; readonly degreesOfFreedom: number | null }[];
  readonly combined: number;
}): number | null {
  if (of.combined === 0) return null;
  const sum = of.standards.reduce(
    (total, { standard, degreesOfFreedom }) =>
      degreesOfFreedom === null ? total : total + (standard / of.combined) ** 4 / degreesOfFreedom,
    0,
  );
  return sum < 1e-12 ? null : 1 / sum;
}
