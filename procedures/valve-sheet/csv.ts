import type { UnitSystem } from '../calculations/units.ts';
import { csvText } from '../tables/csv-text.ts';
import { readCsv } from '../tables/read-table.ts';
import type { TableRead } from '../tables/table-form.ts';
import { headOf } from './columns.ts';
import { fieldText } from './field-text.ts';
import { FIELDS } from './fields.ts';
import type { ValveSheet } from './sheet.ts';
import { type SheetItem, VALVE_TABLE } from './table.ts';

/**
 * Valve sheets from a table: comma, semicolon or tab between the cells, a unit in the head of each column.
 * All rows are taken, or none and every wrong cell named by row and column.
 *
 * @example readSheetsCsv('tag,travel [in],...\r\nFV-214,0.75,...').rows[0].sheet.travelM // 0.01905
 */
export function readSheetsCsv(text: string): TableRead<SheetItem> {
  return readCsv(VALVE_TABLE, text);
}

/**
 * Valve sheets as a table that reads back to the very same sheets. A value that has no short number in the column's
 * unit stands with its own unit in the cell. No cell begins like a formula.
 *
 * @example writeSheetsCsv([sheet], 'us').split('\r\n')[0] // 'tag,service,...,travel [in],...'
 */
export function writeSheetsCsv(sheets: readonly ValveSheet[], system: UnitSystem): string {
  return csvText([sheetHeads(system), ...sheetCells(sheets, system)]);
}

/** The head of that table. */
export function sheetHeads(system: UnitSystem): readonly string[] {
  return FIELDS.map((field) => headOf(field, system));
}

/** Rows of that table, for whoever writes it in pieces. */
export function sheetCells(
  sheets: readonly ValveSheet[],
  system: UnitSystem,
): readonly (readonly string[])[] {
  return sheets.map((sheet) => FIELDS.map((field) => fieldText(field, { value: sheet[field.name], system })));
}
