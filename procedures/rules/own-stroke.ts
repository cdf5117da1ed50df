import { analyseStroke } from '../calculations/cycle-analysis.ts';
import type { StrokeRow } from '../calculations/stroke-rows.ts';
import { actuatorAirPa, risingSignalOpens } from '../commissioning-figures.ts';
import { type Guarded, guarded } from '../cycle-verdict.ts';
import type { Reading } from '../job.ts';
import type { Rule, RuleInput } from './rule.ts';

/** Settings of one cycle, up and down again, in the order in which they are read. */
export const CYCLE_POINTS = [
  { percent: 0, direction: 'up' },
  { percent: 25, direction: 'up' },
  { percent: 50, direction: 'up' },
  { percent: 75, direction: 'up' },
  { percent: 100, direction: 'up' },
  { percent: 75, direction: 'down' },
  { percent: 50, direction: 'down' },
  { percent: 25, direction: 'down' },
  { percent: 0, direction: 'down' },
] as const;

type Point = (typeof CYCLE_POINTS)[number];

/** Name of the field of one setting: `travelUp25M`, `outputDown50Pa`. */
export function pointField(point: Point, kind: 'travel' | 'output'): string {
  const way = point.direction === 'up' ? 'Up' : 'Down';
  return `${kind}${way}${point.percent}${kind === 'travel' ? 'M' : 'Pa'}`;
}

/** One verdict of several: outside if one is, then too close, else inside. */
export function worstOf(verdicts: readonly (Guarded | null)[]): Guarded {
  if (verdicts.includes('outside')) return 'outside';
  return verdicts.includes('too close') ? 'too close' : 'inside';
}

/**
 * A cycle of a valve by its own signal: error and hysteresis in percent of travel against the sheet, the gauge counted
 * in. The signal is percent of its range, whatever its unit, so that split and reverse ranges need nothing more.
 */
export const ownStrokeRule: Rule = {
  outcomes: ['inside', 'outside', 'too close', 'not all read'],
  params: [],
  judge({ job: { sheet }, readings }) {
    const read = CYCLE_POINTS.flatMap((point) => readings[pointField(point, 'travel')] ?? []);
    if (read.length < CYCLE_POINTS.length) return { outcome: 'not all read', figures: {} };
    const analysis = analyseStroke({
      rows: read.map((reading, at) => rowOf(reading, at)),
      rangeLowPa: 0,
      rangeHighPa: 100,
      ratedTravelM: sheet.travelM,
      airAction: risingSignalOpens(sheet) ? 'air-to-open' : 'air-to-close',
      contactPa: null,
      contactMarginPa: 0,
    });
    const widest = Math.max(...read.map(({ uncertaintySi }) => uncertaintySi ?? 0));
    const uncertainty = (100 * widest) / sheet.travelM;
    const { errorMinPercent, errorMaxPercent, hysteresisPercent } = analysis;
    const errorWorstPercent =
      Math.abs(errorMinPercent) > Math.abs(errorMaxPercent) ? errorMinPercent : errorMaxPercent;
    const error = guarded({ value: errorWorstPercent, limit: sheet.errorTolerancePercent, uncertainty });
    const hysteresis =
      hysteresisPercent === null
        ? null
        : guarded({ value: hysteresisPercent, limit: sheet.hysteresisTolerancePercent, uncertainty });
    return {
      outcome: worstOf([error, hysteresis]),
      figures: {
        errorWorstPercent,
        errorUncertaintyPercent: uncertainty,
        errorVerdict: error,
        hysteresisPercent,
        hysteresisVerdict: hysteresis,
      },
    };
  },
};

function rowOf(reading: Reading, at: number): StrokeRow {
  const { percent, direction } = CYCLE_POINTS[at] ?? CYCLE_POINTS[0];
  return { signalPa: percent, travelM: reading.valueSi, direction, cycle: 1 };
}

/**
 * Air on the actuator at a known travel against what its spring wants there: a positioner hides a leak or a wrong spring
 * by giving more air. Friction and bench-set tolerance are allowed for.
 */
export const actuatorAirRule: Rule = {
  outcomes: ['as expected', 'more than expected', 'less than expected', 'not read'],
  params: [],
  judge({ job: { sheet }, readings }: RuleInput) {
    const air = readings.actuatorAirPa;
    const travelM = readings.airTravelM?.valueSi;
    const expectedPa = travelM === undefined ? null : actuatorAirPa(sheet, (100 * travelM) / sheet.travelM);
    if (air === undefined || expectedPa === null) return { outcome: 'not read', figures: {} };
    const spanPa = sheet.benchSetHighPa - sheet.benchSetLowPa;
    const frictionPa = ((sheet.hysteresisTolerancePercent / 100) * spanPa) / 2;
    const allowedPa = sheet.benchSetTolerancePa + frictionPa + (air.uncertaintySi ?? 0);
    const differencePa = air.valueSi - expectedPa;
    const outcome =
      Math.abs(differencePa) <= allowedPa
        ? 'as expected'
        : differencePa > 0
          ? 'more than expected'
          : 'less than expected';
    return { outcome, figures: { expectedPa, differencePa, allowedPa } };
  },
};
