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

/** None of the named choices may be the bad one; a choice that was not made counts as bad. */
export const noneOfRule: Rule = {
  outcomes: ['none', 'some'],
  params: ['fields', 'bad'],
  judge({ words, params }) {
    const said = (params.fields ?? '').split(' ').map((name) => words[name] ?? params.bad);
    return { outcome: said.includes(params.bad) ? 'some' : 'none', figures: {} };
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
