import type { Dimension } from '../calculations/unit-table.ts';
import { measures, unitWord } from '../readings/unit-words.ts';
import type { Field } from '../vocabulary.ts';
import type { Ask } from './ask.ts';
import { gaugeOf, withGauges } from './gauges.ts';
import { hintBegun, hintWords, labelWords } from './labels.ts';
import { type Option, optionsAt } from './options.ts';
import { type KnownTag, knownTags, tagOf } from './tags.ts';
import { type Token, tokenise } from './tokens.ts';
import { isFiller, plainText, stem, wordsOf } from './words.ts';

/** A piece of a reply that has to find its field, or that helps another to. */
export type Item =
  | {
      readonly kind: 'number';
      readonly raw: string;
      readonly bare: boolean;
      /** Read on another gauge than the one of its field. */
      readonly gauge?: string;
    }
  | { readonly kind: 'option'; readonly raw: string; readonly options: readonly Option[] }
  | { readonly kind: 'tag'; readonly raw: string; readonly known: KnownTag }
  | { readonly kind: 'text'; readonly raw: string; readonly at: number }
  /** Says nothing by itself; inside a text it belongs to it. */
  | { readonly kind: 'soft'; readonly raw: string; readonly at: number }
  | { readonly kind: 'hint'; readonly raw: string; readonly field: string };

/** Tags that could be read as a number are left to the numbers. */
const COULD_BE_NUMBER = /^[\d.,]+$/;

/** The pieces of a free text, in the order in which they were said. */
export function itemsOf(text: string, ask: Pick<Ask, 'job' | 'fields'>): readonly Item[] {
  const tags = knownTags(ask.job);
  const lettered = tags.filter(({ tag }) => !COULD_BE_NUMBER.test(tag));
  const hints = hintWords(ask.fields);
  const tokens = tokenise(text, {
    isTag: (piece) => tagOf(piece, lettered) !== undefined,
    isName: (word) => hints.has(stem(plainText(word))) && !measuresHere(word, ask.fields),
  });
  const labels = labelWords(ask.fields);
  const begun = (word: string) => (labels.has(stem(word)) ? undefined : hintBegun(word, ask.fields));
  const items: Item[] = [];
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at];
    if (token === undefined) break;
    const isNamed = items.at(-1)?.kind === 'hint';
    const found =
      token.kind === 'number' ? null : optionsFrom(tokens.slice(at), { fields: ask.fields, isNamed });
    if (found !== null) {
      const raw = tokens
        .slice(at, at + found.length)
        .map((one) => one.raw)
        .join(' ');
      items.push({ kind: 'option', raw, options: found.options });
      at += found.length;
      continue;
    }
    const item = gaugeOf(itemOf(token, { tags, hints, labels, begun }), { ...ask, at: token.at });
    items.push(item);
    at += 1;
  }
  return withoutEchoes(withGauges(withTextsJoined(items, text), ask));
}

/** `isNamed`: the name of a field stands right before, as in `bolts no`. */
function optionsFrom(
  tokens: readonly Token[],
  { fields, isNamed }: { readonly fields: readonly Field[]; readonly isNamed: boolean },
) {
  const end = tokens.findIndex((token) => token.kind === 'number' || token.word === '');
  const run = end < 0 ? tokens : tokens.slice(0, end);
  // Read together: `did not` denies only as two words.
  const words = wordsOf(run.map(({ raw }) => raw).join(' '));
  const match = optionsAt(words, fields);
  if (match === null || (!isNamed && deniesNext(words, { match, fields }))) return null;
  // A token may hold several words (`didn't`): the match must end where a token ends.
  let seen = 0;
  for (const [at, { raw }] of run.entries()) {
    seen += wordsOf(raw).length;
    if (seen === match.wordCount) return { options: match.options, length: at + 1 };
    if (seen > match.wordCount) return null;
  }
  return null;
}

const DENIALS = new Set(['no', 'does not']);

/** `no operator`, `no problem`, `did not give it`: the no belongs to the word behind it, and answers nothing. */
function deniesNext(
  words: readonly string[],
  { match, fields }: { readonly match: { readonly wordCount: number }; readonly fields: readonly Field[] },
): boolean {
  const behind = words[match.wordCount];
  if (!DENIALS.has(words.slice(0, match.wordCount).join(' ')) || behind === undefined) return false;
  return optionsAt([behind], fields) === null;
}

/** A word behind a number that is a unit of something this card asks for. */
function measuresHere(word: string, fields: readonly Field[]): boolean {
  const meant = unitWord(word);
  const dimensions = fields.flatMap((field): Dimension[] => {
    if (field.type !== 'quantity') return [];
    return field.dimension === 'travel' ? ['percent', 'length'] : [field.dimension];
  });
  return meant.kind === 'units' && meant.units.some((unit) => measures(unit, dimensions));
}

function itemOf(
  token: Token,
  {
    tags,
    hints,
    labels,
    begun,
  }: {
    readonly tags: readonly KnownTag[];
    readonly hints: ReadonlyMap<string, string>;
    readonly labels: ReadonlySet<string>;
    readonly begun: (word: string) => string | undefined;
  },
): Item {
  if (token.kind === 'number') return token;
  const known = tagOf(token.raw, tags);
  if (known !== undefined) return { kind: 'tag', raw: token.raw, known };
  const field = hints.get(stem(token.word)) ?? begun(token.word);
  if (field !== undefined) return { kind: 'hint', raw: token.raw, field };
  if (token.word === '' || isFiller(token.word) || labels.has(stem(token.word)))
    return { kind: 'soft', raw: token.raw, at: token.at };
  return { kind: 'text', raw: token.raw, at: token.at };
}

/** `signal 9 on G-07`: the name and the gauge of one field, around one value, are one hint. */
function withoutEchoes(items: readonly Item[]): readonly Item[] {
  return items.filter((item, at) => {
    const before = items[at - 2];
    const isEcho = item.kind === 'hint' && before?.kind === 'hint' && before.field === item.field;
    return !(isEcho && items[at - 1]?.kind === 'number');
  });
}

/** Words that follow one another are one text as it was written, with the small words in it and around it. */
function withTextsJoined(items: readonly Item[], text: string): readonly Item[] {
  const joined: Item[] = [];
  for (const item of items) {
    const last = joined.at(-1);
    const isRun = isWords(item) && last !== undefined && isWords(last);
    if (isRun && !text.slice(last.at, item.at).includes(';')) {
      const kind = item.kind === 'text' || last.kind === 'text' ? 'text' : 'soft';
      const raw = text.slice(last.at, item.at + item.raw.length);
      joined[joined.length - 1] = { kind, raw, at: last.at };
    } else joined.push(item);
  }
  return joined
    .filter(({ kind }) => kind !== 'soft')
    .map((item) => (item.kind === 'text' ? { ...item, raw: item.raw.replace(SAYING, '') } : item));
}

/** `shift lead says yes`: the verb is no part of the name. */
const SAYING = /[\s,]+(?:says?|said|tells?|told|gives?|gave|is|was)(?:\s+it)?$/i;

function isWords(item: Item): item is Extract<Item, { kind: 'text' | 'soft' }> {
  return item.kind === 'text' || item.kind === 'soft';
}
