/** From what a person wrote to one number with its unit: strict, because a misread number moves a valve. */
import { DIMENSIONS, type Dimension, type UnitId } from '../calculations/unit-table.ts';
import { fromSi, toSi, unitFor } from '../calculations/units.ts';
import { readDigits } from './digits.ts';
import { measures, unitWord } from './unit-words.ts';

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
  /** What may be given: a travel, for example, as length or as percent. The first is named where none fits. */
  readonly dimensions: readonly [Dimension, ...Dimension[]];
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
  readonly what: string;
  /** What to write instead. */
  readonly next: string;
  readonly typed: string;
}

/**
 * One number with its unit from a text. Takes comma or point, the minus of the keyboard and U+2212, and a unit
 * behind the number; refuses by name whatever could be read in two ways.
 *
 * @param text  as typed; it comes back untouched
 * @returns the number in its own unit and in SI, or why it is refused
 * @example readNumber('12,1 mm', { dimensions: ['length'] }) // { ok: true, value: 12.1, unit: 'mm', valueSi: 0.0121, ... }
 * @example readNumber('1,234', { dimensions: ['pressure'], unit: 'psi' }) // { ok: false, code: 'NUM-005', ... }
 */
export function readNumber(text: string, expected: Expected): NumberRead | NumberRefused {
  const digits = readDigits(text);
  if (!digits.ok) return { ...digits, typed: text };
  const { value, rest } = digits;
  const meant = unitMeant(rest, expected);
  if ('code' in meant) return { ok: false, ...meant, typed: text };
  const { unit } = meant;
  const valueSi = toSi({ value, unit });
  const outside = impossible({ valueSi, unit, possible: expected.possible ?? {} });
  if (outside !== null) return { ok: false, ...outside, typed: text };
  return { ok: true, value, unit, valueSi, unitWritten: rest !== '', typed: text };
}

type Fault = Pick<NumberRefused, 'code' | 'what' | 'next'>;

function unitMeant(word: string, expected: Expected): { readonly unit: UnitId } | Fault {
  const { dimensions, unit } = expected;
  if (word === '' && unit !== undefined) return { unit };
  const meant = unitWord(word);
  const fits = meant.kind === 'units' ? meant.units.find((id) => measures(id, dimensions)) : undefined;
  return fits === undefined ? noUnit(word, expected) : { unit: fits };
}

function noUnit(word: string, { dimensions }: Expected): Fault {
  const next = `Write it with its unit: ${usual(dimensions)}.`;
  if (word === '') return { code: 'NUM-010', what: 'Of what? The unit is missing.', next };
  const meant = unitWord(word);
  if (meant.kind === 'absolute') return { code: 'NUM-013', what: `“${word}” is absolute pressure.`, next };
  if (meant.kind === 'unknown') return unknown({ word, next });
  const [is] = meant.units.map((id) => DIMENSIONS[unitFor(id).dimension].title);
  return { code: 'NUM-012', what: `“${word}” measures ${is}, not ${titles(dimensions)}.`, next };
}

function unknown({ word, next }: { readonly word: string; readonly next: string }): Fault {
  if (/\s[+\-\u2212]?\d/.test(word)) {
    return { code: 'NUM-007', what: `“${word}” holds one more number.`, next: 'Write one.' };
  }
  return { code: 'NUM-011', what: `“${word}” is no unit known here.`, next };
}

function impossible(at: {
  readonly valueSi: number;
  readonly unit: UnitId;
  readonly possible: Possible;
}): Fault | null {
  const { valueSi, possible } = at;
  const { aboveSi, atLeastSi, atMostSi } = possible;
  if (aboveSi !== undefined && valueSi <= aboveSi) return beyond(at, { words: 'above', boundSi: aboveSi });
  if (atLeastSi !== undefined && valueSi < atLeastSi)
    return beyond(at, { words: 'at least', boundSi: atLeastSi });
  if (atMostSi !== undefined && valueSi > atMostSi)
    return beyond(at, { words: 'at most', boundSi: atMostSi });
  return null;
}

function beyond(
  { valueSi, unit }: { readonly valueSi: number; readonly unit: UnitId },
  { words, boundSi }: { readonly words: 'above' | 'at least' | 'at most'; readonly boundSi: number },
): Fault {
  return {
    code: words === 'at most' ? 'NUM-015' : 'NUM-014',
    what: `${exactly({ valueSi, unit })} cannot be.`,
    next: `It must be ${words} ${exactly({ valueSi: boundSi, unit })}. Read it again.`,
  };
}

/** All digits that matter and no more, so that a refused value reads as it was typed. */
function exactly({ valueSi, unit }: { readonly valueSi: number; readonly unit: UnitId }): string {
  const number = String(Number(fromSi({ valueSi, unit }).toPrecision(12))).replace('-', '\u2212');
  const { label } = unitFor(unit);
  return label === '' ? number : `${number} ${label}`;
}

function titles(dimensions: readonly Dimension[]): string {
  return dimensions.map((dimension) => DIMENSIONS[dimension].title).join(' or ');
}

function usual(dimensions: readonly Dimension[]): string {
  const ids = dimensions.flatMap((dimension) => [DIMENSIONS[dimension].us, DIMENSIONS[dimension].si]);
  const labels = [...new Set(ids.map((id) => unitFor(id).label))].filter((label) => label !== '');
  return labels.length === 0 ? 'digits alone' : labels.join(' or ');
}
