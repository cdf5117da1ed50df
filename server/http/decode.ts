/** One decoder for forms and JSON: both become the same names and texts, so that nothing behind it knows which came. */
import { Refusal } from '../../safety/refusal.ts';
import { parseStrict } from '../log/canonical.ts';
import type { Fields } from './fields.ts';

export const BODY_BYTES_MAX = 256 * 1024;

/** More names than any form of ours has. */
const FIELDS_MAX = 2000;

export interface Body {
  readonly fields: Fields;
  /** How it came, so that a JSON client is answered in JSON. */
  readonly format: 'form' | 'json' | 'none';
}

/**
 * Reads the body of a request.
 *
 * @throws Refusal REQ-001 too large, REQ-002 of another type, REQ-003 not readable
 */
export async function readBody(request: Request, bytesMax = BODY_BYTES_MAX): Promise<Body> {
  const type = (request.headers.get('content-type') ?? '').split(';')[0]?.trim().toLowerCase() ?? '';
  const text = decodeUtf8(await readBytes(request, bytesMax));
  if (type === '' && text === '') return { fields: {}, format: 'none' };
  if (type === 'application/x-www-form-urlencoded') return { fields: formFields(text), format: 'form' };
  if (type === 'application/json') return { fields: jsonFields(text), format: 'json' };
  throw new Refusal({
    kind: 'malformed',
    code: 'REQ-002',
    what: 'The content is neither a form nor JSON.',
    kept: 'Nothing was recorded.',
    next: 'Send application/x-www-form-urlencoded or application/json.',
  });
}

async function readBytes(request: Request, bytesMax: number): Promise<Uint8Array> {
  if (Number(request.headers.get('content-length') ?? 0) > bytesMax) throw tooLarge(bytesMax);
  if (request.body === null) return new Uint8Array();
  const parts: Uint8Array[] = [];
  let length = 0;
  // The length that a client announces is not believed; a body without one is counted as it comes.
  for await (const part of request.body as unknown as AsyncIterable<Uint8Array>) {
    length += part.length;
    if (length > bytesMax) throw tooLarge(bytesMax);
    parts.push(part);
  }
  return Buffer.concat(parts, length);
}

function tooLarge(bytesMax: number): Refusal {
  return new Refusal({
    kind: 'malformed',
    code: 'REQ-001',
    what: `The content is larger than ${Math.floor(bytesMax / 1024)} KiB.`,
    kept: 'Nothing was recorded.',
    next: 'Send less at once.',
  });
}

function decodeUtf8(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw unreadable('its bytes are no UTF-8 text');
  }
}

function unreadable(why: string): Refusal {
  return new Refusal({
    kind: 'malformed',
    code: 'REQ-003',
    what: `The content cannot be read: ${why}.`,
    kept: 'Nothing was recorded.',
    next: 'Load the page again and enter it there.',
  });
}

function formFields(text: string): Fields {
  refuseBadPercent(text);
  const fields = new Map<string, string[]>();
  for (const [name, value] of new URLSearchParams(text)) {
    const values = fields.get(name);
    if (values === undefined) fields.set(name, [value]);
    else values.push(value);
  }
  return collected(fields);
}

/** URLSearchParams puts a mark in the place of what it cannot decode; a reading must not change so silently. */
function refuseBadPercent(text: string): void {
  try {
    decodeURIComponent(text.replaceAll('+', ' '));
  } catch {
    throw unreadable('a percent code in it is no UTF-8 text');
  }
}

function jsonFields(text: string): Fields {
  let value: unknown;
  try {
    value = parseStrict(text);
  } catch (error) {
    throw unreadable(error instanceof Error ? error.message.replace(/\.$/, '') : 'it is not JSON');
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw unreadable('it is not one JSON object');
  }
  const fields = new Map<string, string[]>();
  const lists = new Set<string>();
  for (const [name, member] of Object.entries(value)) {
    if (Array.isArray(member)) lists.add(name);
    fields.set(
      name,
      Array.isArray(member) ? member.map((item) => asText(name, item)) : [asText(name, member)],
    );
  }
  return collected(fields, lists);
}

function asText(name: string, value: unknown): string {
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return String(value);
  throw unreadable(`"${name.slice(0, 40)}" is no text, no number and no list of these`);
}

function collected(
  fields: ReadonlyMap<string, readonly string[]>,
  lists: ReadonlySet<string> = new Set(),
): Fields {
  if (fields.size > FIELDS_MAX) throw unreadable(`it has more than ${FIELDS_MAX} fields`);
  const record: Record<string, string | readonly string[]> = Object.create(null);
  for (const [name, values] of fields) {
    const [only, ...more] = values;
    record[name] = only !== undefined && more.length === 0 && !lists.has(name) ? only : values;
  }
  return record;
}
