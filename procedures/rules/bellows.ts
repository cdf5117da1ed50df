import { MARGIN_OVER_SIGNAL_PA } from '../../safety/limits.ts';
import type { Rule } from './rule.ts';

/** A bellows that was shut in: it holds where the two readings differ by no more than the gauge may be off. */
export const bellowsHoldRule: Rule = {
  outcomes: ['holds', 'falls', 'too little signal', 'above range', 'still under air'],
  params: [],
  judge({ job: { sheet }, readings, words }) {
    const start = readings.bellowsStartPa;
    const startPa = start?.valueSi ?? Number.NaN;
    const changePa = (readings.bellowsEndPa?.valueSi ?? Number.NaN) - startPa;
    const allowedPa = Math.max(start?.uncertaintySi ?? 0, readings.bellowsEndPa?.uncertaintySi ?? 0);
    const limitPa = sheet.signalHighPa + MARGIN_OVER_SIGNAL_PA;
    const leastPa = (sheet.signalLowPa + sheet.signalHighPa) / 2;
    const figures = { changePa, allowedPa, leastPa, limitPa };
    const outcome = () => {
      if (startPa > limitPa) return 'above range';
      if (words.bellowsBled !== 'yes') return 'still under air';
      if (!(startPa + allowedPa >= leastPa)) return 'too little signal';
      return Math.abs(changePa) <= allowedPa ? 'holds' : 'falls';
    };
    return { outcome: outcome(), figures };
  },
};
