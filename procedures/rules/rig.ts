import type { Rule } from './rule.ts';

/** Two gauges on one pressure: they agree where the difference is inside both uncertainties together. */
export const gaugesAgreeRule: Rule = {
  outcomes: ['agree', 'differ'],
  params: ['one', 'other'],
  judge({ readings, params }) {
    const one = readings[params.one ?? ''];
    const other = readings[params.other ?? ''];
    const allowedPa = Math.hypot(one?.uncertaintySi ?? 0, other?.uncertaintySi ?? 0);
    const differencePa = (one?.valueSi ?? Number.NaN) - (other?.valueSi ?? Number.NaN);
    return {
      outcome: Math.abs(differencePa) <= allowedPa ? 'agree' : 'differ',
      figures: { differencePa, allowedPa },
    };
  },
};

/** A shut-in pressure, read twice on one gauge: steady where the change is inside its uncertainty. */
export const steadyRule: Rule = {
  outcomes: ['steady', 'falls'],
  params: ['first', 'again'],
  judge({ readings, params }) {
    const first = readings[params.first ?? ''];
    const again = readings[params.again ?? ''];
    const changePa = (again?.valueSi ?? Number.NaN) - (first?.valueSi ?? Number.NaN);
    const allowedPa = Math.max(first?.uncertaintySi ?? 0, again?.uncertaintySi ?? 0);
    return {
      outcome: Math.abs(changePa) <= allowedPa ? 'steady' : 'falls',
      figures: { changePa, allowedPa },
    };
  },
};

/** The share of the travel that keeps a held plug clear of its seat and of the open stop. */
const CLEAR_OF_ENDS = 0.2;

/** Test air that is held: steady, and the plug well off its seat. */
export const heldOffSeatRule: Rule = {
  outcomes: ['held', 'falls', 'too near its seat', 'above limit'],
  params: ['first', 'again', 'travel'],
  judge(input) {
    const steady = steadyRule.judge(input);
    const travelM = input.readings[input.params.travel ?? '']?.valueSi ?? Number.NaN;
    const liftPercent = (100 * travelM) / input.job.sheet.travelM;
    const figures = { ...steady.figures, liftPercent };
    if (steady.outcome === 'falls') return { outcome: 'falls', figures };
    return { outcome: liftPercent >= 100 * CLEAR_OF_ENDS ? 'held' : 'too near its seat', figures };
  },
};
