import { ANY_NUMBER, oneOf, refuseOutside } from './checks.ts';
import { DIMENSIONS, type Dimension, UNITS, type Unit, type UnitId } from './unit-table.ts';

export type UnitSystem = 'us' | 'si';

const UNIT_IDS = Object.keys(UNITS) as UnitId[];

/**
 * A value in any unit of the table, in SI.
 *
 * Shape: one value with its unit in, one number out. SI = (value + shift) · factor
 * Valid: a pressure stays gauge or absolute, as it came; temperatures have a shift, their differences have none.
 * @param value  as read or typed; any number
 * @param unit   id from the unit table
 * @returns value in the SI unit of its dimension (percent, turns and Kv stay as they are)
 * @throws CalcError CALC-001 if the value is no number; CALC-005 if the unit is not in the table
 * @source [S-01] exact factors
 * @example toSi({ value: 9, unit: 'psi' }) // 62052.8156
 * @example toSi({ value: 20, unit: 'degC' }) // 293.15
 */
export function toSi({ value, unit }: { readonly value: number; readonly unit: UnitId }): number {
  const { factor, shift = 0 } = unitFor(unit);
  refuseOutside({ value }, ANY_NUMBER);
  return (value + shift) * factor;
}

/**
 * An SI value in any unit of its dimension; the inverse of toSi.
 *
 * Shape: one SI value and the unit wanted in, one number out. value = SI / factor − shift
 * Valid: as toSi; nothing is rounded.
 * @param valueSi  in the SI unit of the dimension; any number
 * @param unit     id from the unit table
 * @returns value in that unit
 * @throws CalcError CALC-001 if the value is no number; CALC-005 if the unit is not in the table
 * @source [S-01] exact factors
 * @example fromSi({ valueSi: 62052.8156, unit: 'psi' }) // 9
 * @example fromSi({ valueSi: 60000, unit: 'psi' }) // 8.702264
 */
export function fromSi({ valueSi, unit }: { readonly valueSi: number; readonly unit: UnitId }): number {
  const { factor, shift = 0 } = unitFor(unit);
  refuseOutside({ valueSi }, ANY_NUMBER);
  return valueSi / factor - shift;
}

/**
 * A value in one unit, in another of the same dimension.
 *
 * Shape: value, its unit and the unit wanted in; one number out.
 * Valid: both units measure the same thing.
 * @param value  as read; any number
 * @param from   unit it is in
 * @param to     unit wanted
 * @returns value in the unit wanted
 * @throws CalcError CALC-001 if the value is no number; CALC-005 if the units measure different things
 * @source [S-01] exact factors
 * @example convert({ value: 100, from: 'in2', to: 'cm2' }) // 645.16
 * @example convert({ value: 1, from: 'psi', to: 'mm' }) // throws CALC-005
 */
export function convert(input: {
  readonly value: number;
  readonly from: UnitId;
  readonly to: UnitId;
}): number {
  const { dimension } = unitFor(input.from);
  oneOf({ name: 'to', value: input.to, choices: unitsOf(dimension).map(({ id }) => id) });
  return fromSi({ valueSi: toSi({ value: input.value, unit: input.from }), unit: input.to });
}

/**
 * A value in SI as people read it: rounded, with its unit behind.
 *
 * Shape: SI value and unit in, text out. Rounding happens here and nowhere before.
 * @param valueSi   in the SI unit of the dimension; any number
 * @param unit      id from the unit table
 * @param decimals  how many; the unit's own number where left out; whole, from 0 to 15
 * @returns number and unit with a space between; a plain number has no unit; never "-0"
 * @throws CalcError CALC-001 if the value is no number; CALC-002 if decimals is out of range; CALC-005 if the
 *   unit is not in the table
 * @source [S-01] exact factors
 * @example format({ valueSi: 62052.8156, unit: 'psi' }) // '9.00 psi'
 * @example format({ valueSi: 0.01905, unit: 'in', decimals: 2 }) // '0.75 in'
 */
export function format(input: {
  readonly valueSi: number;
  readonly unit: UnitId;
  readonly decimals?: number | undefined;
}): string {
  const { label, decimals: usual } = unitFor(input.unit);
  const decimals = input.decimals ?? usual;
  refuseOutside({ decimals }, { atLeast: 0, atMost: 15, whole: true });
  const rounded = fromSi(input).toFixed(decimals);
  const text = Number(rounded) === 0 ? rounded.replace('-', '') : rounded;
  return label === '' ? text : `${text} ${label}`;
}

/**
 * The unit that a plant's people read a dimension in.
 *
 * Shape: dimension and system in, unit id out.
 * @param dimension  what is measured
 * @param system     `us` or `si`
 * @returns unit id
 * @throws CalcError CALC-005 if the dimension is not known
 * @source common practice, no source
 * @example preferredUnit('pressure', 'us') // 'psi'
 * @example preferredUnit('pressure', 'si') // 'kPa'
 */
export function preferredUnit(dimension: Dimension, system: UnitSystem): UnitId {
  const known = Object.keys(DIMENSIONS) as Dimension[];
  return DIMENSIONS[oneOf({ name: 'dimension', value: dimension, choices: known })][system];
}

/**
 * The units that a value of a dimension may be given in.
 *
 * Shape: a dimension in, a list out, in the order of the table.
 * @param dimension  what is measured
 * @returns ids with their printed labels
 * @source [S-01] the unit table
 * @example unitsOf('current') // [{ id: 'A', label: 'A' }, { id: 'mA', label: 'mA' }]
 */
export function unitsOf(dimension: Dimension): readonly { readonly id: UnitId; readonly label: string }[] {
  return UNIT_IDS.filter((id) => UNITS[id].dimension === dimension).map((id) => ({
    id,
    label: UNITS[id].label,
  }));
}

/**
 * Says whether a text is the id of a unit.
 *
 * Shape: a text in, yes or no out.
 * @param text  for example what a form sent
 * @returns true if the unit table has it
 * @source [S-01] the unit table
 * @example isUnitId('psi') // true
 * @example isUnitId('stone') // false
 */
export function isUnitId(text: string): text is UnitId {
  return Object.hasOwn(UNITS, text);
}

/**
 * The table's row of a unit.
 *
 * Shape: a unit id in, its row out.
 * @param unit  id from the unit table
 * @returns dimension, label, factor, shift and decimals
 * @throws CalcError CALC-005 if the unit is not in the table
 * @source [S-01] the unit table
 * @example unitFor('mm').factor // 0.001
 */
export function unitFor(unit: UnitId): Unit {
  return UNITS[oneOf({ name: 'unit', value: unit, choices: UNIT_IDS })];
}
