import { ABOVE_ZERO, ANY_NUMBER, oneOf, refuseCount, refuseOutside } from './checks.ts';
import { type AirAction, expectedTravel } from './signal-travel.ts';

export type Direction = 'up' | 'down';

/** One line of the up and down table: a signal, approached from one side, and the travel read there. */
export interface StrokeRow {
  readonly signalPa: number;
  /** From the shut end of the indicator; give this or the percent. */
  readonly travelM?: number;
  /** Percent open, of rated travel. */
  readonly travelPercent?: number;
  /** `up`: the signal was rising. */
  readonly direction: Direction;
  readonly cycle: number;
}

/** More than a day's work; a longer table is a mistake. */
export const MOST_ROWS = 2000;

/** What the rows are held against, and which of them say nothing about it. */
export interface StrokeInput {
  readonly rows: readonly StrokeRow[];
  readonly rangeLowPa: number;
  readonly rangeHighPa: number;
  readonly ratedTravelM: number;
  readonly airAction: AirAction;
  /** Where the plug meets its seat (after seating turns before the end of the range); blank: not left out. */
  readonly contactPa?: number | null;
  /** Widens the part left out at contact, for friction; 0 where left out. */
  readonly contactMarginPa?: number;
  /** Places in `rows`, from 0, of rows held by a stop. */
  readonly excludedRows?: readonly number[];
}

export interface JudgedRow {
  readonly index: number;
  readonly signalPa: number;
  readonly signalPercent: number;
  readonly wantedPercent: number;
  readonly openPercent: number;
  readonly travelM: number;
  /** Travel error: percent open as read minus percent open as the signal asks. */
  readonly errorPercent: number;
  readonly direction: Direction;
  readonly cycle: number;
  readonly leftOut: 'on seat' | 'at a stop' | null;
}

/**
 * Each row of the table with what the signal asks for, its error, and whether it is judged.
 *
 * Shape: rows, range, stroke and action in; the same rows worked out.
 * Valid: rows on the seat or at a stop are kept with their error, but marked as left out.
 * @param rows             each with signalPa, travelM or travelPercent, direction and cycle
 * @param rangeLowPa       signal at one end of the stroke
 * @param rangeHighPa      signal at the other end; above rangeLowPa
 * @param ratedTravelM     full stroke; above 0
 * @param airAction        air-to-open or air-to-close
 * @param contactPa        gauge pressure of seat contact; blank: no row is left out for it
 * @param contactMarginPa  0 or more
 * @param excludedRows     places in rows that a stop held
 * @returns rows with percents, error and the reason for leaving one out
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input; CALC-004 if a row has no
 *   travel, or there is no row
 * @source [S-04] error as actual minus ideal at the actual input
 * @example judgeRows({ rows: [{ signalPa: 60000, travelM: 0.0096, direction: 'up', cycle: 1 }], rangeLowPa: 20000,
 *   rangeHighPa: 100000, ratedTravelM: 0.02, airAction: 'air-to-open' })[0].errorPercent // -2
 */
export function judgeRows(input: StrokeInput): readonly JudgedRow[] {
  const { rows, ratedTravelM, contactPa = null, contactMarginPa = 0, excludedRows = [] } = input;
  refuseOutside({ ratedTravelM }, ABOVE_ZERO);
  refuseOutside({ contactMarginPa }, { atLeast: 0 });
  if (contactPa !== null) refuseOutside({ contactPa }, ANY_NUMBER);
  if (rows.length === 0 || rows.length > MOST_ROWS) {
    throw refuseCount({ name: 'rows', value: rows.length, range: `from 1 to ${MOST_ROWS} rows` });
  }
  return rows.map((row, index) => {
    const { signalPercent, openPercent: wantedPercent } = expectedTravel({
      signal: row.signalPa,
      rangeLow: input.rangeLowPa,
      rangeHigh: input.rangeHighPa,
      airAction: input.airAction,
      ratedTravelM,
    });
    const openPercent = openOf({ row, index, ratedTravelM });
    const onSeat = contactPa !== null && isOnSeat({ ...input, row, contactPa, contactMarginPa });
    return {
      index,
      signalPa: row.signalPa,
      signalPercent,
      wantedPercent,
      openPercent,
      travelM: (openPercent / 100) * ratedTravelM,
      errorPercent: openPercent - wantedPercent,
      direction: oneOf({ name: 'direction', value: row.direction, choices: ['up', 'down'] }),
      cycle: row.cycle,
      leftOut: onSeat ? 'on seat' : excludedRows.includes(index) ? 'at a stop' : null,
    };
  });
}

function openOf(input: { row: StrokeRow; index: number; ratedTravelM: number }): number {
  const { travelM, travelPercent } = input.row;
  refuseOutside({ cycle: input.row.cycle }, ANY_NUMBER);
  if (travelM !== undefined) {
    refuseOutside({ travelM }, ANY_NUMBER);
    return (100 * travelM) / input.ratedTravelM;
  }
  if (travelPercent === undefined) {
    throw refuseCount({ name: 'rows', value: input.index, range: 'travelM or travelPercent in each row' });
  }
  refuseOutside({ travelPercent }, ANY_NUMBER);
  return travelPercent;
}

function isOnSeat(input: {
  readonly row: StrokeRow;
  readonly airAction: AirAction;
  readonly contactPa: number;
  readonly contactMarginPa: number;
}): boolean {
  const { row, contactPa, contactMarginPa } = input;
  return input.airAction === 'air-to-open'
    ? row.signalPa <= contactPa + contactMarginPa
    : row.signalPa >= contactPa - contactMarginPa;
}
