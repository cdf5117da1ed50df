import type { UnitId } from '../calculations/unit-table.ts';
import { fromSi, preferredUnit, type UnitSystem } from '../calculations/units.ts';
import { type NumberRead, readNumber } from '../readings/number-text.ts';
import {
  type CountField,
  type QuantityField,
  type SheetField,
  STORED_UNIT,
  type TextField,
} from './field.ts';
import { readThread } from './thread.ts';

export type FieldValue = string | number | boolean | null;

/** The value, with what else the text says; or why it is refused. */
export type FieldRead =
  | { readonly value: FieldValue; readonly pitchM?: number | null }
  | { readonly fault: string };

const TEXT_MAX = 200;
const LONG_TEXT_MAX = 4000;

/** A tag becomes the name of a stream and part of an address. */
const TAG = /^[\p{L}\p{N}](?:[\p{L}\p{N}._ -]{0,38}[\p{L}\p{N}])?$/u;

/**
 * @param text    as typed; blank for nothing
 * @param system  which units numbers without a unit are in
 */
export function readField(
  field: SheetField,
  { text, system }: { text: string; system: UnitSystem },
): FieldRead {
  const tidy = text.trim();
  if (tidy === '') return blank(field, system);
  switch (field.kind) {
    case 'quantity':
      return readQuantity(field, { text: tidy, system });
    case 'count':
      return readCount(field, tidy);
    case 'choice': {
      if (field.choices.some(({ value }) => value === tidy)) return { value: tidy };
      return { fault: `“${tidy}” is not a choice. Choose one of: ${valuesOf(field.choices)}.` };
    }
    case 'yes or no': {
      if (tidy === 'yes' || tidy === 'no') return { value: tidy === 'yes' };
      return { fault: `“${tidy}” is neither yes nor no. Write yes or no.` };
    }
    case 'thread': {
      const thread = readThread(tidy);
      return 'fault' in thread ? thread : { value: thread.text, pitchM: thread.pitchM };
    }
    default:
      return readText(field, tidy);
  }
}

/** A stored value in a unit, and back: SI but for temperatures. */
export function storedValue(
  field: QuantityField,
  read: Pick<NumberRead, 'value' | 'unit' | 'valueSi'>,
): number {
  const stored = STORED_UNIT[field.dimension];
  return read.unit === stored ? read.value : fromSi({ valueSi: read.valueSi, unit: stored });
}

/** @example unitOf(fieldNamed('travelM'), 'us') // 'in' */
export function unitOf(field: QuantityField, system: UnitSystem): UnitId {
  return preferredUnit(field.dimension, system);
}

function blank(field: SheetField, system: UnitSystem): FieldRead {
  if (field.required === true) return { fault: `${field.label} is missing. Write it.` };
  switch (field.kind) {
    case 'yes or no':
      // Taken for "no", a bellows seal that was left out of a table would have its stem turned.
      return { fault: `${field.label} is missing. Write yes or no.` };
    case 'choice':
      if (field.blank !== undefined) return { value: null };
      return { fault: `${field.label} is missing. Choose one of: ${valuesOf(field.choices)}.` };
    case 'quantity':
      return field.usual === undefined
        ? { value: null }
        : readField(field, { text: field.usual.text, system });
    case 'thread':
      return { value: null, pitchM: null };
    case 'long text':
      return { value: '' };
    default:
      return { value: null };
  }
}

function readQuantity(
  field: QuantityField,
  { text, system }: { text: string; system: UnitSystem },
): FieldRead {
  const read = readNumber(text, {
    dimensions: [field.dimension],
    unit: unitOf(field, system),
    possible: field.possible,
  });
  return read.ok ? { value: storedValue(field, read) } : { fault: `${read.what} ${read.next}` };
}

function readCount(field: CountField, text: string): FieldRead {
  const count = /^\d{1,4}$/.test(text) ? Number(text) : 0;
  if (count >= 1 && count <= field.atMost) return { value: count };
  return { fault: `“${text}” is no count. Write a whole number from 1 to ${field.atMost}.` };
}

function readText(field: TextField, text: string): FieldRead {
  if (field.kind === 'tag') {
    const tag = text.normalize('NFC').toUpperCase();
    if (TAG.test(tag)) return { value: tag };
    return { fault: `“${text}” is no tag. Use letters, digits, - . _ and spaces between, 40 at most.` };
  }
  const long = field.kind === 'long text';
  const tidy = long ? text.replaceAll(/\r\n?/g, '\n') : text;
  if (/[\p{Cc}\p{Cs}]/u.test(long ? tidy.replaceAll('\n', '') : tidy))
    return { fault: 'It holds a character that cannot be shown. Write it with plain letters.' };
  const most = long ? LONG_TEXT_MAX : TEXT_MAX;
  if (tidy.length > most)
    return { fault: `It has ${tidy.length} letters; at most ${most} are kept. Shorten it.` };
  return { value: tidy };
}

function valuesOf(choices: readonly { readonly value: string }[]): string {
  return choices.map(({ value }) => value).join(', ');
}
