import type { Dimension } from '../../calculations/unit-table.ts';
import type { FigureName } from '../../quantities.ts';
import type { ValveSheet } from '../../valve-sheet/sheet.ts';

/** A number of this valve that belongs to a term: by its name on the cards, or straight from the sheet. */
export type TermNumber =
  | FigureName
  | { readonly label: string; readonly sheet: keyof ValveSheet; readonly dimension: Dimension | 'text' };

/** A term of the trade in our own words. */
export interface Term {
  readonly id: string;
  /** How people say it, the usual way first; small letters. */
  readonly words: readonly string[];
  readonly says: string;
  readonly numbers: readonly TermNumber[];
  /** Id of a source of the calculations, or `common practice, no source`. */
  readonly source: string;
  /** Id of the calculation that shows the working; blank for none. */
  readonly calculation: string;
}

export const PRACTICE = 'common practice, no source';

/** @example term('travel', { words: ['travel', 'stroke'], says: '…', source: PRACTICE }) */
export function term(
  id: string,
  more: Pick<Term, 'words' | 'says' | 'source'> & Partial<Pick<Term, 'numbers' | 'calculation'>>,
): Term {
  return { id, numbers: [], calculation: '', ...more };
}
