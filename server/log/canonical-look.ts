/**
 * Whether a text is canonical JSON (RFC 8785), in one pass over its bytes, without a value made of it. What it takes is canonical. It does
 * not take the few canonical texts that it does not look into, those with an escape or with a name beyond ASCII: there `JSON.parse`
 * and `canonical` have the last word.
 */
import { LONE_SURROGATE, NESTING_MAX } from './canonical.ts';

const FIRST_LETTER = 0x20;
const QUOTE = 0x22;
const COMMA = 0x2c;
const MINUS = 0x2d;
const POINT = 0x2e;
const ZERO = 0x30;
const NINE = 0x39;
const COLON = 0x3a;
const LEFT_BRACKET = 0x5b;
const BACKSLASH = 0x5c;
const RIGHT_BRACKET = 0x5d;
const LETTER_E = 0x65;
const LETTER_F = 0x66;
const LETTER_N = 0x6e;
const LETTER_T = 0x74;
const LEFT_BRACE = 0x7b;
const RIGHT_BRACE = 0x7d;
const LAST_OF_ASCII = 0x7f;

const NULL = Buffer.from('null');
const TRUE = Buffer.from('true');
const FALSE = Buffer.from('false');

/** In the place of an end: this is not what was looked for. */
const NOT_TAKEN = -1;

/**
 * @example isCanonical('{"a":2,"b":1}') // true
 * @example isCanonical('{"b":1,"a":2}') // false
 */
export function isCanonical(text: string): boolean {
  const laid = laidOut(text, []);
  return valueEnd(laid, 0, 0) === laid.length;
}

/**
 * The texts of some members of an object, where it has them all and its own text is canonical.
 *
 * @param names in their canonical order
 * @example membersOf('{"a":[1],"b":"x","c":2}', ['b', 'c']) // ['"x"', '2']
 */
export function membersOf(text: string, names: readonly string[]): readonly string[] | undefined {
  const laid = laidOut(text, names);
  const isWhole = laid.bytes[0] === LEFT_BRACE && objectEnd(laid, 0, 0) === laid.length;
  return isWhole && laid.found.length === names.length ? laid.found : undefined;
}

/** A text that is looked at. */
interface Laid {
  /** Its UTF-8, and behind it a zero, which no JSON has: every search stops there. */
  readonly bytes: Buffer;
  readonly length: number;
  /** One letter for each byte, so that a place among the bytes is one among the letters. */
  readonly letters: string;
  readonly isAscii: boolean;
  /** Members that are looked for, and the texts of those found so far. */
  readonly names: readonly string[];
  readonly found: string[];
}

/** Serves nearly every line, so that none needs a buffer of its own. */
const SHARED = Buffer.alloc(1 << 16);
const UTF8_BYTES_MAX = 3;

function laidOut(text: string, names: readonly string[]): Laid {
  const needed = text.length * UTF8_BYTES_MAX + 1;
  const bytes = needed <= SHARED.length ? SHARED : Buffer.alloc(needed);
  const length = bytes.write(text);
  const isAscii = length === text.length;
  // Half a surrogate pair has come out as another letter.
  bytes[isAscii || !LONE_SURROGATE.test(text) ? length : 0] = 0;
  const letters = isAscii ? text : bytes.toString('latin1', 0, length);
  return { bytes, length, letters, isAscii, names, found: [] };
}

function valueEnd(laid: Laid, at: number, depth: number): number {
  const { bytes } = laid;
  switch (bytes[at]) {
    case QUOTE:
      return textEnd(bytes, at);
    case LEFT_BRACE:
      return objectEnd(laid, at, depth);
    case LEFT_BRACKET:
      return listEnd(laid, at, depth);
    case LETTER_N:
      return wordEnd(bytes, at, NULL);
    case LETTER_T:
      return wordEnd(bytes, at, TRUE);
    case LETTER_F:
      return wordEnd(bytes, at, FALSE);
    default:
      return numberEnd(laid, at);
  }
}

function objectEnd(laid: Laid, from: number, depth: number): number {
  const { bytes } = laid;
  if (depth >= NESTING_MAX) return NOT_TAKEN;
  if (bytes[from + 1] === RIGHT_BRACE) return from + 2;
  let before = NOT_TAKEN;
  for (let at = from + 1; ; ) {
    const colon = nameEnd(bytes, at);
    if (colon === NOT_TAKEN || bytes[colon] !== COLON) return NOT_TAKEN;
    if (before !== NOT_TAKEN && !isNameAfter(bytes, before, at)) return NOT_TAKEN;
    before = at;
    const end = valueEnd(laid, colon + 1, depth + 1);
    if (end === NOT_TAKEN) return NOT_TAKEN;
    if (depth === 0) take(laid, at, end);
    if (bytes[end] === RIGHT_BRACE) return end + 1;
    if (bytes[end] !== COMMA) return NOT_TAKEN;
    at = end + 1;
  }
}

/** Keeps a member of the outermost object if it is the next one that is looked for. */
function take({ bytes, letters, isAscii, names, found }: Laid, from: number, end: number): void {
  const wanted = names[found.length];
  if (wanted === undefined) return;
  const quote = from + 1 + wanted.length;
  if (bytes[quote] !== QUOTE || !letters.startsWith(wanted, from + 1)) return;
  // Behind the quote stands a colon.
  const value = quote + 2;
  found.push(isAscii ? letters.slice(value, end) : bytes.toString('utf8', value, end));
}

function listEnd(laid: Laid, from: number, depth: number): number {
  const { bytes } = laid;
  if (depth >= NESTING_MAX) return NOT_TAKEN;
  if (bytes[from + 1] === RIGHT_BRACKET) return from + 2;
  for (let at = from + 1; ; ) {
    const end = valueEnd(laid, at, depth + 1);
    if (end === NOT_TAKEN) return NOT_TAKEN;
    if (bytes[end] === RIGHT_BRACKET) return end + 1;
    if (bytes[end] !== COMMA) return NOT_TAKEN;
    at = end + 1;
  }
}

function textEnd(bytes: Buffer, from: number): number {
  for (let at = from + 1; ; at += 1) {
    const letter = bytes[at] ?? 0;
    if (letter === QUOTE) return at + 1;
    if (letter < FIRST_LETTER || letter === BACKSLASH) return NOT_TAKEN;
  }
}

/** ASCII alone: of other letters, bytes are not in the order of UTF-16 code units. */
function nameEnd(bytes: Buffer, from: number): number {
  if (bytes[from] !== QUOTE) return NOT_TAKEN;
  for (let at = from + 1; ; at += 1) {
    const letter = bytes[at] ?? 0;
    if (letter === QUOTE) return at + 1;
    if (letter < FIRST_LETTER || letter === BACKSLASH || letter > LAST_OF_ASCII) return NOT_TAKEN;
  }
}

/** Of two names by where they begin; neither holds a quote. */
function isNameAfter(bytes: Buffer, before: number, at: number): boolean {
  for (let letter = 1; ; letter += 1) {
    const one = bytes[before + letter] ?? 0;
    const other = bytes[at + letter] ?? 0;
    if (one !== other) return one === QUOTE || (other !== QUOTE && other > one);
    if (one === QUOTE) return false;
  }
}

function wordEnd(bytes: Buffer, from: number, word: Buffer): number {
  for (let letter = 0; letter < word.length; letter += 1)
    if (bytes[from + letter] !== word[letter]) return NOT_TAKEN;
  return from + word.length;
}

/** So many digits a double always carries: no shorter ones stand for the same, and no others. */
const DIGITS_KEPT = 15;
/** With so many behind `0.` a number may be below 1e-6, which is written with an exponent from there on. */
const PLACES_PLAIN = 6;

function numberEnd(laid: Laid, from: number): number {
  const { bytes } = laid;
  const first = bytes[from] === MINUS ? from + 1 : from;
  const isBelowOne = bytes[first] === ZERO;
  const point = digitsEnd(bytes, first);
  if (point === first || (isBelowOne && point > first + 1)) return NOT_TAKEN;
  const end = bytes[point] === POINT ? digitsEnd(bytes, point + 1) : point;
  const places = end - point - 1;
  const isPlain =
    end - first <= DIGITS_KEPT &&
    bytes[end] !== LETTER_E &&
    (end === point
      ? !isBelowOne || first === from
      : places > 0 && bytes[end - 1] !== ZERO && (!isBelowOne || places <= PLACES_PLAIN));
  return isPlain ? end : writtenAnew(laid, from, end);
}

function digitsEnd(bytes: Buffer, from: number): number {
  for (let at = from; ; at += 1) {
    const letter = bytes[at] ?? 0;
    if (letter < ZERO || letter > NINE) return at;
  }
}

/** The end of a number that comes out the same when it is read and written. @param soFar it has no end before */
function writtenAnew({ bytes, letters }: Laid, from: number, soFar: number): number {
  let end = soFar;
  while (!endsNumber(bytes[end] ?? 0)) end += 1;
  const text = letters.slice(from, end);
  const value = Number(text);
  return Number.isFinite(value) && String(value) === text ? end : NOT_TAKEN;
}

function endsNumber(letter: number): boolean {
  return letter === COMMA || letter === RIGHT_BRACE || letter === RIGHT_BRACKET || letter === 0;
}
