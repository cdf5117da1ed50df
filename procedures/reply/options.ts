import type { ChoiceField, Field } from '../vocabulary.ts';
import { SAID } from './other-words.ts';
import { isFiller, plainText, stem, stems, wordsOf } from './words.ts';

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

/** So few letters could begin anything. */
const BEGINNING_MIN = 3;
const WORDS_MAX = 16;

/**
 * The answers that the words at the front may be: by label or by its beginning; the longest match alone,
 * and a whole label before the beginning of one. A question may be answered by words of one answer alone.
 */
export function optionsAt(words: readonly string[], fields: readonly Field[]): OptionMatch | null {
  const choices = fields.filter((field): field is ChoiceField => field.type === 'choice');
  if (choices.length === 0) return null;
  const all = matchOf(words, choices);
  if (all.length > 0 && words.length <= WORDS_MAX) return { options: all, wordCount: words.length };
  const within = matching(
    choices.filter(({ name }) => name === QUESTION_FIELD),
    (label) => isWithin(words, label),
  );
  if (within.length > 0) return { options: within, wordCount: words.length };
  for (let length = Math.min(words.length - 1, WORDS_MAX); length > 0; length -= 1) {
    const options = matchOf(words.slice(0, length), choices);
    if (options.length > 0) return { options, wordCount: length };
  }
  return null;
}

/** By the whole label, else by its beginning. */
function matchOf(phrase: readonly string[], choices: readonly ChoiceField[]): readonly Option[] {
  const whole = matching(choices, (label) => isWhole(phrase, label));
  return whole.length > 0 ? whole : matching(choices, (label) => isBeginning(phrase, label));
}

/** The field of a card that is one question. */
const QUESTION_FIELD = 'choice';

function matching(choices: readonly ChoiceField[], is: (label: string) => boolean): readonly Option[] {
  return choices.flatMap((field) =>
    field.choices.filter(({ label }) => is(label)).map(({ value }) => ({ field: field.name, value })),
  );
}

const IT = /^it\s+/i;

function isWhole(phrase: readonly string[], label: string): boolean {
  if (stems(phrase) === stems(wordsOf(label)) || stems(phrase) === stems(wordsOf(label.replace(IT, ''))))
    return true;
  return SAID[plainText(label)]?.includes(phrase.join(' ')) ?? false;
}

/** Begins the label, and ends where a word of it ends or inside one: `vent` of `Vent and read again`. */
function isBeginning(phrase: readonly string[], label: string): boolean {
  const said = stems(phrase);
  return said.length >= BEGINNING_MIN && stems(wordsOf(label)).startsWith(said);
}

/** Words as short as this are in too many answers. */
const WORD_MIN = 3;
const WITHIN_MIN = 4;
/** An answer that denies something is never meant by a word of what it denies. */
const DENIES = new Set(['not', 'no', 'nothing', 'never', 'none', 'nobody', 'without', 'cannot']);

/** Every word of it stands in the label, in that order: `wind adjuster` of `Wind the spring adjuster`. */
function isWithin(phrase: readonly string[], label: string): boolean {
  const labelled = wordsOf(label);
  if (labelled.some((word) => DENIES.has(word))) return false;
  const said = phrase.filter((word) => !isFiller(word));
  if (said.join('').length < WITHIN_MIN || said.some((word) => word.length < WORD_MIN)) return false;
  let from = 0;
  return said.every((word) => {
    const at = labelled.findIndex((one, index) => index >= from && stem(one) === stem(word));
    from = at + 1;
    return at >= 0;
  });
}
