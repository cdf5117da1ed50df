import { CsvError, parse } from 'csv-parse/sync';
import { csvCell } from '../csv-cell.ts';
import { type CellFault, tableFault } from './table-form.ts';

/** Far more than all columns of a row with their longest texts. */
const RECORD_LETTERS_MAX = 50_000;

export type CsvRecords = { readonly records: readonly (readonly string[])[] } | { readonly fault: CellFault };

/**
 * The cells of a table: comma, semicolon or tab between them, whichever divides its head.
 * @example csvRecords('tag;service\nFV-1;steam').records // [['tag', 'service'], ['FV-1', 'steam']]
 */
export function csvRecords(text: string): CsvRecords {
  const [, separator, rest] = text.match(/^\ufeff?(?:sep=(.)\r?\n)?([\s\S]*)$/) ?? [];
  const table = rest ?? text;
  try {
    const records: string[][] = parse(table, {
      delimiter: separator ?? delimiterOf(table),
      relax_column_count: true,
      max_record_size: RECORD_LETTERS_MAX,
    });
    return { records: records.map((cells) => cells.map(withoutGuard)) };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return { fault: tableFault(saidOf(error)) };
  }
}

/**
 * A table for other programs; no cell begins like a formula.
 * @example csvText([['tag'], ['FV-1']]) // '\ufefftag\r\nFV-1\r\n'
 */
export function csvText(records: readonly (readonly string[])[]): string {
  // The mark in front makes table programs read the letters as UTF-8.
  return `\ufeff${csvRows(records)}`;
}

/** Rows of such a table without the mark in front, for whoever writes it in pieces. */
export function csvRows(records: readonly (readonly string[])[]): string {
  return records.map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}

/** The apostrophe that `csvCell` put in front. */
function withoutGuard(cell: string): string {
  return /^'[=+\-@\t\r']/.test(cell) ? cell.slice(1) : cell;
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
