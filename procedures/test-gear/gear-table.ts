import { CsvError, parse } from 'csv-parse/sync';
import { z } from 'zod';
import { csvCell } from '../csv-cell.ts';
import { plainDigits } from '../readings/exact-digits.ts';
import { type CellFault, tableFault } from '../valve-sheet/import-rows.ts';
import { GEAR_FIELDS, type GearFieldName } from './fields.ts';
import type { GearItem } from './gear.ts';
import { gearText } from './gear-text.ts';
import { readGear } from './read-gear.ts';

/** More than any plant has; one answer must stay quick. */
export const GEAR_ROWS_MAX = 2000;

/** So many are listed by name; the rest is counted. */
const FAULTS_MAX = 200;

/** Far more than all cells of a row with their longest texts. */
const RECORD_LETTERS_MAX = 20_000;

const NAMES: readonly GearFieldName[] = GEAR_FIELDS.map(({ name }) => name);

type Texts = Readonly<Record<string, string>>;

interface GivenRow {
  /** As the table counts it, the head being row 1; in JSON, the place in the list. */
  readonly row: number;
  readonly texts: Texts;
}

export interface GearRow {
  readonly row: number;
  readonly item: GearItem;
}

export interface GearTableRead {
  /** Empty as soon as there is one fault: nothing is half imported. */
  readonly rows: readonly GearRow[];
  readonly faults: readonly CellFault[];
  /** Faults that are not listed. */
  readonly moreFaults: number;
}

/**
 * Test gear from a table: comma, semicolon or tab between the cells, the names of the fields in its head. All rows are
 * taken, or none and every wrong cell named.
 *
 * @param today  YYYY-MM-DD: nothing is calibrated tomorrow
 * @example readGearCsv('number,kind,unit,rangeLow,rangeHigh,...\r\nG-07,pressure gauge,psi,0,30,...', '2026-03-04').rows[0].row // 2
 */
export function readGearCsv(text: string, today: string): GearTableRead {
  const read = recordsOf(text.replace(/^\ufeff/, ''));
  if ('fault' in read) return refusedGear([read.fault]);
  const [head = [], ...body] = read.records;
  const names = head.map((cell) => withoutGuard(cell).trim());
  const faults = headFaults(names);
  if (faults.length > 0) return refusedGear(faults);
  const given = body.flatMap((cells, index): readonly GivenRow[] => {
    if (cells.every((cell) => cell.trim() === '')) return [];
    const row = index + 2;
    if (cells.slice(names.length).some((cell) => cell.trim() !== ''))
      faults.push({ row, column: null, what: `It has ${cells.length} cells; the head has ${names.length}.` });
    return [
      { row, texts: Object.fromEntries(names.map((name, at) => [name, withoutGuard(cells[at] ?? '')])) },
    ];
  });
  return faults.length > 0 ? refusedGear(faults) : readRows(given, today);
}

const gearJson = z.object({
  testGear: z.array(z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()]))),
});

/**
 * Test gear from a JSON value, all or none.
 *
 * @param value  as parsed: `{ "testGear": [{ "number": "G-07", "kind": "pressure gauge", ... }] }`
 * @example readGearJson({ testGear: [] }, '2026-03-04').faults[0].what // 'There is no test gear in it.'
 */
export function readGearJson(value: unknown, today: string): GearTableRead {
  const read = gearJson.safeParse(value);
  if (!read.success)
    return refusedGear([tableFault('It is not {"testGear": [{"number": ...}, ...]} with texts or numbers.')]);
  const given = read.data.testGear.map((members, index) => ({ row: index + 1, members }));
  const faults = given.flatMap(({ row, members }) =>
    Object.keys(members)
      .filter((name) => !isName(name))
      .map((name): CellFault => ({ row, column: name, what: unknownName(name) })),
  );
  if (faults.length > 0) return refusedGear(faults);
  const rows = given.map(({ row, members }) => ({
    row,
    texts: Object.fromEntries(Object.entries(members).map(([name, member]) => [name, textOf(member)])),
  }));
  return readRows(rows, today);
}

/**
 * Test gear as a table that reads back to the very same; no cell begins like a formula.
 * @example writeGearCsv([]).startsWith('\ufeffnumber,kind,unit') // true
 */
export function writeGearCsv(items: readonly GearItem[]): string {
  const rows = items.map((item) => NAMES.map((name) => gearText(item)[name]));
  // The mark in front makes table programs read the letters as UTF-8.
  return `\ufeff${[NAMES, ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('')}`;
}

export function refusedGear(faults: readonly CellFault[]): GearTableRead {
  const moreFaults = Math.max(0, faults.length - FAULTS_MAX);
  return { rows: [], faults: faults.slice(0, FAULTS_MAX), moreFaults };
}

function readRows(given: readonly GivenRow[], today: string): GearTableRead {
  if (given.length === 0) return refusedGear([tableFault('There is no test gear in it.')]);
  if (given.length > GEAR_ROWS_MAX)
    return refusedGear([
      tableFault(`There are ${given.length} pieces; at most ${GEAR_ROWS_MAX} are taken at once. Split them.`),
    ]);
  const rows: GearRow[] = [];
  const faults: CellFault[] = [];
  const rowOf = new Map<string, number>();
  for (const { row, texts } of given) {
    const read = readGear({ texts, today });
    if (!read.ok) {
      faults.push(...Object.entries(read.faults).map(([column, what]) => ({ row, column, what })));
      continue;
    }
    const { number } = read.item;
    const before = rowOf.get(number);
    if (before !== undefined)
      faults.push({ row, column: 'number', what: `${number} stands in row ${before} already.` });
    rowOf.set(number, row);
    rows.push({ row, item: read.item });
  }
  return faults.length === 0 ? { rows, faults: [], moreFaults: 0 } : refusedGear(faults);
}

function headFaults(names: readonly string[]): CellFault[] {
  const faults = names.flatMap((name, at): readonly CellFault[] => {
    if (!isName(name)) return [{ row: 1, column: name, what: unknownName(name) }];
    return names.indexOf(name) < at ? [{ row: 1, column: name, what: 'This column stands twice.' }] : [];
  });
  if (faults.length === 0 && !names.includes('number'))
    return [{ row: 1, column: 'number', what: 'The column number is missing.' }];
  return faults;
}

function isName(name: string): boolean {
  return NAMES.some((one) => one === name);
}

function unknownName(name: string): string {
  return `“${name.slice(0, 40)}” is no column of test gear. There are: ${NAMES.join(', ')}.`;
}

function recordsOf(
  table: string,
): { readonly records: readonly (readonly string[])[] } | { readonly fault: CellFault } {
  const [line = ''] = table.split(/\r?\n/, 1);
  const counts = [',', ';', '\t'].map((sign) => ({ sign, count: line.split(sign).length }));
  const delimiter = counts.reduce((most, each) => (each.count > most.count ? each : most)).sign;
  try {
    const records: string[][] = parse(table, {
      delimiter,
      relax_column_count: true,
      max_record_size: RECORD_LETTERS_MAX,
    });
    return { records };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const at = typeof error.lines === 'number' ? ` Look at line ${error.lines} of the text.` : '';
    return { fault: tableFault(`It cannot be read as a table: a quotation mark or a row is wrong.${at}`) };
  }
}

/** The apostrophe that `csvCell` put in front. */
function withoutGuard(cell: string): string {
  return /^'[=+\-@\t\r']/.test(cell) ? cell.slice(1) : cell;
}

function textOf(member: string | number | boolean | null): string {
  if (member === null) return '';
  if (typeof member === 'boolean') return member ? 'yes' : 'no';
  return typeof member === 'number' ? plainDigits(member) : member;
}
