import { type Figures, figuresIn } from './figures.ts';
import type { Language } from './language.ts';
import { type Catalogue, PatternIndex } from './patterns.ts';

export interface Said {
  readonly text: string;
  /** Everything in it that is prose was found in the catalogue. */
  readonly isWhole: boolean;
  /** Pieces of prose that have no translation, as they came. */
  readonly missing: readonly string[];
}

export interface Words {
  readonly language: Language;
  /** One text of ours in this language. Names, tags and numbers in its gaps pass through. */
  say(text: string): Said;
}

/** What was said once is said again at once; emptied when it is full, so that odd texts cannot fill the memory. */
const KEPT_MAX = 20_000;
/** A text whose gaps hold unknown prose is said only where enough of it is known: half a sentence misleads. */
const OWN_MIN = 10;
/** Longer than any sentence of ours: prose that somebody else wrote. */
const LETTERS_MAX = 1500;
/** Prose, as against names and tags: a word of small letters. */
const PROSE = /(?<![\p{L}\p{N}.@/_-])\p{Ll}{3,}(?![\p{N}@/_])/u;

const nothingFound = (text: string): Said => ({ text, isWhole: false, missing: [text] });
const whole = (text: string): Said => ({ text, isWhole: true, missing: [] });

/**
 * Says the texts of the program in another language, by their English text: whole ones first, then texts with gaps, then
 * the sentences and list items that a text is made of. Nothing is guessed: what is not in the catalogue stays English and
 * is told.
 *
 * @example
 * wordsOf({ language: 'es', catalogue: { 'line {n}': 'línea {n}' } }).say('line 7').text // 'línea 7'
 */
export function wordsOf({
  language,
  catalogue,
}: {
  readonly language: Language;
  readonly catalogue: Catalogue;
}): Words {
  const speaker = new Speaker({ catalogue, figures: figuresIn(language) });
  return { language, say: (text) => speaker.say(text) };
}

class Speaker {
  readonly #catalogue: ReadonlyMap<string, string>;
  readonly #patterns: PatternIndex;
  readonly #figures: Figures;
  readonly #kept = new Map<string, Said>();

  constructor({ catalogue, figures }: { readonly catalogue: Catalogue; readonly figures: Figures }) {
    this.#catalogue = new Map([...sentencesOf(catalogue), ...Object.entries(catalogue)]);
    this.#patterns = new PatternIndex(catalogue);
    this.#figures = figures;
  }

  say(text: string): Said {
    const kept = this.#kept.get(text);
    if (kept !== undefined) return kept;
    if (text.length > LETTERS_MAX) return nothingFound(text);
    const said = this.#find(text);
    if (this.#kept.size >= KEPT_MAX) this.#kept.clear();
    this.#kept.set(text, said);
    return said;
  }

  #find(text: string): Said {
    const exact = this.#catalogue.get(text);
    if (exact !== undefined) return whole(exact);
    if (this.#figures.isFigures(text)) return whole(this.#figures.localised(text));
    const filled = this.#filled(text);
    if (filled?.isWhole) return filled;
    for (const way of [
      this.#capitals,
      this.#capital,
      this.#ending,
      this.#beginning,
      this.#counted,
      this.#bracketed,
      this.#tail,
    ]) {
      const said = way.call(this, text);
      if (said?.isWhole) return said;
    }
    const parted = this.#parted(text, filled);
    if (parted !== null) return parted;
    if (filled !== null) return filled;
    return PROSE.test(text) ? nothingFound(text) : whole(this.#figures.localised(text));
  }

  /** The first pattern whose gaps are whole, else the most exact one. */
  #filled(text: string): Said | null {
    let best: Said | null = null;
    for (const { pattern, filled } of this.#patterns.fitting(text)) {
      const parts = filled.map((part, at) =>
        part === '' ? whole('') : this.#inGap(part, isOwn(pattern.gaps[at])),
      );
      const said = pattern.said.replaceAll(
        /\{(\w*)\}/g,
        (_, name: string) => parts[pattern.gaps.indexOf(name)]?.text ?? '',
      );
      const missing = parts.flatMap((part) => part.missing);
      if (missing.length === 0) return whole(said);
      if (pattern.own >= OWN_MIN && pattern.own * 3 >= text.length)
        best ??= { text: said, isWhole: false, missing };
    }
    return best;
  }

  /** Blanks at its ends belong to the gap. */
  #inGap(part: string, mayBeOwn: boolean): Said {
    const inner = part.trim();
    if (inner === '') return whole(part);
    const said = this.say(inner);
    if (mayBeOwn && !said.isWhole) return whole(part);
    return { ...said, text: part.replace(inner, () => said.text) };
  }

  /** A word that stands in capitals here, as the state on a tag does. */
  #capitals(text: string): Said | null {
    if (text !== text.toUpperCase() || !/\p{Lu}{2}/u.test(text)) return null;
    const small = text.toLowerCase();
    const said = this.#catalogue.get(small) ?? this.#catalogue.get(small.replaceAll(' ', '-'));
    return said === undefined ? null : whole(said.toUpperCase());
  }

  /** A text that stands at the beginning of a sentence here and within one there. */
  #capital(text: string): Said | null {
    const first = text.charAt(0);
    const other = first === first.toUpperCase() ? first.toLowerCase() : first.toUpperCase();
    if (other === first) return null;
    const turned = other + text.slice(1);
    const exact = this.#catalogue.get(turned);
    const said = exact === undefined ? this.#filled(turned) : whole(exact);
    if (said === null) return null;
    const begin = said.text.charAt(0);
    const again = other === other.toUpperCase() ? begin.toLowerCase() : begin.toUpperCase();
    return { ...said, text: again + said.text.slice(1) };
  }

  #ending(text: string): Said | null {
    const match = /^(.*[^\s.:,;])([.:,;])$/su.exec(text);
    if (match === null) return null;
    const [, body = '', end = ''] = match;
    const said = this.say(body);
    return said.isWhole && said.text !== body ? { ...said, text: said.text + end } : null;
  }

  /** A text that goes on behind something that stands apart from it: `, since 08:07 UTC`. */
  #beginning(text: string): Said | null {
    const match = /^([,:;.·] )(.+)$/su.exec(text);
    const said = match === null ? null : this.say(match[2] ?? '');
    return said?.isWhole ? { ...said, text: (match?.[1] ?? '') + said.text } : null;
  }

  /** A number or a unit beside known words: `2 turns`, `psi going up`, `read %`, `hold 1`, `bench set, low 3.00 psi`. */
  #counted(text: string): Said | null {
    const words = text.split(' ');
    const [first = '', last = ''] = [words[0], words.at(-1)];
    const known = (part: string) => this.#catalogue.get(part);
    const behind = this.#figures.isFigures(first) ? known(words.slice(1).join(' ')) : undefined;
    if (behind !== undefined) return whole(`${this.#figures.localised(first)} ${behind}`);
    for (let at = words.length - 1; at > 1; at -= 1) {
      const [figure, tail] = [words.slice(0, at).join(' '), known(words.slice(at).join(' '))];
      if (tail !== undefined && this.#figures.isFigures(figure))
        return whole(`${this.#figures.localised(figure)} ${tail}`);
    }
    if (!this.#figures.isFigures(last)) return null;
    for (let at = words.length - 1; at > 0 && this.#figures.isFigures(words.slice(at).join(' ')); at -= 1) {
      const before = known(words.slice(0, at).join(' '));
      if (before !== undefined)
        return whole(`${before} ${this.#figures.localised(words.slice(at).join(' '))}`);
    }
    return null;
  }

  /** Items parted by semicolons, where an item may hold one itself: the longest that is known counts. */
  #listed(text: string): Said | null {
    const parts = text.split(LIST);
    if (parts.length < 3 || parts.length > LIST_MAX) return null;
    const items: string[] = [];
    for (let from = 0; from < parts.length; ) {
      let to = parts.length - (from === 0 ? 1 : 0);
      let said = this.say(parts.slice(from, to).join(LIST));
      while (!said.isWhole && to - 1 > from) {
        to -= 1;
        said = this.say(parts.slice(from, to).join(LIST));
      }
      if (!said.isWhole) return null;
      items.push(said.text);
      from = to;
    }
    return whole(items.join(LIST));
  }

  /** What stands behind a text in brackets: `Influence (a text)`. */
  #bracketed(text: string): Said | null {
    const [, body = '', aside = ''] = /^(.*\S) \(([^()]+)\)$/su.exec(text) ?? [];
    if (body === '' || aside === '') return null;
    const [said, beside] = [this.say(body), this.say(aside)];
    return said.isWhole && beside.isWhole ? whole(`${said.text} (${beside.text})`) : null;
  }

  /** What a text was followed by: `20 psi` and then `, to be isolated at IA-214-1`. */
  #tail(text: string): Said | null {
    for (const match of text.matchAll(/[,;:.] /g)) {
      const tail = text.slice(match.index);
      const exact = this.#catalogue.get(tail);
      const end = exact === undefined ? this.#filled(tail) : whole(exact);
      if (end === null || !end.isWhole) continue;
      const begin = this.say(text.slice(0, match.index));
      if (begin.isWhole) return whole(begin.text + end.text);
    }
    return null;
  }

  /** Sentences may be said one by one, and so may the items of a list if all of them are known. */
  #parted(text: string, filled: Said | null): Said | null {
    const sentences = text.split(BETWEEN);
    if (sentences.length > 1) {
      const said = joined(
        sentences.map((part) => this.say(part)),
        ' ',
      );
      if (said.isWhole || (filled === null && said.missing.length < sentences.length)) return said;
    }
    const [, label = '', answer = ''] = /^(.*\S): (.*)$/s.exec(text) ?? [];
    const named = answer === '' ? null : joined([this.say(label), this.say(answer)], ': ');
    if (named?.isWhole) return named;
    const listed = this.#listed(text);
    if (listed !== null) return listed;
    for (const [between, by] of JOINS) {
      const parts = text.split(between);
      if (parts.length < 2 || parts.some((part) => part.trim() === '')) continue;
      const said = joined(
        // A unit behind a comma is a unit, whatever else its letters mean: `lift, in`.
        parts.map((part, at) =>
          at > 0 && this.#figures.isFigures(part) ? whole(this.#figures.localised(part)) : this.say(part),
        ),
        by,
      );
      if (said.isWhole) return said;
    }
    return null;
  }
}

/** A gap for words of a person or of the plant, `{ownPlace}`: where they are none of ours they stay as they were written. */
function isOwn(gap: string | undefined): boolean {
  return gap?.startsWith('own') === true;
}

const LIST = '; ';
/** Longer lists are read item by item alone. */
const LIST_MAX = 8;

const BETWEEN = /(?<=[^\s.][.!?]) (?=[\p{Lu}\d{])/u;

/** The sentences of each text by themselves, where both languages have as many: they are shown apart now and then. */
function sentencesOf(catalogue: Catalogue): readonly (readonly [string, string])[] {
  return Object.entries(catalogue).flatMap(([key, said]) => {
    const [english, other] = [key.split(BETWEEN), said.split(BETWEEN)];
    if (english.length < 2 || english.length !== other.length || key.includes('{')) return [];
    return english.map((sentence, at) => [sentence, other[at] ?? ''] as const);
  });
}

/** What stands between the items of a list, and how Spanish has it. */
const JOINS: readonly (readonly [string, string])[] = [
  ['; ', '; '],
  [' · ', ' · '],
  [': ', ': '],
  [', and ', ' y '],
  [', ', ', '],
  [' and ', ' y '],
  [' or ', ' o '],
];

function joined(parts: readonly Said[], by: string): Said {
  return {
    text: parts.map(({ text }) => text).join(by),
    isWhole: parts.every(({ isWhole }) => isWhole),
    missing: parts.flatMap(({ missing }) => missing),
  };
}
