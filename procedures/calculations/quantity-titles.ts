import { MEASURE_TITLES } from './titles-of-measures.ts';
import { WORD_TITLES } from './titles-of-words.ts';

/** What each name is called on a page: one name, one thing, one title. */
export const QUANTITY_TITLES: Readonly<Record<string, string>> = { ...MEASURE_TITLES, ...WORD_TITLES };
