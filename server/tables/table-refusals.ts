import type { CellFault, TableRead } from '../../procedures/tables/table-form.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { TableKind } from './table-kind.ts';

/** So many wrong cells are named to a program; a page lists them in a table of its own. */
const NAMED_MAX = 50;

type Told = Pick<TableKind<unknown>, 'codes' | 'kept'>;

export function cellsNotRight(
  { codes, kept }: Told,
  { faults, moreFaults }: Pick<TableRead<unknown>, 'faults' | 'moreFaults'>,
): Refusal {
  const count = faults.length + moreFaults;
  const named = faults
    .slice(0, NAMED_MAX)
    .map((fault): [string, string] => [faultName(fault), `${placeOf(fault)}${fault.what}`]);
  return new Refusal({
    kind: 'unreadable',
    code: codes.cells,
    what: count === 1 ? 'One cell is not right.' : `${count} cells are not right.`,
    kept: `${kept}; what you pasted stands below.`,
    next: 'Put the cells right that are named, and look again.',
    fields: Object.fromEntries(named),
  });
}

export function notWhatWasShown({ codes, kept }: Told): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: codes.other,
    what: 'What would be saved is no longer what was shown.',
    kept: `${kept}.`,
    next: 'Look at the table again, and confirm what it shows then.',
  });
}

/** A name for a cell that may stand in an address, and as the row's id on the page. @example 'row-8-travel-in' */
function faultName({ row, column }: Pick<CellFault, 'row' | 'column'>): string {
  const place = row === null ? 'table' : `row-${row}-${column ?? ''}`;
  return place.replaceAll(/[^\w]+/g, '-').replace(/-$/, '');
}

/** An id for the row of each fault: the first of a cell carries the cell's name, and an id stands on a page once. */
export function faultIds(faults: readonly CellFault[]): readonly string[] {
  const names = faults.map(faultName);
  // The field with the whole text is called `table` itself.
  return names.map((name, at) => (name !== 'table' && names.indexOf(name) === at ? name : `${name}-${at}`));
}

function placeOf({ row, column }: CellFault): string {
  const place = [row === null ? '' : `Row ${row}`, column ?? ''].filter((part) => part !== '').join(', ');
  return place === '' ? '' : `${place}: `;
}
