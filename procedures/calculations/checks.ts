import { CalcError } from './calc-error.ts';
import { endingOf } from './name-endings.ts';

/** Bounds of an input. Beside them every number is finite and at most 1e15 in size. */
export interface Range {
  readonly above?: number;
  readonly atLeast?: number;
  readonly below?: number;
  readonly atMost?: number;
  /** A count. */
  readonly whole?: true;
}

export const ABOVE_ZERO: Range = { above: 0 };
export const ZERO_OR_MORE: Range = { atLeast: 0 };
export const ANY_NUMBER: Range = {};
export const PERCENT: Range = { atLeast: 0, atMost: 100 };
export const FRACTION: Range = { atLeast: 0, atMost: 1 };

/** Far beyond anything that a valve has; inside these no formula here overflows into "not a number". */
const LARGEST = 1e15;
const SMALLEST_ABOVE_ZERO = 1e-15;

/**
 * Printed unit of a quantity, read off the end of its name.
 *
 * Shape: a name in, a text out. Names carry their unit, so that no unit is written twice.
 * @param name  as spelled in code, for example `travelM`; the qualifiers Min, Max, Low and High may follow
 * @returns the unit as printed; empty for a plain number
 * @source none: a rule of this code
 * @example unitOfName('effectiveAreaM2') // 'm²'
 * @example unitOfName('turns') // ''
 */
export function unitOfName(name: string): string {
  return endingOf(name)?.unit ?? '';
}

/** The range in words; a form prints the same text as its hint. */
export function rangeText({ above, atLeast, below, atMost, whole }: Range): string {
  const counted = whole ? ', whole' : '';
  if (atLeast !== undefined && atMost !== undefined) return `from ${atLeast} to ${atMost}${counted}`;
  const parts = [
    above === undefined ? '' : `above ${above}`,
    atLeast === undefined ? '' : `at least ${atLeast}`,
    below === undefined ? '' : `below ${below}`,
    atMost === undefined ? '' : `at most ${atMost}`,
  ].filter((part) => part !== '');
  return `${parts.length === 0 ? 'any number' : parts.join(' and ')}${counted}`;
}

/**
 * Refuses, by name, the first of the values that is no number or lies outside the range.
 *
 * Shape: a record of values under their own names and one range for them all; nothing comes back.
 * @param values  each under its name, which carries its unit
 * @param range   bounds for each of the values
 * @throws CalcError CALC-001 if a value is missing or no finite number; CALC-002 if it is out of range
 * @source none: a rule of this code
 * @example refuseOutside({ travelM: 0.019 }, { above: 0 }) // undefined
 * @example refuseOutside({ travelM: -0.019 }, { above: 0 }) // throws CALC-002
 * @example refuseOutside({ travelM: Number.NaN }, { above: 0 }) // throws CALC-001
 */
export function refuseOutside(values: Readonly<Record<string, number>>, range: Range): void {
  for (const [name, value] of Object.entries(values)) {
    if (typeof value !== 'number' || !Number.isFinite(value)) throw noNumber(name, { value, range });
    const bounds = boundsBroken({ value, range });
    // The unit is read off the name only where it is printed: this is asked millions of times in a search.
    if (bounds !== null)
      throw new CalcError({ code: 'CALC-002', name, unit: unitOfName(name), value, range: bounds });
  }
}

function noNumber(name: string, of: { readonly value: unknown; readonly range: Range }): CalcError {
  const { value, range } = of;
  // A caller that reads JSON may hand over a text or nothing at all in spite of the type.
  const shown = typeof value === 'number' || typeof value === 'string' ? String(value) : null;
  return new CalcError({
    code: 'CALC-001',
    name,
    unit: unitOfName(name),
    value: shown,
    range: rangeText(range),
  });
}

/** @returns the bounds that a number lies outside of, in words; null inside them */
function boundsBroken(of: { readonly value: number; readonly range: Range }): string | null {
  const { value, range } = of;
  if (!isInside(of)) return rangeText(range);
  if (range.above === 0 && value < SMALLEST_ABOVE_ZERO) return `at least ${SMALLEST_ABOVE_ZERO}`;
  return Math.abs(value) > LARGEST ? `at most ${LARGEST} in size` : null;
}

/**
 * Refuses a lower and an upper value that do not stand in that order.
 *
 * Shape: a record of exactly two values; the first must be the smaller.
 * @param pair  the lower value first, each under its own name
 * @throws CalcError CALC-001 if one is no number; CALC-003 if the first is not below the second
 * @source none: a rule of this code
 * @example refuseUnlessRising({ benchSetLowPa: 20000, benchSetHighPa: 100000 }) // undefined
 * @example refuseUnlessRising({ benchSetLowPa: 100000, benchSetHighPa: 20000 }) // throws CALC-003
 */
export function refuseUnlessRising(pair: Readonly<Record<string, number>>): void {
  refuseOutside(pair, ANY_NUMBER);
  const [low, high] = Object.entries(pair);
  if (low === undefined || high === undefined) throw new Error('refuseUnlessRising wants two values');
  // So close together that a division by the difference would say nothing.
  const gap = 1e-9 * Math.max(Math.abs(low[1]), Math.abs(high[1]), SMALLEST_ABOVE_ZERO);
  if (high[1] - low[1] > gap) return;
  throw new CalcError({
    code: 'CALC-003',
    name: high[0],
    value: high[1],
    range: `above ${low[0]} (${low[1]})`,
    unit: unitOfName(high[0]),
  });
}

/**
 * Refuses a choice that is not in its list.
 *
 * Shape: name, value and list in; the value comes out, narrowed to the list.
 * @param name     of the input
 * @param value    as given
 * @param choices  the closed list
 * @returns the value
 * @throws CalcError CALC-005 if the value is not in the list
 * @source none: a rule of this code
 * @example oneOf({ name: 'flow', value: 'under', choices: ['under', 'over'] }) // 'under'
 * @example oneOf({ name: 'flow', value: 'beside', choices: ['under', 'over'] }) // throws CALC-005
 */
export function oneOf<T extends string>(input: {
  readonly name: string;
  readonly value: string;
  readonly choices: readonly T[];
}): T {
  const hit = input.choices.find((choice) => choice === input.value);
  if (hit !== undefined) return hit;
  const value = input.value ?? null;
  throw new CalcError({
    code: 'CALC-005',
    name: input.name,
    value,
    range: `one of ${input.choices.join(', ')}`,
    unit: '',
  });
}

/** An error about points that are missing or do not fit together. */
export function refuseCount(about: {
  readonly name: string;
  readonly value: number;
  readonly range: string;
}): CalcError {
  return new CalcError({ code: 'CALC-004', unit: '', ...about });
}

function isInside({ value, range }: { readonly value: number; readonly range: Range }): boolean {
  return (
    (range.above === undefined || value > range.above) &&
    (range.atLeast === undefined || value >= range.atLeast) &&
    (range.below === undefined || value < range.below) &&
    (range.atMost === undefined || value <= range.atMost) &&
    (range.whole === undefined || Number.isInteger(value))
  );
}
