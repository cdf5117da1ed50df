import { ABOVE_ZERO, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { type ActuatorInput, type SeatInput, shutEnd } from './force-balance.ts';
import { circleAreaM2 } from './plug-force.ts';

export interface SmallestSupply {
  readonly seatLoadNeededN: number;
  /** Air that shuts with the seat load needed (air-to-close), or lifts the plug off its seat (air-to-open). */
  readonly atTheSeatPa: number;
  /** Air that moves the stem to the far end of its stroke: full open (air-to-open), or 0 since the spring does it. */
  readonly atTheOpenEndPa: number;
  readonly smallestSupplyPa: number;
  /** Air-to-open: whether the spring alone gives the seat load; the supply cannot mend that. */
  readonly springIsEnough: boolean | null;
}

/**
 * Smallest air supply that shuts and opens the valve as it must.
 *
 * Shape: actuator and need in. air-to-close: high + (F + Ff + need)/A; air-to-open: the larger of first lift and
 *   high + Ff/A
 * Valid: the plug force has faded at the open end. No margin is added.
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param benchSetLowPa      gauge; 0 or more
 * @param benchSetHighPa     gauge; above benchSetLowPa
 * @param plugForceOpeningN  positive opens
 * @param frictionN          one way; 0 or more
 * @param portDiameterM      above 0
 * @param seatLoadNeedNPerM  for each length of port; 0 or more
 * @returns the two demands on the supply, the larger of them, and whether the spring is enough (air-to-open)
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-06] checked against the allowable drops of a published table [S-13]
 * @example smallestSupply({ airAction: 'air-to-close', effectiveAreaM2: 0.05, benchSetLowPa: 20000, benchSetHighPa: 100000,
 *   plugForceOpeningN: 1000, frictionN: 200, portDiameterM: 0.05, seatLoadNeedNPerM: 5000 })
 *   // { seatLoadNeededN: 785.398, atTheSeatPa: 139707.96, atTheOpenEndPa: 0, smallestSupplyPa: 139707.96,
 *   //   springIsEnough: null }
 */
export function smallestSupply(
  input: ActuatorInput & { readonly portDiameterM: number; readonly seatLoadNeedNPerM: number },
): SmallestSupply {
  const { seatLoadNeedNPerM, portDiameterM, effectiveAreaM2, benchSetHighPa, frictionN } = input;
  const end = shutEnd({ ...input, supplyPa: 0 });
  refuseOutside({ seatLoadNeedNPerM }, ZERO_OR_MORE);
  const seatLoadNeededN = seatLoadNeedNPerM * Math.PI * portDiameterM;
  const airOpens = end.contactPa === null;
  const atTheSeatPa = airOpens ? (end.firstLiftPa ?? 0) : end.contactPa + seatLoadNeededN / effectiveAreaM2;
  const atTheOpenEndPa = airOpens ? benchSetHighPa + frictionN / effectiveAreaM2 : 0;
  return {
    seatLoadNeededN,
    atTheSeatPa,
    atTheOpenEndPa,
    smallestSupplyPa: Math.max(0, atTheSeatPa, atTheOpenEndPa),
    springIsEnough: airOpens ? end.seatLoadN >= seatLoadNeededN : null,
  };
}

export interface ShutOffMargin {
  readonly seatLoadN: number;
  readonly seatLoadNeededN: number;
  readonly marginN: number;
  readonly marginNPerM: number;
  readonly enough: boolean;
}

/**
 * Seat load that is there over the seat load that the class needs.
 *
 * Shape: the shut end and a need in; margins out, negative where it falls short.
 * Valid: as shutEnd. Tables of different makers differ by a factor of two: the need comes from the valve sheet.
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param benchSetLowPa      gauge; 0 or more
 * @param benchSetHighPa     gauge; above benchSetLowPa
 * @param plugForceOpeningN  at the shut-off drop; positive opens
 * @param frictionN          one way; 0 or more
 * @param supplyPa           gauge; 0 or more
 * @param portDiameterM      above 0
 * @param seatLoadNeedNPerM  for each length of port; 0 or more
 * @returns load, need, margin as force and for each length, and whether it is enough
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-06] checked against the allowable drops of a published table [S-13]
 * @example shutOffMargin({ airAction: 'air-to-close', effectiveAreaM2: 0.05, benchSetLowPa: 20000, benchSetHighPa: 100000,
 *   plugForceOpeningN: 1000, frictionN: 200, supplyPa: 140000, portDiameterM: 0.05, seatLoadNeedNPerM: 5000 })
 *   // { seatLoadN: 800, seatLoadNeededN: 785.398, marginN: 14.602, marginNPerM: 92.958, enough: true }
 */
export function shutOffMargin(input: SeatInput & { readonly seatLoadNeedNPerM: number }): ShutOffMargin {
  const { seatLoadNeedNPerM, portDiameterM } = input;
  const { seatLoadN } = shutEnd(input);
  refuseOutside({ seatLoadNeedNPerM }, ZERO_OR_MORE);
  const circumferenceM = Math.PI * portDiameterM;
  const seatLoadNeededN = seatLoadNeedNPerM * circumferenceM;
  const marginN = seatLoadN - seatLoadNeededN;
  return {
    seatLoadN,
    seatLoadNeededN,
    marginN,
    marginNPerM: marginN / circumferenceM,
    enough: marginN >= -1e-9 * Math.max(1, seatLoadNeededN),
  };
}

/**
 * Largest pressure drop that an unbalanced plug with the flow under it shuts off.
 *
 * Shape: the shut end without process and a need in. drop = (load without process − need)/port area
 * Valid: unbalanced plug, flow under it, outlet at ambient pressure, port area (stem not taken off).
 * @param airAction          air-to-open or air-to-close
 * @param effectiveAreaM2    above 0
 * @param benchSetLowPa      gauge; 0 or more
 * @param benchSetHighPa     gauge; above benchSetLowPa
 * @param frictionN          one way; 0 or more
 * @param supplyPa           gauge; 0 or more
 * @param portDiameterM      above 0
 * @param seatLoadNeedNPerM  for each length of port; 0 or more
 * @returns load without process, need, and the drop in Pa; negative: not even without a drop
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input
 * @source [S-13] a published table of allowable drops, reproduced to its last digit
 * @example largestShutOffDrop({ airAction: 'air-to-close', effectiveAreaM2: 0.0451612, benchSetLowPa: 20684.272,
 *   benchSetHighPa: 103421.36, frictionN: 111.2055, supplyPa: 124105.63, portDiameterM: 0.0254, seatLoadNeedNPerM: 1751.268 })
 *   // { seatLoadN: 822.921, seatLoadNeededN: 139.7450, dropPa: 1348265 }
 */
export function largestShutOffDrop(
  input: Omit<SeatInput, 'plugForceOpeningN'> & { readonly seatLoadNeedNPerM: number },
): { readonly seatLoadN: number; readonly seatLoadNeededN: number; readonly dropPa: number } {
  refuseOutside({ portDiameterM: input.portDiameterM }, ABOVE_ZERO);
  const { seatLoadN, seatLoadNeededN, marginN } = shutOffMargin({ ...input, plugForceOpeningN: 0 });
  return { seatLoadN, seatLoadNeededN, dropPa: marginN / circleAreaM2(input.portDiameterM) };
}
