import { ABOVE_ZERO, ANY_NUMBER, refuseOutside, ZERO_OR_MORE } from './checks.ts';

export interface SeatLoadInput {
  readonly portDiameterM: number;
  /** Without the turns, as the force balance gives it; may be negative. */
  readonly seatLoadBeforeN: number;
  readonly seatLoadGainN: number;
  /** From the sheet, by the table named there. */
  readonly seatLoadNeedNPerM: number;
}

export interface SeatLoadAgainstNeed {
  readonly portCircumferenceM: number;
  readonly seatLoadN: number;
  readonly seatLoadNPerM: number;
  readonly marginNPerM: number;
  readonly enough: boolean;
}

/**
 * Seat load for each length of port, after the turns, against what the class needs.
 *
 * Shape: four numbers in. load/length = (before + gain)/(π · port diameter)
 * Valid: load by circumference, not by area. A negative load is reported as such.
 * @param portDiameterM      above 0
 * @param seatLoadBeforeN    any number
 * @param seatLoadGainN      0 or more
 * @param seatLoadNeedNPerM  0 or more; tables of different makers differ by a factor of two
 * @returns circumference, load as force and for each length, margin over the need, whether it is enough
 * @throws CalcError CALC-001 or CALC-002 by the name of the input
 * @source [S-06] load by circumference
 * @example seatLoadAgainstNeed({ portDiameterM: 0.0508, seatLoadBeforeN: 2000, seatLoadGainN: 711.7155,
 *   seatLoadNeedNPerM: 14010 })
 *   // { portCircumferenceM: 0.159593, seatLoadN: 2711.7155, seatLoadNPerM: 16991.45, marginNPerM: 2981.45, enough: true }
 */
export function seatLoadAgainstNeed(input: SeatLoadInput): SeatLoadAgainstNeed {
  const { portDiameterM, seatLoadBeforeN, seatLoadGainN, seatLoadNeedNPerM } = input;
  refuseOutside({ portDiameterM }, ABOVE_ZERO);
  refuseOutside({ seatLoadBeforeN }, ANY_NUMBER);
  refuseOutside({ seatLoadGainN, seatLoadNeedNPerM }, ZERO_OR_MORE);
  const portCircumferenceM = Math.PI * portDiameterM;
  const seatLoadN = seatLoadBeforeN + seatLoadGainN;
  const seatLoadNPerM = seatLoadN / portCircumferenceM;
  const marginNPerM = seatLoadNPerM - seatLoadNeedNPerM;
  return { portCircumferenceM, seatLoadN, seatLoadNPerM, marginNPerM, enough: marginNPerM >= 0 };
}
