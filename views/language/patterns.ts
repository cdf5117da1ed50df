/** English texts with gaps, `{who} hung {lock}`, found again in what the program says. */

export interface Pattern {
  /** As it stands in the catalogue. */
  readonly key: string;
  readonly said: string;
  readonly gaps: readonly string[];
  readonly shape: RegExp;
  /** So many letters are its own; of two that fit, the more exact one counts. */
  readonly own: number;
}

export type Catalogue = Readonly<Record<string, string>>;

const GAP = /\{(\w*)\}/g;

/** Names of the gaps of a text, in order. @example gapsOf('{who} hung {lock}') // ['who', 'lock'] */
export function gapsOf(text: string): readonly string[] {
  return [...text.matchAll(GAP)].map((match) => match[1] ?? '');
}

/** What two texts must have in common to be the same one, whatever their gaps are called. @example bare('{a} of {b}') // '{} of {}' */
export function bare(text: string): string {
  return text.replaceAll(GAP, '{}');
}

function patternOf(key: string, said: string): Pattern {
  const pieces = key.split(/\{\w*\}/);
  const shape = new RegExp(`^${pieces.map(escaped).join('(.*?)')}$`, 'su');
  return { key, said, gaps: gapsOf(key), shape, own: pieces.join('').length };
}

function escaped(piece: string): string {
  return piece.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
}

/** The patterns by the longest word of their own, so that few have to be tried on a text. */
export class PatternIndex {
  readonly #byWord = new Map<string, Pattern[]>();
  readonly #wordless: Pattern[] = [];

  constructor(catalogue: Catalogue) {
    for (const [key, said] of Object.entries(catalogue)) {
      if (gapsOf(key).length === 0) continue;
      const pattern = patternOf(key, said);
      const word = longestWhole(key);
      if (word === '') this.#wordless.push(pattern);
      else this.#byWord.set(word, [...(this.#byWord.get(word) ?? []), pattern]);
    }
  }

  /** What fits, the most exact first. */
  fitting(text: string): readonly { readonly pattern: Pattern; readonly filled: readonly string[] }[] {
    const words = new Set(text.match(WORD) ?? []);
    const near = [...words].flatMap((word) => this.#byWord.get(word) ?? []);
    return [...near, ...this.#wordless]
      .flatMap((pattern) => {
        const match = pattern.shape.exec(text);
        return match === null ? [] : [{ pattern, filled: match.slice(1) }];
      })
      .sort((one, other) => other.pattern.own - one.pattern.own);
  }
}

const WORD = /[\p{L}\p{N}]+/gu;

/** A word that a gap does not touch, because a filled gap would grow it. */
function longestWhole(key: string): string {
  const words = [...key.replaceAll(GAP, '\u0000').matchAll(WORD)].filter((match) => {
    const before = key.replaceAll(GAP, '\u0000')[match.index - 1];
    const after = key.replaceAll(GAP, '\u0000')[match.index + match[0].length];
    return before !== '\u0000' && after !== '\u0000';
  });
  return words.map(([word]) => word).reduce((best, word) => (word.length > best.length ? word : best), '');
}
