import type { Contradiction } from '../../procedures/valve-sheet/contradictions/rule.ts';
import type { CellFault, RowsRead } from '../../procedures/valve-sheet/import-rows.ts';
import { Refusal } from '../../safety/refusal.ts';

const STANDS_IN_FORM = 'What you typed stands in the form; nothing was recorded.';

export function noSuchValve(tag: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'VAL-001',
    what: `There is no valve ${tag}.`,
    kept: 'Nothing was recorded.',
    next: 'Look in the list of valves.',
  });
}

export function tagInUse(tag: string, { retired }: { readonly retired: boolean }): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-002',
    what: `There is a valve ${tag} already${retired ? ', retired' : ''}.`,
    kept: STANDS_IN_FORM,
    next: 'Change that sheet, or give this valve its own tag.',
    fields: { tag: 'This tag is in use.' },
  });
}

export function savedMeanwhile(tag: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-003',
    what: `Somebody else saved the sheet of ${tag} since this form was loaded.`,
    kept: STANDS_IN_FORM,
    next: 'Read on the valve’s page what they changed, put yours right and save again.',
  });
}

export function retiredAlready(tag: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-004',
    what: `${tag} is retired already.`,
    kept: 'Nothing was recorded.',
    next: 'Save its sheet anew to take it back into use.',
  });
}

export function jobIsOpen(tag: string, job: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-005',
    what: `Job ${job} is open on ${tag}.`,
    kept: 'Nothing was recorded.',
    next: 'Close the job first, then retire the valve.',
  });
}

/** Kept out because somebody could be hurt by it, or nothing can be worked out from it. */
export function contradictsItself(stopping: readonly Contradiction[]): Refusal {
  const fields: Record<string, string> = {};
  for (const { fields: names, what } of stopping) for (const name of names) fields[name] ??= what;
  const [first] = stopping;
  return new Refusal({
    kind: 'unsafe',
    code: first?.code ?? 'VAL-101',
    what: stopping.map(({ what }) => what).join(' '),
    kept: STANDS_IN_FORM,
    next: 'Read the plate and the parts again, and put the fields right that are named.',
    fields,
  });
}

/** So many wrong cells are named to a program; a page lists them in a table of its own. */
const NAMED_MAX = 50;

export function tableHasFaults({ faults, moreFaults }: Pick<RowsRead, 'faults' | 'moreFaults'>): Refusal {
  const count = faults.length + moreFaults;
  const named = faults
    .slice(0, NAMED_MAX)
    .map((fault): [string, string] => [faultName(fault), `${placeOf(fault)}${fault.what}`]);
  return new Refusal({
    kind: 'unreadable',
    code: 'VAL-006',
    what: count === 1 ? 'One cell is not right.' : `${count} cells are not right.`,
    kept: 'No sheet was changed; what you pasted stands below.',
    next: 'Put the cells right that are named, and look again.',
    fields: Object.fromEntries(named),
  });
}

/** A name for a cell that may stand in an address, and as the row's id on the page. @example 'row-8-travel-in' */
export function faultName({ row, column }: Pick<CellFault, 'row' | 'column'>): string {
  const place = row === null ? 'table' : `row-${row}-${column ?? ''}`;
  return place.replaceAll(/[^\w]+/g, '-').replace(/-$/, '');
}

/** An id for the row of each fault: the first of a cell carries the cell's name, and an id stands on a page once. */
export function faultIds(faults: readonly CellFault[]): readonly string[] {
  const names = faults.map(faultName);
  return names.map((name, at) => (names.indexOf(name) === at ? name : `${name}-${at}`));
}

function placeOf({ row, column }: CellFault): string {
  const place = [row === null ? '' : `Row ${row}`, column ?? ''].filter((part) => part !== '').join(', ');
  return place === '' ? '' : `${place}: `;
}

export function notWhatWasShown(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'VAL-007',
    what: 'What would be saved is no longer what was shown.',
    kept: 'No sheet was changed.',
    next: 'Look at the table again, and confirm what it shows then.',
  });
}
