import { supplyWanted } from '../commissioning-figures.ts';
import type { Rule } from './rule.ts';

/** How far a supply may sag while the valve moves, of what it is at rest (common practice, no source). */
export const SUPPLY_SAG_MAX_PERCENT = 10;

/** How far the current at the terminals may be off what the output asks (common practice, no source). */
export const LOOP_OFF_MAX_A = 0.0001;

/** Below this there is no current at all: a loop is alive from its live zero up (common practice, no source). */
const LOOP_DEAD_A = 0.0005;

/** Terminals are read live only up to this voltage: 29 CFR 1910.333(a)(1), from memory. */
export const LIVE_READ_MAX_V = 50;

/** Supply at rest and while the valve moves, against its range and against itself; the gauge counts. */
export const supplyHoldsRule: Rule = {
  outcomes: ['holds', 'sags', 'low', 'high'],
  params: [],
  judge({ job, readings }) {
    const stillPa = readings.supplyStillPa?.valueSi ?? 0;
    const uncertaintyPa = readings.supplyStillPa?.uncertaintySi ?? 0;
    const sagPa = stillPa - (readings.supplyMovingPa?.valueSi ?? 0);
    const wanted = supplyWanted(job.sheet);
    const sagPercent = stillPa > 0 ? (100 * sagPa) / stillPa : 100;
    const outcome = () => {
      if (wanted !== null && stillPa + uncertaintyPa < wanted.lowPa) return 'low';
      if (wanted !== null && stillPa - uncertaintyPa > wanted.highPa) return 'high';
      return sagPa - uncertaintyPa > (SUPPLY_SAG_MAX_PERCENT / 100) * stillPa || stillPa <= 0
        ? 'sags'
        : 'holds';
    };
    return { outcome: outcome(), figures: { sagPercent } };
  },
};

/** What is wrong with the tubes; crossed tubes are told first, since they drive the valve the wrong way. */
export const tubesLookRule: Rule = {
  outcomes: ['sound', 'crossed', 'crushed', 'leaks'],
  params: [],
  judge({ words }) {
    const outcome = () => {
      if (words.tubesRun === 'crossed') return 'crossed';
      if (words.tubesRun === 'crushed') return 'crushed';
      return words.tubeAir === 'none' ? 'sound' : 'leaks';
    };
    return { outcome: outcome(), figures: {} };
  },
};

/** Whether terminals may be opened and read live: the voltage of the sheet, the class of the area, the meter. */
export const terminalsRule: Rule = {
  outcomes: ['may be read live', 'voltage too high', 'area or meter not fit'],
  params: [],
  judge({ job: { sheet }, words }) {
    const volts = sheet.electricalV;
    const figures = { volts, limitVolts: LIVE_READ_MAX_V };
    if (words.loopOnly !== 'yes' && (volts === null || volts > LIVE_READ_MAX_V))
      return { outcome: 'voltage too high', figures };
    const fit = words.areaAllows === 'yes' && words.meterFit === 'yes';
    return { outcome: fit ? 'may be read live' : 'area or meter not fit', figures };
  },
};

const ASKED_A = { loopLowA: 0.004, loopHalfA: 0.012, loopHighA: 0.02 } as const;

/** Current at the terminals at the low end, the middle and the high end of the output. */
export const loopCurrentRule: Rule = {
  outcomes: ['matches', 'none', 'low', 'high'],
  params: [],
  judge({ readings }) {
    const errors = Object.entries(ASKED_A).map(([name, askedA]) => ({
      readA: readings[name]?.valueSi ?? 0,
      errorA: (readings[name]?.valueSi ?? 0) - askedA,
      allowedA: LOOP_OFF_MAX_A + (readings[name]?.uncertaintySi ?? 0),
    }));
    const worst = errors.reduce((one, other) =>
      Math.abs(other.errorA) > Math.abs(one.errorA) ? other : one,
    );
    const figures = { errorA: worst.errorA, allowedA: worst.allowedA };
    if (errors.every(({ readA }) => readA < LOOP_DEAD_A)) return { outcome: 'none', figures };
    if (errors.every(({ errorA, allowedA }) => Math.abs(errorA) <= allowedA))
      return { outcome: 'matches', figures };
    return { outcome: worst.errorA < 0 ? 'low' : 'high', figures };
  },
};
