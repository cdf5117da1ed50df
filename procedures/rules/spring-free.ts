import { springForceLeftN, turnsToFree } from '../overhaul-figures.ts';
import type { Rule } from './rule.ts';

/** How well turns are counted: a quarter turn (common practice, no source). */
const COUNTED_TO_TURNS = 0.25;

/**
 * Is the spring free? It must feel so, and so many turns must be off as bench set, rate and thread ask for: a screw
 * that goes slack before them has a broken spring or a nut that turns along, and is met as a loaded one.
 */
export const springFreeRule: Rule = {
  outcomes: ['free', 'not free', 'too few turns'],
  params: [],
  judge({ job, readings, words }) {
    const wantedTurns = turnsToFree(job.sheet);
    const turns = readings.adjusterTurnsOff?.valueSi ?? 0;
    const figures = {
      turnsToFree: wantedTurns,
      springForceLeftN: springForceLeftN({ ...job, readings: { ...job.readings, ...readings } }),
    };
    if (words.springSlack !== 'yes') return { outcome: 'not free', figures };
    const few = wantedTurns !== null && turns + COUNTED_TO_TURNS < wantedTurns;
    return { outcome: few ? 'too few turns' : 'free', figures };
  },
};

/** The adjuster wound back by as many turns as came off. */
export const turnsBackRule: Rule = {
  outcomes: ['as found', 'differs'],
  params: [],
  judge({ job, readings }) {
    const off = job.readings.adjusterTurnsOff?.valueSi;
    const on = readings.adjusterTurnsOn?.valueSi;
    const differTurns = on === undefined || off === undefined ? null : on - off;
    const same = differTurns !== null && Math.abs(differTurns) <= COUNTED_TO_TURNS;
    return { outcome: same ? 'as found' : 'differs', figures: { differTurns } };
  },
};
