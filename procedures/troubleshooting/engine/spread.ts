import { normalBelow } from '../../calculations/probability.ts';
import type { Piece } from '../cause.ts';
import type { Stretch } from '../check.ts';

/** A stretch narrower than this share of the scatter is a point. */
const POINT = 1e-6;

export interface Blurred {
  readonly low: number;
  readonly high: number;
  /** Scatter of the reading: process and gauge together; above 0. */
  readonly sigma: number;
}

/** Density at x of something even between two places, read with a normal scatter. */
export function densityAt(x: number, of: Blurred): number {
  const { low, high, sigma } = of;
  if (high - low < POINT * sigma) {
    const z = (x - (low + high) / 2) / sigma;
    return Math.exp((-z * z) / 2) / (sigma * Math.sqrt(2 * Math.PI));
  }
  return (below((x - low) / sigma) - below((x - high) / sigma)) / (high - low);
}

/** Share of the same that is read below x. */
function shareBelow(x: number, of: Blurred): number {
  const { low, high, sigma } = of;
  if (high - low < POINT * sigma) return below((x - (low + high) / 2) / sigma);
  const area = areaBelow((x - low) / sigma) - areaBelow((x - high) / sigma);
  return Math.min(1, Math.max(0, (area * sigma) / (high - low)));
}

/** Share of a piece that falls into a stretch of the axis. */
export function shareWithin(stretch: Stretch, of: Blurred): number {
  return Math.max(0, shareBelow(stretch[1], of) - shareBelow(stretch[0], of));
}

/** Density at x of several pieces; their shares need not add up to 1. */
export function densityOfPieces(
  x: number,
  of: { readonly pieces: readonly Piece[]; readonly sigma: number },
): number {
  let density = 0;
  for (const [share, low, high] of of.pieces) density += share * densityAt(x, { low, high, sigma: of.sigma });
  return density;
}

function below(z: number): number {
  if (z > 8) return 1;
  return z < -8 ? 0 : normalBelow(z);
}

/** Integral of the normal distribution up to z. */
function areaBelow(z: number): number {
  if (z > 8) return z;
  if (z < -8) return 0;
  return z * normalBelow(z) + Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}
