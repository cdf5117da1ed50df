/**
 * Canonical JSON (RFC 8785): one text for one value, so that a hash over the text is a hash over the value.
 * Numbers and strings are written as ECMAScript writes them, which is what the RFC asks for.
 */
import type { Json } from '../../procedures/json.ts';

/** Deeper than any entry is; a bound, so that no input can exhaust the stack. */
const NESTING_MAX = 100;

const LONE_SURROGATE = /\p{Surrogate}/u;

/**
 * The canonical text of a value. Encoded as UTF-8 it is what gets hashed.
 *
 * @throws TypeError for what JSON cannot carry: NaN, Infinity, undefined, dates and other objects with a class,
 *   text with half a surrogate pair, nesting beyond 100. The message says where.
 * @example canonical({ b: [1e30, -0], a: 'é' }) // '{"a":"é","b":[1e+30,0]}'
 */
export function canonical(value: Json): string {
  return write(value, []);
}

type Path = readonly (string | number)[];

function write(value: unknown, path: Path): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number') return writeNumber(value, path);
  if (typeof value === 'string') return writeText(value, path);
  if (typeof value !== 'object') throw refused(path, typeof value);
  if (path.length >= NESTING_MAX) throw refused(path, `nesting deeper than ${NESTING_MAX}`);
  if (Array.isArray(value)) {
    return `[${Array.from(value, (item, index) => write(item, [...path, index])).join(',')}]`;
  }
  return writeObject(value, path);
}

function writeObject(value: object, path: Path): string {
  const prototype = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) {
    throw refused(path, `an object of class ${value.constructor?.name ?? 'unknown'}`);
  }
  // The default order of `sort` compares UTF-16 code units, as the RFC wants; a locale's order would not.
  const members = Object.entries(value)
    .map(([name, member]) => ({ name, member }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .map(({ name, member }) => `${writeText(name, path)}:${write(member, [...path, name])}`);
  return `{${members.join(',')}}`;
}

function writeNumber(value: number, path: Path): string {
  if (!Number.isFinite(value)) throw refused(path, String(value));
  return JSON.stringify(value);
}

function writeText(value: string, path: Path): string {
  if (LONE_SURROGATE.test(value)) throw refused(path, 'text with half a surrogate pair');
  return JSON.stringify(value);
}

function refused(path: Path, met: string): TypeError {
  const place = path.map((step) => `[${JSON.stringify(step)}]`).join('');
  return new TypeError(`Canonical JSON cannot carry ${met}${place === '' ? '' : ` at ${place}`}.`);
}

/**
 * Reads JSON as strictly as canonical JSON is written: `JSON.parse` silently keeps the last of two members
 * with one name, this refuses them, and with them what could not be written back.
 *
 * @throws SyntaxError with the reason: not JSON, a name given twice, a number too large, half a surrogate pair
 * @example parseStrict('{"a":1,"a":2}') // SyntaxError: The name "a" is given twice.
 */
export function parseStrict(text: string): Json {
  const value: Json = JSON.parse(text);
  refuseDoubleNames(text);
  try {
    canonical(value);
  } catch (error) {
    throw new SyntaxError(error instanceof Error ? error.message : String(error), { cause: error });
  }
  return value;
}

const TOKENS = /"(?:[^"\\]|\\.)*"(\s*:)?|[{}]/g;

/** Only for text that `JSON.parse` has accepted: then braces and quoted texts are all that need looking at. */
function refuseDoubleNames(text: string): void {
  const open: Set<string>[] = [];
  for (const [token, colon] of text.matchAll(TOKENS)) {
    if (token === '{') open.push(new Set());
    else if (token === '}') open.pop();
    else if (colon !== undefined) {
      const name: string = JSON.parse(token.slice(0, token.length - colon.length));
      const names = open.at(-1);
      if (names?.has(name)) throw new SyntaxError(`The name ${JSON.stringify(name)} is given twice.`);
      names?.add(name);
    }
  }
}
