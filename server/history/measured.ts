import type { CycleFigures } from '../../procedures/cycle-verdict.ts';
import type { Answer, Job } from '../../procedures/job.ts';
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

/** What a job leaves in the history of its valve. */
export interface MeasuredJob {
  readonly asFound: MeasuredCycle | null;
  readonly asLeft: MeasuredCycle | null;
  readonly strokeOpenS: number | null;
  readonly strokeShutS: number | null;
}

/** Null for a job that is not closed, or that read nothing of this kind. */
export function measuredOf(job: Job): MeasuredJob | null {
  if (job.status !== 'closed') return null;
  const measured = {
    asFound: cycleOf(job, 'asFound'),
    asLeft: cycleOf(job, 'asLeft'),
    strokeOpenS: job.readings.strokeOpenS?.valueSi ?? null,
    strokeShutS: job.readings.strokeShutS?.valueSi ?? null,
  };
  return Object.values(measured).every((value) => value === null) ? null : measured;
}

/** A cycle is known by its figures: another procedure may call its steps otherwise. */
function cycleOf(job: Job, when: 'asFound' | 'asLeft'): MeasuredCycle | null {
  const own = judged(job, when);
  if (own !== null) return measuredCycle(own, job);
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
      ...(isShifted ? ['spring against bench set'] : []),
    ],
  };
}
