import { refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { type CurvePoint, linearity } from './linearity.ts';

export interface ZeroAndSpan {
  /** How far the line lies off at the low end of the signal, in percent of travel. */
  readonly zeroErrorPercent: number;
  /** How much longer its stroke is than it should be, in percent of travel; negative: too short. */
  readonly spanErrorPercent: number;
  /** What neither of the two cures: the largest distance of a point from that line. */
  readonly terminalPercent: number;
  /** Points that the line rests on: those at a stop or on the seat are left out. */
  readonly pointsUsed: number;
}

/**
 * Zero and span of a stroke apart from each other, and what is left when both are right.
 *
 * Shape: points of an average curve in percent in; error of the line through its outermost free points at the low end
 *   of the signal, error of its length, and the largest distance from it out.
 * Valid: a point within `heldPercent` of an end of the travel may be held there by seat or stop and says nothing of the
 *   line: it is left out while three others are there. A line drawn through such a point would call a valve with its
 *   zero off one with its span off.
 * @param points       at three inputs or more; input and output in percent of span
 * @param reverse      the output falls as the input rises
 * @param heldPercent  how near an end counts as held: what the indicator cannot tell; 0 or more
 * @returns errors of zero and span with their sign, terminal-based linearity, and how many points it rests on
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-004 if fewer than three inputs differ
 * @source [S-04] terminal-based line; that zero and span are its two ends follows by geometry
 * @example zeroAndSpan({ points: [{ inputPercent: 0, outputPercent: 0 }, { inputPercent: 25, outputPercent: 22 },
 *   { inputPercent: 50, outputPercent: 47 }, { inputPercent: 75, outputPercent: 72 },
 *   { inputPercent: 100, outputPercent: 97 }], reverse: false, heldPercent: 0.5 })
 *   // { zeroErrorPercent: -3, spanErrorPercent: 0, terminalPercent: 0, pointsUsed: 4 }
 */
export function zeroAndSpan(input: {
  readonly points: readonly CurvePoint[];
  readonly reverse: boolean;
  readonly heldPercent: number;
}): ZeroAndSpan {
  const { points, reverse, heldPercent } = input;
  refuseOutside({ heldPercent }, ZERO_OR_MORE);
  const sorted = [...points].sort((a, b) => a.inputPercent - b.inputPercent);
  const free = sorted.filter(
    ({ outputPercent }) => outputPercent > heldPercent && outputPercent < 100 - heldPercent,
  );
  const used = free.length < 3 ? sorted : free;
  // Refuses a curve of fewer than three inputs before any of them is taken.
  const { terminalPercent } = linearity(used);
  const [first, last] = [used[0], used.at(-1)] as [CurvePoint, CurvePoint];
  const slope = (last.outputPercent - first.outputPercent) / (last.inputPercent - first.inputPercent);
  const atLowEnd = first.outputPercent - slope * first.inputPercent;
  return {
    zeroErrorPercent: atLowEnd - (reverse ? 100 : 0),
    spanErrorPercent: 100 * (reverse ? -slope : slope) - 100,
    terminalPercent,
    pointsUsed: used.length,
  };
}
