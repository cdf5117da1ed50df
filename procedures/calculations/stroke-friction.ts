import { benchSet } from './bench-set.ts';
import { refuseCount, refuseOutside, ZERO_OR_MORE } from './checks.ts';
import { mean } from './numbers.ts';
import { type Direction, type JudgedRow, judgeRows, type StrokeInput } from './stroke-rows.ts';

export interface StrokeFrictionInput extends Omit<StrokeInput, 'rangeLowPa' | 'rangeHighPa'> {
  readonly effectiveAreaM2: number;
  readonly benchSetLowPa: number;
  readonly benchSetHighPa: number;
  /** Expanded uncertainty (about 95 %) of one pressure and of one travel reading. */
  readonly gaugeUncertaintyPa: number;
  readonly indicatorUncertaintyM: number;
}

/** One travel that the stem passed both ways. */
export interface FrictionLevel {
  readonly travelM: number;
  readonly upPa: number;
  readonly downPa: number;
  readonly frictionN: number;
  readonly middlePa: number;
  readonly wantedPa: number;
}

export interface StrokeFriction {
  readonly levels: readonly FrictionLevel[];
  readonly frictionN: number;
  readonly frictionMinN: number;
  readonly frictionMaxN: number;
  readonly frictionUncertaintyN: number;
  /** Mean distance of the middle line from the wanted line; positive: the spring is set too tight. */
  readonly benchSetShiftPa: number;
  readonly benchSetShiftUncertaintyPa: number;
  /** From a straight line through the middle pressures; null with fewer than two levels. */
  readonly benchSetFound: {
    readonly lowPa: number;
    readonly highPa: number;
    readonly springRateNPerM: number;
  } | null;
}

/** A stem that went less than this from one row to the next, in percent of the stroke, is taken as standing. */
const STANDING_PERCENT = 0.1;

/**
 * Friction and shift of the bench set from the up and down table, with no extra reading.
 *
 * Shape: rows of case pressure and travel in. At one travel, moving both ways: friction = A · (up − down)/2 and
 *   middle = (up + down)/2, held against the line from bench set low to high.
 * Valid: the signal column is the pressure in the case (no positioner between), the process is off the plug. Pressures
 *   between rows are interpolated. A row counts where the stem had moved its way since the row before, so that neither
 *   the first row nor one that friction still holds after a reversal is taken for a moving one; rows on the seat and
 *   rows at a stop do not count either. Breakout friction is larger and needs its own test.
 * @param rows                   in the order in which they were read, each with signalPa, travelM or travelPercent,
 *   direction and cycle
 * @param ratedTravelM           full stroke; above 0
 * @param airAction              air-to-open or air-to-close
 * @param contactPa              gauge pressure of seat contact; blank: no row is left out for it
 * @param contactMarginPa        0 or more
 * @param excludedRows           places in rows that a stop held
 * @param effectiveAreaM2        above 0
 * @param benchSetLowPa          gauge; 0 or more
 * @param benchSetHighPa         gauge; above benchSetLowPa
 * @param gaugeUncertaintyPa     about 95 %; 0 or more
 * @param indicatorUncertaintyM  about 95 %; 0 or more
 * @returns friction (mean, least, most), shift of the bench set, both with uncertainty, bench set as found, each level.
 *   No credit is taken for averaging, since a gauge's error is the same at each level.
 * @throws CalcError CALC-001, CALC-002, CALC-003 or CALC-005 by the name of the input; CALC-004 if no travel was
 *   passed both ways
 * @source [S-06] force balance, friction against the motion
 * @example strokeFriction({ rows: [
 *   { signalPa: 20000, travelPercent: 0, direction: 'up', cycle: 1 },
 *   { signalPa: 60000, travelPercent: 45, direction: 'up', cycle: 1 },
 *   { signalPa: 100000, travelPercent: 95, direction: 'up', cycle: 1 },
 *   { signalPa: 60000, travelPercent: 55, direction: 'down', cycle: 1 },
 *   { signalPa: 20000, travelPercent: 5, direction: 'down', cycle: 1 },
 * ], ratedTravelM: 0.02, airAction: 'air-to-open', effectiveAreaM2: 0.05, benchSetLowPa: 20000, benchSetHighPa: 100000,
 *   gaugeUncertaintyPa: 500, indicatorUncertaintyM: 0 }).frictionN // 200
 */
export function strokeFriction(input: StrokeFrictionInput): StrokeFriction {
  const { effectiveAreaM2, gaugeUncertaintyPa, indicatorUncertaintyM, ratedTravelM } = input;
  const { spanPa } = benchSet({ ...input, travelM: ratedTravelM });
  refuseOutside({ gaugeUncertaintyPa, indicatorUncertaintyM }, ZERO_OR_MORE);
  const rows = judgeRows({ ...input, rangeLowPa: input.benchSetLowPa, rangeHighPa: input.benchSetHighPa });
  const moving = movingRows({ rows, input });
  const cycles = [...new Set(moving.map(({ cycle }) => cycle))];
  const levels = cycles.flatMap((cycle) =>
    levelsOf({ rows: moving.filter((row) => row.cycle === cycle), input, spanPa }),
  );
  if (levels.length === 0)
    throw refuseCount({ name: 'rows', value: 0, range: 'at least one travel passed moving both ways' });
  const frictions = levels.map(({ frictionN }) => frictionN);
  const onePressurePa = Math.hypot(gaugeUncertaintyPa, (spanPa / ratedTravelM) * indicatorUncertaintyM);
  return {
    levels,
    frictionN: mean(frictions),
    frictionMinN: Math.min(...frictions),
    frictionMaxN: Math.max(...frictions),
    frictionUncertaintyN: (effectiveAreaM2 * onePressurePa) / Math.SQRT2,
    benchSetShiftPa: mean(levels.map(({ middlePa, wantedPa }) => middlePa - wantedPa)),
    benchSetShiftUncertaintyPa: onePressurePa,
    benchSetFound: foundFrom({ levels, input }),
  };
}

interface LevelsInput {
  readonly rows: readonly JudgedRow[];
  readonly input: StrokeFrictionInput;
  readonly spanPa: number;
}

function levelsOf({ rows, input, spanPa }: LevelsInput): FrictionLevel[] {
  const up = curveOf({ rows, direction: 'up' });
  const down = curveOf({ rows, direction: 'down' });
  const at = (row: JudgedRow, pair: { readonly upPa: number; readonly downPa: number }): FrictionLevel => {
    const open = row.travelM / input.ratedTravelM;
    const alongAir = input.airAction === 'air-to-open' ? open : 1 - open;
    return {
      travelM: row.travelM,
      ...pair,
      frictionN: (input.effectiveAreaM2 * (pair.upPa - pair.downPa)) / 2,
      middlePa: (pair.upPa + pair.downPa) / 2,
      wantedPa: input.benchSetLowPa + alongAir * spanPa,
    };
  };
  const fromUp = up.flatMap((row) =>
    pressureAt({ curve: down, travelM: row.travelM }).map((downPa) =>
      at(row, { upPa: row.signalPa, downPa }),
    ),
  );
  const fromDown = down.flatMap((row) =>
    pressureAt({ curve: up, travelM: row.travelM }).map((upPa) => at(row, { upPa, downPa: row.signalPa })),
  );
  return [...fromUp, ...fromDown];
}

/** Rows that the stem reached by moving the way that their direction says. */
function movingRows(of: {
  readonly rows: readonly JudgedRow[];
  readonly input: StrokeFrictionInput;
}): JudgedRow[] {
  const { airAction, indicatorUncertaintyM, ratedTravelM } = of.input;
  const standing = Math.max(STANDING_PERCENT, (100 * indicatorUncertaintyM) / ratedTravelM);
  return of.rows.filter((row, at) => {
    const before = of.rows[at - 1];
    const opens = (airAction === 'air-to-open') === (row.direction === 'up');
    const went = before === undefined ? 0 : row.openPercent - before.openPercent;
    return row.leftOut === null && (opens ? went : -went) > standing;
  });
}

/** The rows of one direction in the order of the stroke. */
function curveOf(of: { readonly rows: readonly JudgedRow[]; readonly direction: Direction }): JudgedRow[] {
  return of.rows.filter(({ direction }) => direction === of.direction).sort((a, b) => a.travelM - b.travelM);
}

/** None or one pressure: linear between the two rows that the travel lies between. */
function pressureAt({ curve, travelM }: { curve: readonly JudgedRow[]; travelM: number }): number[] {
  for (const [at, row] of curve.entries()) {
    if (Math.abs(row.travelM - travelM) < 1e-9) return [row.signalPa];
    const next = curve[at + 1];
    if (next === undefined || (row.travelM - travelM) * (next.travelM - travelM) > 0) continue;
    const share = (travelM - row.travelM) / (next.travelM - row.travelM);
    return [row.signalPa + share * (next.signalPa - row.signalPa)];
  }
  return [];
}

function foundFrom({ levels, input }: { levels: readonly FrictionLevel[]; input: StrokeFrictionInput }) {
  const travelMean = mean(levels.map(({ travelM }) => travelM));
  const middleMean = mean(levels.map(({ middlePa }) => middlePa));
  const square = mean(levels.map(({ travelM }) => (travelM - travelMean) ** 2));
  // Levels bunched within a hundredth of the stroke do not carry a line.
  if (Math.sqrt(square) < input.ratedTravelM * 0.01) return null;
  const product = mean(
    levels.map(({ travelM, middlePa }) => (travelM - travelMean) * (middlePa - middleMean)),
  );
  const slope = product / square;
  const shutPa = middleMean - slope * travelMean;
  const openPa = shutPa + slope * input.ratedTravelM;
  const [lowPa, highPa] = input.airAction === 'air-to-open' ? [shutPa, openPa] : [openPa, shutPa];
  return { lowPa, highPa, springRateNPerM: (input.effectiveAreaM2 * (highPa - lowPa)) / input.ratedTravelM };
}
