import type { UnitId } from '../../procedures/calculations/unit-table.ts';
import { fromSi, unitFor } from '../../procedures/calculations/units.ts';
import { plainDigits } from '../../procedures/readings/exact-digits.ts';

/** So many digits tell two results apart that a gauge can tell apart. */
const DIGITS_MIN = 4;
const DECIMALS_MAX = 12;

/** Below this in the usual unit, a flow or volume is said in a smaller one. */
const SMALL_BELOW = 0.1;
const SMALLER: { readonly [U in UnitId]?: UnitId } = {
  'm3/h': 'ml/min',
  gpm: 'ml/min',
  'Nl/min': 'Nml/min',
  l: 'ml',
};

/** From here on a length is a height that somebody falls from, not a part of a valve. */
const LARGE_DECIMALS = 2;
const LARGER: { readonly [U in UnitId]?: { readonly from: number; readonly unit: UnitId } } = {
  mm: { from: 5000, unit: 'm' },
  in: { from: 240, unit: 'ft' },
};

/**
 * A result as people read it: the decimals of its unit, and more where it is small, so that nothing becomes 0.00.
 *
 * @example figure({ valueSi: 62052.8156, unit: 'psi' }) // '9.00 psi'
 * @example figure({ valueSi: 2.5e-9, unit: 'm3/h' }) // '0.1500 ml/min'
 */
export function figure({ valueSi, unit }: { readonly valueSi: number; readonly unit: UnitId }): string {
  const usual = fromSi({ valueSi, unit });
  const smaller = SMALLER[unit];
  if (smaller !== undefined && usual !== 0 && Math.abs(usual) < SMALL_BELOW) {
    return figure({ valueSi, unit: smaller });
  }
  const larger = LARGER[unit];
  if (larger !== undefined && Math.abs(usual) >= larger.from) {
    return `${digits(fromSi({ valueSi, unit: larger.unit }), LARGE_DECIMALS)} ${unitFor(larger.unit).label}`;
  }
  const { label, decimals, dimension } = unitFor(unit);
  // A plain number may be a count: 12 bolts, not 12.000.
  const number = dimension === 'ratio' ? plain(usual) : digits(usual, decimals);
  return label === '' ? number : `${number} ${label}`;
}

const PLAIN_DIGITS = 6;

function plain(value: number): string {
  return plainDigits(Number(value.toPrecision(PLAIN_DIGITS))).replace('-', '\u2212');
}

function digits(value: number, usualDecimals: number): string {
  // Rounded first: 0.99999 is said as 1.000.
  const size = Math.abs(Number(value.toPrecision(DIGITS_MIN)));
  const places = size === 0 ? 0 : DIGITS_MIN - 1 - Math.floor(Math.log10(size));
  // A large number needs no decimals to have four digits; a small one needs more than its unit usually has.
  const decimals = Math.min(DECIMALS_MAX, Math.max(usualDecimals, places));
  const text = Number(value.toFixed(decimals)) === 0 ? (0).toFixed(usualDecimals) : value.toFixed(decimals);
  return text.replace('-', '\u2212');
}
