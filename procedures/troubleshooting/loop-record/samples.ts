/** One row of a record of the loop. Output and position in percent; process value and set point in whatever unit they came. */
export interface LoopSample {
  readonly timeS: number;
  readonly outputPercent: number;
  readonly process: number;
  /** Null where the record has no such column. */
  readonly positionPercent: number | null;
  readonly setPoint: number | null;
}

/** Less a straight line through all of it: a slow drift is no swing. */
export function withoutDrift(values: readonly number[]): readonly number[] {
  const count = values.length;
  const middle = (count - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, count);
  let [up, across] = [0, 0];
  values.forEach((value, at) => {
    up += (at - middle) * (value - mean);
    across += (at - middle) ** 2;
  });
  const slope = across > 0 ? up / across : 0;
  return values.map((value, at) => value - mean - slope * (at - middle));
}

/** Standard deviation of all of them. */
export function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / Math.max(1, values.length));
}

/** Highest less lowest. */
export function reachOf(values: readonly number[]): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high > low ? high - low : 0;
}
