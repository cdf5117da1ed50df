import type { UnitId } from '../calculations/unit-table.ts';
import { fromSi, toSi, type UnitSystem } from '../calculations/units.ts';
import { exactDigits, plainDigits } from '../readings/exact-digits.ts';
import { type QuantityField, type SheetField, STORED_UNIT } from './field.ts';
import { type FieldValue, storedValue, unitOf } from './read-field.ts';

/**
 * The text that reads back to exactly this value: in the units of the system where that is short, else with the
 * unit that it was given in.
 *
 * @example fieldText(fieldNamed('travelM'), { value: 0.01905, system: 'us' }) // '0.75'
 * @example fieldText(fieldNamed('caseRatingPa'), { value: 200000, system: 'us' }) // '200 kPa'
 */
export function fieldText(
  field: SheetField,
  { value, system }: { value: FieldValue; system: UnitSystem },
): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (field.kind !== 'quantity' || typeof value === 'string') return String(value);
  const { unit, digits } = quantityText(field, { value, system });
  return unit === unitOf(field, system) ? digits : `${digits} ${unit}`;
}

/** More digits than a sheet or plate ever has: then the value was given in another unit. */
const SHORT_DIGITS = 8;

/** Digits and unit that read back to exactly the stored value. */
export function quantityText(
  field: QuantityField,
  { value, system }: { readonly value: number; readonly system: UnitSystem },
): { readonly digits: string; readonly unit: UnitId } {
  const stored = STORED_UNIT[field.dimension];
  const own = unitOf(field, system);
  const other = unitOf(field, system === 'us' ? 'si' : 'us');
  let exact: { readonly digits: string; readonly unit: UnitId } | null = null;
  for (const unit of [own, other, stored]) {
    const digits = inUnit({ field, value, unit });
    if (digits === null) continue;
    if (digits.replaceAll(/\D/g, '').replace(/^0+/, '').length <= SHORT_DIGITS) return { digits, unit };
    exact ??= { digits, unit };
  }
  return exact ?? { digits: plainDigits(value), unit: stored };
}

function inUnit(at: {
  readonly field: QuantityField;
  readonly value: number;
  readonly unit: UnitId;
}): string | null {
  const { field, value, unit } = at;
  const stored = STORED_UNIT[field.dimension];
  const near = unit === stored ? value : fromSi({ valueSi: toSi({ value, unit: stored }), unit });
  return exactDigits({
    near,
    isExact: (candidate) =>
      storedValue(field, { value: candidate, unit, valueSi: toSi({ value: candidate, unit }) }) === value,
  });
}
