/**
 * Canonical JSON (RFC 8785): one text for one value, so that a hash over the text is a hash over the value.
 * Numbers and strings are written as ECMAScript writes them, which is what the RFC asks for.
 */
import type { Json } from '../../procedures/json.ts';

/** Deeper than any entry is; a bound, so that no input can exhaust the stack. */
export const NESTING_MAX = 100;

export const LONE_SURROGATE = /\p{Surrogate}/u;

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

/** Where the writer is: one array for all of a value, since a copy at each member costs more than the writing. */
type Path = (string | number)[];

function write(value: unknown, path: Path): string {
  if (value === null || typeof value === 'boolean') return String(value);
  if (typeof value === 'number') return writeNumber(value, path);
  if (typeof value === 'string') return writeText(value, path);
  if (typeof value !== 'object') throw refused(path, typeof value);
  if (path.length >= NESTING_MAX) throw refused(path, `nesting deeper than ${NESTING_MAX}`);
  return Array.isArray(value) ? writeList(value, path) : writeObject(value, path);
}

function writeList(items: readonly unknown[], path: Path): string {
  const depth = path.length;
  let text = '';
  for (let at = 0; at < items.length; at += 1) {
    path[depth] = at;
    text += `${at === 0 ? '' : ','}${write(items[at], path)}`;
  }
  path.length = depth;
  return `[${text}]`;
}

function writeObject(value: object, path: Path): string {
  const prototype = Object.getPrototypeOf(value);
  if (prototype !== Object.prototype && prototype !== null) {
    throw refused(path, `an object of class ${value.constructor?.name ?? 'unknown'}`);
  }
  const depth = path.length;
  const members = value as Readonly<Record<string, unknown>>;
  let text = '';
  // The default order of `sort` compares UTF-16 code units, as the RFC wants; a locale's order would not.
  for (const name of Object.keys(members).sort()) {
    const quoted = writeText(name, path);
    path[depth] = name;
    text += `${text === '' ? '' : ','}${quoted}:${write(members[name], path)}`;
    path.length = depth;
  }
  return `{${text}}`;
}

function writeNumber(value: number, path: Path): string {
  if (!Number.isFinite(value)) throw refused(path, String(value));
  return JSON.stringify(value);
}

/** Half a pair is the only thing that JSON.stringify writes as an escape beginning so; a text may also hold the very letters. */
const MAY_BE_HALF = '\\ud';

function writeText(value: string, path: Path): string {
  const text = JSON.stringify(value);
  if (text.includes(MAY_BE_HALF) && LONE_SURROGATE.test(value))
    throw refused(path, 'text with half a surrogate pair');
  return text;
}

function refused(path: readonly (string | number)[], met: string): TypeError {
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
