import type { Field } from '../../vocabulary.ts';
import { ANSWERS, ASKED, BESIDE, WHOLE } from './said-in-spanish.ts';

/** A label of the card as its reader sees it, and as the reply line knows it. */
export interface SaidLabel {
  readonly shown: string;
  readonly label: string;
}

const ASKS = /^(?:que|cual|cuales|cuant[oa]s?|por que|como|donde|quien|explique|en que|hacia)\b/;

/**
 * A reply that was written in Spanish, in the words that the reply line reads. Nothing is decided here: what is not
 * known stays as it was typed and is told by the reply line, and on a card that asks for words of a person only its labels,
 * yes and no are put in its place.
 *
 * @param text as typed
 * @returns the same in English words; numbers, units, tags and names as they were
 * @example fromSpanish('señal 9 carrera 50', { fields: [], labels: [] }) // 'signal 9 travel 50'
 */
export function fromSpanish(
  text: string,
  { fields, labels }: { readonly fields: readonly Field[]; readonly labels: readonly SaidLabel[] },
): string {
  const bare = withoutMarks(text);
  const whole = WHOLE[keyOf(bare)];
  if (whole !== undefined) return whole;
  if (/[¿?]/.test(text) || ASKS.test(keyOf(bare))) return `${inWords(keyOf(bare), ASKED)}?`;
  const own = Object.fromEntries(labels.map(({ shown, label }) => [keyOf(withoutMarks(shown)), label]));
  const asksForWords = fields.some((field) => field.type === 'text' && field.mustBe === undefined);
  if (asksForWords) return inWords(text, { ...ANSWERS, ...own, sí: 'yes' });
  return inWords(withRanges(bare), { ...BESIDE, ...ANSWERS, ...own });
}

/** `de 48 a 52 %` and `9 a 9,1` are ranges; the `a` of `50 % a 9 psi` stands for at. */
function withRanges(text: string): string {
  return text
    .replaceAll(/\bde\s+(\d[\d.,]*\s*[\p{L}%]{0,5})\s+a\s+(?=\d)/giu, 'from $1 to ')
    .replaceAll(/(\d)\s+a\s+(?=\d)/gi, '$1 to ');
}

/** Without accents and the marks in front: many keyboards of the plant have none. */
function withoutMarks(text: string): string {
  return text.normalize('NFD').replaceAll(/\p{M}/gu, '').replaceAll(/[¿¡]/g, '').normalize('NFC');
}

function keyOf(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/[?!.]+(?=\s|$)/g, '')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

/** Each phrase in its place, the longest first, and only as whole words. */
function inWords(text: string, words: Readonly<Record<string, string>>): string {
  const known = Object.keys(words)
    .filter((one) => one !== '')
    .toSorted((one, other) => other.length - one.length);
  const any = new RegExp(
    `(?<![\\p{L}\\p{N}_-])(?:${known.map(escaped).join('|')})(?![\\p{L}\\p{N}_-])`,
    'giu',
  );
  return text.replaceAll(any, (met) => words[met.toLowerCase()] ?? met);
}

function escaped(text: string): string {
  return text.replaceAll(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}
