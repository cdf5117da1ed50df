import { CsvError, parse } from 'csv-parse/sync';
import type { LoopSample } from './samples.ts';
import { type DayOrder, dayOrderOf, readTimeS, TIME_UNITS_S } from './time-cell.ts';

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

/** Names of the columns, small letters without accents; Spanish ones too. */
const COLUMNS = {
  time: ['time', 't', 'timestamp', 'date and time', 'seconds', 'tiempo', 'hora', 'fecha y hora', 'segundos'],
  output: ['output', 'controller output', 'out', 'op', 'co', 'salida', 'salida del controlador'],
  process: [
    ...['process', 'process value', 'process variable', 'pv', 'measurement'],
    ...['proceso', 'valor de proceso', 'variable de proceso', 'medicion'],
  ],
  position: [
    ...['position', 'valve position', 'travel', 'stem', 'stem position', 'vp'],
    ...['posicion', 'posicion de la valvula', 'carrera', 'vastago'],
  ],
  setPoint: ['set point', 'setpoint', 'sp', 'consigna', 'punto de consigna', 'punto de ajuste'],
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
      `It has ${text.length} letters; at most ${LOOP_LETTERS_MAX}. ${fewer(text.length, LOOP_LETTERS_MAX)}`,
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
      `Its first row names no column for ${missing.map((name) => CALLED[name]).join(', ')}. Name them time, output and process, or t, OP and PV.`,
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
    return whole(`It has ${rows.length} rows; at most ${ROWS_MAX}. ${fewer(rows.length, ROWS_MAX)}`);
  if (rows.length < ROWS_LEAST)
    return whole(`It has ${rows.length} rows; at least ${ROWS_LEAST}. A swing wants three periods and more.`);
  return samplesOf(rows, { columns, mayComma: delimiter !== ',' || hasQuoted(table) });
}

function whole(what: string): LoopRead {
  return { samples: [], faults: [{ row: null, column: null, what }] };
}

function fewer(has: number, most: number): string {
  return has <= 2 * most
    ? 'Take every second row, or fewer hours.'
    : `Take one row of ${Math.ceil(has / most)}, or fewer hours.`;
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
    const plain = words.trim().toLowerCase().normalize('NFD').replaceAll(/\p{M}/gu, '');
    // A plant calls its columns by tags: FIC-101.PV.
    const said = [plain, plain.split('.').at(-1) ?? ''];
    const name = (Object.keys(COLUMNS) as ColumnName[]).find((one) =>
      (COLUMNS[one] as readonly string[]).some((called) => said.includes(called)),
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
  const timeAt = columns.find(({ name }) => name === 'time')?.at ?? 0;
  const order = dayOrderOf(rows.map(({ cells }) => cells[timeAt] ?? ''));
  if (order === null) return whole('Day and month of its dates cannot be told apart. Write the year first.');
  let before = Number.NEGATIVE_INFINITY;
  let midnightsS = 0;
  for (const { row, cells } of rows) {
    const read: { [C in ColumnName]?: number } = {};
    for (const column of used) {
      const value = cellOf(cells[column.at] ?? '', { column, mayComma, order });
      if (typeof value === 'number') read[column.name] = value;
      else faults.push({ row, column: CALLED[column.name], what: value });
    }
    const { output, process, position = null, setPoint = null } = read;
    if (read.time !== undefined && isPastMidnight(cells[timeAt] ?? '', before - read.time - midnightsS))
      midnightsS += DAY_S;
    const time = read.time === undefined ? undefined : read.time + midnightsS;
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

const DAY_S = 86_400;

/** A clock without a date that falls back by more than half a day has gone past midnight. */
function isPastMidnight(cell: string, fallsBackS: number): boolean {
  return /^\s*\d{1,2}:/.test(cell) && fallsBackS > DAY_S / 2;
}

const NUMBER = /^[-+\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d{1,2})?$/;
/** Output and position in percent, with what a range may be overrun by. */
const PERCENT_REACH: readonly [number, number] = [-10, 110];

/** The number of a cell, or what is wrong with it. */
function cellOf(
  cell: string,
  of: { readonly column: Column; readonly mayComma: boolean; readonly order: DayOrder },
): number | string {
  const { column, mayComma, order } = of;
  const { name, unitS } = column;
  const text = cell.trim();
  if (text === '') return 'Nothing is written.';
  const shown = text.length > 20 ? `${text.slice(0, 20)}...` : text;
  if (!NUMBER.test(text) || (text.includes(',') && !mayComma)) {
    const timeS = name === 'time' ? readTimeS(text, order) : null;
    return timeS ?? `“${shown}” is no number${name === 'time' ? ' and no time' : ''}.`;
  }
  const value = Number(text.replace(',', '.').replace('\u2212', '-'));
  if (name === 'time') return value * unitS;
  const [low, high] = PERCENT_REACH;
  return (name === 'output' || name === 'position') && (value < low || value > high)
    ? `${shown} is beyond ${low} to ${high} %.`
    : value;
}
