import { z } from 'zod';
import { plainDigits } from '../readings/exact-digits.ts';
import { type SheetField, STORED_UNIT } from './field.ts';
import { quantityText } from './field-text.ts';
import { FIELDS, fieldNamed } from './fields.ts';
import { ROWS_MAX, type RowsRead, readRows, refused, tableFault } from './import-rows.ts';
import type { ValveSheet } from './sheet.ts';

/** One sheet as JSON carries it: texts as in the form; a bare number is in the unit that the field's name says. */
const sheetJson = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()]));

const sheetsJson = z.object({ valveSheets: z.array(sheetJson) });

export interface SheetsJson {
  readonly valveSheets: readonly Readonly<Record<string, string>>[];
}

/**
 * Valve sheets from a JSON value, all or none.
 *
 * @param value  as parsed: `{ "valveSheets": [{ "tag": "FV-214", "travelM": "0.75 in", ... }] }`
 * @example readSheetsJson({ valveSheets: [{ tag: 'FV-214', travelM: 0.01905, ... }] }).rows[0].sheet.travelM // 0.01905
 */
export function readSheetsJson(value: unknown): RowsRead {
  const read = sheetsJson.safeParse(value);
  if (!read.success) {
    return refused([
      tableFault('It is not {"valveSheets": [{"tag": ...}, ...]} with texts, numbers, true or false.'),
    ]);
  }
  const { valveSheets } = read.data;
  if (valveSheets.length > ROWS_MAX) {
    return refused([
      tableFault(`There are ${valveSheets.length} valves; at most ${ROWS_MAX} are taken at once.`),
    ]);
  }
  return readRows(
    valveSheets.map((sheet, index) => ({
      row: index + 1,
      texts: Object.fromEntries(
        Object.entries(sheet).map(([name, member]) => [name, textOf(fieldNamed(name), member)]),
      ),
    })),
  );
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

function textOf(field: SheetField | undefined, member: string | number | boolean | null): string {
  if (member === null) return '';
  if (typeof member === 'boolean') return member ? 'yes' : 'no';
  if (typeof member === 'string') return member;
  const digits = plainDigits(member);
  if (field?.kind !== 'quantity' || field.dimension === 'ratio') return digits;
  return `${digits} ${STORED_UNIT[field.dimension]}`;
}
