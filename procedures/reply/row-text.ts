import type { Given } from '../readings/given.ts';
import type { Field } from '../vocabulary.ts';
import type { Ask } from './ask.ts';
import { assign } from './assign.ts';
import { itemsOf } from './items.ts';
import { fieldsNamed } from './labels.ts';
import { optionsAt } from './options.ts';
import { ownGauge } from './places.ts';
import { knownTags, tagOf } from './tags.ts';
import { type Fault, faultOf } from './values.ts';
import { plainText, wordsOf } from './words.ts';

export interface Readable {
  readonly givens: readonly Given[];
  readonly fault: Fault | null;
}

const NOTHING: Fault = {
  code: 'RPL-004',
  what: 'None of this is a reading or an answer.',
  next: 'Write what the card asks for, or ask a question.',
};

/** Every meaning that a reply may have for the open card: named parts as they are named, the rest where it fits. */
export function readRow(text: string, ask: Ask): Readable {
  const parts = withReason(text, ask)
    .split(/[;\n]/)
    .map((part) => part.trim());
  const named = parts.map((part) => namedPart(part, ask));
  const failed = named.find((one) => one !== null && one.givens.length === 0);
  if (failed) return withoutColons(text, { failed, ask });
  const free = parts.filter((_, at) => named[at] === null).join(' ; ');
  let givens: readonly Given[] = [{}];
  for (const one of named.filter((some) => some !== null)) {
    givens = givens.flatMap((given) =>
      one.givens.filter((more) => isApart(given, more)).map((more) => ({ ...given, ...more })),
    );
  }
  if (givens.length === 0)
    return { givens: [], fault: { ...NOTHING, what: 'One field is named twice.', next: 'Write it once.' } };
  return withFree(givens, { free, ask });
}

/** `…, because the wind blew` gives the reason that an answer wants. */
function withReason(text: string, { fields }: Ask): string {
  return fields.some(({ name }) => name === 'reason')
    ? text.replace(/[\s,]*\bbecause\b\s*/i, '; reason: ')
    : text;
}

/** `signal: 9 psi travel: 50 %` names two fields in one part: read again as if no colon stood there. */
function withoutColons(
  text: string,
  { failed, ask }: { readonly failed: Readable; readonly ask: Ask },
): Readable {
  if ((text.match(/[:=]/g) ?? []).length < 2 || /[;\n]/.test(text)) return failed;
  const read = withFree([{}], { free: text.replaceAll(/[:=]/g, ' '), ask });
  return read.fault === null ? read : failed;
}

function withFree(
  givens: readonly Given[],
  { free, ask }: { readonly free: string; readonly ask: Ask },
): Readable {
  const all: Given[] = [];
  let fault: Fault | null = null;
  for (const given of givens) {
    const left = { ...ask, fields: ask.fields.filter(({ name }) => given[name] === undefined) };
    const items = itemsOf(free, left);
    const assigned = assign(items, left);
    fault ??= assigned.fault;
    all.push(...assigned.givens.map((more) => ({ ...given, ...more })));
  }
  const said = all.filter((given) => Object.keys(given).length > 0);
  return { givens: said, fault: said.length > 0 ? null : (fault ?? NOTHING) };
}

function isApart(given: Given, more: Given): boolean {
  return Object.keys(more).every((name) => given[name] === undefined);
}

/** A part that names its field: `Travel: 50 %`. Null where it names none. */
function namedPart(part: string, ask: Ask): Readable | null {
  const [, head = '', value = ''] = part.match(/^([^:=]+)[:=](.*)$/s) ?? [];
  if (plainText(head) === 'understood') return namedPart(value.trim(), ask);
  const fields = head === '' ? [] : fieldsNamed(head, ask.fields);
  if (fields.length === 0) return null;
  const read = fields.map((field) => valueFor(field, { text: value.trim(), ask }));
  const givens = read.flatMap((one) => one.givens);
  return { givens, fault: givens.length > 0 ? null : (read[0]?.fault ?? NOTHING) };
}

function valueFor(field: Field, { text, ask }: { readonly text: string; readonly ask: Ask }): Readable {
  if (field.type === 'quantity') return quantityFor(field, { text, ask });
  if (field.type === 'choice') {
    const words = wordsOf(text);
    const match = optionsAt(words, [field]);
    const options = match?.wordCount === words.length ? match.options : [];
    if (options.length > 0)
      return { givens: options.map(({ value }) => ({ [field.name]: value })), fault: null };
  }
  const fault = faultOf(field, { text, ask });
  return fault === null && text !== ''
    ? { givens: [{ [field.name]: text }], fault: null }
    : { givens: [], fault };
}

/** A value, and behind it `on` and the gauge where it was read on another one. */
function quantityFor(field: Field, { text, ask }: { readonly text: string; readonly ask: Ask }): Readable {
  const [, value = text, gauge = ''] = text.match(/^(.*\S)\s+on\s+(\S+)$/is) ?? [];
  const known = tagOf(gauge, knownTags(ask.job));
  const at = known?.kind === 'gauge' ? { value, gauge: known.tag } : { value: text, gauge: '' };
  const fault = faultOf(field, { text: at.value, ask });
  if (fault !== null || at.value === '') return { givens: [], fault: fault ?? NOTHING };
  const other = at.gauge !== '' && at.gauge !== ownGauge(field.name, ask);
  return {
    givens: [{ [field.name]: at.value, ...(other ? { [`${field.name}Gauge`]: at.gauge } : {}) }],
    fault: null,
  };
}
