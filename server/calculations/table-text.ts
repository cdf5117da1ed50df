/** A table of readings as people paste it: commas, semicolons, tabs or blanks between, with a head or without. */
import { CsvError, parse } from 'csv-parse/sync';
import type { CellInput, RowsInput } from '../../procedures/calculations/calculation-types.ts';
import type { UnitId } from '../../procedures/calculations/unit-table.ts';
import { isUnitId, type UnitSystem } from '../../procedures/calculations/units.ts';
import { unitWord } from '../../procedures/readings/unit-words.ts';
import { type InputText, inputText } from './input-text.ts';

/** More than any recorder writes for one stroke or one step. */
const ROWS_MAX = 5000;

export type TableText =
  | { readonly kind: 'read'; readonly rows: readonly Readonly<Record<string, unknown>>[] }
  | { readonly kind: 'blank' }
  | { readonly kind: 'wrong'; readonly what: string };

const HEAD_LETTERS_MAX = 80;

interface Column {
  readonly name: string;
  readonly spec: CellInput;
  /** Where in the line it stands. */
  readonly at: number;
  readonly unit: UnitId | undefined;
}

type Cells = readonly string[];

/**
 * The rows of a pasted table. A decimal comma leaves only semicolon, tab or blank between the cells; of the signs
 * that could divide them, the first is taken with which every cell can be read.
 *
 * @example tableText('0; 50,1\n1; 62,3', { spec, units: 'si' }) // { kind: 'read', rows: [{ timeS: 0, travelPercent: 50.1 }, ...] }
 */
export function tableText(
  text: string,
  of: { readonly spec: RowsInput; readonly units: UnitSystem },
): TableText {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  if (lines.length === 0) return { kind: 'blank' };
  if (lines.length > ROWS_MAX + 1) {
    return {
      kind: 'wrong',
      what: `It has ${lines.length} lines; at most ${ROWS_MAX}. Leave out what is quiet.`,
    };
  }
  let worst: TableText = { kind: 'wrong', what: 'No line can be read.' };
  for (const divided of [byTab, bySemicolon, byComma, byBlanks]) {
    const table = divided(lines);
    if (table === null) continue;
    const read = rowsOf(table, of);
    if (read.kind === 'read') return read;
    // What is wrong is said of the sign that was found first: it is the one that was meant.
    if (worst.kind === 'wrong' && worst.what === 'No line can be read.') worst = read;
  }
  return worst;
}

const byTab = (lines: Cells): readonly Cells[] | null => divide(lines, '\t');
const bySemicolon = (lines: Cells): readonly Cells[] | null => divide(lines, ';');
const byComma = (lines: Cells): readonly Cells[] | null => divide(lines, ',');
const byBlanks = (lines: Cells): readonly Cells[] => lines.map((line) => line.trim().split(/\s+/));

function divide(lines: Cells, delimiter: string): readonly Cells[] | null {
  if (!lines.every((line) => line.includes(delimiter))) return null;
  try {
    return parse(lines.join('\n'), { delimiter, relax_column_count: true, trim: true, bom: true });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    return null;
  }
}

function rowsOf(
  table: readonly Cells[],
  { spec, units }: { readonly spec: RowsInput; readonly units: UnitSystem },
): TableText {
  const [first = []] = table;
  const headed = hasHead(first, spec);
  const columns = headed ? columnsOf(first, spec) : inOrder(spec);
  const missing = Object.entries(spec.columns).filter(
    ([name, column]) => !mayBeBlank(column) && !columns.some((each) => each.name === name),
  );
  if (missing.length > 0) {
    return {
      kind: 'wrong',
      what: `The head has no column ${missing.map(([, { title }]) => title).join(', ')}.`,
    };
  }
  const rows: Readonly<Record<string, unknown>>[] = [];
  const from = headed ? 1 : 0;
  for (const [index, cells] of table.slice(from).entries()) {
    const row = rowOf(cells, { columns, units, isWide: !headed });
    if (typeof row === 'string') return { kind: 'wrong', what: `Line ${index + 1 + from}: ${row}` };
    rows.push(row);
  }
  return rows.length === 0
    ? { kind: 'wrong', what: 'Below the head stands no line.' }
    : { kind: 'read', rows };
}

function mayBeBlank(column: CellInput): boolean {
  return (
    (column.kind === 'number' && (column.optional === true || column.usual !== undefined)) ||
    (column.kind === 'choice' && column.optional === true)
  );
}

function inOrder(spec: RowsInput): readonly Column[] {
  return Object.entries(spec.columns).map(([name, column], at) => ({
    name,
    spec: column,
    at,
    unit: undefined,
  }));
}

function rowOf(
  cells: Cells,
  of: { readonly columns: readonly Column[]; readonly units: UnitSystem; readonly isWide: boolean },
): Readonly<Record<string, unknown>> | string {
  if (of.isWide && cells.length > of.columns.length) {
    return `it has ${cells.length} cells; there are ${of.columns.length} columns.`;
  }
  const row: Record<string, unknown> = {};
  for (const { name, spec, at, unit } of of.columns) {
    const cell = inputText(cells[at] ?? '', {
      name,
      spec,
      units: of.units,
      ...(unit === undefined ? {} : { unit }),
    });
    const fault = faultOf(cell, spec);
    if (fault !== null) return `${spec.title}: ${fault}`;
    row[name] = cell.kind === 'read' ? cell.value : null;
  }
  return row;
}

function faultOf(cell: InputText, spec: CellInput): string | null {
  if (cell.kind === 'wrong') return cell.what;
  return cell.kind === 'blank' && !mayBeBlank(spec) ? 'nothing is written.' : null;
}

/** A head names at least one column in words; readings never do. */
function hasHead(cells: Cells, spec: RowsInput): boolean {
  return columnsOf(cells, spec).length > 0;
}

function columnsOf(cells: Cells, spec: RowsInput): readonly Column[] {
  return cells.flatMap((cell, at) => {
    const { words, unit } = headOf(cell);
    const found = Object.entries(spec.columns).find(([name, column]) =>
      namesOf(name, column).includes(words),
    );
    return found === undefined ? [] : [{ name: found[0], spec: found[1], at, unit }];
  });
}

/** @example headOf('Travel [mm]') // { words: 'travel', unit: 'mm' } */
function headOf(cell: string): { readonly words: string; readonly unit: UnitId | undefined } {
  // Longer than any name of a column: not searched through.
  if (cell.length > HEAD_LETTERS_MAX) return { words: '', unit: undefined };
  const [, words = cell, bracketed] = cell.trim().match(/^(.*?)\s*[[(]([^\])]+)[\])]$/) ?? [];
  const plain = words.trim().toLowerCase();
  if (bracketed === undefined) return { words: plain, unit: undefined };
  const meant = unitWord(bracketed);
  const [unit] = meant.kind === 'units' ? meant.units : [];
  return { words: plain, unit: unit !== undefined && isUnitId(unit) ? unit : undefined };
}

/** A column is called by its title, by its name in code, or by the words of its name without the unit. */
function namesOf(name: string, { title }: CellInput): readonly string[] {
  const words = name.replace(/(Pa|M|S|Percent)$/, '').replaceAll(/([A-Z])/g, ' $1');
  return [name, title, words].map((each) => each.trim().toLowerCase());
}
