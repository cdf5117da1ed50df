import { readJson } from '../tables/read-table.ts';
import type { TableRead } from '../tables/table-form.ts';
import type { SheetField } from './field.ts';
import { quantityText } from './field-text.ts';
import { FIELDS } from './fields.ts';
import type { ValveSheet } from './sheet.ts';
import { type SheetItem, VALVE_TABLE } from './table.ts';

export interface SheetsJson {
  readonly valveSheets: readonly Readonly<Record<string, string>>[];
}

/**
 * Valve sheets from a JSON value, all or none. A bare number is in the unit that the field's name says.
 *
 * @param value  as parsed: `{ "valveSheets": [{ "tag": "FV-214", "travelM": "0.75 in", ... }] }`
 * @example readSheetsJson({ valveSheets: [{ tag: 'FV-214', travelM: 0.01905, ... }] }).rows[0].sheet.travelM // 0.01905
 */
export function readSheetsJson(value: unknown): TableRead<SheetItem> {
  return readJson(VALVE_TABLE, value);
}

/**
 * Valve sheets as JSON, each quantity with its unit; reads back to the very same sheets.
 * @example writeSheetsJson([sheet]).valveSheets[0].travelM // '0.75 in'
 */
export function writeSheetsJson(sheets: readonly ValveSheet[]): SheetsJson {
  return {
    valveSheets: sheets.map((sheet) =>
      Object.fromEntries(FIELDS.map((field) => [field.name, writtenOut(field, sheet)])),
    ),
  };
}

function writtenOut(field: SheetField, sheet: ValveSheet): string {
  const value = sheet[field.name];
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (field.kind !== 'quantity' || typeof value !== 'number') return String(value);
  const { digits, unit } = quantityText(field, { value, system: sheet.units });
  return unit === '1' ? digits : `${digits} ${unit}`;
}
