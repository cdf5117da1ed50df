import { CalcError } from './calc-error.ts';
import { ABOVE_ZERO, oneOf, refuseOutside } from './checks.ts';
import type { SourceId } from './sources.ts';
import { convert, toSi } from './units.ts';

export type LeakageClass = 'I' | 'II' | 'III' | 'IV' | 'V' | 'VI';

/** Seat load that a class needs, as printed: pound-force for each inch of port circumference. */
export interface SeatLoadTable {
  readonly title: string;
  readonly source: SourceId;
  readonly note: string;
  /** For each class one or more figures, each up to a port size; the last has none. */
  readonly classes: Readonly<Partial<Record<LeakageClass, readonly SeatLoadRow[]>>>;
}

export interface SeatLoadRow {
  readonly portUpToIn: number | null;
  readonly lbfPerIn: number;
}

const anyPort = (lbfPerIn: number): readonly SeatLoadRow[] => [{ portUpToIn: null, lbfPerIn }];

/**
 * The two tables that are at hand disagree by a factor of two: seat load belongs to a maker's design. The valve sheet
 * chooses one of them or states a figure of its own; no calculation takes one by itself. Soft seats need less.
 */
export const SEAT_LOAD_TABLES = {
  'sizing-guide-2008': {
    title: 'Seat loads behind the allowable pressure drops of a sizing guide of 2008',
    source: 'S-13',
    note: 'Recovered by fitting the printed drops, which they reproduce to the last digit; class III is not in it.',
    classes: { II: anyPort(10), IV: anyPort(30), V: anyPort(120), VI: anyPort(30) },
  },
  'handbook-metal-seats': {
    title: 'Seat loads of a handbook family, metal seats',
    source: 'S-16',
    note: 'From memory, not read; class V of that family comes from a chart and is not here.',
    classes: {
      II: anyPort(20),
      III: anyPort(40),
      IV: [
        { portUpToIn: 4.375, lbfPerIn: 40 },
        { portUpToIn: null, lbfPerIn: 80 },
      ],
      VI: anyPort(300),
    },
  },
} as const satisfies Readonly<Record<string, SeatLoadTable>>;

export type SeatLoadTableId = keyof typeof SEAT_LOAD_TABLES;

/**
 * Seat load that a leakage class needs, by the table that the valve sheet names.
 *
 * Shape: table, class and port in; force for each length out, with the figure as printed.
 * Valid: as the table says; a class that a table does not have is refused, not guessed.
 * @param table          id of the table
 * @param leakageClass   of the valve
 * @param portDiameterM  above 0
 * @returns need for each length of port, need of the whole port, printed figure, title and source of the table
 * @throws CalcError CALC-001 or CALC-002 by the name of the input; CALC-005 if table or class is not in the list
 * @source [S-13] and [S-16] by the table named
 * @example seatLoadNeed({ table: 'sizing-guide-2008', leakageClass: 'IV', portDiameterM: 0.0508 }).seatLoadNeedNPerM // 5253.805
 * @example seatLoadNeed({ table: 'sizing-guide-2008', leakageClass: 'III', portDiameterM: 0.0508 }) // throws CALC-005
 */
export function seatLoadNeed(input: {
  readonly table: SeatLoadTableId;
  readonly leakageClass: LeakageClass;
  readonly portDiameterM: number;
}): {
  readonly seatLoadNeedNPerM: number;
  readonly seatLoadNeedN: number;
  readonly printedLbfPerIn: number;
  readonly table: string;
  readonly source: SourceId;
} {
  const { portDiameterM } = input;
  refuseOutside({ portDiameterM }, ABOVE_ZERO);
  const ids = Object.keys(SEAT_LOAD_TABLES) as SeatLoadTableId[];
  const table: SeatLoadTable = SEAT_LOAD_TABLES[oneOf({ name: 'table', value: input.table, choices: ids })];
  const portIn = convert({ value: portDiameterM, from: 'm', to: 'in' });
  const rows = table.classes[input.leakageClass] ?? [];
  const row = rows.find(({ portUpToIn }) => portUpToIn === null || portIn <= portUpToIn + 1e-9);
  if (row === undefined) {
    const range = `one of ${Object.keys(table.classes).join(', ')}`;
    throw new CalcError({
      code: 'CALC-005',
      name: 'leakageClass',
      value: input.leakageClass,
      range,
      unit: '',
    });
  }
  const seatLoadNeedNPerM = toSi({ value: row.lbfPerIn, unit: 'lbf/in' });
  return {
    seatLoadNeedNPerM,
    seatLoadNeedN: seatLoadNeedNPerM * Math.PI * portDiameterM,
    printedLbfPerIn: row.lbfPerIn,
    table: table.title,
    source: table.source,
  };
}
