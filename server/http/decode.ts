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
  /** Only where the route takes one. */
  readonly file: UploadedFile | null;
}

/** What was chosen in the file field of a form. The name is whatever somebody gave it: nothing is ever stored under it. */
export interface UploadedFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export interface BodyTaken {
  readonly bytesMax?: number | undefined;
  /** The field of the form that a file comes in; without it, no file is taken. */
  readonly fileField?: string | undefined;
  /** A file in a form counts as the text of its field. */
  readonly takesTextFiles?: boolean | undefined;
}

/**
 * Reads the body of a request.
 *
 * @throws Refusal REQ-001 too large, REQ-002 of another type, REQ-003 not readable
 */
export async function readBody(
  request: Request,
  { bytesMax = BODY_BYTES_MAX, fileField, takesTextFiles = false }: BodyTaken = {},
): Promise<Body> {
  const declared = request.headers.get('content-type') ?? '';
  const type = declared.split(';')[0]?.trim().toLowerCase() ?? '';
  const next = takesTextFiles
    ? 'Of a table take fewer rows, or fewer hours: 5000 rows at most.'
    : 'Send less at once.';
  const bytes = await readBytes(request, { bytesMax, next });
  if (type === 'multipart/form-data' && fileField !== undefined)
    return await multipartBody(bytes, { declared, fileField });
  if (type === 'multipart/form-data' && takesTextFiles)
    return { fields: await fileFields(bytes, declared), format: 'form', file: null };
  const text = decodeUtf8(bytes);
  const file = null;
  if (type === '' && text === '') return { fields: {}, format: 'none', file };
  if (type === 'application/x-www-form-urlencoded') return { fields: formFields(text), format: 'form', file };
  if (type === 'application/json') return { fields: jsonFields(text), format: 'json', file };
  throw new Refusal({
    kind: 'malformed',
    code: 'REQ-002',
    what: 'The content is neither a form nor JSON.',
    kept: 'Nothing was recorded.',
    next: 'Send application/x-www-form-urlencoded or application/json.',
  });
}

/** One file and texts beside it; the platform's own reader takes the parts apart. */
async function multipartBody(
  bytes: Uint8Array<ArrayBuffer>,
  { declared, fileField }: { readonly declared: string; readonly fileField: string },
): Promise<Body> {
  const fields = new Map<string, string[]>();
  const files: UploadedFile[] = [];
  for (const [name, value] of await partsOf(bytes, declared)) {
    if (typeof value === 'string') fields.set(name, [...(fields.get(name) ?? []), value]);
    else if (name !== fileField)
      throw unreadable(`it has a file where none is taken, in "${name.slice(0, 40)}"`);
    else if (value.name !== '' || value.size > 0)
      files.push({ name: value.name, bytes: new Uint8Array(await value.arrayBuffer()) });
  }
  if (files.length > 1) throw unreadable('it has more than one file');
  return { fields: collected(fields), format: 'form', file: files[0] ?? null };
}

async function partsOf(bytes: Uint8Array<ArrayBuffer>, declared: string): Promise<FormData> {
  try {
    return await new Response(bytes, { headers: { 'content-type': declared } }).formData();
  } catch (cause) {
    throw cause instanceof TypeError ? unreadable('its parts are not whole') : cause;
  }
}

interface Most {
  readonly bytesMax: number;
  /** What to do where it is more. */
  readonly next: string;
}

async function readBytes(request: Request, most: Most): Promise<Uint8Array<ArrayBuffer>> {
  const { bytesMax } = most;
  const announced = Number(request.headers.get('content-length') ?? Number.NaN);
  if (announced > bytesMax) throw tooLarge(most);
  // Over the wire Node takes no more than was announced, so that it may be read in one piece: half the work of a stream.
  if (announced >= 0) return bounded(new Uint8Array(await request.arrayBuffer()), most);
  if (request.body === null) return new Uint8Array();
  const parts: Uint8Array[] = [];
  let length = 0;
  // A body whose length nobody announced is counted as it comes.
  for await (const part of request.body as unknown as AsyncIterable<Uint8Array>) {
    length += part.length;
    if (length > bytesMax) throw tooLarge(most);
    parts.push(part);
  }
  return new Uint8Array(Buffer.concat(parts, length));
}

/** What was announced is not believed where there was no wire. */
function bounded(bytes: Uint8Array<ArrayBuffer>, most: Most): Uint8Array<ArrayBuffer> {
  if (bytes.length > most.bytesMax) throw tooLarge(most);
  return bytes;
}

function tooLarge({ bytesMax, next }: Most): Refusal {
  return new Refusal({
    kind: 'malformed',
    code: 'REQ-001',
    what: `The content is larger than ${Math.floor(bytesMax / 1024)} KiB.`,
    kept: 'Nothing was recorded.',
    next,
  });
}

const UTF8 = new TextDecoder('utf-8', { fatal: true });

function decodeUtf8(bytes: Uint8Array): string {
  try {
    return UTF8.decode(bytes);
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

/**
 * A form with files: a file becomes the text of its field, and stands in the place of what was typed there; one that was
 * not chosen is nothing.
 */
async function fileFields(bytes: Uint8Array<ArrayBuffer>, declared: string): Promise<Fields> {
  const typed = new Map<string, string[]>();
  const chosen = new Map<string, string[]>();
  for (const [name, value] of await partsOf(bytes, declared)) {
    const text = typeof value === 'string' ? value : await textOf(value);
    const into = typeof value === 'string' || text === '' ? typed : chosen;
    // A file that was not chosen comes blank beside what was typed.
    const before = (into.get(name) ?? []).filter((one) => one !== '');
    into.set(name, text === '' && before.length > 0 ? before : [...before, text]);
  }
  return collected(new Map([...typed, ...chosen]));
}

/** A table program writes UTF-8, or UTF-16 with its mark before it. */
async function textOf(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const [first, second] = bytes;
  const coding =
    first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
  try {
    return new TextDecoder(coding, { fatal: true }).decode(bytes);
  } catch {
    throw new Refusal({
      kind: 'malformed',
      code: 'REQ-003',
      what: 'The file cannot be read: its letters are neither UTF-8 nor UTF-16.',
      kept: 'Nothing was recorded.',
      next: 'Save it as CSV UTF-8, and choose it again.',
    });
  }
}

/** URLSearchParams puts a mark in the place of what it cannot decode; a reading must not change so silently. */
function refuseBadPercent(text: string): void {
  try {
    decodeURIComponent(text);
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
