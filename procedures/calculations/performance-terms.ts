import { ABOVE_ZERO, ANY_NUMBER, refuseOutside, ZERO_OR_MORE } from './checks.ts';

/**
 * Dead band: how far the input goes on after a reversal before the output moves.
 *
 * Shape: two inputs and the span of one unit in, percent out.
 * Valid: a slow test; it is percent of input span, while the other terms are percent of output span.
 * @param lastMovementUp     input at the last movement one way
 * @param firstMovementDown  input at the first movement the other way
 * @param inputSpan          above 0
 * @returns percent of input span, 0 or more
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-04] dead band
 * @example deadBandPercent({ lastMovementUp: 50.4, firstMovementDown: 49.85, inputSpan: 100 }) // 0.55
 */
export function deadBandPercent(input: {
  readonly lastMovementUp: number;
  readonly firstMovementDown: number;
  readonly inputSpan: number;
}): number {
  const { lastMovementUp, firstMovementDown, inputSpan } = input;
  refuseOutside({ lastMovementUp, firstMovementDown }, ANY_NUMBER);
  refuseOutside({ inputSpan }, ABOVE_ZERO);
  return (100 * Math.abs(lastMovementUp - firstMovementDown)) / inputSpan;
}

/**
 * Hysteresis by itself: hysteretic error less dead band.
 *
 * Shape: three numbers in, one out. hysteretic error − slope · dead band, never below 0
 * Valid: both at the same point. Up and down readings alone give only their sum.
 * @param hystereticErrorPercent  of output span; 0 or more
 * @param deadBandPercent         of input span; 0 or more
 * @param slope                   output percent for one input percent; above 0; 1 where left out
 * @returns percent of output span
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-04] hysteresis
 * @example hysteresisAlonePercent({ hystereticErrorPercent: 0.63, deadBandPercent: 0.2 }) // 0.43
 */
export function hysteresisAlonePercent(input: {
  readonly hystereticErrorPercent: number;
  readonly deadBandPercent: number;
  readonly slope?: number;
}): number {
  const { hystereticErrorPercent, deadBandPercent, slope = 1 } = input;
  refuseOutside({ hystereticErrorPercent, deadBandPercent }, ZERO_OR_MORE);
  refuseOutside({ slope }, ABOVE_ZERO);
  return Math.max(0, hystereticErrorPercent - slope * deadBandPercent);
}

/**
 * Resolution: the smallest step of the input that moved the output.
 *
 * Shape: a list of steps tried in, percent of span out.
 * Valid: steps in one direction, each from rest; a step that moved nothing bounds it from below.
 * @param steps      size of each step in the unit of inputSpan (above 0), and whether the output moved
 * @param inputSpan  above 0
 * @returns smallest step that moved, in percent of input span, and the largest that did not; null where there is none
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-04] resolution
 * @example resolution({ steps: [{ step: 0.02, moved: false }, { step: 0.05, moved: true }], inputSpan: 16 })
 *   // { smallestMovedPercent: 0.3125, largestUnmovedPercent: 0.125 }
 */
export function resolution(input: {
  readonly steps: readonly { readonly step: number; readonly moved: boolean }[];
  readonly inputSpan: number;
}): { readonly smallestMovedPercent: number | null; readonly largestUnmovedPercent: number | null } {
  const { steps, inputSpan } = input;
  refuseOutside({ inputSpan }, ABOVE_ZERO);
  for (const { step } of steps) refuseOutside({ step }, ABOVE_ZERO);
  const sizes = (moved: boolean) => steps.filter((tried) => tried.moved === moved).map(({ step }) => step);
  const moved = sizes(true).sort((a, b) => a - b)[0];
  const unmoved = sizes(false).sort((a, b) => b - a)[0];
  const percent = (step: number | undefined) => (step === undefined ? null : (100 * step) / inputSpan);
  return { smallestMovedPercent: percent(moved), largestUnmovedPercent: percent(unmoved) };
}

/**
 * Deviation of the stroke from the rated one.
 *
 * Shape: two lengths in, percent and a yes or no out. 100 · (actual − rated)/rated
 * Valid: the actual stroke must not be shorter than the rated one.
 * @param ratedTravelM   above 0
 * @param actualTravelM  as measured between the stops; above 0
 * @returns percent with sign, and whether the stroke reaches the rated one
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-12] rated-travel deviation
 * @example ratedTravelDeviation({ ratedTravelM: 0.038, actualTravelM: 0.0387 }) // { percent: 1.84211, reachesRated: true }
 */
export function ratedTravelDeviation(input: {
  readonly ratedTravelM: number;
  readonly actualTravelM: number;
}): {
  readonly percent: number;
  readonly reachesRated: boolean;
} {
  const { ratedTravelM, actualTravelM } = input;
  refuseOutside({ ratedTravelM, actualTravelM }, ABOVE_ZERO);
  const percent = (100 * (actualTravelM - ratedTravelM)) / ratedTravelM;
  return { percent, reachesRated: percent >= -1e-9 };
}
