import { plainText } from '../words.ts';
import type { Term } from './term.ts';

export interface Found {
  readonly term: Term;
  /** Letters of the words that were found: the longest is meant. */
  readonly size: number;
  readonly word: string;
}

/** Hyphens part words here: `air-to-open` is asked for as `air to open`. */
function spoken(text: string): string {
  return plainText(text).replaceAll(/[-/]/g, ' ').replaceAll(/\s+/g, ' ').trim();
}

/**
 * The terms that a question names, the longest name first; of one length, all. A small matcher over known names:
 * what it does not find, it does not know.
 *
 * @example termsIn('what is bench set?', TERMS)[0]?.id // 'bench-set'
 */
export function termsIn(question: string, terms: readonly Term[]): readonly Term[] {
  const asked = ` ${spoken(question)} `;
  const found = terms.flatMap((term): Found[] => {
    const [word] = term.words
      .filter((one) => asked.includes(` ${one} `) || asked.includes(` ${one}s `))
      .toSorted((one, other) => other.length - one.length);
    return word === undefined ? [] : [{ term, word, size: word.length }];
  });
  const longest = Math.max(0, ...found.map(({ size }) => size));
  return found.filter(({ size }) => size === longest).map(({ term }) => term);
}

/** So short, words lie near too many others. */
const NEAR_MIN = 6;
const NEAR_MAX = 3;

/**
 * Terms with a name of one word that is spelt nearly as a word of the question: two letters off at most.
 *
 * @example termsNear('what is histerisis', TERMS)[0]?.id // 'hysteresis'
 */
export function termsNear(question: string, terms: readonly Term[]): readonly Term[] {
  const asked = spoken(question)
    .split(' ')
    .filter((word) => word.length >= NEAR_MIN);
  const isNear = (word: string) =>
    word.length >= NEAR_MIN && !word.includes(' ') && asked.some((one) => lettersOff(one, word) <= 2);
  return terms.filter(({ words }) => words.some(isNear)).slice(0, NEAR_MAX);
}

/** Letters to change, add or leave out to make one word of the other (Levenshtein, 1966). */
function lettersOff(one: string, other: string): number {
  let before = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (const [row, letter] of [...one].entries()) {
    const now = [row + 1];
    for (const [at, wanted] of [...other].entries()) {
      const changed = (before[at] ?? 0) + (letter === wanted ? 0 : 1);
      now.push(Math.min(changed, (before[at + 1] ?? 0) + 1, (now[at] ?? 0) + 1));
    }
    before = now;
  }
  return before[other.length] ?? 0;
}

/** Terms whose whole name this is: `torque`, without any question around it. */
export function termsNamed(text: string, terms: readonly Term[]): readonly Term[] {
  const said = spoken(text);
  return terms.filter(({ words }) => words.includes(said));
}
