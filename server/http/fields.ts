import { z } from 'zod';
import { Refusal } from '../../safety/refusal.ts';

/** What a request carries, from a form or from JSON: names with one text, or several. */
export type Fields = Readonly<Record<string, string | readonly string[]>>;

/** A zod object whose fields take texts, or lists of texts. */
export type FieldsSchema = z.ZodObject;

const TEXT_MAX = 200;

export interface TextOptions {
  /** What it is called in a message: `the valve tag`. */
  readonly called: string;
  /** Characters; 200 unless given. */
  readonly max?: number;
  /** Line breaks and tabs are allowed. */
  readonly lines?: boolean;
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is kept out
const CONTROL = /[\u0000-\u001f\u007f-\u009f]|\p{Surrogate}/u;
// Marks that turn the direction of writing make one text look like another.
const TURNING = /[\u202a-\u202e\u2066-\u2069]/u;

/**
 * A text that must be there: trimmed, in one Unicode form, without control characters.
 *
 * @example const body = z.object({ name: text({ called: 'the name', max: 60 }) });
 */
export function text(options: TextOptions) {
  return optionalText(options).refine((value) => value !== '', `Write ${options.called}.`);
}

/** As `text`, and may be blank. A field that must also be allowed to be absent takes `.default('')` or `.optional()`. */
export function optionalText({ called, max = TEXT_MAX, lines = false }: TextOptions) {
  return z
    .string(`Write ${called}.`)
    .overwrite((value) => value.replaceAll('\r\n', '\n').trim().normalize('NFC'))
    .refine((value) => [...value].length <= max, `At most ${max} characters.`)
    .refine(
      (value) => !CONTROL.test(lines ? value.replace(/[\n\t]/g, '') : value) && !TURNING.test(value),
      'It holds characters that cannot be seen. Type it again.',
    );
}

/** One of a closed list, with a message that names the list. */
export function oneOf<const Options extends readonly [string, ...string[]]>(options: Options) {
  return z.enum(options, `Choose one of: ${options.join(', ')}.`);
}

/**
 * The fields as the schema makes them.
 *
 * @throws Refusal FRM-001 for a field that the form does not have, FRM-002 with a message for each wrong field
 */
export function readFields<Schema extends FieldsSchema>(
  schema: Schema,
  { fields, from }: { readonly fields: Fields; readonly from: 'form' | 'address' },
): z.output<Schema> {
  if (from === 'form') refuseUnknown(schema, fields);
  const read = schema.safeParse(fitted(schema, fields), { error: missingText });
  if (read.success) return read.data;
  throw wrongFields(fieldMessages(read.error));
}

/** @returns by field name, the first message each */
function fieldMessages(error: z.ZodError): Readonly<Record<string, string>> {
  const messages: Record<string, string> = {};
  for (const issue of error.issues) {
    const field = issue.path.map(String).join('.') || 'form';
    messages[field] ??= issue.message;
  }
  return messages;
}

/**
 * @example throw wrongFields({ pin: 'The two PINs differ.' })
 */
export function wrongFields(fields: Readonly<Record<string, string>>): Refusal {
  const count = Object.keys(fields).length;
  return new Refusal({
    kind: 'unreadable',
    code: 'FRM-002',
    what: count === 1 ? 'One field is not right.' : `${count} fields are not right.`,
    kept: 'What you typed stands in the form; nothing was recorded.',
    next: 'Put it right and send it again.',
    fields,
  });
}

const missingText: z.core.$ZodErrorMap = (issue) =>
  issue.code === 'invalid_type' && issue.input === undefined ? 'This is missing.' : undefined;

function refuseUnknown(schema: FieldsSchema, given: Fields): void {
  if (schema.def.catchall !== undefined && !(schema.def.catchall instanceof z.ZodNever)) return;
  const unknown = Object.keys(given).filter((name) => !Object.hasOwn(schema.shape, name));
  if (unknown.length === 0) return;
  throw new Refusal({
    kind: 'malformed',
    code: 'FRM-001',
    what: `There is no field ${unknown.slice(0, 5).map(shown).join(', ')} here.`,
    kept: 'Nothing was recorded.',
    next: `Send only: ${Object.keys(schema.shape).join(', ') || 'no field at all'}.`,
  });
}

/** A name from outside, made harmless to print. */
function shown(name: string): string {
  return JSON.stringify(name.slice(0, 40));
}

/** A list where the schema wants one, and one text where it does not. @throws Refusal FRM-003 for a text given twice */
function fitted(schema: FieldsSchema, given: Fields): Record<string, string | readonly string[]> {
  const fields: Record<string, string | readonly string[]> = Object.create(null);
  for (const [name, value] of Object.entries(given)) {
    const field = Object.hasOwn(schema.shape, name) ? schema.shape[name] : schema.def.catchall;
    if (field !== undefined && wantsList(field)) fields[name] = typeof value === 'string' ? [value] : value;
    else if (typeof value === 'string') fields[name] = value;
    else throw givenTwice(name);
  }
  return fields;
}

function givenTwice(name: string): Refusal {
  return new Refusal({
    kind: 'malformed',
    code: 'FRM-003',
    what: `The field ${shown(name)} is given more than once.`,
    kept: 'Nothing was recorded.',
    next: 'Load the page again and send it once.',
  });
}

function wantsList(field: z.core.$ZodType): boolean {
  if (field instanceof z.ZodArray) return true;
  if (field instanceof z.ZodPipe) return wantsList(field.def.in);
  if (field instanceof z.ZodOptional || field instanceof z.ZodDefault || field instanceof z.ZodPrefault)
    return wantsList(field.def.innerType);
  return false;
}

/** What may be drawn again: a PIN is typed anew each time. */
export function textsOf(typed: Fields): Readonly<Record<string, string>> {
  return Object.fromEntries(
    Object.entries(typed).filter(
      (pair): pair is [string, string] => typeof pair[1] === 'string' && pair[0] !== 'pin',
    ),
  );
}
