import { Refusal } from '../../safety/refusal.ts';

export function stillHidden(): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PRC-002',
    what: 'What is wrong with this valve is still hidden.',
    kept: 'Nothing was told.',
    next: 'Name a cause first, or give up on the job’s page.',
  });
}

export function notYoursToChoose(): Refusal {
  return new Refusal({
    kind: 'not-allowed',
    code: 'PRC-003',
    what: 'Whoever chooses the fault knows it: a supervisor or an engineer does that.',
    kept: 'No exercise was set.',
    next: 'Have one drawn.',
  });
}

export function noExercise(job: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'PRC-004',
    what: `Job ${job} of the bench belongs to no exercise.`,
    kept: 'Nothing was told.',
    next: 'Choose one on the list of the practice bench.',
  });
}
