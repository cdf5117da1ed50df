import { analyseStroke } from './calculations/cycle-analysis.ts';
import { strokeFriction } from './calculations/stroke-friction.ts';
import type { StrokeRow } from './calculations/stroke-rows.ts';
import type { Job, Row } from './job.ts';
import type { ValveSheet } from './valve-sheet/sheet.ts';
import type { RowPlan, TableStep } from './vocabulary.ts';

export type Guarded = 'inside' | 'outside' | 'too close';

/**
 * A value against its limit with the gauge counted in: inside only where value and uncertainty together are.
 * @source JCGM 106:2012, guarded acceptance with a guard band of U
 * @example guarded({ value: -7.2, limit: 5, uncertainty: 0.9 }) // 'outside'
 */
export function guarded({
  value,
  limit,
  uncertainty,
}: {
  readonly value: number;
  readonly limit: number;
  readonly uncertainty: number;
}): Guarded {
  if (Math.abs(value) + uncertainty <= limit) return 'inside';
  return Math.abs(value) - uncertainty > limit ? 'outside' : 'too close';
}

/**
 * Friction of a cycle against the limit of the sheet; null where the sheet has none or the cycle could not tell it.
 * @example frictionVerdict({ frictionN: 180, frictionUncertaintyN: 20 }, { frictionMaxN: 267 }) // 'inside'
 */
export function frictionVerdict(
  { frictionN, frictionUncertaintyN }: Pick<CycleFigures, 'frictionN' | 'frictionUncertaintyN'>,
  { frictionMaxN }: Pick<ValveSheet, 'frictionMaxN'>,
): Guarded | null {
  if (frictionN === null || frictionMaxN === null) return null;
  // The gauges may put the way up below the way down; a stem without friction is not outside.
  return guarded({
    value: Math.max(0, frictionN),
    limit: frictionMaxN,
    uncertainty: frictionUncertaintyN ?? 0,
  });
}

export interface CycleFigures {
  readonly [name: string]: number | string | null;
  readonly errorWorstPercent: number;
  readonly errorUncertaintyPercent: number;
  readonly errorVerdict: Guarded;
  readonly hysteresisPercent: number | null;
  readonly hysteresisVerdict: Guarded | null;
  readonly repeatabilityPercent: number | null;
  readonly repeatabilityVerdict: Guarded | null;
  readonly frictionN: number | null;
  readonly frictionUncertaintyN: number | null;
  readonly benchSetShiftPa: number | null;
  readonly benchSetShiftUncertaintyPa: number | null;
}

/** All that one table of readings says about the stroke; null while it holds too few. */
export function cycleFigures(
  job: Job,
  { cycle, strokes }: { readonly cycle: string; readonly strokes: string },
): CycleFigures | null {
  const rows = job.tables[cycle] ?? [];
  if (rows.length < 3) return null;
  const input = strokeInput(job, cycle);
  const analysis = analyseStroke(input);
  const spread = spreadPercent(job, job.tables[strokes] ?? []);
  const uncertainty = uncertaintyPercent(job, rows);
  const errorWorstPercent =
    Math.abs(analysis.errorMinPercent) > Math.abs(analysis.errorMaxPercent)
      ? analysis.errorMinPercent
      : analysis.errorMaxPercent;
  const judge = (value: number | null, limit: number) =>
    value === null ? null : guarded({ value, limit, uncertainty });
  return {
    errorWorstPercent,
    errorUncertaintyPercent: uncertainty,
    errorVerdict: guarded({ value: errorWorstPercent, limit: job.sheet.errorTolerancePercent, uncertainty }),
    hysteresisPercent: analysis.hysteresisPercent,
    hysteresisVerdict: judge(analysis.hysteresisPercent, job.sheet.hysteresisTolerancePercent),
    repeatabilityPercent: spread,
    repeatabilityVerdict: judge(spread, job.sheet.repeatabilityTolerancePercent),
    ...frictionOf(job, { rows, input }),
  };
}

/** One word for the whole cycle: what does not repeat comes first, because nothing else can be trusted then. */
export function cycleVerdict(figures: CycleFigures): 'inside' | 'outside' | 'too close' | 'does not repeat' {
  if (figures.repeatabilityVerdict === 'outside') return 'does not repeat';
  const verdicts = [figures.errorVerdict, figures.hysteresisVerdict, figures.repeatabilityVerdict];
  if (verdicts.includes('outside')) return 'outside';
  return verdicts.includes('too close') ? 'too close' : 'inside';
}

/** The cycle whose rows were read before the plug was set. */
const CYCLE_AS_FOUND = 'asFoundCycle';

/**
 * A table as the calculations take it: percent of the bench set, since there is no flow. What lay on the seat as
 * found is told by the contact as found, however often the plug was set since.
 */
export function strokeInput(job: Job, cycle: string) {
  const { sheet, figures } = job;
  const rows = job.tables[cycle] ?? [];
  const found = figures.contactFound?.contactPa;
  const contact = cycle === CYCLE_AS_FOUND ? found : (figures.contactLeft?.contactPa ?? found);
  return {
    rows: rows.map((row) => strokeRow(row, rows)),
    rangeLowPa: sheet.benchSetLowPa,
    rangeHighPa: sheet.benchSetHighPa,
    ratedTravelM: sheet.travelM,
    airAction: sheet.airAction,
    contactPa: typeof contact === 'number' ? contact : null,
    contactMarginPa: rows[0]?.signal.uncertaintySi ?? 0,
  };
}

function strokeRow(row: Row, rows: readonly Row[]): StrokeRow {
  const at = rows.indexOf(row);
  const before = rows[at - 1];
  const direction = before !== undefined && before.signal.valueSi > row.signal.valueSi ? 'down' : 'up';
  return { signalPa: row.signal.valueSi, travelM: row.travel.valueSi, direction, cycle: 1 };
}

function frictionOf(
  job: Job,
  { rows, input }: { readonly rows: readonly Row[]; readonly input: ReturnType<typeof strokeInput> },
) {
  const none = {
    frictionN: null,
    frictionUncertaintyN: null,
    benchSetShiftPa: null,
    benchSetShiftUncertaintyPa: null,
  };
  const bothWays = new Set(input.rows.map((row) => row.direction)).size === 2;
  if (!bothWays) return none;
  try {
    const { effectiveAreaM2, benchSetLowPa, benchSetHighPa } = job.sheet;
    const found = strokeFriction({
      ...input,
      effectiveAreaM2,
      benchSetLowPa,
      benchSetHighPa,
      gaugeUncertaintyPa: rows[0]?.signal.uncertaintySi ?? 0,
      indicatorUncertaintyM: rows[0]?.travel.uncertaintySi ?? 0,
    });
    const { frictionN, frictionUncertaintyN, benchSetShiftPa, benchSetShiftUncertaintyPa } = found;
    return { frictionN, frictionUncertaintyN, benchSetShiftPa, benchSetShiftUncertaintyPa };
  } catch (error) {
    // No travel was passed both ways: friction cannot be told from this table, and the card says so.
    if (error instanceof Error && error.name === 'CalcError') return none;
    throw error;
  }
}

function spreadPercent(job: Job, strokes: readonly Row[]): number | null {
  if (strokes.length < 2) return null;
  const travels = strokes.map((row) => row.travel.valueSi);
  return (100 * (Math.max(...travels) - Math.min(...travels))) / job.sheet.travelM;
}

/** Gauge and indicator together, as percent of the stroke. */
function uncertaintyPercent({ sheet }: Job, rows: readonly Row[]): number {
  const gauge = (rows[0]?.signal.uncertaintySi ?? 0) / (sheet.benchSetHighPa - sheet.benchSetLowPa);
  const indicator = (rows[0]?.travel.uncertaintySi ?? 0) / sheet.travelM;
  return 100 * Math.hypot(gauge, indicator);
}

/** Five points up and four down: what one table asks. */
export const FULL_CYCLE: readonly RowPlan[] = [
  ...[0, 25, 50, 75, 100].map((percent) => ({ percent, direction: 'up' as const, cycle: 1 })),
  ...[75, 50, 25, 0].map((percent) => ({ percent, direction: 'down' as const, cycle: 1 })),
];

/** Three strokes to mid-range, each from below. */
export const MID_STROKES: readonly RowPlan[] = [1, 2, 3].map((cycle) => ({
  percent: 50,
  direction: 'up',
  cycle,
}));

/** The signal that a row asks for, in Pa. @example plannedPa(sheet, { percent: 50 }) // 62053 for 3 to 15 psi */
export function plannedPa(
  sheet: { readonly benchSetLowPa: number; readonly benchSetHighPa: number },
  plan: Pick<RowPlan, 'percent'>,
): number {
  return sheet.benchSetLowPa + ((sheet.benchSetHighPa - sheet.benchSetLowPa) * plan.percent) / 100;
}

export function rowPlan(step: TableStep<string>, job: Job, stepId: string): RowPlan | undefined {
  return step.rows[(job.tables[stepId] ?? []).length];
}
