import type { Given } from '../readings/given.ts';
import type { Field } from '../vocabulary.ts';
import { type Ask, mayStayBlank } from './ask.ts';
import type { Item } from './items.ts';
import type { KnownTag } from './tags.ts';
import { type Fault, faultOf, isPlausibleBare, takesNumber } from './values.ts';

/** Where one piece may stand. */
export interface Place {
  readonly field: string;
  /** Text for the field as a form would send it. */
  readonly value: string;
  /** Read on this gauge, which is not the field's own. */
  readonly gauge?: string;
}

export interface Placed {
  readonly places: readonly Place[];
  /** Why there is none. */
  readonly fault: Fault | null;
}

/** All fields that a piece may stand in; with a hint, that field alone. */
export function placesOf(
  item: Item,
  { ask, hint }: { readonly ask: Ask; readonly hint: string | null },
): Placed {
  const fields = hint === null ? ask.fields : ask.fields.filter((field) => field.name === hint);
  switch (item.kind) {
    case 'number':
      return numberPlaces(item, { ask, fields });
    case 'option': {
      const places = item.options.filter(({ field }) => fields.some((one) => one.name === field));
      return { places, fault: places.length > 0 ? null : notHere(item.raw) };
    }
    case 'tag':
      return tagPlaces(item, { ask, fields });
    case 'text':
      return textPlaces(item, { ask, fields, hint });
    case 'hint':
    case 'soft':
      return { places: [], fault: null };
  }
}

interface On {
  readonly ask: Ask;
  readonly fields: readonly Field[];
}

/** These faults only say that the number is of another kind than the field. */
const OTHER_KIND = ['NUM-012', 'NUM-011', 'NUM-010'];

function numberPlaces(item: Extract<Item, { kind: 'number' }>, { ask, fields }: On): Placed {
  const { raw, bare } = item;
  const at = (field: Field): Place => ({
    field: field.name,
    value: raw,
    ...(item.gauge === undefined ? {} : { gauge: item.gauge }),
  });
  const quantities = fields.filter((field) => field.type === 'quantity');
  const read = quantities.map((field) => ({ field, fault: faultOf(field, { text: raw, ask }) }));
  const places = read
    .filter(({ field, fault }) => fault === null && (!bare || isPlausibleBare(field, { text: raw, ask })))
    .map(({ field }) => at(field));
  const fault = faultToTell(read, ask);
  // A reading that its gauge cannot show is told so, before it passes for the number of a lock.
  const isReading = places.length === 0 && fault !== null && !OTHER_KIND.includes(fault.code);
  const numbers = bare && item.gauge === undefined && !isReading ? fields.filter(takesNumber) : [];
  places.push(...numbers.map(at));
  if (bare && item.gauge === undefined)
    places.push(...fields.filter((field) => isAnswer(field, raw)).map(at));
  return { places, fault: fault ?? (places.length > 0 ? null : notHere(raw)) };
}

/** A count among those that the card offers: twelve bolts. */
function isAnswer(field: Field, raw: string): boolean {
  return field.type === 'choice' && field.choices.some(({ value, label }) => value === raw && label === raw);
}

/** The fault of a field that has to be written before that of one that may stay blank, and of the right kind before another's. */
function faultToTell(
  read: readonly { readonly field: Field; readonly fault: Fault | null }[],
  ask: Ask,
): Fault | null {
  const wanted = read.toSorted(
    (one, other) => Number(mayStayBlank(one.field, ask)) - Number(mayStayBlank(other.field, ask)),
  );
  const faults = wanted.flatMap(({ fault }) => (fault === null ? [] : [fault]));
  return faults.find(({ code }) => !OTHER_KIND.includes(code)) ?? faults[0] ?? null;
}

function tagPlaces({ raw, known }: Extract<Item, { kind: 'tag' }>, { ask, fields }: On): Placed {
  const places = fields.flatMap((field): Place[] => {
    if (field.type !== 'text') return [];
    if (field.mustBe !== undefined) {
      // As it was written where that will do; `hv214a` is the tag written short.
      const value = [raw, known.tag].find((text) => faultOf(field, { text, ask }) === null);
      return value === undefined ? [] : [{ field: field.name, value }];
    }
    return known.kind === 'lock' && takesNumber(field) ? [{ field: field.name, value: raw }] : [];
  });
  return { places, fault: places.length > 0 ? null : atOther(known, { fields, raw }) };
}

export function ownGauge(name: string, { fields, job }: Ask): string {
  const field = fields.find((one) => one.name === name);
  return field?.type === 'quantity' && field.gauge !== undefined ? (job.gear[field.gauge]?.number ?? '') : '';
}

/** `not yet, shift lead` names nobody: what denies or doubts something is no name, no number of a lock. */
const DENIED =
  /\b(?:no|not|none|nobody|never|without|maybe|perhaps|probably|possibly|think|unless|if|refus\w*|did\w*)\b|n['\u2019]t\b/i;

/** Words that nothing explains stand only where a text is wanted and has to be written. */
function textPlaces(
  { raw }: Extract<Item, { kind: 'text' }>,
  { ask, fields, hint }: On & { readonly hint: string | null },
): Placed {
  const texts = fields.filter((field) => field.type === 'text');
  if (hint === null && DENIED.test(raw)) return { places: [], fault: notHere(raw) };
  const tagged = texts.filter((field) => field.mustBe !== undefined);
  const looksLikeTag = /^\S*\d\S*$/.test(raw);
  const wrongTag = looksLikeTag
    ? tagged.map((field) => faultOf(field, { text: raw, ask })).find((fault) => fault !== null)
    : undefined;
  const places = texts
    .filter((field) => field.mustBe === undefined && (hint !== null || !mayStayBlank(field, ask)))
    .filter((field) => !takesNumber(field) || /\d/.test(raw))
    .concat(tagged.filter((field) => faultOf(field, { text: raw, ask }) === null))
    .map((field) => ({ field: field.name, value: raw }));
  return { places, fault: places.length > 0 ? null : (wrongTag ?? notHere(raw)) };
}

function notHere(raw: string): Fault {
  return {
    code: 'RPL-001',
    what: `“${raw}” is not understood on this card.`,
    next: 'Write it another way, or answer on the card.',
  };
}

/** The person stands at a point of this valve that the card does not mean. */
function atOther(
  known: KnownTag,
  { fields, raw }: { readonly fields: readonly Field[]; readonly raw: string },
): Fault {
  const field = fields.find((one) => one.type === 'text' && one.mustBe !== undefined);
  const fault = notWanted(known.tag, known.is);
  if (field === undefined || known.kind === 'gauge') return fault;
  return {
    ...fault,
    next: 'The card names another: go there and read its label.',
    wrongTag: { field: field.name, typed: raw },
  };
}

function notWanted(tag: string, is: string): Fault {
  return {
    code: 'RPL-002',
    what: `${tag} is ${is}.`,
    next: 'This card does not ask for it.',
  };
}

/** What a form would send for pieces that stand in their places. */
export function givenOf(places: readonly Place[], ask: Ask): Given {
  const given: Record<string, string> = {};
  for (const { field, value, gauge } of places) {
    given[field] = value;
    if (gauge !== undefined && gauge !== ownGauge(field, ask)) given[`${field}Gauge`] = gauge;
  }
  return given;
}
