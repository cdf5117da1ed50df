import { ABOVE_ZERO, ANY_NUMBER, refuseCount, refuseOutside, refuseUnlessRising } from './checks.ts';
import { coverageFactorFor } from './uncertainty.ts';

/** One value of a history. `uncertaintySi` covers it at about 95 %; only how the points compare counts. */
export interface DatedValue {
  readonly timeS: number;
  readonly valueSi: number;
  readonly uncertaintySi: number;
}

/** A line through a history, told at the weighted middle of its times, where height and slope do not pull on each other. */
export interface DriftLine {
  readonly middleTimeS: number;
  readonly middleSi: number;
  /** Standard, from the scatter about the line. */
  readonly middleUncertaintySi: number;
  /** Per second. */
  readonly driftSi: number;
  readonly driftUncertaintySi: number;
  readonly degreesOfFreedom: number;
  /** Standard uncertainty times this covers 95.45 %. */
  readonly coverageFactor: number;
  /** The drift is larger than its scatter explains. Of histories without drift, 4.55 % say so. */
  readonly isDrifting: boolean;
  readonly firstTimeS: number;
  readonly lastTimeS: number;
}

/** Fewer points leave no degree of freedom for the scatter. */
const POINTS_MIN = 3;
const POINTS_MAX = 1000;

/**
 * The straight line through a history, each point by its own uncertainty.
 *
 * Shape: dated values of one unit in, a line with its uncertainties out. Weighted least squares.
 * Valid: errors of the points independent and normal, in the proportions of their stated uncertainties; how large they
 * are is taken from the scatter itself, so that what the gauges do not explain counts too.
 * @param points  from 3 to 1000, at two times at least; each uncertainty above 0
 * @returns height and slope with standard uncertainties, and whether the slope is told from none at 95.45 %
 * @throws CalcError CALC-001 or CALC-002 by the name of the quantity; CALC-004 for too few or too many points, or all at
 *   one time
 * @source [S-34] least squares; [S-09] Student's distribution at 95.45 %
 * @example driftLine([{ timeS: 0, valueSi: 1, uncertaintySi: 1 }, { timeS: 10, valueSi: 3, uncertaintySi: 1 },
 *   { timeS: 20, valueSi: 4, uncertaintySi: 1 }]).driftSi // 0.15
 */
export function driftLine(points: readonly DatedValue[]): DriftLine {
  if (points.length < POINTS_MIN || points.length > POINTS_MAX)
    throw refuseCount({ name: 'points', value: points.length, range: `from ${POINTS_MIN} to ${POINTS_MAX}` });
  for (const { timeS, valueSi, uncertaintySi } of points) {
    refuseOutside({ timeS, valueSi }, ANY_NUMBER);
    refuseOutside({ uncertaintySi }, ABOVE_ZERO);
  }
  const weighted = weigh(points);
  const sum = (of: (point: WeightedPoint) => number) =>
    weighted.reduce((total, point) => total + of(point), 0);
  const weights = sum(({ weight }) => weight);
  const middleTimeS = sum(({ weight, timeS }) => weight * timeS) / weights;
  const middleSi = sum(({ weight, valueSi }) => weight * valueSi) / weights;
  const spread = sum(({ weight, timeS }) => weight * (timeS - middleTimeS) ** 2);
  const times = points.map(({ timeS }) => timeS);
  const [firstTimeS, lastTimeS] = [Math.min(...times), Math.max(...times)];
  if (!(lastTimeS - firstTimeS > 1e-9 * Math.abs(lastTimeS)) || spread === 0)
    throw refuseCount({ name: 'times', value: 1, range: 'at least 2 different times' });
  const driftSi =
    sum(({ weight, timeS, valueSi }) => weight * (timeS - middleTimeS) * (valueSi - middleSi)) / spread;
  const degreesOfFreedom = points.length - 2;
  const rest = sum(
    ({ weight, timeS, valueSi }) => weight * (valueSi - middleSi - driftSi * (timeS - middleTimeS)) ** 2,
  );
  const variance = rest / degreesOfFreedom;
  const driftUncertaintySi = Math.sqrt(variance / spread);
  const coverageFactor = factorFor(degreesOfFreedom);
  return {
    middleTimeS,
    middleSi,
    middleUncertaintySi: Math.sqrt(variance / weights),
    driftSi,
    driftUncertaintySi,
    degreesOfFreedom,
    coverageFactor,
    isDrifting: Math.abs(driftSi) > coverageFactor * driftUncertaintySi,
    firstTimeS,
    lastTimeS,
  };
}

/**
 * The same line, no surer than the gauges: values that happen to lie closer together than their uncertainties allow say
 * nothing about how well they were read.
 *
 * Shape: the points and their line in, the line with the larger of two uncertainties out: scatter, or gauges alone.
 * Valid: as `driftLine`; histories without drift are then called drifting in at most 4.55 % of cases.
 * @param line    as `driftLine` gives it of the very same points
 * @param points  as given to `driftLine`
 * @returns the line; each uncertainty times the coverage factor is at least what the stated uncertainties give
 * @source [S-09] combined uncertainty of a weighted mean and of a slope
 * @example noSurerThanGauges({ line: driftLine([0, 1, 2].map((timeS) => ({ timeS, valueSi: 7, uncertaintySi: 1 }))),
 *   points: [0, 1, 2].map((timeS) => ({ timeS, valueSi: 7, uncertaintySi: 1 })) }).isDrifting // false
 */
export function noSurerThanGauges(of: {
  readonly line: DriftLine;
  readonly points: readonly DatedValue[];
}): DriftLine {
  const { line, points } = of;
  const { middleTimeS, coverageFactor, driftSi } = line;
  const sum = (each: (point: DatedValue) => number) => points.reduce((all, point) => all + each(point), 0);
  const middleGive = 1 / Math.sqrt(sum(({ uncertaintySi }) => uncertaintySi ** -2));
  const driftGive =
    1 / Math.sqrt(sum(({ timeS, uncertaintySi }) => ((timeS - middleTimeS) / uncertaintySi) ** 2));
  const driftUncertaintySi = Math.max(line.driftUncertaintySi, driftGive / coverageFactor);
  return {
    ...line,
    middleUncertaintySi: Math.max(line.middleUncertaintySi, middleGive / coverageFactor),
    driftUncertaintySi,
    isDrifting: Math.abs(driftSi) > coverageFactor * driftUncertaintySi,
  };
}

const factors = new Map<number, number>();

/** Worked out once for each number of points: the search for it takes longer than the line. */
function factorFor(degreesOfFreedom: number): number {
  const factor = factors.get(degreesOfFreedom) ?? coverageFactorFor({ degreesOfFreedom });
  factors.set(degreesOfFreedom, factor);
  return factor;
}

interface WeightedPoint extends DatedValue {
  readonly weight: number;
}

/** The surest point weighs one, so that no unit makes the sums too large or too small. */
function weigh(points: readonly DatedValue[]): readonly WeightedPoint[] {
  const surest = Math.min(...points.map(({ uncertaintySi }) => uncertaintySi));
  return points.map((point) => ({ ...point, weight: (surest / point.uncertaintySi) ** 2 }));
}

/** When a history comes to a limit. Times in seconds of the same clock. */
export interface Leaving {
  readonly limitSi: number;
  /** Where the line itself meets the limit; null where no drift towards it was told. */
  readonly expectedTimeS: number | null;
  /** From here on the limit lies within the uncertainty of the line; null: never. */
  readonly earliestTimeS: number | null;
  /** From here on the limit lies behind the line whatever its uncertainty; null where no drift towards it was told. */
  readonly latestTimeS: number | null;
}

/**
 * When the line of a history leaves its tolerance, with the interval that covers that time at 95.45 %.
 *
 * Shape: a line and its two limits in, the limit that comes first with three times out.
 * Valid: the drift goes on as it went. Says when the line leaves, not when one reading does.
 * @param line         as `driftLine` gives it
 * @param limitLowSi   blank: none
 * @param limitHighSi  blank: none; at least one
 * @param fromTimeS    nothing before this is told
 * @returns the limit that is met first, expected, earliest and latest time
 * @throws CalcError CALC-001 by the name of the input; CALC-003 if the limits do not rise; CALC-004 if there is none
 * @source [S-35] where a fitted line meets a value
 * @example leavingTolerance({ line: { middleTimeS: 0, middleSi: 0, middleUncertaintySi: 0.3, driftSi: 1,
 *   driftUncertaintySi: 0.4, degreesOfFreedom: 9, coverageFactor: 1, isDrifting: true, firstTimeS: -1, lastTimeS: 1 },
 *   limitLowSi: null, limitHighSi: 5, fromTimeS: 1 })
 *   // { limitSi: 5, expectedTimeS: 5, earliestTimeS: 3.549, latestTimeS: 8.3557 }
 */
export function leavingTolerance(input: {
  readonly line: DriftLine;
  readonly limitLowSi: number | null;
  readonly limitHighSi: number | null;
  readonly fromTimeS: number;
}): Leaving {
  const { line, limitLowSi, limitHighSi, fromTimeS } = input;
  refuseOutside({ fromTimeS }, ANY_NUMBER);
  if (limitLowSi !== null && limitHighSi !== null) refuseUnlessRising({ limitLowSi, limitHighSi });
  const sides = [
    ...(limitLowSi === null ? [] : [meeting({ line, limitSi: limitLowSi, side: -1, fromTimeS })]),
    ...(limitHighSi === null ? [] : [meeting({ line, limitSi: limitHighSi, side: 1, fromTimeS })]),
  ];
  const first = sides.toSorted((one, other) => startOf(one) - startOf(other))[0];
  if (first === undefined) throw refuseCount({ name: 'limits', value: 0, range: 'at least 1' });
  return first;
}

/** Where a drift was told its own limit counts, however wide the band is on the other side. */
function startOf({ expectedTimeS, earliestTimeS }: Leaving): number {
  return expectedTimeS === null ? (earliestTimeS ?? Number.POSITIVE_INFINITY) : Number.NEGATIVE_INFINITY;
}

function meeting(of: {
  readonly line: DriftLine;
  readonly limitSi: number;
  readonly side: 1 | -1;
  readonly fromTimeS: number;
}): Leaving {
  const { line, limitSi, side, fromTimeS } = of;
  refuseOutside({ limitSi }, ANY_NUMBER);
  const height = side * (line.middleSi - limitSi);
  const slope = side * line.driftSi;
  const heightGive = line.coverageFactor * line.middleUncertaintySi;
  const slopeGive = line.coverageFactor * line.driftUncertaintySi;
  const from = fromTimeS - line.middleTimeS;
  const isTowards = slope > slopeGive;
  const edge = height + slope * from + Math.hypot(heightGive, slopeGive * from);
  const meets = bandMeets({ height, heightGive, slope, slopeGive });
  // The near edge of the band meets the limit first, the far edge last; without a drift both edges open outwards.
  const near = slope < -slopeGive ? undefined : isTowards ? meets.at(0) : meets.at(-1);
  const far = meets.at(-1);
  const timeOf = (at: number | undefined) => (at === undefined ? null : line.middleTimeS + at);
  return {
    limitSi,
    expectedTimeS: isTowards ? line.middleTimeS - height / slope : null,
    earliestTimeS: edge >= 0 ? fromTimeS : timeOf(near === undefined ? near : Math.max(near, from)),
    latestTimeS: isTowards ? timeOf(far) : null,
  };
}

/**
 * Where either edge of the band meets the limit, rising: (height + slope x)^2 = heightGive^2 + (slopeGive x)^2. The root is
 * written without the difference of squares, which a history without scatter would leave to rounding.
 */
function bandMeets(of: {
  readonly height: number;
  readonly heightGive: number;
  readonly slope: number;
  readonly slopeGive: number;
}): readonly number[] {
  const { height, heightGive, slope, slopeGive } = of;
  const square = slope ** 2 - slopeGive ** 2;
  const under = heightGive ** 2 * square + (slopeGive * height) ** 2;
  if (under < 0) return [];
  const middle = -slope * height;
  const larger = middle + (middle < 0 ? -1 : 1) * Math.sqrt(under);
  const roots = [larger / square, (height ** 2 - heightGive ** 2) / larger];
  return roots.filter((root) => Number.isFinite(root)).sort((one, other) => one - other);
}
