import { linkPlayLimitM } from '../repair-limits.ts';
import type { Rule } from './rule.ts';

/** What nozzle and flapper look like: a bent flapper is told before dirt, since cleaning does not cure it. */
export const flapperLookRule: Rule = {
  outcomes: ['sound', 'dirty', 'bent', 'loose'],
  params: [],
  judge({ words }) {
    const outcome = () => {
      if (words.flapperSquare !== 'yes') return 'bent';
      if (words.pivotTight !== 'yes') return 'loose';
      return words.nozzleClean === 'yes' ? 'sound' : 'dirty';
    };
    return { outcome: outcome(), figures: {} };
  },
};

/** Play of the feedback linkage against what the hysteresis of the sheet leaves it, the indicator counted in. */
export const linkPlayRule: Rule = {
  outcomes: ['tight', 'worn', 'off', 'not read'],
  params: [],
  judge({ job: { sheet }, readings, words }) {
    if (words.linkWhole !== 'yes') return { outcome: 'off', figures: {} };
    const play = readings.linkPlayM;
    const limitM = linkPlayLimitM(sheet);
    if (play === undefined) return { outcome: 'not read', figures: { limitM } };
    const playPercent = (100 * play.valueSi) / sheet.travelM;
    const outcome = play.valueSi + (play.uncertaintySi ?? 0) <= limitM ? 'tight' : 'worn';
    return { outcome, figures: { playPercent, limitM } };
  },
};
