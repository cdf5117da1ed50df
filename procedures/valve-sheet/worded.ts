import { type Dimension, UNITS } from '../calculations/unit-table.ts';
import { fromSi, preferredUnit, type UnitSystem } from '../calculations/units.ts';

/**
 * A figure in a sentence: the plant's unit, no more decimals than it needs.
 * @example worded({ valueSi: 103421.36, dimension: 'pressure', units: 'us' }) // '15 psi'
 */
export function worded({
  valueSi,
  dimension,
  units,
}: {
  readonly valueSi: number;
  readonly dimension: Dimension;
  readonly units: UnitSystem;
}): string {
  const unit = preferredUnit(dimension, units);
  const { label, decimals } = UNITS[unit];
  const value = Number(fromSi({ valueSi, unit }).toFixed(decimals));
  return `${String(value === 0 ? 0 : value).replace('-', '\u2212')} ${label}`.trim();
}
