/** What one kind of table is: which columns it may have, how a row is read, and what tells two rows apart. */

/** So many faults are listed by name; the rest is counted. */
const FAULTS_MAX = 200;

export interface CellFault {
  /** As the table counts it, the head being row 1; in JSON, the place in the list. Null for the table as a whole. */
  readonly row: number | null;
  /** The head of the column as it is written, or the name of the field. */
  readonly column: string | null;
  readonly what: string;
}

export interface GivenRow {
  readonly row: number;
  /** By the name of the field. */
  readonly texts: Readonly<Record<string, string>>;
}

/** A row that was read: what it says, and where it stood. */
export type TableRow<Item> = Item & GivenRow;

export interface TableRead<Item> {
  /** Empty as soon as there is one fault: nothing is half imported. */
  readonly rows: readonly TableRow<Item>[];
  readonly faults: readonly CellFault[];
  /** Faults that are not listed. */
  readonly moreFaults: number;
}

export interface TableColumn {
  readonly name: string;
  /** As it is written. */
  readonly head: string;
  /** What a cell of this column says, where its head adds to it, such as a unit. */
  cellText?(cell: string): string;
}

/** What is wrong with a row, and with which of its fields. */
export interface RowFault {
  readonly names: readonly string[];
  readonly what: string;
}

export type JsonCell = string | number | boolean | null;

export interface TableForm<Item> {
  /** Of several rows: `valves`. */
  readonly many: string;
  /** Said of an empty table. */
  readonly none: string;
  readonly rowsMax: number;
  /** Under which name JSON carries the rows. */
  readonly listName: string;
  /** The field that no two rows may share. */
  readonly key: string;
  column(head: string): TableColumn | { readonly fault: string };
  /** Columns that a head must have, as they are written. */
  readonly mustHave: readonly Pick<TableColumn, 'name' | 'head'>[];
  /** What a member of JSON says, as a cell would. */
  jsonText(name: string, member: JsonCell): string;
  readRow(texts: GivenRow['texts']): Item | { readonly faults: readonly RowFault[] };
  keyOf(item: Item): string;
}

export function tableFault(what: string): CellFault {
  return { row: null, column: null, what };
}

export function refusedTable(faults: readonly CellFault[]): TableRead<never> {
  const moreFaults = Math.max(0, faults.length - FAULTS_MAX);
  return { rows: [], faults: faults.slice(0, FAULTS_MAX), moreFaults };
}
