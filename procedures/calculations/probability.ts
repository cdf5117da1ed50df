import { ANY_NUMBER, refuseOutside } from './checks.ts';

/**
 * Share of a standard normal distribution that lies below a value.
 *
 * Shape: one number in, one out. Series for small, continued fraction for large values; right to about 1e-14.
 * @param z  value over standard uncertainty; any number
 * @returns probability from 0 to 1
 * @throws CalcError CALC-001 if z is no number
 * @source [S-08] the distribution that conformance probability is built on
 * @example normalBelow(1.96) // 0.9750021
 * @example normalBelow(-2) // 0.02275013
 */
export function normalBelow(z: number): number {
  // Asked a hundred thousand times for one valve: what is plainly a number is not looked at by name.
  if (!(Math.abs(z) < 1e9)) refuseOutside({ z }, ANY_NUMBER);
  return z < 0 ? upperTail(-z) : 1 - upperTail(z);
}

/** Height of the standard normal distribution. */
function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

function upperTail(z: number): number {
  if (z > 38) return 0;
  return z < 3 ? 0.5 - normalDensity(z) * oddSeries(z) : normalDensity(z) / tailFraction(z);
}

/** z + z³/3 + z⁵/(3·5) + …: the area from 0 to z over the density. */
function oddSeries(z: number): number {
  let term = z;
  let sum = z;
  for (let n = 3; term > sum * 1e-17; n += 2) {
    term *= (z * z) / n;
    sum += term;
  }
  return sum;
}

/** z + 1/(z + 2/(z + 3/(z + …))): the density over the tail. */
function tailFraction(z: number): number {
  let rest = z;
  for (let n = 120; n > 0; n--) rest = z + n / rest;
  return rest;
}

/**
 * Natural logarithm of the gamma function.
 *
 * Shape: one number in, one out. Stirling's series after shifting the argument above 12.
 * @param x  above 0
 * @returns ln Γ(x)
 * @throws CalcError CALC-001 or CALC-002 if x is not above 0
 * @source [S-08] needed for the gamma prior of the worked example
 * @example logGamma(5) // 3.178053830
 */
export function logGamma(x: number): number {
  refuseOutside({ x }, { above: 0 });
  let shifted = x;
  let product = 0;
  for (; shifted < 12; shifted++) product += Math.log(shifted);
  const inverse = 1 / (shifted * shifted);
  const series = (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse / 1680))) / shifted;
  return (shifted - 0.5) * Math.log(shifted) - shifted + Math.log(2 * Math.PI) / 2 + series - product;
}

/**
 * Area under a curve between two ends.
 *
 * Shape: a function and two ends in, one number out. Composite Gauss-Legendre rule with five points a part.
 * @param of     smooth inside the ends
 * @param from   lower end
 * @param to     upper end
 * @param parts  how many parts of equal length; 200 where left out
 * @returns area
 * @throws CalcError CALC-001 if an end is no number
 * @source [S-08] needed for the risks of a decision
 * @example integrate({ of: (x) => x * x, from: 0, to: 3 }) // 9
 */
export function integrate(input: {
  readonly of: (x: number) => number;
  readonly from: number;
  readonly to: number;
  readonly parts?: number;
}): number {
  const { of, from, to, parts = 200 } = input;
  refuseOutside({ from, to }, ANY_NUMBER);
  const half = (to - from) / parts / 2;
  let sum = 0;
  for (let part = 0; part < parts; part++) {
    const middle = from + (2 * part + 1) * half;
    for (const [place, weight] of GAUSS_POINTS) sum += weight * of(middle + half * place);
  }
  return sum * half;
}

const INNER = Math.sqrt(5 - 2 * Math.sqrt(10 / 7)) / 3;
const OUTER = Math.sqrt(5 + 2 * Math.sqrt(10 / 7)) / 3;
const INNER_WEIGHT = (322 + 13 * Math.sqrt(70)) / 900;
const OUTER_WEIGHT = (322 - 13 * Math.sqrt(70)) / 900;

/** Places and weights of the five-point rule on −1 to 1. */
const GAUSS_POINTS: readonly (readonly [number, number])[] = [
  [0, 128 / 225],
  [-INNER, INNER_WEIGHT],
  [INNER, INNER_WEIGHT],
  [-OUTER, OUTER_WEIGHT],
  [OUTER, OUTER_WEIGHT],
];
