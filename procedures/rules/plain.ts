import { SAFE_TOUCH_C } from '../../safety/limits.ts';
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

const NOT_SAFE: readonly string[] = ['live', 'free', 'present', 'hot', 'armed'];

/** Every other energy is absent or made safe, in the states that table D knows. */
export const othersRule: Rule = {
  outcomes: ['all safe', 'one is not safe', 'too hot to touch'],
  params: ['fields'],
  judge({ readings, words, params }) {
    const body = readings.bodyTemperatureK;
    const figures = { bodyTemperatureK: body?.valueSi ?? null, safeTouchC: SAFE_TOUCH_C };
    if (body !== undefined && body.valueSi - 273.15 > SAFE_TOUCH_C && words.temperature === 'absent') {
      return { outcome: 'too hot to touch', figures };
    }
    const states = (params.fields ?? '').split(' ').map((name) => words[name] ?? '');
    const unsafe = states.some((state) => state === '' || NOT_SAFE.includes(state));
    return { outcome: unsafe ? 'one is not safe' : 'all safe', figures };
  },
};
