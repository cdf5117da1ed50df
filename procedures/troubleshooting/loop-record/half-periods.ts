import { spreadOf } from './samples.ts';

/** From one crossing of the mean to the next, at times between the samples. */
export interface HalfPeriod {
  readonly fromAt: number;
  readonly toAt: number;
  /** Place within the half period from 0 to 1, and the value there. */
  readonly points: readonly { readonly at: number; readonly value: number }[];
}

/** A crossing counts once the signal has gone so far beyond, in standard deviations: ripples are none. Judgement. */
const BEYOND_SIGMA = 0.3;

/** Where a signal about zero crosses it, as sample numbers with a fraction. */
export function crossingsOf(values: readonly number[]): readonly number[] {
  const beyond = BEYOND_SIGMA * spreadOf(values);
  const found: number[] = [];
  let side = 0;
  let last: number | null = null;
  for (let at = 1; at < values.length; at++) {
    const [before, now] = [values[at - 1] ?? 0, values[at] ?? 0];
    if (before <= 0 !== now <= 0) last = at - 1 + Math.abs(before) / (Math.abs(before) + Math.abs(now) || 1);
    const on = now > beyond ? 1 : now < -beyond ? -1 : side;
    if (side !== 0 && on !== side && last !== null) found.push(last);
    side = on;
  }
  return found;
}

/** The whole half periods of a signal about zero. */
export function halfPeriodsOf(values: readonly number[]): readonly HalfPeriod[] {
  const crossings = crossingsOf(values);
  return crossings.slice(1).map((toAt, n) => {
    const fromAt = crossings[n] ?? 0;
    const points: { at: number; value: number }[] = [];
    for (let at = Math.ceil(fromAt); at <= Math.floor(toAt); at++)
      points.push({ at: (at - fromAt) / (toAt - fromAt), value: values[at] ?? 0 });
    return { fromAt, toAt, points };
  });
}

export interface Oscillation {
  readonly halfPeriods: number;
  /** In samples. */
  readonly periodSamples: number;
  /** A third of the mean period over its standard deviation: above 1 it is regular. */
  readonly regularity: number;
}

/**
 * How regular a swing is, by the spread of its periods.
 * @source Thornhill, Huang and Zhang, Journal of Process Control 13 (2003) 91: r = mean / (3 sigma), regular above 1 (from memory)
 */
export function oscillationOf(values: readonly number[]): Oscillation {
  const crossings = crossingsOf(values);
  const periods = crossings.slice(2).map((to, n) => to - (crossings[n] ?? 0));
  const mean = periods.reduce((sum, one) => sum + one, 0) / Math.max(1, periods.length);
  const sigma = spreadOf(periods);
  const regularity = periods.length < 2 ? 0 : sigma > 0 ? mean / (3 * sigma) : Number.MAX_SAFE_INTEGER;
  return { halfPeriods: Math.max(0, crossings.length - 1), periodSamples: mean, regularity };
}

/** Sum of squares that is left when a shape is scaled as well as may be. */
export function leftBeside(half: HalfPeriod, shape: (at: number) => number): number {
  let [both, own, all] = [0, 0, 0];
  for (const { at, value } of half.points) {
    const of = shape(at);
    both += value * of;
    own += of * of;
    all += value * value;
  }
  return Math.max(0, all - (own > 0 ? (both * both) / own : 0));
}

/** A half period with fewer samples has no shape: judgement. */
const POINTS_LEAST = 5;

export function withShape(halves: readonly HalfPeriod[]): readonly HalfPeriod[] {
  return halves.filter(({ points }) => points.length >= POINTS_LEAST);
}
