import { CsvError, parse } from 'csv-parse/sync';
import { z } from 'zod';
import { POINT_KINDS } from '../../safety/isolation-points.ts';
import { isPointKind, type PointText } from './point-acts.ts';

export type PointsRead =
  | { readonly points: readonly PointText[]; readonly faults: readonly [] }
  | { readonly points: readonly []; readonly faults: readonly string[] };

const COLUMNS = ['tag', 'kind', 'place', 'lockable'] as const;
const TAG = /^[\p{L}\p{N}](?:[\p{L}\p{N}._ -]{0,38}[\p{L}\p{N}])?$/u;
const ROWS_MAX = 2000;
const PLACE_MAX = 120;

const rowsSchema = z.array(z.record(z.string(), z.string()));

/**
 * Points from a table with a head, or from JSON: a list of objects with the same names. All rows or none.
 * @example readPoints('tag,kind,place,lockable\nHV-1,block valve,Bay 3,yes').points[0].lockable // true
 */
export function readPoints(text: string): PointsRead {
  const rows = rowsOf(text);
  if ('fault' in rows) return { points: [], faults: [rows.fault] };
  if (rows.rows.length > ROWS_MAX) return { points: [], faults: [`At most ${ROWS_MAX} points at once.`] };
  const read = rows.rows.map((row, at) => readRow(row, at + 1));
  const faults = read.flatMap((one) => ('fault' in one ? [one.fault] : []));
  const tags = read.flatMap((one) => ('point' in one ? [one.point.tag] : []));
  const twice = [...new Set(tags.filter((tag, at) => tags.indexOf(tag) !== at))];
  const all = [...faults, ...twice.map((tag) => `${tag} stands twice.`)];
  if (all.length > 0) return { points: [], faults: all };
  return { points: read.flatMap((one) => ('point' in one ? [one.point] : [])), faults: [] };
}

type Rows = { readonly rows: readonly Readonly<Record<string, string>>[] } | { readonly fault: string };

function rowsOf(text: string): Rows {
  try {
    if (/^\s*\[/.test(text)) {
      const read = rowsSchema.safeParse(JSON.parse(text));
      return read.success ? { rows: read.data } : { fault: 'It is no list of points with texts.' };
    }
    const rows = parse(text, { columns: true, delimiter: [',', ';', '\t'], bom: true, trim: true });
    return { rows: rows as Record<string, string>[] };
  } catch (error) {
    if (error instanceof CsvError || error instanceof SyntaxError) return { fault: error.message };
    throw error;
  }
}

function readRow(
  row: Readonly<Record<string, string>>,
  number: number,
): { readonly point: PointText } | { readonly fault: string } {
  const fault = (what: string) => ({ fault: `Row ${number}: ${what}` });
  const unknown = Object.keys(row).filter((name) => !(COLUMNS as readonly string[]).includes(name));
  if (unknown.length > 0)
    return fault(`there is no column “${unknown[0]}”; the columns are ${COLUMNS.join(', ')}.`);
  const tag = (row.tag ?? '').normalize('NFC').trim().toUpperCase();
  if (!TAG.test(tag)) return fault('the tag is missing, or no tag.');
  const kind = (row.kind ?? '').trim().toLowerCase();
  if (!isPointKind(kind)) return fault(`${tag}: the kind is one of ${POINT_KINDS.join(', ')}.`);
  const lockable = (row.lockable ?? '').trim().toLowerCase();
  if (lockable !== 'yes' && lockable !== 'no') return fault(`${tag}: lockable is yes or no.`);
  const place = (row.place ?? '').trim();
  if ([...place].length > PLACE_MAX) return fault(`${tag}: the place has at most ${PLACE_MAX} characters.`);
  return { point: { tag, kind, place, lockable: lockable === 'yes' } };
}
