import type { Rule } from './rule.ts';

/** What came out of a drain, and whether the operator had agreed to it. */
export const drainRule: Rule = {
  outcomes: ['clean', 'dirty', 'not agreed'],
  params: [],
  judge({ words }) {
    if (words.blowDownAgreed !== 'yes') return { outcome: 'not agreed', figures: {} };
    return { outcome: words.drainFound === 'dry' ? 'clean' : 'dirty', figures: {} };
  },
};
