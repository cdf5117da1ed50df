/** Many sheets at once, from a table or from JSON: all of them, or none and every reason why. */

import { readDigits } from '../readings/digits.ts';
import { plainDigits } from '../readings/exact-digits.ts';
import { plainCell } from '../tables/named-columns.ts';
import type { JsonCell, TableForm } from '../tables/table-form.ts';
import { type Column, columnName, readHead } from './columns.ts';
import type { Contradiction } from './contradictions/rule.ts';
import { contradictionsOf, stoppingIn } from './contradictions.ts';
import { STORED_UNIT } from './field.ts';
import { FIELDS, fieldNamed } from './fields.ts';
import { readSheet } from './read-sheet.ts';
import type { ValveSheet } from './sheet.ts';

/** Above this an import is refused whole: a plant has fewer valves. */
export const ROWS_MAX = 5000;

export interface SheetItem {
  readonly sheet: ValveSheet;
  /** Those that are only shown. */
  readonly contradictions: readonly Contradiction[];
}

/** A table of valve sheets: a unit in the head of each column of figures. */
export const VALVE_TABLE: TableForm<SheetItem> = {
  many: 'valves',
  none: 'There is no valve in it.',
  rowsMax: ROWS_MAX,
  listName: 'valveSheets',
  key: 'tag',
  mustHave: FIELDS.filter(({ required }) => required === true).map((field) => ({
    name: field.name,
    head: columnName(field),
  })),
  column: (head) => {
    const column = readHead(head);
    if ('fault' in column) return column;
    return { name: column.field.name, head: column.head, cellText: (cell) => withUnit(cell, column.unit) };
  },
  jsonText,
  readRow: (texts) => {
    const read = readSheet({ texts });
    if (!read.ok)
      return { faults: Object.entries(read.faults).map(([name, what]) => ({ names: [name], what })) };
    const contradictions = contradictionsOf(read.sheet);
    const stopping = stoppingIn(contradictions);
    if (stopping.length === 0) return { sheet: read.sheet, contradictions };
    return {
      faults: stopping.map(({ code, fields, what }) => ({ names: fields, what: `${code}: ${what}` })),
    };
  },
  keyOf: ({ sheet }) => sheet.tag,
};

/** A number alone is in the unit of its column; one with a unit keeps its own. */
function withUnit(cell: string, unit: Column['unit']): string {
  if (unit === null || cell.trim() === '') return cell;
  const digits = readDigits(cell);
  return digits.ok && digits.rest === '' ? `${cell.trim()} ${unit}` : cell;
}

/** A bare number is in the unit that the field's name says. */
function jsonText(name: string, member: JsonCell): string {
  const field = fieldNamed(name);
  if (typeof member !== 'number' || field?.kind !== 'quantity' || field.dimension === 'ratio')
    return plainCell(member);
  return `${plainDigits(member)} ${STORED_UNIT[field.dimension]}`;
}
