import { CONVERTER_TOLERANCE_PERCENT, supplyWanted } from '../commissioning-figures.ts';
import { guarded } from '../cycle-verdict.ts';
import { CYCLE_POINTS, pointField, worstOf } from './own-stroke.ts';
import type { Rule } from './rule.ts';

/** The supply against its range, the gauge counted in: too low only where reading and uncertainty together are. */
export const supplyRule: Rule = {
  outcomes: ['inside', 'low', 'high', 'no range'],
  params: [],
  judge({ job, readings }) {
    const wanted = supplyWanted(job.sheet);
    const read = readings.supplyReadPa;
    if (wanted === null || read === undefined) return { outcome: 'no range', figures: {} };
    const { lowPa, highPa } = wanted;
    const uncertaintyPa = read.uncertaintySi ?? 0;
    const figures = { lowPa, highPa };
    if (read.valueSi + uncertaintyPa < lowPa) return { outcome: 'low', figures };
    return { outcome: read.valueSi - uncertaintyPa > highPa ? 'high' : 'inside', figures };
  },
};

/** The lowest supply while the valve moved, by its range where it has one; and whether it comes back at once. */
export const supplyMovingRule: Rule = {
  outcomes: ['holds', 'sags', 'not read'],
  params: [],
  judge({ job, readings, words }) {
    const wanted = supplyWanted(job.sheet);
    const lowest = readings.supplyLowestPa;
    if (lowest === undefined) return { outcome: 'not read', figures: {} };
    const lowPa = wanted?.lowPa ?? 0;
    const sags = lowest.valueSi + (lowest.uncertaintySi ?? 0) < lowPa || words.supplyComesBack !== 'yes';
    return { outcome: sags ? 'sags' : 'holds', figures: { lowPa } };
  },
};

/** Where it went without air or signal, against the sheet; a lock-up relay holds it where it stood. */
export const failActionRule: Rule = {
  outcomes: ['as the sheet says', 'otherwise', 'not all the way'],
  params: ['field'],
  judge({ job: { sheet }, words, params }) {
    const went = words[params.field ?? ''] ?? '';
    const wanted = sheet.lockUp && params.field === 'wentWithoutSupply' ? 'stays' : sheet.failPosition;
    if (went === 'part way') return { outcome: 'not all the way', figures: { wanted } };
    return { outcome: went === wanted ? 'as the sheet says' : 'otherwise', figures: { wanted } };
  },
};

/**
 * Whether it ran evenly, and within the times that the sheet allows. A hand on a stop watch has no uncertainty that
 * anybody states: the time itself is held against the limit.
 */
export const strokeTimesRule: Rule = {
  outcomes: ['even, in time', 'uneven', 'too slow'],
  params: [],
  judge({ job: { sheet }, readings, words }) {
    const { strokeOpenMaxS, strokeShutMaxS } = sheet;
    const isSlow = (readS: number | undefined, limitS: number | null) =>
      readS !== undefined && limitS !== null && readS > limitS;
    const outcome = () => {
      if (words.runsEvenly !== 'yes') return 'uneven';
      const { strokeOpenS, strokeShutS } = readings;
      const slow =
        isSlow(strokeOpenS?.valueSi, strokeOpenMaxS) || isSlow(strokeShutS?.valueSi, strokeShutMaxS);
      return slow ? 'too slow' : 'even, in time';
    };
    return { outcome: outcome(), figures: { strokeOpenMaxS, strokeShutMaxS } };
  },
};

/** Five points of a converter, up and down: error and hysteresis in percent of its span. */
export const converterRule: Rule = {
  outcomes: ['inside', 'outside', 'too close', 'not all read'],
  params: [],
  judge({ job: { sheet }, readings }) {
    const { signalLowPa, signalHighPa } = sheet;
    const spanPa = signalHighPa - signalLowPa;
    const read = CYCLE_POINTS.flatMap((point) => {
      const reading = readings[pointField(point, 'output')];
      return reading === undefined ? [] : [{ point, reading }];
    });
    if (read.length < CYCLE_POINTS.length) return { outcome: 'not all read', figures: {} };
    const errorsPercent = read.map(
      ({ point, reading }) => (100 * (reading.valueSi - signalLowPa)) / spanPa - point.percent,
    );
    const errorWorstPercent = errorsPercent.reduce((worst, each) =>
      Math.abs(each) > Math.abs(worst) ? each : worst,
    );
    const hysteresisPercent = Math.max(
      ...CYCLE_POINTS.slice(0, 4).map(({ percent }) => {
        const [up, down] = read
          .filter(({ point }) => point.percent === percent)
          .map(({ reading }) => (100 * reading.valueSi) / spanPa);
        return Math.abs((up ?? 0) - (down ?? 0));
      }),
    );
    const uncertainty = (100 * Math.max(...read.map(({ reading }) => reading.uncertaintySi ?? 0))) / spanPa;
    const judge = (value: number) => guarded({ value, limit: CONVERTER_TOLERANCE_PERCENT, uncertainty });
    return {
      outcome: worstOf([judge(errorWorstPercent), judge(hysteresisPercent)]),
      figures: { errorWorstPercent, hysteresisPercent, errorUncertaintyPercent: uncertainty },
    };
  },
};
