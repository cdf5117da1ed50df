import type { Job } from '../../procedures/job.ts';
import { mendedIn } from '../../procedures/practice/bench/told.ts';
import { type SimulatedValve, simulatedValve } from '../../procedures/practice/simulated.ts';
import { repairFor } from '../../procedures/troubleshooting/repairs.ts';
import type { Exercise } from './exercise-stream.ts';

/** Valves kept with what was worked out of them; the oldest goes first. */
const KEPT = 16;
const VALVES = new Map<string, SimulatedValve>();

/** The simulated valve of an exercise as it stands in a job: without what was put right on the spot. */
export function valveNow(exercise: Exercise, job: Job): SimulatedValve {
  const mended = mendedIn(job);
  const faults = exercise.faults.filter(({ cause }) => !mended.includes(repairFor(cause)));
  return valveOf(exercise, { job, faults });
}

/** The same as it was set. */
export function valveAtFirst(exercise: Exercise, job: Job): SimulatedValve {
  return valveOf(exercise, { job, faults: exercise.faults });
}

function valveOf(
  { tag, seed }: Exercise,
  { job, faults }: { readonly job: Job; readonly faults: Exercise['faults'] },
): SimulatedValve {
  const key = JSON.stringify([tag, seed, faults, job.sheetRevision]);
  const known = VALVES.get(key);
  VALVES.delete(key);
  const valve = known ?? simulatedValve(job.sheet, { faults, seed });
  VALVES.set(key, valve);
  const [oldest] = VALVES.keys();
  if (VALVES.size > KEPT && oldest !== undefined) VALVES.delete(oldest);
  return valve;
}
