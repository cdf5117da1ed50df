import { fromSi, toSi, unitFor } from '../calculations/units.ts';
import { exactDigits } from '../readings/exact-digits.ts';
import type { GearFieldName } from './fields.ts';
import type { GearItem } from './gear.ts';

/**
 * The texts that read back to exactly this piece of gear: what its form shows, and what two saves are compared by.
 * Ranges are written in the unit that the scale is marked in.
 *
 * @example gearText(gauge).rangeHigh // '30', for 206842.72 Pa on a scale in psi
 */
export function gearText(item: GearItem): Readonly<Record<GearFieldName, string>> {
  const { number, kind, unit, calibratedOn, dueOn, certificate, note } = item;
  const isBlank = kind === 'regulator' && item.accuracyPercentOfSpan === 0;
  return {
    number,
    kind,
    unit,
    rangeLow: scaleText(item.rangeLowSi, item),
    rangeHigh: scaleText(item.rangeHighSi, item),
    accuracyPercentOfSpan: isBlank ? '' : String(item.accuracyPercentOfSpan),
    calibratedOn,
    dueOn,
    certificate,
    bleedsDown: item.bleedsDown === null ? '' : item.bleedsDown ? 'yes' : 'no',
    note,
  };
}

/** @example rangeText(gauge) // '0 to 30 psi' */
export function rangeText(item: GearItem): string {
  const { rangeLow, rangeHigh } = gearText(item);
  return `${rangeLow} to ${rangeHigh} ${unitFor(item.unit).label}`;
}

function scaleText(valueSi: number, { unit }: GearItem): string {
  const near = fromSi({ valueSi, unit });
  return exactDigits({ near, isExact: (value) => toSi({ value, unit }) === valueSi }) ?? String(near);
}
