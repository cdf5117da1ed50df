import { spreadOf } from './samples.ts';

/**
 * Output against position: the share of the time in which the output moves and the stem does not. Both are coded as
 * rising, falling or steady; what moves by more than its own standard deviation over the interval is not steady.
 *
 * @param of.every  over how many samples a movement is taken: a twentieth of a period, so that noise is none
 * @returns share of (output moves, stem steady) among all that is not (both steady), from 0 to 1; null where neither moves
 * @source Yamashita, Control Engineering Practice 14 (2006) 503: above 0.25 it sticks
 * @example shapeOnPosition({ output: [0, 1, 2, 3, 4, 3, 2, 1, 0], position: [0, 1, 2, 3, 4, 3, 2, 1, 0], every: 1 }) // 0
 */
export function shapeOnPosition(of: {
  readonly output: readonly number[];
  readonly position: readonly number[];
  readonly every: number;
}): number | null {
  const [output, position] = [of.output, of.position].map((values) => codes(values, of.every));
  let [moving, steady, all] = [0, 0, 0];
  output?.forEach((code, at) => {
    const stem = position?.[at] ?? 0;
    all += 1;
    if (code === 0 && stem === 0) steady += 1;
    if (code !== 0 && stem === 0) moving += 1;
  });
  return all > steady ? moving / (all - steady) : null;
}

function codes(values: readonly number[], every: number): readonly number[] {
  const moves = values.slice(every).map((value, at) => value - (values[at] ?? 0));
  const mean = moves.reduce((sum, move) => sum + move, 0) / Math.max(1, moves.length);
  const sigma = spreadOf(moves);
  return moves.map((move) => (move - mean > sigma ? 1 : move - mean < -sigma ? -1 : 0));
}
