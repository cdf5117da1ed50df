import { CsvError, parse } from 'csv-parse/sync';
import type { UnitSystem } from '../calculations/units.ts';
import { csvCell } from '../csv-cell.ts';
import { readDigits } from '../readings/digits.ts';
import { type Column, columnName, headOf, readHead } from './columns.ts';
import { fieldText } from './field-text.ts';
import { FIELDS } from './fields.ts';
import {
  type CellFault,
  type GivenRow,
  type RowsRead,
  readRows,
  refused,
  tableFault,
} from './import-rows.ts';
import type { ValveSheet } from './sheet.ts';

/** Far more than all columns of a sheet with their longest texts. */
const RECORD_LETTERS_MAX = 50_000;

/**
 * Valve sheets from a table: comma, semicolon or tab between the cells, a unit in the head of each column.
 * All rows are taken, or none and every wrong cell named by row and column.
 *
 * @example readSheetsCsv('tag,travel [in],...\r\nFV-214,0.75,...').rows[0].sheet.travelM // 0.01905
 */
export function readSheetsCsv(text: string): RowsRead {
  const records = recordsOf(text);
  if ('fault' in records) return refused([records.fault]);
  const [head = [], ...body] = records.records;
  const columns = head.map((cell) => readHead(withoutGuard(cell)));
  const faults = headFaults(head, columns);
  if (faults.length > 0) return refused(faults);
  const known = columns.filter((column): column is Column => 'field' in column);
  const given: GivenRow[] = [];
  for (const [index, cells] of body.entries()) {
    const row = index + 2;
    if (cells.every((cell) => cell.trim() === '')) continue;
    if (cells.slice(known.length).some((cell) => cell.trim() !== ''))
      faults.push({ row, column: null, what: `It has ${cells.length} cells; the head has ${known.length}.` });
    given.push({ row, texts: textsOf(known, cells) });
  }
  if (faults.length > 0) return refused(faults);
  const heads = new Map(known.map(({ field, head: written }) => [field.name as string, written]));
  return readRows(given, (name) => heads.get(name) ?? name);
}

/**
 * Valve sheets as a table that reads back to the very same sheets. A value that has no short number in the column's
 * unit stands with its own unit in the cell. No cell begins like a formula.
 *
 * @example writeSheetsCsv([sheet], 'us').split('\r\n')[0] // 'tag,service,...,travel [in],...'
 */
export function writeSheetsCsv(sheets: readonly ValveSheet[], system: UnitSystem): string {
  const head = FIELDS.map((field) => headOf(field, system));
  const rows = sheets.map((sheet) =>
    FIELDS.map((field) => fieldText(field, { value: sheet[field.name], system })),
  );
  // The mark in front makes table programs read the letters as UTF-8.
  return `\ufeff${[head, ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('')}`;
}

/** The apostrophe that `csvCell` put in front. */
function withoutGuard(cell: string): string {
  return /^'[=+\-@\t\r']/.test(cell) ? cell.slice(1) : cell;
}

function recordsOf(
  text: string,
): { readonly records: readonly (readonly string[])[] } | { readonly fault: CellFault } {
  const [, separator, rest] = text.match(/^\ufeff?(?:sep=(.)\r?\n)?([\s\S]*)$/) ?? [];
  const table = rest ?? text;
  try {
    const records: string[][] = parse(table, {
      delimiter: separator ?? delimiterOf(table),
      relax_column_count: true,
      max_record_size: RECORD_LETTERS_MAX,
    });
    return { records };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { fault: tableFault(saidOf(error)) };
  }
}

/** The head has names alone, so what stands between them most often is what divides them. */
function delimiterOf(table: string): string {
  const [line = ''] = table.split(/\r?\n/, 1);
  const counts = [',', ';', '\t'].map((sign) => ({ sign, count: line.split(sign).length }));
  return counts.reduce((most, each) => (each.count > most.count ? each : most)).sign;
}

function saidOf(error: CsvError): string {
  const line = typeof error.lines === 'number' ? ` Line ${error.lines} of the text.` : '';
  switch (error.code) {
    case 'CSV_QUOTE_NOT_CLOSED':
      return `A quotation mark is opened and never closed.${line}`;
    case 'CSV_MAX_RECORD_SIZE':
      return `A row is longer than ${RECORD_LETTERS_MAX} letters.${line}`;
    default:
      return `A quotation mark stands inside a cell that does not begin with one.${line}`;
  }
}

function headFaults(
  head: readonly string[],
  columns: readonly (Column | { readonly fault: string })[],
): CellFault[] {
  const faults: CellFault[] = columns.flatMap((column, index) =>
    'fault' in column ? [{ row: 1, column: head[index] ?? null, what: column.fault }] : [],
  );
  const named = columns.flatMap((column) => ('field' in column ? [column.field.name] : []));
  for (const [index, name] of named.entries()) {
    if (named.indexOf(name) < index) faults.push({ row: 1, column: name, what: 'This column stands twice.' });
  }
  if (named.length === 0)
    return faults.length > 0 ? faults : [tableFault('There is no head with column names.')];
  for (const field of FIELDS) {
    const missing = field.required === true && !named.includes(field.name);
    if (missing)
      faults.push({ row: 1, column: columnName(field), what: `The column ${columnName(field)} is missing.` });
  }
  return faults;
}

function textsOf(columns: readonly Column[], cells: readonly string[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    columns.map(({ field, unit }, index) => [field.name, withUnit(withoutGuard(cells[index] ?? ''), unit)]),
  );
}

/** A number alone is in the unit of its column; one with a unit keeps its own. */
function withUnit(cell: string, unit: Column['unit']): string {
  if (unit === null || cell.trim() === '') return cell;
  const digits = readDigits(cell);
  return digits.ok && digits.rest === '' ? `${cell.trim()} ${unit}` : cell;
}
