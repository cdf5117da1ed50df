import { plainDigits } from '../readings/exact-digits.ts';
import type { JsonCell, RowFault, TableColumn, TableForm } from './table-form.ts';

/**
 * Columns that are called as their fields are, whose cells say all by themselves.
 *
 * @param called  of what they are columns: `test gear`
 * @example namedColumns({ names: ['number'], called: 'test gear' }).column('number') // { name: 'number', head: 'number' }
 */
export function namedColumns({
  names,
  called,
}: {
  readonly names: readonly string[];
  readonly called: string;
}): Pick<TableForm<unknown>, 'column' | 'jsonText'> & { unknownNames(texts: object): readonly RowFault[] } {
  const unknown = (name: string) =>
    `“${name.slice(0, 40)}” is no column of ${called}. There are: ${names.join(', ')}.`;
  return {
    column: (head): TableColumn | { readonly fault: string } => {
      const name = head.trim();
      return names.includes(name) ? { name, head: name } : { fault: unknown(name) };
    },
    jsonText: (_, member) => plainCell(member),
    unknownNames: (texts) =>
      Object.keys(texts)
        .filter((name) => !names.includes(name))
        .map((name) => ({ names: [name], what: unknown(name) })),
  };
}

/** @example plainCell(true) // 'yes' */
export function plainCell(member: JsonCell): string {
  if (member === null) return '';
  if (typeof member === 'boolean') return member ? 'yes' : 'no';
  return typeof member === 'number' ? plainDigits(member) : member;
}
