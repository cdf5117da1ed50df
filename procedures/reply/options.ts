import type { ChoiceField, Field } from '../vocabulary.ts';
import { plainText, stems, wordsOf } from './words.ts';

/** An answer that words may stand for. */
export interface Option {
  readonly field: string;
  readonly value: string;
}

export interface OptionMatch {
  readonly options: readonly Option[];
  /** How many of the words it took. */
  readonly wordCount: number;
}

/** Ways to say an answer that is labelled Yes or No (common practice, no source). */
const SAID: Readonly<Record<string, readonly string[]>> = {
  yes: ['yes', 'y', 'yep', 'yeah', 'ok', 'okay', 'agree', 'agreed', 'correct', 'done', 'confirmed'],
  no: ['no', 'n', 'nope', 'does not agree', 'does not'],
};

/** So few letters could begin anything. */
const BEGINNING_MIN = 3;
const WORDS_MAX = 16;

/**
 * The answers that the words at the front may be: by label or by its beginning; the longest match alone,
 * and a whole label before the beginning of one.
 */
export function optionsAt(words: readonly string[], fields: readonly Field[]): OptionMatch | null {
  const choices = fields.filter((field): field is ChoiceField => field.type === 'choice');
  if (choices.length === 0) return null;
  for (let length = Math.min(words.length, WORDS_MAX); length > 0; length -= 1) {
    const phrase = words.slice(0, length);
    const whole = matching(choices, (label) => isWhole(phrase, label));
    if (whole.length > 0) return { options: whole, wordCount: length };
    const begun = matching(choices, (label) => isBeginning(phrase, label));
    if (begun.length > 0) return { options: begun, wordCount: length };
  }
  return null;
}

function matching(choices: readonly ChoiceField[], is: (label: string) => boolean): readonly Option[] {
  return choices.flatMap((field) =>
    field.choices.filter(({ label }) => is(label)).map(({ value }) => ({ field: field.name, value })),
  );
}

function isWhole(phrase: readonly string[], label: string): boolean {
  if (stems(phrase) === stems(wordsOf(label))) return true;
  return SAID[plainText(label)]?.includes(phrase.join(' ')) ?? false;
}

/** Begins the label, and ends where a word of it ends or inside one: `vent` of `Vent and read again`. */
function isBeginning(phrase: readonly string[], label: string): boolean {
  const said = stems(phrase);
  return said.length >= BEGINNING_MIN && stems(wordsOf(label)).startsWith(said);
}
