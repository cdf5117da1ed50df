import { Refusal } from '../../safety/refusal.ts';
import type { PlanState } from './plan-stream.ts';

const STANDS_IN_FORM = 'What you typed stands in the form; nothing was recorded.';

export function noSuchPlan(number: string): Refusal {
  return new Refusal({
    kind: 'not-found',
    code: 'PLN-001',
    what: `There is no plan ${number}.`,
    kept: 'Nothing was recorded.',
    next: 'Look in the list of plans.',
  });
}

export function numberInUse(number: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PLN-002',
    what: `There is a plan ${number} already.`,
    kept: STANDS_IN_FORM,
    next: 'Change that one, or give this one its own number.',
    fields: { number: 'This number is in use.' },
  });
}

export function savedMeanwhile(number: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'PLN-003',
    what: `Somebody else saved plan ${number} since this form was loaded.`,
    kept: STANDS_IN_FORM,
    next: 'Read below what they changed, put yours right and save again.',
  });
}

/** @param kept  what became of the act */
export function notPlanned(number: string, { status, job }: PlanState): Refusal {
  const what =
    status === 'opened'
      ? `Plan ${number} was opened as job ${job ?? ''} already.`
      : `Plan ${number} was withdrawn.`;
  return new Refusal({
    kind: 'conflict',
    code: 'PLN-004',
    what,
    kept: 'Nothing was recorded.',
    next: status === 'opened' ? 'Go on with that job, or plan the work anew.' : 'Plan the work anew.',
  });
}
