import { supplyWanted } from '../commissioning-figures.ts';
import type { Figures } from '../job.ts';
import type { Rule, RuleInput } from './rule.ts';

/**
 * What share of its supply a sound relay swings its output over, nozzle covered against nozzle clear (common practice, no
 * source): a covered nozzle stands at supply, a clear one at the air around it.
 */
export const RELAY_SWING_SHARE = 0.8;

/** Below this share of its supply an output counts as empty, and within it of the supply as full (common practice, no source). */
const RELAY_EMPTY_SHARE = 0.2;

/** So often a plunger is pressed before the relay is opened (common practice, no source). */
export const PLUNGER_TRIES_MAX = 3;

type Answer = 'answers' | 'dead low' | 'dead high' | 'in part' | 'no supply';

function answerOf({ job, readings }: RuleInput): { readonly outcome: Answer; readonly figures: Figures } {
  const supply = readings.supplyNowPa;
  const covered = readings.coveredPa?.valueSi ?? Number.NaN;
  const clear = readings.clearPa?.valueSi ?? Number.NaN;
  const supplyPa = supply?.valueSi ?? 0;
  const leastPa = supplyWanted(job.sheet)?.lowPa ?? 0;
  if (supplyPa + (supply?.uncertaintySi ?? 0) < leastPa || supplyPa <= (supply?.uncertaintySi ?? 0))
    return { outcome: 'no supply', figures: { supplyPa, leastPa } };
  const uncertaintyPa = Math.hypot(
    readings.coveredPa?.uncertaintySi ?? 0,
    readings.clearPa?.uncertaintySi ?? 0,
  );
  const swingPa = covered - clear;
  const figures = { swingPa, swingPercent: (100 * swingPa) / supplyPa, uncertaintyPa };
  const empty = RELAY_EMPTY_SHARE * supplyPa + uncertaintyPa;
  if (swingPa - uncertaintyPa >= RELAY_SWING_SHARE * supplyPa) return { outcome: 'answers', figures };
  if (covered <= empty && clear <= empty) return { outcome: 'dead low', figures };
  if (covered >= supplyPa - empty && clear >= supplyPa - empty) return { outcome: 'dead high', figures };
  return { outcome: 'in part', figures };
}

/**
 * Output of a relay with its nozzle covered and clear; a swing counts less its gauge's doubt. Empty both ways is the restriction, full both ways the nozzle,
 * since a plugged restriction lowers the back pressure and a plugged nozzle raises it to the supply.
 */
export const relayAnswersRule: Rule = {
  outcomes: ['answers', 'dead low', 'dead high', 'in part', 'no supply'],
  params: [],
  judge: answerOf,
};

/** The same after the plunger was pressed; counted, so that nobody presses it for an hour. */
export const plungerTriedRule: Rule = {
  outcomes: ['answers', 'still dead', 'tries used up', 'no supply'],
  params: ['step'],
  judge(input) {
    const { outcome, figures } = answerOf(input);
    if (outcome === 'answers' || outcome === 'no supply') return { outcome, figures };
    const tries =
      1 + input.job.answers.filter((one) => one.step === input.params.step && !one.superseded).length;
    return {
      outcome: tries >= PLUNGER_TRIES_MAX ? 'tries used up' : 'still dead',
      figures: { ...figures, tries },
    };
  },
};

/** What was seen once the relay was apart; a torn relay is not cured by a clean hole. */
export const restrictionLookRule: Rule = {
  outcomes: ['plugged', 'free', 'spoiled', 'relay not sound'],
  params: [],
  judge({ words }) {
    if (words.relaySound !== 'yes') return { outcome: 'relay not sound', figures: {} };
    const found = words.restrictionFound;
    return { outcome: found === 'free' || found === 'spoiled' ? found : 'plugged', figures: {} };
  },
};
