import { Refusal } from '../../safety/refusal.ts';
import { type LoopFault, readLoopCsv } from '../troubleshooting/loop-record/read-csv.ts';
import type { CsvField } from '../vocabulary.ts';

/** So many wrong cells are named at once. */
const NAMED_MAX = 20;

/**
 * A table as it was given, once all of it can be read; null where none was given and none must be.
 * @throws Refusal REA-015 naming each wrong cell by row and column
 */
export function readCsvField(field: CsvField, given: Readonly<Record<string, string>>): string | null {
  const text = given[field.name] ?? '';
  if (text.trim() === '') {
    if (field.optional) return null;
    throw wrongTable(field, [{ row: null, column: null, what: 'No table was given.' }]);
  }
  const { faults } = readLoopCsv(text);
  if (faults.length > 0) throw wrongTable(field, faults);
  return text;
}

function wrongTable({ name, label }: CsvField, faults: readonly LoopFault[]): Refusal {
  const named = faults.slice(0, NAMED_MAX).map(sayFault);
  const more = faults.length > NAMED_MAX ? [`And ${faults.length - NAMED_MAX} more.`] : [];
  const next = 'Put it right in the table, and send it again.';
  return new Refusal({
    kind: 'unreadable',
    code: 'REA-015',
    what: `${label}: ${faults.length === 1 ? 'one thing is wrong' : `${faults.length} things are wrong`} in it.`,
    kept: 'The table stands in its field as you sent it; nothing was counted.',
    next,
    fields: { [name]: [...named, ...more].join(' ') },
  });
}

function sayFault({ row, column, what }: LoopFault): string {
  const where = [...(row === null ? [] : [`row ${row}`]), ...(column === null ? [] : [column])].join(', ');
  return where === '' ? what : `${where.charAt(0).toUpperCase()}${where.slice(1)}: ${what}`;
}
