import { frictionGapPa } from '../overhaul-figures.ts';
import type { Rule, RuleInput } from './rule.ts';

/** So many rounds of a live gland, and no more: rings that want more are spent (common practice, no source). */
export const LIVE_ROUNDS_MAX = 6;

/** May this gland be tightened with the line behind it? */
export const glandLookRule: Rule = {
  outcomes: ['may be tightened', 'jets', 'not sound', 'no room', 'dry'],
  params: [],
  judge({ words }) {
    const outcome = () => {
      if (words.glandLeak === 'jets') return 'jets';
      if (words.studsSound !== 'yes' || words.stemSound !== 'yes') return 'not sound';
      if (words.followerRoom !== 'yes') return 'no room';
      return words.glandLeak === 'dry' ? 'dry' : 'may be tightened';
    };
    return { outcome: outcome(), figures: {} };
  },
};

interface Gap {
  readonly gapPa: number | null;
  readonly limitPa: number;
  readonly tooTight: boolean;
}

/** What the way up and the way down differ by at one travel is twice the friction; the gauge counts against it. */
function gapOf({ job, readings }: RuleInput): Gap {
  const limitPa = frictionGapPa(job.sheet);
  const up = readings.glandUpPa;
  const down = readings.glandDownPa;
  if (up === undefined || down === undefined) return { gapPa: null, limitPa, tooTight: false };
  const gapPa = Math.abs(up.valueSi - down.valueSi);
  const uncertaintyPa = Math.hypot(up.uncertaintySi ?? 0, down.uncertaintySi ?? 0);
  return { gapPa, limitPa, tooTight: gapPa + uncertaintyPa > limitPa };
}

/** Friction before a nut is touched: what is at its limit already is not tightened further. */
export const glandFrictionRule: Rule = {
  outcomes: ['inside', 'too tight', 'not read'],
  params: [],
  judge(input) {
    const { tooTight, ...figures } = gapOf(input);
    if (figures.gapPa === null) return { outcome: 'not read', figures };
    return { outcome: tooTight ? 'too tight' : 'inside', figures };
  },
};

/** After each round: friction first, then the leak, then how often it was tried. */
export const glandRoundRule: Rule = {
  outcomes: ['dry', 'still leaks', 'too tight', 'worse', 'rounds used up', 'not read'],
  params: ['round'],
  judge(input) {
    const { tooTight, ...figures } = gapOf(input);
    const rounds = input.job.answers.filter(
      (one) => one.step === input.params.round && !one.superseded,
    ).length;
    const outcome = () => {
      if (input.words.glandLeakNow === 'more') return 'worse';
      if (figures.gapPa === null) return 'not read';
      if (tooTight) return 'too tight';
      if (input.words.glandLeakNow === 'dry') return 'dry';
      return rounds >= LIVE_ROUNDS_MAX ? 'rounds used up' : 'still leaks';
    };
    return { outcome: outcome(), figures: { ...figures, rounds } };
  },
};
