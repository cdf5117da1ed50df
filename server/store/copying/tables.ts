import { EMPTY_HEAD } from '../../log/chain.ts';
import type { Head } from '../store.ts';

/** The tables of the store, the same in both databases: what a copy takes along, in this order. */
export type Row = readonly (string | number | null | Uint8Array)[];

export interface Table {
  readonly name: string;
  readonly columns: readonly string[];
  /** Their types in PostgreSQL. */
  readonly types: readonly string[];
  /** The first so many columns tell rows apart, and rows are read in their order. */
  readonly keys: 1 | 2;
  /** How many are in memory at once: photos are large. */
  readonly rowsAtOnce: number;
}

const TABLES: readonly Table[] = [
  {
    name: 'blob',
    columns: ['hash', 'bytes'],
    types: ['text', 'bytea'],
    keys: 1,
    rowsAtOnce: 4,
  },
  {
    name: 'log',
    columns: ['seq', 'stream', 'place', 'hash', 'bytes'],
    types: ['bigint', 'text', 'bigint', 'text', 'text'],
    keys: 1,
    rowsAtOnce: 500,
  },
  {
    name: 'answered',
    columns: ['request_id', 'person', 'fingerprint', 'answer'],
    types: ['text', 'text', 'text', 'text'],
    keys: 1,
    rowsAtOnce: 500,
  },
  {
    name: 'summary',
    columns: ['kind', 'id', 'sort', 'body'],
    types: ['text', 'text', 'text', 'text'],
    keys: 2,
    rowsAtOnce: 500,
  },
  {
    name: 'outside',
    columns: ['kind', 'id', 'body'],
    types: ['text', 'text', 'text'],
    keys: 2,
    rowsAtOnce: 500,
  },
];

/** The tables of one database, at one moment. */
export interface TableSource {
  /** Rows after `last` in the order of the keys; none at the end. */
  page(table: Table, last: Row | undefined): Promise<readonly Row[]>;
}

export interface TableTarget {
  isEmpty(table: Table): Promise<boolean>;
  add(table: Table, rows: readonly Row[]): Promise<void>;
}

/**
 * Copies every row.
 * @returns the head of the log that was read
 * @throws Error in plain words where the target holds anything already; nothing is written then
 */
export async function copyTables(from: TableSource, to: TableTarget): Promise<Head> {
  for (const table of TABLES)
    if (!(await to.isEmpty(table)))
      throw new Error('there is something in it already, and a copy is made into an empty one only');
  let head = EMPTY_HEAD;
  for (const table of TABLES) {
    let last: Row | undefined;
    for (;;) {
      const rows = await from.page(table, last);
      if (rows.length === 0) break;
      await to.add(table, rows);
      last = rows.at(-1);
      if (table.name === 'log') head = headOf(last);
    }
  }
  return head;
}

function headOf(line: Row | undefined): Head {
  const [seq, , , hash] = line ?? [];
  return { seq: Number(seq), hash: String(hash) };
}

/** @param mark what stands for the value of that number, from 1 */
export function pageStatement(
  { columns, keys, rowsAtOnce }: Table,
  of: { readonly from: string; readonly isFirst: boolean; mark(number: number): string },
): string {
  const key = columns.slice(0, keys);
  const marks = key.map((_, index) => of.mark(index + 1));
  const where = of.isFirst ? '' : `WHERE (${key.join(', ')}) > (${marks.join(', ')})`;
  return `SELECT ${columns.join(', ')} FROM ${of.from} ${where} ORDER BY ${key.join(', ')} LIMIT ${rowsAtOnce}`;
}
