import type { Rule } from './rule.ts';

/** Gland and bonnet hot: what is under pressure and leaks comes before what only sticks. */
export const hotCheckRule: Rule = {
  outcomes: ['dry', 'gland weeps', 'joint weeps', 'sticks'],
  params: [],
  judge({ words }) {
    const outcome = () => {
      if (words.jointHot !== 'dry') return 'joint weeps';
      if (words.glandHot !== 'dry') return 'gland weeps';
      return words.movesHot === 'yes' ? 'dry' : 'sticks';
    };
    return { outcome: outcome(), figures: {} };
  },
};
