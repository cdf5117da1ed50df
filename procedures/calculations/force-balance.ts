import { type BenchSetInput, benchSet, rangeShift } from './bench-set.ts';
import { ABOVE_ZERO, ANY_NUMBER, oneOf, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { AIR_ACTIONS, type AirAction } from './signal-travel.ts';

/** An actuator with its spring and what the plug and its packing do to it. */
export interface ActuatorInput {
  readonly airAction: AirAction;
  readonly effectiveAreaM2: number;
  readonly benchSetLowPa: number;
  readonly benchSetHighPa: number;
  /** Process force on the shut plug; positive opens (flow under the plug). */
  readonly plugForceOpeningN: number;
  readonly frictionN: number;
}

export interface SeatInput extends ActuatorInput {
  readonly supplyPa: number;
  readonly portDiameterM: number;
}

export interface ShutEnd {
  /** The bench end that the process moves, and which way. */
  readonly endThatMoves: 'lower' | 'upper';
  readonly moves: 'up' | 'down' | 'not at all';
  readonly benchEndPa: number;
  /** Air-to-close: gauge pressure at which the plug meets its seat. Null for air-to-open. */
  readonly contactPa: number | null;
  /** Air-to-open: gauge pressure at which the plug first lifts. Null for air-to-close. */
  readonly firstLiftPa: number | null;
  /** Air in the case when the seat load is counted: full supply, or none. */
  readonly seatLoadAtPa: number;
  /** Forces on the seat at that pressure, each with its sign; they add up to the seat load. */
  readonly springOrAirN: number;
  readonly plugForceN: number;
  readonly frictionN: number;
  /** Negative: the plug is not held shut. */
  readonly seatLoadN: number;
  readonly seatLoadNPerM: number;
  readonly heldShut: boolean;
}

/**
 * The shut end of the stroke with the process on: where the plug meets or leaves its seat, and how hard it is held.
 *
 * Shape: actuator, plug force, friction, supply and port in; all four combinations of air action and flow.
 *   air-to-close: contact = high + (F + Ff)/A, load = A · (supply − high) − F − Ff
 *   air-to-open: first lift = low + (Ff − F)/A, load = A · low − F − Ff
 * Valid: effective area constant; friction taken against the motion towards the seat (contact, load) or off it (lift).
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param benchSetLowPa      gauge; 0 or more
 * @param benchSetHighPa     gauge; above benchSetLowPa
 * @param plugForceOpeningN  positive opens, negative shuts
 * @param frictionN          packing and seals, one way; 0 or more
 * @param supplyPa           gauge; 0 or more; counts for air-to-close
 * @param portDiameterM      above 0
 * @returns the end that moves, contact or first lift, the forces and the seat load; a negative load is reported as such
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-06] checked against the allowable drops of a published table [S-13]
 * @example shutEnd({ airAction: 'air-to-open', effectiveAreaM2: 0.064516, benchSetLowPa: 62052.816, benchSetHighPa: 144789.9,
 *   plugForceOpeningN: 1397.449, frictionN: 222.4111, supplyPa: 240000, portDiameterM: 0.0508 })
 *   // { endThatMoves: 'lower', moves: 'down', benchEndPa: 62052.816, contactPa: null, firstLiftPa: 43839.69,
 *   //   seatLoadAtPa: 0, springOrAirN: 4003.4, plugForceN: -1397.449, frictionN: -222.4111, seatLoadN: 2383.54,
 *   //   seatLoadNPerM: 14935.1, heldShut: true }
 */
export function shutEnd(input: SeatInput): ShutEnd {
  const { effectiveAreaM2, benchSetLowPa, benchSetHighPa, plugForceOpeningN, frictionN, supplyPa } = input;
  const airCloses = checked(input) === 'air-to-close';
  refuseOutside({ supplyPa }, ZERO_OR_MORE);
  refuseOutside({ portDiameterM: input.portDiameterM }, ABOVE_ZERO);
  const { endThatMoves, moves, shiftPa } = rangeShift(input);
  const frictionPa = frictionN / effectiveAreaM2;
  const springOrAirN = effectiveAreaM2 * (airCloses ? supplyPa - benchSetHighPa : benchSetLowPa);
  const seatLoadN = springOrAirN - plugForceOpeningN - frictionN;
  return {
    endThatMoves,
    moves,
    benchEndPa: airCloses ? benchSetHighPa : benchSetLowPa,
    contactPa: airCloses ? benchSetHighPa + shiftPa + frictionPa : null,
    firstLiftPa: airCloses ? null : benchSetLowPa + shiftPa + frictionPa,
    seatLoadAtPa: airCloses ? supplyPa : 0,
    springOrAirN,
    plugForceN: 0 - plugForceOpeningN,
    frictionN: 0 - frictionN,
    seatLoadN,
    seatLoadNPerM: seatLoadN / (Math.PI * input.portDiameterM),
    heldShut: seatLoadN > 0,
  };
}

export interface ForcesAtLift {
  /** All positive where they open. */
  readonly airN: number;
  readonly springN: number;
  readonly plugForceN: number;
  /** Without friction; positive opens. */
  readonly netN: number;
  /** What the stem does at this pressure from rest: friction may hold it. */
  readonly tendsTo: 'open' | 'close' | 'stand still';
  /** Gauge pressure at which the stem just moves, either way, and without friction. */
  readonly openingPa: number;
  readonly closingPa: number;
  readonly balancedPa: number;
}

/**
 * All forces on the stem at any lift.
 *
 * Shape: actuator, stroke, lift, air and the plug force at that lift in; forces with sign and balance pressures out.
 * Valid: off the seat, between 0 and full lift; the plug force at that lift is given (it fades as the valve opens).
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param benchSetLowPa      gauge; 0 or more
 * @param benchSetHighPa     gauge; above benchSetLowPa
 * @param travelM            stroke; above 0
 * @param liftM              from shut; from 0 to travelM
 * @param pressurePa         gauge pressure in the case; 0 or more
 * @param plugForceOpeningN  at this lift; positive opens
 * @param frictionN          one way; 0 or more
 * @returns air, spring and plug force, their sum, what the stem does, and the pressures that move it
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-06] Hooke with constant area
 * @example forcesAtLift({ airAction: 'air-to-close', effectiveAreaM2: 0.05, benchSetLowPa: 20000, benchSetHighPa: 100000,
 *   travelM: 0.02, liftM: 0.01, pressurePa: 60000, plugForceOpeningN: 100, frictionN: 150 })
 *   // { airN: -3000, springN: 3000, plugForceN: 100, netN: 100, tendsTo: 'stand still', openingPa: 59000,
 *   //   closingPa: 65000, balancedPa: 62000 }
 */
export function forcesAtLift(
  input: ActuatorInput & BenchSetInput & { readonly liftM: number; readonly pressurePa: number },
): ForcesAtLift {
  const { effectiveAreaM2, liftM, pressurePa, plugForceOpeningN, frictionN, travelM } = input;
  const airOpens = checked(input) === 'air-to-open';
  const { springRateNPerM, preloadN, forceAtFullTravelN } = benchSet(input);
  refuseOutside({ liftM }, { atLeast: 0, atMost: travelM });
  refuseOutside({ pressurePa }, ZERO_OR_MORE);
  const springSizeN = airOpens
    ? preloadN + springRateNPerM * liftM
    : forceAtFullTravelN - springRateNPerM * liftM;
  const sign = airOpens ? 1 : -1;
  const airN = sign * effectiveAreaM2 * pressurePa;
  const springN = -sign * springSizeN;
  const netN = airN + springN + plugForceOpeningN;
  const pressureFor = (helpN: number) => (-sign * (springN + plugForceOpeningN + helpN)) / effectiveAreaM2;
  return {
    airN,
    springN,
    plugForceN: plugForceOpeningN,
    netN,
    tendsTo: Math.abs(netN) <= frictionN ? 'stand still' : netN > 0 ? 'open' : 'close',
    openingPa: pressureFor(-frictionN),
    closingPa: pressureFor(frictionN),
    balancedPa: pressureFor(0),
  };
}

/**
 * Packing friction and balance pressure from the two pressures at one travel.
 *
 * Shape: area and two pressures in. friction = A · (up − down)/2
 * Valid: both read while the stem moves at the same travel; breakout is larger and is kept apart.
 * @param effectiveAreaM2  above 0
 * @param risingPa         gauge pressure going with the air
 * @param fallingPa        gauge pressure coming back
 * @returns friction one way in N (negative: the readings are the wrong way round), pressure without friction
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-06] friction against the motion
 * @example frictionFromPressures({ effectiveAreaM2: 0.064516, risingPa: 66189.67, fallingPa: 57915.96 })
 *   // { frictionN: 266.893, balancedPa: 62052.815 }
 */
export function frictionFromPressures(input: {
  readonly effectiveAreaM2: number;
  readonly risingPa: number;
  readonly fallingPa: number;
}): { readonly frictionN: number; readonly balancedPa: number } {
  const { effectiveAreaM2, risingPa, fallingPa } = input;
  refuseOutside({ effectiveAreaM2 }, ABOVE_ZERO);
  refuseOutside({ risingPa, fallingPa }, ANY_NUMBER);
  return {
    frictionN: (effectiveAreaM2 * (risingPa - fallingPa)) / 2,
    balancedPa: (risingPa + fallingPa) / 2,
  };
}

function checked(input: ActuatorInput): AirAction {
  const { plugForceOpeningN, frictionN } = input;
  // The stroke does not matter to the shut end; any will do for the checks of the bench set.
  benchSet({ travelM: 1, ...input });
  refuseOutside({ plugForceOpeningN }, ANY_NUMBER);
  refuseOutside({ frictionN }, ZERO_OR_MORE);
  return oneOf({ name: 'airAction', value: input.airAction, choices: AIR_ACTIONS });
}
