import { ABOVE_ZERO, ANY_NUMBER, oneOf, refuseOutside, refuseUnlessRising } from './checks.ts';
import { AIR_ACTIONS, type AirAction } from './signal-travel.ts';

/** Spring, diaphragm and stroke, as they stand on the valve sheet. Pressures are gauge. */
export interface BenchSetInput {
  readonly effectiveAreaM2: number;
  readonly benchSetLowPa: number;
  readonly benchSetHighPa: number;
  readonly travelM: number;
}

export interface BenchSet {
  readonly spanPa: number;
  readonly springRateNPerM: number;
  /** Spring force where the stroke begins. */
  readonly preloadN: number;
  /** How far the spring is pressed together before the stroke begins. */
  readonly preloadM: number;
  readonly forceAtFullTravelN: number;
}

/**
 * Spring rate and forces that a bench set stands for.
 *
 * Shape: four numbers in, five out. k = A · (high − low)/travel; preload = A · low; full = A · high
 * Valid: no process force, effective area the same over the stroke (it changes by a few percent).
 * @param effectiveAreaM2  of the diaphragm, at mid travel; above 0
 * @param benchSetLowPa    gauge pressure where the stem begins to move; 0 or more
 * @param benchSetHighPa   gauge pressure at full travel; above benchSetLowPa
 * @param travelM          stroke between the two; above 0
 * @returns span, spring rate, preload as force and as length, force at full travel
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input
 * @source [S-06] Hooke with constant area
 * @example benchSet({ effectiveAreaM2: 0.035, benchSetLowPa: 20000, benchSetHighPa: 100000, travelM: 0.015 })
 *   // { spanPa: 80000, springRateNPerM: 186666.667, preloadN: 700, preloadM: 0.00375, forceAtFullTravelN: 3500 }
 */
export function benchSet(input: BenchSetInput): BenchSet {
  const { effectiveAreaM2, benchSetLowPa, benchSetHighPa, travelM } = input;
  refuseOutside({ effectiveAreaM2, travelM }, ABOVE_ZERO);
  refuseOutside({ benchSetLowPa, benchSetHighPa }, { atLeast: 0 });
  refuseUnlessRising({ benchSetLowPa, benchSetHighPa });
  const spanPa = benchSetHighPa - benchSetLowPa;
  const springRateNPerM = (effectiveAreaM2 * spanPa) / travelM;
  const preloadN = effectiveAreaM2 * benchSetLowPa;
  return {
    spanPa,
    springRateNPerM,
    preloadN,
    preloadM: preloadN / springRateNPerM,
    forceAtFullTravelN: effectiveAreaM2 * benchSetHighPa,
  };
}

export interface AdjusterShift {
  readonly seatMovedM: number;
  readonly preloadChangeN: number;
  readonly benchSetShiftPa: number;
  /** Turning the adjuster never changes the span: that is the spring's. */
  readonly spanChangePa: 0;
  /** By this much the installed range shifts as well; no lift is lost. */
  readonly liftLostM: 0;
}

/**
 * What turns of the spring adjuster do.
 *
 * Shape: four numbers in. shift = k · turns · pitch/A
 * Valid: turns that tighten the spring count positive, turns that slacken it negative; both ends shift alike.
 * @param springRateNPerM  above 0
 * @param effectiveAreaM2  above 0
 * @param threadPitchM     lead of the adjuster's thread; above 0
 * @param turns            tightening positive; any number
 * @returns movement of the spring seat, change of preload, shift of both bench ends
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-06] Hooke with constant area
 * @example adjusterTurns({ springRateNPerM: 140101.4682, effectiveAreaM2: 0.064516, threadPitchM: 0.0015875, turns: 1 })
 *   // { seatMovedM: 0.0015875, preloadChangeN: 222.41108, benchSetShiftPa: 3447.3786, spanChangePa: 0, liftLostM: 0 }
 */
export function adjusterTurns(input: {
  readonly springRateNPerM: number;
  readonly effectiveAreaM2: number;
  readonly threadPitchM: number;
  readonly turns: number;
}): AdjusterShift {
  const { springRateNPerM, effectiveAreaM2, threadPitchM, turns } = input;
  refuseOutside({ springRateNPerM, effectiveAreaM2, threadPitchM }, ABOVE_ZERO);
  refuseOutside({ turns }, ANY_NUMBER);
  const seatMovedM = turns * threadPitchM;
  const preloadChangeN = springRateNPerM * seatMovedM;
  return {
    seatMovedM,
    preloadChangeN,
    benchSetShiftPa: preloadChangeN / effectiveAreaM2,
    spanChangePa: 0,
    liftLostM: 0,
  };
}

/**
 * How far to turn the spring adjuster for a shift of the bench set.
 *
 * Shape: four numbers in, turns and a word out; the inverse of adjusterTurns.
 * Valid: as adjusterTurns. Which way round tightens is read off the actuator.
 * @param springRateNPerM  above 0
 * @param effectiveAreaM2  above 0
 * @param threadPitchM     lead of the adjuster's thread; above 0
 * @param wantedShiftPa    how much higher both ends shall be; negative for lower
 * @returns turns without sign, and whether they tighten or slacken the spring
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-06] Hooke with constant area
 * @example adjusterTurnsForShift({ springRateNPerM: 140101.4682, effectiveAreaM2: 0.064516, threadPitchM: 0.0015875,
 *   wantedShiftPa: -3447.3786 }) // { turns: 1, turn: 'slacken' }
 */
export function adjusterTurnsForShift(input: {
  readonly springRateNPerM: number;
  readonly effectiveAreaM2: number;
  readonly threadPitchM: number;
  readonly wantedShiftPa: number;
}): { readonly turns: number; readonly turn: 'tighten' | 'slacken' | 'leave' } {
  const { wantedShiftPa, ...thread } = input;
  refuseOutside({ wantedShiftPa }, ANY_NUMBER);
  const one = adjusterTurns({ ...thread, turns: 1 });
  const turn = wantedShiftPa === 0 ? 'leave' : wantedShiftPa > 0 ? 'tighten' : 'slacken';
  return { turns: Math.abs(wantedShiftPa) / one.benchSetShiftPa, turn };
}

export interface RangeShiftInput {
  readonly airAction: AirAction;
  readonly effectiveAreaM2: number;
  /** Plug force with the valve shut, positive where it opens. */
  readonly plugForceOpeningN: number;
}

export interface RangeShift {
  /** Bench end that stands for the shut valve. */
  readonly endThatMoves: 'lower' | 'upper';
  readonly moves: 'up' | 'down' | 'not at all';
  readonly shiftPa: number;
}

/**
 * How far the process moves one end of the bench set, and which.
 *
 * Shape: air action, area and plug force in. shift = F/A at the shut end, upwards for air-to-close, downwards for
 *   air-to-open if the force opens
 * Valid: friction left out; the plug force fades as the valve opens, so the other end stays where it is.
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param plugForceOpeningN  with the valve shut; positive opens (flow under the plug), negative shuts (flow over it)
 * @returns which end, which way, and by how much (signed) in Pa
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if the action is unknown
 * @source [S-06] all four combinations of air action and flow
 * @example rangeShift({ airAction: 'air-to-open', effectiveAreaM2: 0.029, plugForceOpeningN: 393 })
 *   // { endThatMoves: 'lower', moves: 'down', shiftPa: -13551.724 }
 */
export function rangeShift(input: RangeShiftInput): RangeShift {
  const { effectiveAreaM2, plugForceOpeningN } = input;
  const airAction = oneOf({ name: 'airAction', value: input.airAction, choices: AIR_ACTIONS });
  refuseOutside({ effectiveAreaM2 }, ABOVE_ZERO);
  refuseOutside({ plugForceOpeningN }, ANY_NUMBER);
  const sizePa = plugForceOpeningN / effectiveAreaM2;
  const shiftPa = airAction === 'air-to-close' || sizePa === 0 ? sizePa : -sizePa;
  return {
    endThatMoves: airAction === 'air-to-close' ? 'upper' : 'lower',
    moves: shiftPa === 0 ? 'not at all' : shiftPa > 0 ? 'up' : 'down',
    shiftPa,
  };
}

export interface PressureRange {
  readonly lowPa: number;
  readonly highPa: number;
}

/**
 * From the bench to the line: the range that the valve strokes over with the process on it.
 *
 * Shape: a bench set and the shift of one end in, a range out; friction left out.
 * Valid: as rangeShift. A range end below 0 means that the process alone moves the plug: it is reported as it is.
 * @param benchSetLowPa      gauge; any number
 * @param benchSetHighPa     gauge; above benchSetLowPa
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param plugForceOpeningN  with the valve shut; positive opens
 * @returns both ends installed, and the shift
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input; CALC-005 if the action is unknown
 * @source [S-06] all four combinations of air action and flow
 * @example installedRange({ benchSetLowPa: 33551.724, benchSetHighPa: 100000, airAction: 'air-to-open',
 *   effectiveAreaM2: 0.029, plugForceOpeningN: 393 })
 *   // { lowPa: 20000, highPa: 100000, endThatMoves: 'lower', moves: 'down', shiftPa: -13551.724 }
 */
export function installedRange(
  input: RangeShiftInput & { readonly benchSetLowPa: number; readonly benchSetHighPa: number },
): PressureRange & RangeShift {
  const { benchSetLowPa, benchSetHighPa } = input;
  refuseUnlessRising({ benchSetLowPa, benchSetHighPa });
  const shift = rangeShift(input);
  return { ...moved({ lowPa: benchSetLowPa, highPa: benchSetHighPa, shift, sign: 1 }), ...shift };
}

/**
 * From the line back to the bench: the bench set that gives a wanted installed range.
 *
 * Shape: an installed range and the shift of one end in, a range out; the inverse of installedRange.
 * Valid: as rangeShift. A bench end below 0 cannot be set: it is reported as it is.
 * @param installedLowPa     gauge; any number
 * @param installedHighPa    gauge; above installedLowPa
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param plugForceOpeningN  with the valve shut; positive opens
 * @returns both ends of the bench set, and the shift from bench to line
 * @throws CalcError CALC-001, CALC-002 or CALC-003 by the name of the input; CALC-005 if the action is unknown
 * @source [S-06] all four combinations of air action and flow
 * @example benchSetFromInstalled({ installedLowPa: 20000, installedHighPa: 100000, airAction: 'air-to-close',
 *   effectiveAreaM2: 0.029, plugForceOpeningN: 393 })
 *   // { lowPa: 20000, highPa: 86448.276, endThatMoves: 'upper', moves: 'up', shiftPa: 13551.724 }
 */
export function benchSetFromInstalled(
  input: RangeShiftInput & { readonly installedLowPa: number; readonly installedHighPa: number },
): PressureRange & RangeShift {
  const { installedLowPa, installedHighPa } = input;
  refuseUnlessRising({ installedLowPa, installedHighPa });
  const shift = rangeShift(input);
  return { ...moved({ lowPa: installedLowPa, highPa: installedHighPa, shift, sign: -1 }), ...shift };
}

function moved(input: PressureRange & { readonly shift: RangeShift; readonly sign: 1 | -1 }): PressureRange {
  const { lowPa, highPa, shift, sign } = input;
  const byPa = sign * shift.shiftPa;
  return shift.endThatMoves === 'lower' ? { lowPa: lowPa + byPa, highPa } : { lowPa, highPa: highPa + byPa };
}
