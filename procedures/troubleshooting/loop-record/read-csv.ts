import { CsvError, parse } from 'csv-parse/sync';
import type { LoopSample } from './samples.ts';
import { readTimeS, TIME_UNITS_S } from './time-cell.ts';

/** A wrong place of a table: row as a table program counts it, column as its head calls it; null for the whole of it. */
export interface LoopFault {
  readonly row: number | null;
  readonly column: string | null;
  readonly what: string;
}

export interface LoopRead {
  /** Empty where anything is wrong. */
  readonly samples: readonly LoopSample[];
  readonly faults: readonly LoopFault[];
}

/** Five thousand rows of five numbers. */
export const LOOP_LETTERS_MAX = 200_000;
const ROWS_MAX = 5000;
const ROW_LETTERS_MAX = 2000;
const ROWS_LEAST = 20;

const COLUMNS = {
  time: ['time', 't', 'timestamp', 'date and time', 'seconds'],
  output: ['output', 'controller output', 'out', 'op', 'co'],
  process: ['process', 'process value', 'process variable', 'pv', 'measurement'],
  position: ['position', 'valve position', 'travel', 'stem', 'stem position', 'vp'],
  setPoint: ['set point', 'setpoint', 'sp'],
} as const;

type ColumnName = keyof typeof COLUMNS;
const NEEDED: readonly ColumnName[] = ['time', 'output', 'process'];

/** How a column is called where something in it is wrong. */
const CALLED: Readonly<Record<ColumnName, string>> = {
  time: 'time',
  output: 'output',
  process: 'process',
  position: 'position',
  setPoint: 'set point',
};

/**
 * A record of the loop from a table: comma, semicolon or tab between the cells, point or comma before the decimals, a
 * head that names the columns; other columns are left aside. All rows are taken, or none and every wrong cell is named.
 *
 * @example readLoopCsv('time [s];output;process\n0;50,1;20,4\n1;50,2;20,4\n...').samples[0]?.outputPercent // 50.1
 */
export function readLoopCsv(text: string): LoopRead {
  if (text.length > LOOP_LETTERS_MAX)
    return whole(
      `It has ${text.length} letters; at most ${LOOP_LETTERS_MAX}. Take every second row, or fewer hours.`,
    );
  const [, sign, rest] = text.match(/^\ufeff?(?:sep=(.)\r?\n)?([\s\S]*)$/) ?? [];
  const table = rest ?? text;
  const delimiter = sign ?? delimiterOf(table);
  const records = recordsOf(table, delimiter);
  if (typeof records === 'string') return whole(records);
  const [head = [], ...body] = records;
  const columns = headOf(head);
  const missing = NEEDED.filter((name) => !columns.some((one) => one.name === name));
  if (missing.length > 0)
    return whole(
      `The head names no column ${missing.map((name) => CALLED[name]).join(', no ')}. Its first row must name time, output and process.`,
    );
  const twice = columns.find((one, at) => columns.findIndex(({ name }) => name === one.name) < at);
  if (twice !== undefined)
    return {
      samples: [],
      faults: [{ row: 1, column: CALLED[twice.name], what: 'This column stands twice.' }],
    };
  const rows = body.flatMap((cells, at) =>
    cells.every((cell) => cell.trim() === '') ? [] : [{ row: at + 2, cells }],
  );
  if (rows.length > ROWS_MAX)
    return whole(`It has ${rows.length} rows; at most ${ROWS_MAX}. Take every second row, or fewer hours.`);
  if (rows.length < ROWS_LEAST)
    return whole(`It has ${rows.length} rows; at least ${ROWS_LEAST}. A swing wants three periods and more.`);
  return samplesOf(rows, { columns, mayComma: delimiter !== ',' || hasQuoted(table) });
}

function whole(what: string): LoopRead {
  return { samples: [], faults: [{ row: null, column: null, what }] };
}

/** The head has names alone, so what stands between them most often is what divides them. */
function delimiterOf(table: string): string {
  const [line = ''] = table.split(/\r?\n/, 1);
  const counts = [',', ';', '\t'].map((sign) => ({ sign, count: line.split(sign).length }));
  return counts.reduce((most, each) => (each.count > most.count ? each : most)).sign;
}

/** A decimal comma between commas stands in quotation marks. */
function hasQuoted(table: string): boolean {
  return /"[-+\d]+,\d+"/.test(table);
}

function recordsOf(table: string, delimiter: string): readonly (readonly string[])[] | string {
  try {
    return parse(table, { delimiter, relax_column_count: true, max_record_size: ROW_LETTERS_MAX });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error.lines === 'number' ? ` Line ${error.lines} of the text.` : '';
    return error.code === 'CSV_MAX_RECORD_SIZE'
      ? `A row is longer than ${ROW_LETTERS_MAX} letters.${line}`
      : `A quotation mark stands where none can be, or is never closed.${line}`;
  }
}

interface Column {
  readonly name: ColumnName;
  readonly at: number;
  /** Seconds of one unit of the time column. */
  readonly unitS: number;
}

function headOf(head: readonly string[]): readonly Column[] {
  return head.flatMap((cell, at): readonly Column[] => {
    const [, words = cell, unit = 's'] = cell.trim().match(/^(.*?)\s*[[(]([^\])]*)[\])]$/) ?? [];
    const plain = words.trim().toLowerCase();
    const name = (Object.keys(COLUMNS) as ColumnName[]).find((one) =>
      (COLUMNS[one] as readonly string[]).includes(plain),
    );
    if (name === undefined) return [];
    return [{ name, at, unitS: TIME_UNITS_S[unit.trim().toLowerCase()] ?? 1 }];
  });
}

interface Cells {
  readonly columns: readonly Column[];
  readonly mayComma: boolean;
}

function samplesOf(
  rows: readonly { readonly row: number; readonly cells: readonly string[] }[],
  { columns, mayComma }: Cells,
): LoopRead {
  const faults: LoopFault[] = [];
  const samples: LoopSample[] = [];
  const blank = columns.filter(
    ({ name, at }) => !NEEDED.includes(name) && rows.every(({ cells }) => (cells[at] ?? '').trim() === ''),
  );
  const used = columns.filter((column) => !blank.includes(column));
  let before = Number.NEGATIVE_INFINITY;
  for (const { row, cells } of rows) {
    const read: { [C in ColumnName]?: number } = {};
    for (const column of used) {
      const value = cellOf(cells[column.at] ?? '', { column, mayComma });
      if (typeof value === 'number') read[column.name] = value;
      else faults.push({ row, column: CALLED[column.name], what: value });
    }
    const { time, output, process, position = null, setPoint = null } = read;
    if (time !== undefined && time <= before)
      faults.push({ row, column: CALLED.time, what: 'It does not come after the row before.' });
    before = time ?? before;
    if (time !== undefined && output !== undefined && process !== undefined)
      samples.push({ timeS: time, outputPercent: output, process, positionPercent: position, setPoint });
  }
  if (faults.length > 0) return { samples: [], faults };
  const [first] = samples;
  return { samples: samples.map((one) => ({ ...one, timeS: one.timeS - (first?.timeS ?? 0) })), faults };
}

const NUMBER = /^[-+\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d{1,2})?$/;
/** Output and position in percent, with what a range may be overrun by. */
const PERCENT_REACH: readonly [number, number] = [-10, 110];

/** The number of a cell, or what is wrong with it. */
function cellOf(
  cell: string,
  { column: { name, unitS }, mayComma }: { readonly column: Column; readonly mayComma: boolean },
): number | string {
  const text = cell.trim();
  if (text === '') return 'Nothing is written.';
  const shown = text.length > 20 ? `${text.slice(0, 20)}...` : text;
  if (!NUMBER.test(text) || (text.includes(',') && !mayComma)) {
    const timeS = name === 'time' ? readTimeS(text) : null;
    return timeS ?? `“${shown}” is no number${name === 'time' ? ' and no time' : ''}.`;
  }
  const value = Number(text.replace(',', '.').replace('\u2212', '-'));
  if (name === 'time') return value * unitS;
  const [low, high] = PERCENT_REACH;
  return (name === 'output' || name === 'position') && (value < low || value > high)
    ? `${shown} is beyond ${low} to ${high} %.`
    : value;
}
