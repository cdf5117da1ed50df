import { refuseCount } from './checks.ts';
import { least, most } from './numbers.ts';

export interface CurvePoint {
  readonly inputPercent: number;
  readonly outputPercent: number;
}

export interface Linearity {
  /** Against the line whose largest deviation is smallest. Not the least-squares line. */
  readonly independentPercent: number;
  /** Against the line through the curve's two end points. */
  readonly terminalPercent: number;
  /** Against the line through the curve's first point whose largest deviation is smallest. */
  readonly zeroBasedPercent: number;
}

/**
 * How far a curve departs from a straight line, in the three ways that the standards know.
 *
 * Shape: points of an average curve in, three largest deviations out. Independent and zero-based are true minimax.
 * Valid: the average of the up and down curves; points held by a stop or the seat left out.
 * @param points  at least three, at three different inputs; input and output in percent of span
 * @returns largest deviation in percent of output span from each of the three lines
 * @throws CalcError CALC-004 if fewer than three inputs differ, or there are more than 400 points
 * @source [S-04] independent, terminal-based and zero-based linearity
 * @example linearity([{ inputPercent: 0, outputPercent: 0 }, { inputPercent: 25, outputPercent: 25.3 },
 *   { inputPercent: 50, outputPercent: 50.45 }, { inputPercent: 75, outputPercent: 75.4 },
 *   { inputPercent: 100, outputPercent: 100 }])
 *   // { independentPercent: 0.225, terminalPercent: 0.45, zeroBasedPercent: 0.3 }
 */
export function linearity(points: readonly CurvePoint[]): Linearity {
  const sorted = [...points].sort((a, b) => a.inputPercent - b.inputPercent);
  const inputs = new Set(sorted.map(({ inputPercent }) => inputPercent));
  const [first, last] = [sorted[0], sorted.at(-1)];
  if (inputs.size < 3 || points.length > MOST_POINTS || first === undefined || last === undefined) {
    throw refuseCount({
      name: 'points',
      value: inputs.size,
      range: `from 3 to ${MOST_POINTS} different inputs`,
    });
  }
  return {
    independentPercent: least(pairSlopes(sorted).map((slope) => halfWidth({ points: sorted, slope }))),
    terminalPercent: largestDeviation({ points: sorted, through: first, slope: slopeOf(first, last) }),
    zeroBasedPercent: zeroBased({ points: sorted, first }),
  };
}

/** The search looks at each pair of points, so the work grows with their cube. */
const MOST_POINTS = 400;

/** The narrowest strip around points has one edge through two of them, so its slope is among these. */
function pairSlopes(points: readonly CurvePoint[]): number[] {
  return points.flatMap((a, at) =>
    points
      .slice(at + 1)
      .filter((b) => b.inputPercent !== a.inputPercent)
      .map((b) => slopeOf(a, b)),
  );
}

function halfWidth({ points, slope }: { points: readonly CurvePoint[]; slope: number }): number {
  const rests = points.map(({ inputPercent, outputPercent }) => outputPercent - slope * inputPercent);
  return (most(rests) - least(rests)) / 2;
}

/** At the best slope two deviations are equal and opposite, or all but one point lies on the line. */
function zeroBased({ points, first }: { points: readonly CurvePoint[]; first: CurvePoint }): number {
  const away = points
    .map((point) => ({
      run: point.inputPercent - first.inputPercent,
      rise: point.outputPercent - first.outputPercent,
    }))
    .filter(({ run }) => run > 0);
  const slopes = away.flatMap((a, at) => away.slice(at).map((b) => (a.rise + b.rise) / (a.run + b.run)));
  return least(slopes.map((slope) => largestDeviation({ points, through: first, slope })));
}

function largestDeviation(line: {
  readonly points: readonly CurvePoint[];
  readonly through: CurvePoint;
  readonly slope: number;
}): number {
  const { points, through, slope } = line;
  return most(
    points.map(({ inputPercent, outputPercent }) =>
      Math.abs(outputPercent - through.outputPercent - slope * (inputPercent - through.inputPercent)),
    ),
  );
}

function slopeOf(a: CurvePoint, b: CurvePoint): number {
  return (b.outputPercent - a.outputPercent) / (b.inputPercent - a.inputPercent);
}
