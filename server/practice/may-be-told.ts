import type { Job } from '../../procedures/job.ts';
import type { Exercise } from './exercise-stream.ts';

/** The truth stays hidden until a cause was named, the job has ended, or somebody gave up. */
export function mayBeTold(job: Job, { tag, givenUp }: Exercise): boolean {
  if (tag === '') return false;
  const named = job.answers.some(({ superseded, step }) => !superseded && step.startsWith('nameCause'));
  return named || givenUp || job.status === 'closed';
}
