import type { Rule } from './rule.ts';

/** Nothing to judge: what was given is kept. */
export const recordRule: Rule = {
  outcomes: ['kept'],
  params: [],
  judge: () => ({ outcome: 'kept', figures: {} }),
};

/** All the named choices must be `yes`. */
export const allYesRule: Rule = {
  outcomes: ['yes', 'no'],
  params: ['fields'],
  judge({ words, params }) {
    const asked = (params.fields ?? '').split(' ').filter((name) => words[name] !== undefined);
    return {
      outcome: asked.length > 0 && asked.every((name) => words[name] === 'yes') ? 'yes' : 'no',
      figures: {},
    };
  },
};

/** The named choice must be one of those parted by commas. */
export const oneOfRule: Rule = {
  outcomes: ['yes', 'no'],
  params: ['field', 'good'],
  judge({ words, params }) {
    const good = (params.good ?? '').split(',');
    return { outcome: good.includes(words[params.field ?? ''] ?? '') ? 'yes' : 'no', figures: {} };
  },
};
