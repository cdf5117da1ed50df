import type { Row } from '../job.ts';
import { type Given, understand } from '../readings/given.ts';
import { type Ask, askOf } from './ask.ts';
import { judged } from './judged.ts';
import { type Readable, readRow } from './row-text.ts';
import { tokenise } from './tokens.ts';

/** Rows of a table that one line holds, in the order of the table. */
export type Rows = readonly Given[];

/**
 * Every way in which a line may hold several rows: parted by `then`, a line break or `;`, or numbers alone, each
 * row written like the first.
 */
export function severalRows(text: string, ask: Ask): readonly Rows[] {
  if (ask.step?.kind !== 'table') return [];
  return [...partedBy(text), ...evenly(text)].flatMap((parts) => rowsFrom(parts, ask));
}

function partedBy(text: string): readonly (readonly string[])[] {
  const byThen = text.split(/\s+then\s+|\n/i);
  const byMark = text.split(/\s+then\s+|[\n;]/i);
  const same = byThen.length === byMark.length;
  return (same ? [byThen] : [byThen, byMark]).filter((parts) => parts.length > 1);
}

/** Numbers and nothing else, one or two to a row. */
function evenly(text: string): readonly (readonly string[])[] {
  if (/[:;=\n]/.test(text)) return [];
  const tokens = tokenise(text);
  if (tokens.length < 3 || tokens.some(({ kind }) => kind !== 'number')) return [];
  return [1, 2]
    .filter((size) => tokens.length % size === 0)
    .map((size) =>
      Array.from({ length: tokens.length / size }, (_, row) =>
        tokens
          .slice(row * size, (row + 1) * size)
          .map(({ raw }) => raw)
          .join(' , '),
      ),
    );
}

/** Each part read for its own row; none where one of them does not make a whole row. */
function rowsFrom(parts: readonly string[], ask: Ask): readonly Rows[] {
  let found: { readonly rows: Rows; readonly ask: Ask }[] = [{ rows: [], ask }];
  for (const part of parts) {
    found = found.flatMap(({ rows, ask: now }) => {
      if (now.fields.length === 0) return [];
      const read: Readable = readRow(part, now);
      return read.givens.flatMap((given) => {
        const after = afterRow(given, now);
        return after === null ? [] : [{ rows: [...rows, given], ask: after }];
      });
    });
  }
  return found.map(({ rows }) => rows).filter((rows) => rows.length > 1);
}

/** The card as it stands after a row; null where the row is not whole, or stops the work. */
export function afterRow(given: Given, ask: Ask): Ask | null {
  const verdict = judged(given, ask);
  if (verdict.kind !== 'whole' || verdict.aboveLimit) return null;
  const { job, around, step, fields } = ask;
  const { readings } = understand(fields, { given, job, today: around.today });
  const { travelM, signalPa } = readings;
  if (step?.kind !== 'table' || travelM === undefined) return null;
  const row: Row = { place: job.place, signal: signalPa ?? travelM, travel: travelM };
  const tables = { ...job.tables, [job.step]: [...(job.tables[job.step] ?? []), row] };
  return askOf({ ...job, tables }, around);
}
