/** From what a person wrote to one number with its unit: strict, because a misread number moves a valve. */
import { type Dimension, DIMENSIONS, type UnitId } from '../calculations/unit-table.ts';
import { format, fromSi, toSi, unitFor } from '../calculations/units.ts';
import { type DigitsFault, readDigits } from './digits.ts';
import { unitWord } from './unit-words.ts';

/** Why a text is refused as a number, by code; a test provokes each. */
export const NUMBER_FAULTS = {
  'NUM-001': 'nothing was written',
  'NUM-002': 'no number',
  'NUM-003': 'written with an exponent',
  'NUM-004': 'written in another base',
  'NUM-005': 'a comma that may be a decimal sign or a thousands sign',
  'NUM-006': 'a thousands sign, or two decimal signs',
  'NUM-007': 'more than one number',
  'NUM-008': 'a fraction',
  'NUM-009': 'more digits than can be kept',
  'NUM-010': 'no unit, where none is understood',
  'NUM-011': 'a unit that is not known',
  'NUM-012': 'a unit of something else',
  'NUM-013': 'absolute pressure, where gauge pressure is meant',
  'NUM-014': 'below what is possible',
  'NUM-015': 'above what is possible',
} as const;

export type NumberFaultCode = keyof typeof NUMBER_FAULTS;

/** Bounds in SI. A bound is part of "possible", not of "wanted". */
export interface Possible {
  readonly aboveSi?: number;
  readonly atLeastSi?: number;
  readonly atMostSi?: number;
}

export interface Expected {
  readonly dimension: Dimension;
  /** What a number without a unit is taken in; left out: the unit must be written. */
  readonly unit?: UnitId;
  readonly possible?: Possible;
}

export interface NumberRead {
  readonly ok: true;
  readonly value: number;
  readonly unit: UnitId;
  readonly valueSi: number;
  /** Did the text itself name the unit? */
  readonly unitWritten: boolean;
  readonly typed: string;
}

export interface NumberRefused {
  readonly ok: false;
  readonly code: NumberFaultCode;
  /** What is wrong, and what to write instead. */
  readonly what: string;
  readonly typed: string;
}

/**
 * One number with its unit from a text. Takes comma or point, the minus of the keyboard and U+2212, and a unit
 * behind the number; refuses by name whatever could be read in two ways.
 *
 * @param text  as typed; it comes back untouched
 * @returns the number in its own unit and in SI, or why it is refused
 * @example readNumber('12,1 mm', { dimension: 'length' }) // { ok: true, value: 12.1, unit: 'mm', valueSi: 0.0121, ... }
 * @example readNumber('1,234', { dimension: 'pressure', unit: 'psi' }) // { ok: false, code: 'NUM-005', ... }
 */
export function readNumber(text: string, expected: Expected): NumberRead | NumberRefused {
  const digits = readDigits(text);
  if (!digits.ok) return refused(text, digits);
  const unit = unitMeant(digits.rest, expected);
  if ('code' in unit) return refused(text, unit);
  const valueSi = toSi({ value: digits.value, unit: unit.id });
  const outside = impossible({ valueSi, unit: unit.id, possible: expected.possible ?? {} });
  if (outside !== null) return refused(text, outside);
  return {
    ok: true,
    value: digits.value,
    unit: unit.id,
    valueSi,
    unitWritten: digits.rest !== '',
    typed: text,
  };
}

type Fault = Pick<NumberRefused, 'code' | 'what'>;

function refused(typed: string, { code, what }: Fault | DigitsFault): NumberRefused {
  return { ok: false, code, what, typed };
}

function unitMeant(word: string, { dimension, unit }: Expected): { readonly id: UnitId } | Fault {
  if (word === '') return unit === undefined ? withoutUnit(dimension) : { id: unit };
  const meant = unitWord(word);
  if (meant.kind === 'absolute') {
    return {
      code: 'NUM-013',
      what: `“${word}” is absolute pressure. Write what the gauge shows, in ${usual(dimension)}.`,
    };
  }
  if (meant.kind === 'unknown') {
    return {
      code: 'NUM-011',
      what: `“${word}” is no unit known here. Write the ${title(dimension)} in ${usual(dimension)}.`,
    };
  }
  const is = unitFor(meant.unit).dimension;
  if (is === dimension) return { id: meant.unit };
  return {
    code: 'NUM-012',
    what: `“${word}” is a unit of ${title(is)}; this is a ${title(dimension)}. Write it in ${usual(dimension)}.`,
  };
}

function withoutUnit(dimension: Dimension): Fault {
  return { code: 'NUM-010', what: `Of what? Write the unit too: ${usual(dimension)}.` };
}

function impossible(at: {
  readonly valueSi: number;
  readonly unit: UnitId;
  readonly possible: Possible;
}): Fault | null {
  const { valueSi, unit, possible } = at;
  const { aboveSi, atLeastSi, atMostSi } = possible;
  const said = shortest({ valueSi, unit });
  if (aboveSi !== undefined && valueSi <= aboveSi) {
    return { code: 'NUM-014', what: `${said} cannot be: it must be above ${bound(aboveSi, unit)}.` };
  }
  if (atLeastSi !== undefined && valueSi < atLeastSi) {
    return { code: 'NUM-014', what: `${said} cannot be: it must be at least ${bound(atLeastSi, unit)}.` };
  }
  if (atMostSi !== undefined && valueSi > atMostSi) {
    return { code: 'NUM-015', what: `${said} cannot be: it must be at most ${bound(atMostSi, unit)}.` };
  }
  return null;
}

function shortest({ valueSi, unit }: { readonly valueSi: number; readonly unit: UnitId }): string {
  const value = Number(fromSi({ valueSi, unit }).toPrecision(12));
  const { label } = unitFor(unit);
  const number = String(value).replace('-', '−');
  return label === '' ? number : `${number} ${label}`;
}

function bound(valueSi: number, unit: UnitId): string {
  return valueSi === 0 ? format({ valueSi, unit, decimals: 0 }) : shortest({ valueSi, unit });
}

function title(dimension: Dimension): string {
  return DIMENSIONS[dimension].title;
}

function usual(dimension: Dimension): string {
  const { us, si } = DIMENSIONS[dimension];
  const labels = [...new Set([unitFor(us).label, unitFor(si).label])].filter((label) => label !== '');
  return labels.length === 0 ? 'digits alone' : labels.join(' or ');
}
