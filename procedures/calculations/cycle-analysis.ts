import { ANY_NUMBER, refuseCount, refuseOutside } from './checks.ts';
import { type Linearity, linearity } from './linearity.ts';
import { mean } from './numbers.ts';
import { type Direction, type JudgedRow, judgeRows, MOST_ROWS, type StrokeInput } from './stroke-rows.ts';

export interface CyclePoint {
  readonly inputPercent: number;
  readonly outputPercent: number;
  /** `up`: the input was rising. */
  readonly direction: Direction;
  readonly cycle: number;
}

/** The mean readings at one input. A direction that was not read there is null. */
export interface AverageAtInput {
  readonly inputPercent: number;
  readonly upPercent: number | null;
  readonly downPercent: number | null;
  readonly averagePercent: number;
}

/** All in percent of output span. Null: the table does not hold what it takes. */
export interface CycleAnalysis {
  /** Inaccuracy: largest positive and largest negative error of any single reading. */
  readonly errorMaxPercent: number;
  readonly errorMinPercent: number;
  /** Largest errors of the up average or the down average, each by itself. */
  readonly measuredErrorMaxPercent: number;
  readonly measuredErrorMinPercent: number;
  /** Hysteresis plus dead band: largest difference of up and down at one input within one cycle. */
  readonly hysteresisPercent: number | null;
  readonly hysteresisAtPercent: number | null;
  readonly hysteresisOfAveragesPercent: number | null;
  /** Spread of readings at one input and direction over the cycles; the larger direction counts. */
  readonly repeatabilityPercent: number | null;
  readonly linearity: Linearity | null;
  readonly averageCurve: readonly AverageAtInput[];
}

interface PointWithError extends CyclePoint {
  readonly errorPercent: number;
}

/** Readings whose inputs lie no further apart than this are readings at one input. */
const SAME_INPUT_PERCENT = 1;

/**
 * The performance terms of an up and down table.
 *
 * Shape: points in percent in, the terms out. Error = output − ideal at the actual input, so that an input that is a
 *   little off its mark does not count as hysteresis.
 * Valid: up and down alone give hysteresis and dead band together; a slow reversal test splits them.
 * @param points   input and output in percent of span, direction and cycle; at least one
 * @param reverse  true where the output falls as the input rises; left out: false
 * @returns inaccuracy, measured error, hysteresis plus dead band, repeatability, linearity, average curve
 * @throws CalcError CALC-001 if a value is no number; CALC-004 if there is no point
 * @source [S-04] terms of measured accuracy, hysteretic error, repeatability and linearity
 * @example analyseCycle({ points: [
 *   { inputPercent: 0, outputPercent: 0.3, direction: 'up', cycle: 1 },
 *   { inputPercent: 50, outputPercent: 49.2, direction: 'up', cycle: 1 },
 *   { inputPercent: 100, outputPercent: 99.6, direction: 'up', cycle: 1 },
 *   { inputPercent: 50, outputPercent: 50.7, direction: 'down', cycle: 1 },
 * ] }).hysteresisPercent // 1.5
 */
export function analyseCycle(input: {
  readonly points: readonly CyclePoint[];
  readonly reverse?: boolean;
}): CycleAnalysis {
  const points = input.points.map((point) => withError({ point, reverse: input.reverse ?? false }));
  if (points.length === 0 || points.length > MOST_ROWS) {
    throw refuseCount({ name: 'points', value: points.length, range: `from 1 to ${MOST_ROWS} points` });
  }
  const groups = groupsOfOneInput(points);
  const errors = points.map(({ errorPercent }) => errorPercent);
  const directionErrors = groups.flatMap((group) =>
    (['up', 'down'] as const).flatMap((direction) => {
      const errorPercent = meanOf(errorsOf({ points: group, direction }));
      return errorPercent === null ? [] : [errorPercent];
    }),
  );
  return {
    errorMaxPercent: Math.max(...errors),
    errorMinPercent: Math.min(...errors),
    measuredErrorMaxPercent: Math.max(...directionErrors),
    measuredErrorMinPercent: Math.min(...directionErrors),
    ...hysteresisOf(groups),
    repeatabilityPercent: repeatabilityOf(groups),
    ...curveOf({ groups, reverse: input.reverse ?? false }),
  };
}

export interface StrokeAnalysis extends CycleAnalysis {
  readonly rows: readonly JudgedRow[];
  /** Places in `rows` of the largest positive and the largest negative error. */
  readonly errorMaxRow: number;
  readonly errorMinRow: number;
  readonly judgedRows: number;
}

/**
 * The performance terms of a valve from its stroke table.
 *
 * Shape: rows of signal and travel in; each row with its error, and the terms, out.
 * Valid: as analyseCycle. Rows on the seat and rows that a stop held are shown but not judged.
 * @param rows             each with signalPa, travelM or travelPercent, direction and cycle
 * @param rangeLowPa       signal at one end of the stroke
 * @param rangeHighPa      signal at the other end; above rangeLowPa
 * @param ratedTravelM     full stroke; above 0
 * @param airAction        air-to-open or air-to-close
 * @param contactPa        gauge pressure of seat contact; blank: no row is left out for it
 * @param contactMarginPa  0 or more
 * @param excludedRows     places in rows that a stop held
 * @returns the rows worked out and the terms in percent of travel
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input; CALC-004 if no row is left
 * @source [S-04] terms of measured accuracy, hysteretic error, repeatability and linearity
 * @example analyseStroke({ rows: [
 *   { signalPa: 60000, travelPercent: 49, direction: 'up', cycle: 1 },
 *   { signalPa: 60000, travelPercent: 51.5, direction: 'down', cycle: 1 },
 * ], rangeLowPa: 20000, rangeHighPa: 100000, ratedTravelM: 0.02, airAction: 'air-to-open' }).hysteresisPercent // 2.5
 */
export function analyseStroke(input: StrokeInput): StrokeAnalysis {
  const rows = judgeRows(input);
  const judged = rows.filter(({ leftOut }) => leftOut === null);
  if (judged.length === 0)
    throw refuseCount({ name: 'rows', value: 0, range: 'at least 1 row off the seat and the stops' });
  const analysis = analyseCycle({
    points: judged.map(({ signalPercent, openPercent, direction, cycle }) => ({
      inputPercent: signalPercent,
      outputPercent: openPercent,
      direction,
      cycle,
    })),
    reverse: input.airAction === 'air-to-close',
  });
  const byError = [...judged].sort((a, b) => a.errorPercent - b.errorPercent);
  return {
    ...analysis,
    rows,
    errorMaxRow: byError.at(-1)?.index ?? 0,
    errorMinRow: byError[0]?.index ?? 0,
    judgedRows: judged.length,
  };
}

function withError({ point, reverse }: { point: CyclePoint; reverse: boolean }): PointWithError {
  const { inputPercent, outputPercent, cycle } = point;
  refuseOutside({ inputPercent, outputPercent, cycle }, ANY_NUMBER);
  return { ...point, errorPercent: outputPercent - (reverse ? 100 - inputPercent : inputPercent) };
}

function groupsOfOneInput(points: readonly PointWithError[]): PointWithError[][] {
  const groups: PointWithError[][] = [];
  for (const point of [...points].sort((a, b) => a.inputPercent - b.inputPercent)) {
    const group = groups.at(-1);
    const start = group?.[0]?.inputPercent;
    if (group !== undefined && start !== undefined && point.inputPercent - start <= SAME_INPUT_PERCENT) {
      group.push(point);
    } else {
      groups.push([point]);
    }
  }
  return groups;
}

function errorsOf(of: {
  readonly points: readonly PointWithError[];
  readonly direction: Direction;
  readonly cycle?: number;
}): number[] {
  return of.points
    .filter(({ direction, cycle }) => direction === of.direction && cycle === (of.cycle ?? cycle))
    .map(({ errorPercent }) => errorPercent);
}

function hysteresisOf(groups: readonly (readonly PointWithError[])[]) {
  const gaps = groups.flatMap((points) => {
    const cycles = [...new Set(points.map(({ cycle }) => cycle))];
    return cycles.flatMap((cycle) => gapOf({ points, cycle }));
  });
  const averageGaps = groups.flatMap((points) => gapOf({ points }));
  const widest = gaps.reduce((most, gap) => (gap.size > most.size ? gap : most), {
    size: -1,
    inputPercent: 0,
  });
  return {
    hysteresisPercent: gaps.length === 0 ? null : widest.size,
    hysteresisAtPercent: gaps.length === 0 ? null : widest.inputPercent,
    hysteresisOfAveragesPercent:
      averageGaps.length === 0 ? null : Math.max(...averageGaps.map(({ size }) => size)),
  };
}

function gapOf(of: { readonly points: readonly PointWithError[]; readonly cycle?: number }) {
  const up = meanOf(errorsOf({ ...of, direction: 'up' }));
  const down = meanOf(errorsOf({ ...of, direction: 'down' }));
  const inputPercent = mean(of.points.map((point) => point.inputPercent));
  return up === null || down === null ? [] : [{ size: Math.abs(down - up), inputPercent }];
}

function repeatabilityOf(groups: readonly (readonly PointWithError[])[]): number | null {
  const spreads = groups.flatMap((points) =>
    (['up', 'down'] as const)
      .map((direction) => errorsOf({ points, direction }))
      .filter((errors) => errors.length > 1)
      .map((errors) => Math.max(...errors) - Math.min(...errors)),
  );
  return spreads.length === 0 ? null : Math.max(...spreads);
}

function curveOf({ groups, reverse }: { groups: readonly (readonly PointWithError[])[]; reverse: boolean }) {
  const averageCurve = groups.map((points): AverageAtInput => {
    const inputPercent = mean(points.map((point) => point.inputPercent));
    const ideal = reverse ? 100 - inputPercent : inputPercent;
    const [up, down] = [
      meanOf(errorsOf({ points, direction: 'up' })),
      meanOf(errorsOf({ points, direction: 'down' })),
    ];
    const average = up === null || down === null ? (up ?? down ?? 0) : (up + down) / 2;
    return {
      inputPercent,
      upPercent: up === null ? null : ideal + up,
      downPercent: down === null ? null : ideal + down,
      averagePercent: ideal + average,
    };
  });
  const curve = averageCurve.map(({ inputPercent, averagePercent }) => ({
    inputPercent,
    outputPercent: averagePercent,
  }));
  return { averageCurve, linearity: curve.length < 3 ? null : linearity(curve) };
}

function meanOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : mean(values);
}
