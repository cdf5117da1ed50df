import { type CycleFigures, frictionVerdict } from '../../procedures/cycle-verdict.ts';
import type { Answer, Job } from '../../procedures/job.ts';
import { ownStrokeJob } from '../jobs/record/own-stroke.ts';
import { judged } from '../jobs/record/results.ts';

/** What one cycle said of a valve, as it was judged. Uncertainties cover about 95 %. */
export interface MeasuredCycle {
  readonly errorPercent: number;
  readonly hysteresisPercent: number | null;
  readonly uncertaintyPercent: number;
  readonly frictionN: number | null;
  readonly frictionUncertaintyN: number | null;
  readonly benchSetShiftPa: number | null;
  readonly benchSetShiftUncertaintyPa: number | null;
  /** What was outside its limit, in the words of the list of findings. */
  readonly outside: readonly string[];
}

/** What came through the seat, against what this valve might leak when it was measured. */
export interface MeasuredLeak {
  readonly leakM3PerS: number;
  /** 0 where nothing came at all. */
  readonly uncertaintyM3PerS: number;
  readonly allowedM3PerS: number;
}

/** Bubbles at the tube of the standard, against what its table allows this port. */
export interface MeasuredBubbles {
  readonly perMin: number;
  readonly allowedPerMin: number;
  /** One bubble more or less over the time that was looked; common practice, no source. */
  readonly givePerMin: number;
}

/** What a job leaves in the history of its valve. */
export interface MeasuredJob {
  readonly seatLeak: MeasuredLeak | null;
  readonly seatBubbles: MeasuredBubbles | null;
  readonly asFound: MeasuredCycle | null;
  readonly asLeft: MeasuredCycle | null;
  readonly strokeOpenS: number | null;
  readonly strokeShutS: number | null;
}

/** Null for a job that is not closed, or that read nothing of this kind. */
export function measuredOf(job: Job): MeasuredJob | null {
  if (job.status !== 'closed') return null;
  const measured = {
    seatLeak: leakOf(job),
    seatBubbles: bubblesOf(job),
    asFound: cycleOf(job, 'asFound'),
    asLeft: cycleOf(job, 'asLeft'),
    strokeOpenS: job.readings.strokeOpenS?.valueSi ?? null,
    strokeShutS: job.readings.strokeShutS?.valueSi ?? null,
  };
  return Object.values(measured).every((value) => value === null) ? null : measured;
}

/** The last one that was measured as a flow; bubbles are compared with a table of their own. */
function leakOf({ answers }: Job): MeasuredLeak | null {
  const figures = answers.findLast(
    (one) => !one.superseded && typeof one.figures.leakM3PerS === 'number',
  )?.figures;
  const { leakM3PerS, uncertaintyM3PerS, allowedM3PerS } = figures ?? {};
  const isWhole =
    typeof leakM3PerS === 'number' &&
    typeof uncertaintyM3PerS === 'number' &&
    typeof allowedM3PerS === 'number';
  return isWhole ? { leakM3PerS, uncertaintyM3PerS, allowedM3PerS } : null;
}

function bubblesOf({ answers }: Job): MeasuredBubbles | null {
  const answer = answers.findLast((one) => !one.superseded && typeof one.figures.bubblesPerMin === 'number');
  const { bubblesPerMin: perMin, bubblesAllowedPerMin: allowedPerMin } = answer?.figures ?? {};
  const lookedS = answer?.readings.find(({ field }) => field === 'leakTimeS')?.valueSi;
  if (typeof perMin !== 'number' || typeof allowedPerMin !== 'number' || lookedS === undefined) return null;
  return { perMin, allowedPerMin, givePerMin: 60 / lookedS };
}

/**
 * A cycle is known by its figures: another procedure may call its steps otherwise. One by the valve's own signal is
 * left out: it tells how well the positioner follows, which is no place on the line of readings by test air.
 */
function cycleOf(job: Job, when: 'asFound' | 'asLeft'): MeasuredCycle | null {
  if (ownStrokeJob(job) !== null) return null;
  const byAir = judged(job, when);
  if (byAir !== null) return measuredCycle(byAir, job);
  const answers = job.answers.filter((answer) => isCycle(answer) && isOf(answer, when));
  const answer = when === 'asFound' ? answers.at(0) : answers.at(-1);
  return answer === undefined ? null : measuredCycle(answer.figures as CycleFigures, job);
}

/** Error against the bench set comes with the friction of the same table; other errors are another matter. */
function isCycle({ superseded, figures }: Answer): boolean {
  return !superseded && typeof figures.errorWorstPercent === 'number' && 'frictionN' in figures;
}

function isOf({ step }: Answer, when: 'asFound' | 'asLeft'): boolean {
  return step.startsWith('asFound') === (when === 'asFound');
}

function measuredCycle(figures: CycleFigures, { sheet }: Job): MeasuredCycle {
  const { benchSetShiftPa, benchSetShiftUncertaintyPa } = figures;
  const isShifted =
    benchSetShiftPa !== null &&
    Math.abs(benchSetShiftPa) - (benchSetShiftUncertaintyPa ?? 0) > sheet.benchSetTolerancePa;
  return {
    errorPercent: figures.errorWorstPercent,
    hysteresisPercent: figures.hysteresisPercent,
    uncertaintyPercent: figures.errorUncertaintyPercent,
    frictionN: figures.frictionN,
    frictionUncertaintyN: figures.frictionUncertaintyN,
    benchSetShiftPa,
    benchSetShiftUncertaintyPa,
    outside: [
      ...(figures.errorVerdict === 'outside' ? ['error'] : []),
      ...(figures.hysteresisVerdict === 'outside' ? ['hysteresis and dead band'] : []),
      ...(figures.repeatabilityVerdict === 'outside' ? ['repeatability'] : []),
      ...(frictionVerdict(figures, sheet) === 'outside' ? ['friction'] : []),
      ...(isShifted ? ['spring against bench set'] : []),
    ],
  };
}
