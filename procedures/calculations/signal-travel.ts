import { ABOVE_ZERO, ANY_NUMBER, FRACTION, oneOf, refuseOutside, refuseUnlessRising } from './checks.ts';

export type AirAction = 'air-to-open' | 'air-to-close';
export const AIR_ACTIONS: readonly AirAction[] = ['air-to-open', 'air-to-close'];

/** A signal and the two ends of its range, all three in one unit: Pa for air, A for current. */
export interface SignalOnRange {
  readonly signal: number;
  readonly rangeLow: number;
  readonly rangeHigh: number;
}

export interface PercentOfRange {
  /** As read: may lie below 0 or above 100, and is what errors are worked out from. */
  readonly percent: number;
  /** For display, and for a valve that cannot move further. */
  readonly percentClamped: number;
}

/**
 * Where a signal stands on its range.
 *
 * Shape: three numbers and a flag in, two out. percent = 100 · (signal − low)/(high − low), from 100 down if reverse
 * Valid: linear signals with a live zero; 3-15 psi is not 20-100 kPa.
 * @param signal     as read; any number, in the unit of the range
 * @param rangeLow   signal at 0 %
 * @param rangeHigh  signal at 100 %; above rangeLow
 * @param reverse    true where a rising signal means less; left out: false
 * @returns raw and clamped percent
 * @throws CalcError CALC-001 if an input is no number; CALC-003 if the range does not rise
 * @source [S-02] the usual ranges; the arithmetic is linear
 * @example percentOfRange({ signal: 8.333333, rangeLow: 3, rangeHigh: 15 }).percent // 44.4444
 * @example percentOfRange({ signal: 3.8, rangeLow: 4, rangeHigh: 20 }) // { percent: -1.25, percentClamped: 0 }
 */
export function percentOfRange(input: SignalOnRange & { readonly reverse?: boolean }): PercentOfRange {
  const { signal, rangeLow, rangeHigh, reverse = false } = input;
  refuseOutside({ signal }, ANY_NUMBER);
  refuseUnlessRising({ rangeLow, rangeHigh });
  const forward = (100 * (signal - rangeLow)) / (rangeHigh - rangeLow);
  const percent = reverse ? 100 - forward : forward;
  return { percent, percentClamped: clampPercent(percent) };
}

/**
 * The signal that stands at a percent of its range: the inverse of percentOfRange.
 *
 * Shape: three numbers and a flag in, one out. signal = low + percent/100 · (high − low)
 * Valid: linear signals.
 * @param percent    wanted; any number
 * @param rangeLow   signal at 0 %
 * @param rangeHigh  signal at 100 %; above rangeLow
 * @param reverse    true where a rising signal means less; left out: false
 * @returns signal in the unit of the range
 * @throws CalcError CALC-001 if an input is no number; CALC-003 if the range does not rise
 * @source [S-02] the usual ranges; the arithmetic is linear
 * @example signalAtPercent({ percent: 50, rangeLow: 3, rangeHigh: 15 }) // 9
 */
export function signalAtPercent(input: {
  readonly percent: number;
  readonly rangeLow: number;
  readonly rangeHigh: number;
  readonly reverse?: boolean;
}): number {
  const { percent, rangeLow, rangeHigh, reverse = false } = input;
  refuseOutside({ percent }, ANY_NUMBER);
  refuseUnlessRising({ rangeLow, rangeHigh });
  const forward = reverse ? 100 - percent : percent;
  return rangeLow + (forward / 100) * (rangeHigh - rangeLow);
}

/**
 * What a linear converter puts out, for example current to air.
 *
 * Shape: five numbers in, one out; the same percent on both ranges.
 * Valid: linear converters; nothing is clamped.
 * @param signal   what goes in
 * @param inLow    input at 0 %
 * @param inHigh   input at 100 %; above inLow
 * @param outLow   output at 0 %
 * @param outHigh  output at 100 %; above outLow
 * @returns output, in the unit of outLow and outHigh
 * @throws CalcError CALC-001 if an input is no number; CALC-003 if a range does not rise
 * @source [S-02] the usual ranges; the arithmetic is linear
 * @example convertSignal({ signal: 10.4, inLow: 4, inHigh: 20, outLow: 3, outHigh: 15 }) // 7.8
 */
export function convertSignal(input: {
  readonly signal: number;
  readonly inLow: number;
  readonly inHigh: number;
  readonly outLow: number;
  readonly outHigh: number;
}): number {
  const { percent } = percentOfRange({
    signal: input.signal,
    rangeLow: input.inLow,
    rangeHigh: input.inHigh,
  });
  return signalAtPercent({ percent, rangeLow: input.outLow, rangeHigh: input.outHigh });
}

export interface ExpectedTravel {
  readonly signalPercent: number;
  /** As the signal asks: may lie outside 0 to 100. */
  readonly openPercent: number;
  readonly openPercentClamped: number;
  /** From the shut valve, clamped to the stroke. */
  readonly travelM: number;
}

/**
 * How far open a valve should stand at a signal.
 *
 * Shape: a signal, its range, the air action and the stroke in; percents and travel out.
 * Valid: stem travel in proportion to the signal; a lever or cam bends it.
 * @param signal        as read, in the unit of the range
 * @param rangeLow      signal at one end of the stroke
 * @param rangeHigh     signal at the other end; above rangeLow
 * @param airAction     air-to-open: more signal opens; air-to-close: more signal shuts
 * @param ratedTravelM  full stroke in m; above 0
 * @returns percent of signal, percent open (raw and clamped) and travel from shut in m
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input; CALC-005 if the action is unknown
 * @source [S-02] the usual ranges; the arithmetic is linear
 * @example expectedTravel({ signal: 0.008, rangeLow: 0.004, rangeHigh: 0.02, airAction: 'air-to-close',
 *   ratedTravelM: 0.0381 }) // { signalPercent: 25, openPercent: 75, openPercentClamped: 75, travelM: 0.028575 }
 */
export function expectedTravel(
  input: SignalOnRange & { readonly airAction: AirAction; readonly ratedTravelM: number },
): ExpectedTravel {
  const { signal, rangeLow, rangeHigh, ratedTravelM } = input;
  refuseOutside({ ratedTravelM }, ABOVE_ZERO);
  const reverse =
    oneOf({ name: 'airAction', value: input.airAction, choices: AIR_ACTIONS }) === 'air-to-close';
  const forward = percentOfRange({ signal, rangeLow, rangeHigh });
  const open = percentOfRange({ signal, rangeLow, rangeHigh, reverse });
  return {
    signalPercent: forward.percent,
    openPercent: open.percent,
    openPercentClamped: open.percentClamped,
    travelM: (open.percentClamped / 100) * ratedTravelM,
  };
}

export interface SplitRangeValve {
  readonly name: string;
  readonly rangeLow: number;
  readonly rangeHigh: number;
  readonly airAction: AirAction;
}

/**
 * How far open each valve stands that shares one signal with others.
 *
 * Shape: one signal and a list of valves in; the same list with percents out.
 * Valid: each valve is clamped at the ends of its own part of the signal.
 * @param signal  as read, in the unit of the ranges
 * @param valves  each with its name, part of the signal and air action
 * @returns for each valve the percent open, raw and clamped
 * @throws CalcError CALC-001 or CALC-003 by the name of the input; CALC-005 if an action is unknown
 * @source [S-02] with the two usual arrangements, complementary and exclusive, as published tables show them
 * @example splitRange({ signal: 6, valves: [
 *   { name: 'A', rangeLow: 3, rangeHigh: 9, airAction: 'air-to-close' },
 *   { name: 'B', rangeLow: 9, rangeHigh: 15, airAction: 'air-to-open' },
 * ] }) // [{ name: 'A', openPercent: 50, openPercentClamped: 50 }, { name: 'B', openPercent: -50, openPercentClamped: 0 }]
 */
export function splitRange(input: {
  readonly signal: number;
  readonly valves: readonly SplitRangeValve[];
}): readonly { readonly name: string; readonly openPercent: number; readonly openPercentClamped: number }[] {
  return input.valves.map(({ name, rangeLow, rangeHigh, airAction }) => {
    const open = percentOfRange({
      signal: input.signal,
      rangeLow,
      rangeHigh,
      reverse: oneOf({ name: 'airAction', value: airAction, choices: AIR_ACTIONS }) === 'air-to-close',
    });
    return { name, openPercent: open.percent, openPercentClamped: open.percentClamped };
  });
}

export type Characteristic = 'linear' | 'equal percentage';

/**
 * Share of the rated flow coefficient at a lift, by the trim's inherent characteristic.
 *
 * Shape: characteristic, rangeability and lift in; one number out. linear: x; equal percentage: R^(x − 1)
 * Valid: constant pressure drop; an equal-percentage trim shuts below 1/R, which the formula does not show.
 * @param characteristic  linear or equal percentage
 * @param rangeability    largest over smallest controllable coefficient; above 1 (linear does not use it)
 * @param relativeTravel  lift over rated travel; from 0 to 1
 * @returns relative flow coefficient
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the characteristic is unknown
 * @source [S-10] inherent characteristics
 * @example relativeFlowCoefficient({ characteristic: 'equal percentage', rangeability: 50, relativeTravel: 0.5 }) // 0.1414214
 */
export function relativeFlowCoefficient(input: {
  readonly characteristic: Characteristic;
  readonly rangeability: number;
  readonly relativeTravel: number;
}): number {
  const { rangeability, relativeTravel } = input;
  const choices: readonly Characteristic[] = ['linear', 'equal percentage'];
  const characteristic = oneOf({ name: 'characteristic', value: input.characteristic, choices });
  refuseOutside({ relativeTravel }, FRACTION);
  refuseOutside({ rangeability }, { above: 1 });
  return characteristic === 'linear' ? relativeTravel : rangeability ** (relativeTravel - 1);
}

function clampPercent(percent: number): number {
  return Math.min(100, Math.max(0, percent));
}
