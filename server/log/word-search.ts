/** Lines of a list that hold every word of a search, without looking through all of them. */
import type { KeptList } from './kept-list.ts';
import { IdsByKey, type ListIndex } from './list-index.ts';

interface Worded {
  /** In small letters; what is looked for stands in it. */
  readonly words: string;
}

/** So many letters of a word lead to it; a shorter word is looked for in every line. */
const PIECE_LETTERS = 3;
/** Beyond so many lines or words to try, a look through the whole list is as quick. */
const TRIED_MAX = 1000;

/**
 * A word that is looked for may stand anywhere within one of the line, so that words of lines are found by any three letters
 * that follow each other in them, and the lines by those.
 *
 * @example const search = new WordSearch(lists.valves);
 * await search.find('steam 214') // lines with both, in order of their ids
 */
export class WordSearch<Line extends Worded> {
  readonly #list: KeptList<Line>;
  readonly #index: () => Promise<ByWords>;

  /** @param triedMax  how many lines or words may be tried, unless a test says otherwise */
  constructor(list: KeptList<Line>, triedMax = TRIED_MAX) {
    this.#list = list;
    this.#index = list.indexed(new ByWords(triedMax));
  }

  /** In order of their ids; all of them where nothing is looked for. */
  async find(text: string): Promise<readonly Line[]> {
    const words = wordsOf(text.toLowerCase());
    if (words.length === 0) return await this.#list.inOrder();
    const ids = (await this.#index()).tried(words);
    if (ids === null) return (await this.#list.inOrder()).filter((line) => holds(line, words));
    const lines = await this.#list.byId();
    const tried = [...ids].sort().flatMap((id) => lines.get(id) ?? []);
    return tried.filter((line) => holds(line, words));
  }
}

function holds(line: Worded, words: readonly string[]): boolean {
  return words.every((word) => line.words.includes(word));
}

function wordsOf(text: string): readonly string[] {
  return text.split(/\s+/).filter((word) => word !== '');
}

class ByWords implements ListIndex<Worded> {
  readonly #idsByWord = new IdsByKey();
  readonly #wordsByPiece = new IdsByKey();
  readonly #triedMax: number;

  constructor(triedMax: number) {
    this.#triedMax = triedMax;
  }

  put(id: string, line: Worded): void {
    for (const word of wordsOf(line.words)) {
      if (!this.#idsByWord.add(word, id)) continue;
      for (const piece of piecesOf(word)) this.#wordsByPiece.add(piece, word);
    }
  }

  drop(id: string, line: Worded): void {
    for (const word of wordsOf(line.words)) {
      if (!this.#idsByWord.remove(word, id)) continue;
      for (const piece of piecesOf(word)) this.#wordsByPiece.remove(piece, word);
    }
  }

  /** Every line that holds all words is among these, others may be; null where it may be any of the list. */
  tried(words: readonly string[]): ReadonlySet<string> | null {
    let fewest: ReadonlySet<string> | null = null;
    for (const word of words) {
      const ids = this.#holding(word);
      if (ids !== null && (fewest === null || ids.size < fewest.size)) fewest = ids;
    }
    return fewest;
  }

  #holding(word: string): ReadonlySet<string> | null {
    const pieces = piecesOf(word).map((piece) => this.#wordsByPiece.of(piece));
    const [first, ...others] = pieces;
    if (first === undefined) return null;
    const rarest = others.reduce((one, other) => (other.size < one.size ? other : one), first);
    if (rarest.size > this.#triedMax) return null;
    const ids = new Set<string>();
    for (const whole of rarest) {
      if (!whole.includes(word)) continue;
      const more = this.#idsByWord.of(whole);
      if (ids.size + more.size > this.#triedMax) return null;
      for (const id of more) ids.add(id);
    }
    return ids;
  }
}

function piecesOf(word: string): readonly string[] {
  const pieces = new Set<string>();
  for (let at = 0; at + PIECE_LETTERS <= word.length; at += 1) pieces.add(word.slice(at, at + PIECE_LETTERS));
  return [...pieces];
}
