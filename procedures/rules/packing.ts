import type { Rule } from './rule.ts';

/** The rings that came out, against the sheet: one that is left in the box spoils the new set. */
export const ringsRule: Rule = {
  outcomes: ['as the sheet', 'differs', 'not on the sheet'],
  params: ['field'],
  judge({ job, readings, params }) {
    const wanted = job.sheet.packingRings;
    const counted = readings[params.field ?? '']?.valueSi ?? Number.NaN;
    const figures = { wanted };
    if (wanted === null) return { outcome: 'not on the sheet', figures };
    return { outcome: counted === wanted ? 'as the sheet' : 'differs', figures };
  },
};

/** Stem and box by what a person sees and feels, the worst first. */
export const stemLookRule: Rule = {
  outcomes: ['good', 'bent', 'scored', 'box not clean'],
  params: [],
  judge({ words }) {
    const outcome = () => {
      if (words.stemStraight !== 'yes') return 'bent';
      if (words.stemSmooth !== 'yes') return 'scored';
      return words.boxClean === 'yes' ? 'good' : 'box not clean';
    };
    return { outcome: outcome(), figures: {} };
  },
};
