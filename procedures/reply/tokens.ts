import type { Dimension } from '../calculations/unit-table.ts';
import { measures, unitWord } from '../readings/unit-words.ts';
import { plainText } from './words.ts';

type Piece =
  | { readonly kind: 'number'; readonly raw: string; readonly bare: boolean }
  | { readonly kind: 'word'; readonly raw: string; readonly word: string };

/** `at` is where it begins in the text. */
export type Token = Piece & { readonly at: number };

/** Whatever begins like a number, also what is refused as one later: it is never cut into pieces that look better. */
const NUMBER =
  /^[+\-\u2212]?(?:0[xX][\da-fA-F]+|(?:\d+(?:[.,'\u2019]\d+)*|[.,]\d+)(?:[eE][+\-\u2212]?\d+)?(?:\s+\d+(?=\s*[/\u2044]))?(?:\s*[/\u2044]\s*\d+(?![.,]?\d))?(?:[-\u2212\u2013\u2026]\d+(?:[.,]\d+)*)*)/;
/** A stroke at the front parts: `9 psi / 50 %`; inside it is of a fraction or a unit. */
const BETWEEN = /^(?:[\s,;:()[\]@=!?<>|*~“”\u2192/])+/;
const CHUNK = /^[^\s,;:()[\]@=!?<>|*~“”]+/;
/** `9psi50%`: the unit ends where the next number begins. */
const GLUED = /^[^\d\s.,/:|()]+(?=[/:|()]*\d)/;
/** What is measured in a unit that no digit can belong to: `cm3` is no `cm` and a three. */
const MAY_BE_GLUED: readonly Dimension[] = ['pressure', 'percent', 'current'];
const UNIT_WORDS_MAX = 3;

/**
 * Numbers with the unit behind them, and words.
 *
 * @param isTag  whether a piece is a tag of the job as it stands: such a one is never taken for a number
 * @param isName whether a word names a field of the card: such a one is never taken for a unit
 * @example tokenise('9 psi it moved') // number '9 psi', word 'it', word 'moved'
 */
export function tokenise(text: string, known: Known = NOTHING_KNOWN): readonly Token[] {
  const tokens: Token[] = [];
  let rest = text.replace(BETWEEN, '');
  while (rest !== '') {
    const { token, length } = next(rest, known);
    tokens.push({ ...token, at: text.length - rest.length });
    rest = rest.slice(length).replace(BETWEEN, '');
  }
  return tokens;
}

export interface Known {
  readonly isTag: (piece: string) => boolean;
  readonly isName: (word: string) => boolean;
}

const NOTHING_KNOWN: Known = { isTag: () => false, isName: () => false };

interface Found {
  readonly token: Piece;
  readonly length: number;
}

function next(rest: string, known: Known): Found {
  const chunk = rest.match(CHUNK)?.[0] ?? rest.slice(0, 1);
  if (known.isTag(chunk)) return word(chunk);
  return number(rest, known) ?? word(chunk);
}

function number(rest: string, known: Known): Found | null {
  const digits = rest.match(NUMBER)?.[0];
  if (digits === undefined) return null;
  const length = digits.length + unitLength(rest.slice(digits.length), known);
  // Letters that are no unit make it a tag or another name: `4th`, `22B`.
  if (length === digits.length && /^[\p{L}\p{N}_-]/u.test(rest.slice(length))) return null;
  const raw = rest.slice(0, length).trim();
  return { token: { kind: 'number', raw, bare: length === digits.length }, length };
}

/** How far the unit behind a number reaches; the longest that is known. */
function unitLength(behind: string, { isName }: Known): number {
  const spaces = behind.match(/^\s*/)?.[0].length ?? 0;
  const words = behind.slice(spaces).match(/^[^\s,;@]+(?:\s[^\s,;@]+){0,2}/)?.[0] ?? '';
  const parts = words.split(/\s/);
  for (let count = Math.min(UNIT_WORDS_MAX, parts.length); count > 0; count -= 1) {
    const tried = parts.slice(0, count).join(' ');
    // `9.9 psi a minute later`: the article is no mark of absolute pressure.
    if (/\s[ag]$/i.test(tried) && /^\p{L}/u.test(parts[count] ?? '')) continue;
    for (const unit of [tried, tried.replace(/[.:!?)\]]+$/, '')]) {
      if (unit !== '' && !isName(unit) && unitWord(unit).kind !== 'unknown') return spaces + unit.length;
    }
  }
  return gluedLength(parts[0] ?? '', spaces);
}

function gluedLength(part: string, spaces: number): number {
  const unit = part.match(GLUED)?.[0] ?? '';
  const meant = unitWord(unit);
  const isSafe = meant.kind === 'units' && meant.units.every((one) => measures(one, MAY_BE_GLUED));
  return isSafe ? spaces + unit.length : 0;
}

function word(raw: string): Found {
  return { token: { kind: 'word', raw, word: plainText(raw) }, length: raw.length };
}
