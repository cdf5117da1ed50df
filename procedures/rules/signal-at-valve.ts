import { convertSignal } from '../calculations/signal-travel.ts';
import { CONVERTER_TOLERANCE_PERCENT, SIGNAL_CURRENT } from '../commissioning-figures.ts';
import { guarded } from '../cycle-verdict.ts';
import { worstOf } from './own-stroke.ts';
import type { Rule } from './rule.ts';

/** Where a current is fed in and its signal read at the valve. */
export const SIGNAL_POINTS = ['Low', 'Middle', 'High'] as const;

/** Current at the terminals against the air that comes of it at the valve, each as it was read, in percent of the span. */
export const signalAtValveRule: Rule = {
  outcomes: ['inside', 'outside', 'too close', 'not all read'],
  params: [],
  judge({ job: { sheet }, readings }) {
    const spanPa = sheet.signalHighPa - sheet.signalLowPa;
    const read = SIGNAL_POINTS.flatMap((point) => {
      const current = readings[`terminal${point}A`];
      const air = readings[`valve${point}Pa`];
      if (current === undefined || air === undefined) return [];
      const expectedPa = convertSignal({
        signal: current.valueSi,
        inLow: SIGNAL_CURRENT.lowA,
        inHigh: SIGNAL_CURRENT.highA,
        outLow: sheet.signalLowPa,
        outHigh: sheet.signalHighPa,
      });
      const uncertainty = (100 * (air.uncertaintySi ?? 0)) / spanPa;
      return [{ errorPercent: (100 * (air.valueSi - expectedPa)) / spanPa, uncertainty }];
    });
    if (read.length < SIGNAL_POINTS.length) return { outcome: 'not all read', figures: {} };
    const verdicts = read.map(({ errorPercent, uncertainty }) =>
      guarded({ value: errorPercent, limit: CONVERTER_TOLERANCE_PERCENT, uncertainty }),
    );
    const signalErrorPercent = read.reduce(
      (worst, { errorPercent }) => (Math.abs(errorPercent) > Math.abs(worst) ? errorPercent : worst),
      0,
    );
    return { outcome: worstOf(verdicts), figures: { signalErrorPercent } };
  },
};
