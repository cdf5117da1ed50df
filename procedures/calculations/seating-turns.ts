import { benchSet } from './bench-set.ts';
import { ABOVE_ZERO, oneOf, refuseOutside } from './checks.ts';
import { AIR_ACTIONS, type AirAction, expectedTravel, type SignalOnRange } from './signal-travel.ts';

export type PlugCloses = 'down' | 'up';

/** How the plug stem is turned against the actuator stem. */
export interface StemTurn {
  readonly screwPlugStem: 'out' | 'in';
  readonly stemGets: 'longer' | 'shorter';
}

/**
 * Which way the plug stem is screwed so that the plug meets its seat earlier.
 *
 * Shape: one word in, two out. It follows from how the plug closes, never from the air action.
 * Valid: plug stem screwed into the actuator stem; a maker's seating instruction outranks the rule.
 * @param plugCloses  moving down or moving up
 * @returns out of the actuator stem and longer, or into it and shorter
 * @throws CalcError CALC-005 if the word is unknown
 * @source [S-07] common practice for the direction
 * @example stemTurn({ plugCloses: 'down' }) // { screwPlugStem: 'out', stemGets: 'longer' }
 * @example stemTurn({ plugCloses: 'up' }) // { screwPlugStem: 'in', stemGets: 'shorter' }
 */
export function stemTurn({ plugCloses }: { readonly plugCloses: PlugCloses }): StemTurn {
  const choices: readonly PlugCloses[] = ['down', 'up'];
  return oneOf({ name: 'plugCloses', value: plugCloses, choices }) === 'down'
    ? { screwPlugStem: 'out', stemGets: 'longer' }
    : { screwPlugStem: 'in', stemGets: 'shorter' };
}

export interface SeatingTurnsInput {
  readonly plugCloses: PlugCloses;
  readonly airAction: AirAction;
  readonly effectiveAreaM2: number;
  readonly benchSetLowPa: number;
  readonly benchSetHighPa: number;
  readonly travelM: number;
  /** Blank: worked out from bench set, stroke and area. */
  readonly springRateNPerM?: number | null;
  readonly threadPitchM: number;
  readonly turns: number;
}

export interface SeatingTurns extends StemTurn {
  readonly springRateNPerM: number;
  readonly plugShiftM: number;
  readonly seatLoadGainN: number;
  readonly signalShiftPa: number;
  /** Gauge pressure at which the plug now meets its seat, without friction and process. */
  readonly contactPa: number;
  readonly liftLeftM: number;
  readonly liftLostPercent: number;
}

/**
 * What the seating turns of a plug stem do.
 *
 * Shape: the sheet's figures and the turns in. shift = turns · pitch; gain = k · shift; signal shift = gain/A
 * Valid: bench set without process; contact at low + signal shift for air-to-open, high − signal shift for
 *   air-to-close. Not the same as adjuster turns, which shift both bench ends and lose no lift.
 * @param plugCloses       moving down or moving up
 * @param airAction        air-to-open or air-to-close
 * @param effectiveAreaM2  above 0
 * @param benchSetLowPa    gauge; 0 or more
 * @param benchSetHighPa   gauge; above benchSetLowPa
 * @param travelM          stroke; above 0
 * @param springRateNPerM  above 0; blank: from bench set, stroke and area
 * @param threadPitchM     lead of the stem thread; above 0
 * @param turns            after contact; 0 or more, and less lift lost than the stroke has
 * @returns direction, plug shift, gain of seat load, shift of the signal, contact, lift left, percent of stroke lost
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-07] figures derived, direction common practice
 * @example seatingTurns({ plugCloses: 'down', airAction: 'air-to-open', effectiveAreaM2: 0.064516,
 *   benchSetLowPa: 20684.272, benchSetHighPa: 103421.36, travelM: 0.01905, threadPitchM: 0.00127, turns: 2 })
 *   // { screwPlugStem: 'out', stemGets: 'longer', springRateNPerM: 280202.94, plugShiftM: 0.00254,
 *   //   seatLoadGainN: 711.7155, signalShiftPa: 11031.612, contactPa: 31715.884, liftLeftM: 0.01651,
 *   //   liftLostPercent: 13.33333 }
 */
export function seatingTurns(input: SeatingTurnsInput): SeatingTurns {
  const { effectiveAreaM2, benchSetLowPa, benchSetHighPa, travelM, threadPitchM, turns } = input;
  const airAction = oneOf({ name: 'airAction', value: input.airAction, choices: AIR_ACTIONS });
  const spring = benchSet(input);
  const springRateNPerM = input.springRateNPerM ?? spring.springRateNPerM;
  refuseOutside({ threadPitchM, springRateNPerM }, ABOVE_ZERO);
  refuseOutside({ turns }, { atLeast: 0, below: travelM / threadPitchM });
  const plugShiftM = turns * threadPitchM;
  const seatLoadGainN = springRateNPerM * plugShiftM;
  const signalShiftPa = seatLoadGainN / effectiveAreaM2;
  return {
    ...stemTurn(input),
    springRateNPerM,
    plugShiftM,
    seatLoadGainN,
    signalShiftPa,
    contactPa: airAction === 'air-to-open' ? benchSetLowPa + signalShiftPa : benchSetHighPa - signalShiftPa,
    liftLeftM: travelM - plugShiftM,
    liftLostPercent: (100 * plugShiftM) / travelM,
  };
}

/**
 * What the travel indicator should show after seating turns: it is referenced at the open end.
 *
 * Shape: a signal, its range, action, stroke and the percent of lift lost in. The plug's seat stops the stem early;
 *   everywhere else the reading is as before, so mid signal stays 50 %.
 * Valid: without friction and process.
 * @param signal           as read, in the unit of the range
 * @param rangeLow         signal at one end of the stroke
 * @param rangeHigh        signal at the other end; above rangeLow
 * @param airAction        air-to-open or air-to-close
 * @param ratedTravelM     full stroke before the turns; above 0
 * @param liftLostPercent  from seatingTurns; from 0 to 100
 * @returns percent open as the indicator shows it, whether the plug is on its seat, travel in m
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-07] figures derived
 * @example travelAfterSeating({ signal: 3, rangeLow: 3, rangeHigh: 15, airAction: 'air-to-open', ratedTravelM: 0.01905,
 *   liftLostPercent: 13.3333 }) // { openPercent: 13.3333, onSeat: true, travelM: 0.00254 }
 * @example travelAfterSeating({ signal: 9, rangeLow: 3, rangeHigh: 15, airAction: 'air-to-open', ratedTravelM: 0.01905,
 *   liftLostPercent: 13.3333 }) // { openPercent: 50, onSeat: false, travelM: 0.009525 }
 */
export function travelAfterSeating(
  input: SignalOnRange & {
    readonly airAction: AirAction;
    readonly ratedTravelM: number;
    readonly liftLostPercent: number;
  },
): { readonly openPercent: number; readonly onSeat: boolean; readonly travelM: number } {
  const { liftLostPercent, ratedTravelM } = input;
  refuseOutside({ liftLostPercent }, { atLeast: 0, atMost: 100 });
  const asked = expectedTravel(input);
  const onSeat = asked.openPercent <= liftLostPercent;
  const openPercent = Math.max(asked.openPercentClamped, liftLostPercent);
  return { openPercent, onSeat, travelM: (openPercent / 100) * ratedTravelM };
}
