import { analyseStroke } from '../calculations/cycle-analysis.ts';
import type { StrokeRow } from '../calculations/stroke-rows.ts';
import { zeroAndSpan } from '../calculations/zero-and-span.ts';
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

export interface OwnStroke {
  readonly errorWorstPercent: number;
  /** The gauge, in percent of travel. */
  readonly errorUncertaintyPercent: number;
  readonly errorVerdict: Guarded;
  readonly hysteresisPercent: number | null;
  readonly hysteresisVerdict: Guarded | null;
  /** Of the average of up and down: what zero and span screws can cure, and what they cannot. */
  readonly zeroErrorPercent: number;
  readonly spanErrorPercent: number;
  readonly linearityPercent: number;
  readonly [name: string]: number | string | null;
}

/**
 * A cycle of a valve by its own signal: error and hysteresis in percent of travel against the sheet, the gauge counted
 * in. The signal is percent of its range, whatever its unit, so that split and reverse ranges need nothing more.
 * @returns null while not every setting was read
 */
export function ownStrokeOf({
  job: { sheet },
  readings,
}: Pick<RuleInput, 'job' | 'readings'>): OwnStroke | null {
  const read = CYCLE_POINTS.flatMap((point) => readings[pointField(point, 'travel')] ?? []);
  if (read.length < CYCLE_POINTS.length) return null;
  const reverse = !risingSignalOpens(sheet);
  const analysis = analyseStroke({
    rows: read.map((reading, at) => rowOf(reading, at)),
    rangeLowPa: 0,
    rangeHighPa: 100,
    ratedTravelM: sheet.travelM,
    airAction: reverse ? 'air-to-close' : 'air-to-open',
    contactPa: null,
    contactMarginPa: 0,
  });
  const widest = Math.max(...read.map(({ uncertaintySi }) => uncertaintySi ?? 0));
  const uncertainty = (100 * widest) / sheet.travelM;
  const { errorMinPercent, errorMaxPercent, hysteresisPercent } = analysis;
  const errorWorstPercent =
    Math.abs(errorMinPercent) > Math.abs(errorMaxPercent) ? errorMinPercent : errorMaxPercent;
  const limit = sheet.hysteresisTolerancePercent;
  const points = analysis.averageCurve.map(({ inputPercent, averagePercent }) => ({
    inputPercent,
    outputPercent: averagePercent,
  }));
  const line = zeroAndSpan({ points, reverse, heldPercent: uncertainty });
  return {
    errorWorstPercent,
    errorUncertaintyPercent: uncertainty,
    errorVerdict: guarded({ value: errorWorstPercent, limit: sheet.errorTolerancePercent, uncertainty }),
    hysteresisPercent,
    hysteresisVerdict:
      hysteresisPercent === null ? null : guarded({ value: hysteresisPercent, limit, uncertainty }),
    zeroErrorPercent: line.zeroErrorPercent,
    spanErrorPercent: line.spanErrorPercent,
    linearityPercent: line.terminalPercent,
  };
}

export const ownStrokeRule: Rule = {
  outcomes: ['inside', 'outside', 'too close', 'not all read'],
  params: [],
  judge(input) {
    const stroke = ownStrokeOf(input);
    if (stroke === null) return { outcome: 'not all read', figures: {} };
    return { outcome: worstOf([stroke.errorVerdict, stroke.hysteresisVerdict]), figures: stroke };
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
