import type { Field } from '../vocabulary.ts';
import { isFiller, plainText, stem, wordsOf } from './words.ts';

/** How a field is named in a line that can be typed again: its label, or as much of it as tells it from the others. */
export function nameOf(field: Field, fields: readonly Field[]): string {
  const [head = ''] = field.label.split(':');
  const meant = fieldsNamed(head, fields);
  const isClear = meant.length === 1 && meant[0]?.name === field.name && !/[;=]|\bthen\b/i.test(head);
  return isClear ? head : field.name;
}

/** Fields whose label, or its beginning, or whose name this is; a whole label alone where there is one. */
export function fieldsNamed(text: string, fields: readonly Field[]): readonly Field[] {
  const said = plainText(text);
  if (said === '') return [];
  const whole = fields.filter((field) => plainText(field.label) === said || plainText(field.name) === said);
  return whole.length > 0 ? whole : fields.filter((field) => plainText(field.label).startsWith(said));
}

/** Words that stand in the label of one field alone: `lock`, said before a number, tells what the number is. */
export function hintWords(fields: readonly Field[]): ReadonlyMap<string, string> {
  const owners = new Map<string, Set<string>>();
  for (const field of fields) {
    for (const word of wordsOf(field.label).map(stem)) {
      owners.set(word, (owners.get(word) ?? new Set()).add(field.name));
    }
  }
  const hints = new Map<string, string>();
  for (const [word, [only, ...more]] of [...owners].map(([word, names]) => [word, [...names]] as const)) {
    if (only !== undefined && more.length === 0 && word.length >= 3 && !isFiller(word)) hints.set(word, only);
  }
  for (const [word, field] of [...byKind(fields), ...atRest(fields)])
    if (!owners.has(word)) hints.set(word, field);
  return hints;
}

/** What people call a reading by what it is read off, where the card asks for one of the kind (common practice, no source). */
const KINDS: readonly (readonly [kind: string, words: readonly string[]])[] = [
  ['travel', ['stem', 'scale', 'stroke', 'travel', 'position', 'indicator', 'open']],
  ['pressure', ['gauge', 'pressure', 'air']],
];

function byKind(fields: readonly Field[]): readonly (readonly [word: string, field: string])[] {
  return KINDS.flatMap(([dimension, words]) => soleOf(fields, { dimension, words }));
}

/** The words for the one field that is measured so; none where several are. */
function soleOf(
  fields: readonly Field[],
  { dimension, words }: { readonly dimension: string; readonly words: readonly string[] },
): readonly (readonly [word: string, field: string])[] {
  const [only, ...more] = fields.filter(
    (field) => field.type === 'quantity' && field.dimension === dimension,
  );
  return only === undefined || more.length > 0
    ? []
    : words.map((word): readonly [string, string] => [stem(word), only.name]);
}

/** What nothing moves is read at rest (common practice, no source). */
const AT_REST = ['still', 'static', 'rest'];

function atRest(fields: readonly Field[]): readonly (readonly [word: string, field: string])[] {
  const [only, ...more] = fields.filter(({ label }) => /\bnothing moving\b/i.test(label));
  return only === undefined || more.length > 0
    ? []
    : AT_REST.map((word): readonly [string, string] => [stem(word), only.name]);
}

/** `sig` and `trav`: three letters or more that begin the name of one field alone; never where words may be the answer. */
export function hintBegun(word: string, fields: readonly Field[]): string | undefined {
  if (word.length < ABBREVIATED_MIN || fields.some(({ type }) => type === 'text')) return undefined;
  const begun = [...hintWords(fields)].filter(([known]) => known.startsWith(word));
  const names = new Set(begun.map(([, field]) => field));
  return names.size === 1 ? begun[0]?.[1] : undefined;
}

const ABBREVIATED_MIN = 3;

/** Words of the labels of a card: said beside a reading, they change nothing. */
export function labelWords(fields: readonly Field[]): ReadonlySet<string> {
  return new Set(fields.flatMap((field) => wordsOf(field.label).map(stem)));
}
