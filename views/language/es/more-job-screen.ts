import type { Catalogue } from '../patterns.ts';

/** The screen of a job and what leads to it, more of it. */
export const moreJobScreen = {
  'The cards of this procedure are in English, until somebody who knows the trade has translated them.':
    'Las tarjetas de este procedimiento están en inglés hasta que las traduzca alguien que conozca el oficio.',
} as const satisfies Catalogue;
