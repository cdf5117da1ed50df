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

/** Terms whose whole name this is: `torque`, without any question around it. */
export function termsNamed(text: string, terms: readonly Term[]): readonly Term[] {
  const said = spoken(text);
  return terms.filter(({ words }) => words.includes(said));
}
