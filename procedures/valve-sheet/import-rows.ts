/** Many sheets at once, from a table or from JSON: all of them, or none and every reason why. */
import type { Contradiction } from './contradictions/rule.ts';
import { contradictionsOf } from './contradictions.ts';
import { readSheet } from './read-sheet.ts';
import type { ValveSheet } from './sheet.ts';

/** Above this an import is refused whole: a plant has fewer valves, and one answer must stay quick. */
export const ROWS_MAX = 5000;

/** So many are listed by name; the rest is counted. */
const FAULTS_MAX = 200;

export interface GivenRow {
  /** As the table counts it, the head being row 1; in JSON, the place in the list. */
  readonly row: number;
  readonly texts: Readonly<Record<string, string>>;
}

export interface SheetRow extends GivenRow {
  readonly sheet: ValveSheet;
  /** Those that are only shown. */
  readonly contradictions: readonly Contradiction[];
}

export interface CellFault {
  /** Null for the table as a whole. */
  readonly row: number | null;
  /** The head of the column as it is written, or the name of the field. */
  readonly column: string | null;
  readonly what: string;
}

export interface RowsRead {
  /** Empty as soon as there is one fault: nothing is half imported. */
  readonly rows: readonly SheetRow[];
  readonly faults: readonly CellFault[];
  /** Faults that are not listed. */
  readonly moreFaults: number;
}

/**
 * @param columnOf  how the table calls a field
 */
export function readRows(
  given: readonly GivenRow[],
  columnOf: (name: string) => string = (name) => name,
): RowsRead {
  if (given.length > ROWS_MAX) {
    return refused([
      tableFault(`There are ${given.length} valves; at most ${ROWS_MAX} are taken at once. Split them.`),
    ]);
  }
  if (given.length === 0) return refused([tableFault('There is no valve in it.')]);
  const rows: SheetRow[] = [];
  const faults: CellFault[] = [];
  const rowOfTag = new Map<string, number>();
  for (const each of given) {
    const read = readRow(each, { columnOf, rowOfTag });
    if ('sheet' in read) rows.push(read);
    else faults.push(...read.faults);
  }
  return faults.length === 0 ? { rows, faults: [], moreFaults: 0 } : refused(faults);
}

export function refused(faults: readonly CellFault[]): RowsRead {
  return {
    rows: [],
    faults: faults.slice(0, FAULTS_MAX),
    moreFaults: Math.max(0, faults.length - FAULTS_MAX),
  };
}

export function tableFault(what: string): CellFault {
  return { row: null, column: null, what };
}

function readRow(
  { row, texts }: GivenRow,
  {
    columnOf,
    rowOfTag,
  }: { readonly columnOf: (name: string) => string; readonly rowOfTag: Map<string, number> },
): SheetRow | { readonly faults: readonly CellFault[] } {
  const read = readSheet({ texts });
  if (!read.ok) {
    return {
      faults: Object.entries(read.faults).map(([name, what]) => ({ row, column: columnOf(name), what })),
    };
  }
  const { sheet } = read;
  const before = rowOfTag.get(sheet.tag);
  if (before !== undefined) {
    return {
      faults: [{ row, column: columnOf('tag'), what: `${sheet.tag} stands in row ${before} already.` }],
    };
  }
  rowOfTag.set(sheet.tag, row);
  const contradictions = contradictionsOf(sheet);
  const stopping = contradictions.filter(({ stops }) => stops);
  if (stopping.length === 0) return { row, texts, sheet, contradictions };
  return {
    faults: stopping.map(({ code, fields, what }) => ({
      row,
      column: fields.map(columnOf).join(', '),
      what: `${code}: ${what}`,
    })),
  };
}
