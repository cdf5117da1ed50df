import type { UnitId } from '../calculations/unit-table.ts';
import type { UnitSystem } from '../calculations/units.ts';
import { measures, unitWord } from '../readings/unit-words.ts';
import type { QuantityField, SheetField } from './field.ts';
import { FIELDS } from './fields.ts';
import { unitOf } from './read-field.ts';

/** The head of a column: a field, and for a quantity the unit of its cells. */
export interface Column {
  readonly field: SheetField;
  readonly head: string;
  readonly unit: UnitId | null;
}

/** What a column is called: the field without the unit that its name carries, since the head names its own. */
const UNIT_ENDING: Readonly<Record<QuantityField['dimension'], RegExp>> = {
  pressure: /Pa$/,
  length: /M$/,
  area: /M2$/,
  force: /N$/,
  forcePerLength: /NPerM$/,
  flowCoefficient: /Kv$/,
  percent: /Percent$/,
  ratio: /$/,
  turns: /$/,
  temperature: /C$/,
  volume: /M3$/,
  mass: /Kg$/,
  time: /S$/,
};

/** @example columnName(fieldNamed('benchSetLowPa')) // 'benchSetLow' */
export function columnName(field: SheetField): string {
  if (field.name === 'ratedKv') return 'ratedCoefficient';
  return field.kind === 'quantity' ? field.name.replace(UNIT_ENDING[field.dimension], '') : field.name;
}

/** @example headOf(fieldNamed('benchSetLowPa'), 'us') // 'benchSetLow [psi]' */
export function headOf(field: SheetField, system: UnitSystem): string {
  if (field.kind !== 'quantity' || field.dimension === 'ratio') return columnName(field);
  return `${columnName(field)} [${unitOf(field, system)}]`;
}

const HEAD = /^([^[\]]+?)\s*(?:\[([^[\]]+)\])?$/;

const BY_COLUMN: ReadonlyMap<string, SheetField> = new Map(
  FIELDS.flatMap((field) =>
    [field.name, columnName(field)].map((name) => [name.toLowerCase(), field] as const),
  ),
);

/**
 * @returns the column, or what is wrong with its head
 * @example readHead('benchSetLow [psi]') // { field: ..., head: 'benchSetLow [psi]', unit: 'psi' }
 */
export function readHead(head: string): Column | { readonly fault: string } {
  const [, name = '', unitText] = head.trim().match(HEAD) ?? [];
  const field = BY_COLUMN.get(name.toLowerCase());
  if (field === undefined)
    return { fault: `“${head}” is no column of a valve sheet. Leave it out, or mend its name.` };
  if (field.kind !== 'quantity' || field.dimension === 'ratio') {
    if (unitText === undefined) return { field, head, unit: null };
    return { fault: `${columnName(field)} has no unit. Write the head without [${unitText}].` };
  }
  const example = `as ${headOf(field, 'us')} or ${headOf(field, 'si')}`;
  if (unitText === undefined) return { fault: `${name} needs its unit in the head, ${example}.` };
  const { dimension } = field;
  const meant = unitWord(unitText);
  const unit = meant.kind === 'units' ? meant.units.find((id) => measures(id, [dimension])) : undefined;
  if (unit === undefined) return { fault: `[${unitText}] is no unit for ${name}. Write it ${example}.` };
  return { field, head, unit };
}
