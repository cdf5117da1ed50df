import { risingSignalOpens } from '../../../procedures/commissioning-figures.ts';
import type { CycleFigures } from '../../../procedures/cycle-verdict.ts';
import type { Job, Reading, Row } from '../../../procedures/job.ts';
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';

/** Cards on which a valve is stroked by its own signal, by the table that stands for each in the record. */
const CARDS = { asFoundCycle: 'strokeFound', asLeftCycle: 'strokeLeft' } as const;

/**
 * A job whose valve was stroked by its own signal, as one with tables: the signal in percent of its range, whatever its
 * unit, so that curve and verdicts show as those of a stroke by test air. Null where nothing was stroked so.
 */
export function ownStrokeJob(job: Job): Job | null {
  const tables = Object.fromEntries(
    Object.entries(CARDS).map(([table, step]) => [table, rowsOf(job, step)] as const),
  );
  if (Object.values(tables).every((rows) => rows.length === 0)) return null;
  const airAction = risingSignalOpens(job.sheet) ? 'air-to-open' : 'air-to-close';
  const sheet = { ...job.sheet, benchSetLowPa: 0, benchSetHighPa: 100, airAction } as const;
  return { ...job, sheet, tables: { ...job.tables, ...tables } };
}

/** What was judged of such a stroke. Friction and spring are not told by it: a positioner gives whatever air it takes. */
export function ownJudged(job: Job, when: 'asFound' | 'asLeft'): CycleFigures | null {
  const answer = answerOf(job, CARDS[`${when}Cycle`]);
  if (answer === undefined || typeof answer.figures.errorWorstPercent !== 'number') return null;
  return {
    ...(answer.figures as CycleFigures),
    repeatabilityPercent: null,
    repeatabilityVerdict: null,
    frictionN: null,
    frictionUncertaintyN: null,
    benchSetShiftPa: null,
    benchSetShiftUncertaintyPa: null,
  };
}

function answerOf(job: Job, step: string) {
  return job.answers.findLast((one) => one.step === step && !one.superseded);
}

function rowsOf(job: Job, step: string): readonly Row[] {
  const answer = answerOf(job, step);
  if (answer === undefined) return [];
  return CYCLE_POINTS.flatMap((point) => {
    const travel = answer.readings.find(({ field }) => field === pointField(point, 'travel'));
    return travel === undefined ? [] : [{ place: answer.place, signal: asked(point.percent), travel }];
  });
}

/** The setting that the card asks for; nobody reads it off a gauge. */
function asked(percent: number): Reading {
  return {
    field: 'signalPa',
    valueSi: percent,
    typed: `${percent} %`,
    unit: '%',
    gauge: null,
    uncertaintySi: null,
    readBy: null,
  };
}
