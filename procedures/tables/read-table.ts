import { z } from 'zod';
import { csvRecords } from './csv-text.ts';
import {
  type CellFault,
  type GivenRow,
  type RowFault,
  refusedTable,
  type TableColumn,
  type TableForm,
  type TableRead,
  type TableRow,
  tableFault,
} from './table-form.ts';

/** Reads a step at a time, so that whoever reads can show how far it is, let others in between, or stop. */
export type Reading<Item> = Generator<ReadSoFar, TableRead<Item>>;

export interface ReadSoFar {
  readonly rows: number;
  readonly of: number;
}

/**
 * Rows of a table with a head, all or none, every wrong cell named by row and column.
 * @example readCsv(form, 'tag,service\r\nFV-1,steam').rows[0].row // 2
 */
export function readCsv<Item>(form: TableForm<Item>, text: string): TableRead<Item> {
  return toTheEnd(csvReading(form, text));
}

/**
 * The same from a JSON value: `{ "valveSheets": [{ "tag": "FV-1" }] }` with the name of the list as the form has it.
 * @example readJson(form, { valveSheets: [{ tag: 'FV-1' }] }).rows[0].row // 1
 */
export function readJson<Item>(form: TableForm<Item>, value: unknown): TableRead<Item> {
  return toTheEnd(jsonReading(form, value));
}

export function* csvReading<Item>(form: TableForm<Item>, text: string): Reading<Item> {
  const read = csvRecords(text);
  if ('fault' in read) return refusedTable([read.fault]);
  const [head = [], ...body] = read.records;
  const columns = head.map((cell) => form.column(cell));
  const faults = headFaults(form, { head, columns });
  if (faults.length > 0) return refusedTable(faults);
  const known = columns.filter((column): column is TableColumn => 'name' in column);
  const given: GivenRow[] = [];
  for (const [index, cells] of body.entries()) {
    const row = index + 2;
    if (cells.every((cell) => cell.trim() === '')) continue;
    if (cells.slice(known.length).some((cell) => cell.trim() !== ''))
      faults.push({ row, column: null, what: `It has ${cells.length} cells; the head has ${known.length}.` });
    given.push({ row, texts: textsOf(known, cells) });
  }
  if (faults.length > 0) return refusedTable(faults);
  const heads = new Map(known.map(({ name, head: written }) => [name, written]));
  return yield* rowsReading(form, { given, columnOf: (name) => heads.get(name) ?? name });
}

const cellJson = z.union([z.string(), z.number(), z.boolean(), z.null()]);

export function* jsonReading<Item>(form: TableForm<Item>, value: unknown): Reading<Item> {
  const { listName, key } = form;
  const read = z.object({ [listName]: z.array(z.record(z.string(), cellJson)) }).safeParse(value);
  if (!read.success)
    return refusedTable([
      tableFault(`It is not {"${listName}": [{"${key}": ...}, ...]} with texts, numbers, true or false.`),
    ]);
  const given = (read.data[listName] ?? []).map((members, index) => ({
    row: index + 1,
    texts: Object.fromEntries(
      Object.entries(members).map(([name, member]) => [name, form.jsonText(name, member)]),
    ),
  }));
  return yield* rowsReading(form, { given, columnOf: (name) => name });
}

/** Runs steps that nobody waits between. */
export function toTheEnd<End>(steps: Generator<unknown, End>): End {
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

function* rowsReading<Item>(
  form: TableForm<Item>,
  { given, columnOf }: { readonly given: readonly GivenRow[]; columnOf(name: string): string },
): Reading<Item> {
  const { many, none, rowsMax } = form;
  if (given.length > rowsMax)
    return refusedTable([
      tableFault(`There are ${given.length} ${many}; at most ${rowsMax} are taken at once. Split them.`),
    ]);
  if (given.length === 0) return refusedTable([tableFault(none)]);
  const rows: TableRow<Item>[] = [];
  const faults: CellFault[] = [];
  const rowOf = new Map<string, number>();
  for (const [at, each] of given.entries()) {
    const read = readRow(form, { ...each, rowOf });
    if ('faults' in read)
      faults.push(
        ...read.faults.map(({ names, what }) => ({
          row: each.row,
          column: names.map(columnOf).join(', '),
          what,
        })),
      );
    else rows.push(read);
    yield { rows: at + 1, of: given.length };
  }
  return faults.length === 0 ? { rows, faults: [], moreFaults: 0 } : refusedTable(faults);
}

function readRow<Item>(
  form: TableForm<Item>,
  { row, texts, rowOf }: GivenRow & { readonly rowOf: Map<string, number> },
): TableRow<Item> | { readonly faults: readonly RowFault[] } {
  const read = form.readRow(texts);
  if (isFaulty(read)) return read;
  const id = form.keyOf(read);
  const before = rowOf.get(id);
  if (before !== undefined)
    return { faults: [{ names: [form.key], what: `${id} stands in row ${before} already.` }] };
  rowOf.set(id, row);
  return { ...read, row, texts };
}

function isFaulty<Item>(
  read: Item | { readonly faults: readonly RowFault[] },
): read is { readonly faults: readonly RowFault[] } {
  return typeof read === 'object' && read !== null && 'faults' in read;
}

function headFaults<Item>(
  form: TableForm<Item>,
  {
    head,
    columns,
  }: {
    readonly head: readonly string[];
    readonly columns: readonly (TableColumn | { readonly fault: string })[];
  },
): CellFault[] {
  const faults: CellFault[] = columns.flatMap((column, index) =>
    'fault' in column ? [{ row: 1, column: head[index] ?? null, what: column.fault }] : [],
  );
  const named = columns.flatMap((column) => ('name' in column ? [column.name] : []));
  for (const [index, name] of named.entries())
    if (named.indexOf(name) < index) faults.push({ row: 1, column: name, what: 'This column stands twice.' });
  if (named.length === 0)
    return faults.length > 0 ? faults : [tableFault('There is no head with column names.')];
  const missing = form.mustHave.filter(({ name }) => !named.includes(name));
  return [
    ...faults,
    ...missing.map(({ head: written }) => ({
      row: 1,
      column: written,
      what: `The column ${written} is missing.`,
    })),
  ];
}

function textsOf(columns: readonly TableColumn[], cells: readonly string[]): GivenRow['texts'] {
  return Object.fromEntries(
    columns.map((column, index) => {
      const cell = cells[index] ?? '';
      return [column.name, column.cellText?.(cell) ?? cell];
    }),
  );
}
