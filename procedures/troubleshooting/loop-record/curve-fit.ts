import { type HalfPeriod, halfPeriodsOf, leftBeside, withShape } from './half-periods.ts';

/** Peaks of the triangle that are tried, as shares of the half period. */
const PEAKS: readonly number[] = Array.from({ length: 49 }, (_, n) => (n + 1) / 50);

/**
 * Sine or triangle: the shape of the signal behind the first integral of the loop, half period by half period, by least
 * squares. A sticking valve makes triangles there, a disturbance or a tight controller sines.
 *
 * @param values  controller output of a loop that settles by itself, process value of one that integrates; about zero
 * @returns MSE_sine / (MSE_sine + MSE_triangle), from 0 to 1; null without a half period
 * @source He, Wang, Pottmann and Qin, Industrial and Engineering Chemistry Research 46 (2007) 4549: at least 0.6 sticks,
 * at most 0.4 does not, between them it is open
 * @example curveFitIndex([0, 1, 2, 3, 2, 1, 0, -1, -2, -3, -2, -1, 0, 1, 2, 3, 2, 1, 0, -1, -2]) // near 1: triangles
 */
export function curveFitIndex(values: readonly number[]): number | null {
  let [sine, triangle] = [0, 0];
  for (const half of withShape(halfPeriodsOf(values))) {
    sine += leftBeside(half, (at) => Math.sin(Math.PI * at));
    triangle += besideTriangle(half);
  }
  return sine + triangle > 0 ? sine / (sine + triangle) : null;
}

/** What the best triangle leaves of a half period. */
export function besideTriangle(half: HalfPeriod): number {
  return Math.min(...PEAKS.map((peak) => leftBeside(half, (at) => triangleAt(at, peak))));
}

/** Up in a straight line to its peak, down in another. */
function triangleAt(at: number, peak: number): number {
  return at < peak ? at / peak : (1 - at) / (1 - peak);
}
