import type { ActionClass } from '../../safety/action-classes.ts';
import { type Lack, sayLack } from '../../safety/interlock.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { Job } from '../job.ts';

const KEPT = 'Nothing was written; what you typed is still there.';

export function notOpen(status: string): Refusal {
  const next = status === 'parked' ? 'Take the job up again first.' : 'Open a new job for this valve.';
  return new Refusal({ kind: 'conflict', code: 'JOB-001', what: `This job is ${status}.`, kept: KEPT, next });
}

/** @param job as it stands, with the line that came in between */
export function cardMoved({ answers }: Job): Refusal {
  const last = answers.at(-1);
  const by = last === undefined ? 'somebody else' : last.person.toUpperCase();
  const at = last === undefined ? '' : ` at ${last.at.slice(11, 16)} UTC`;
  return new Refusal({
    kind: 'conflict',
    code: 'JOB-002',
    what: `This step was answered by ${by}${at}, while your card was open.`,
    kept: KEPT,
    next: 'Read the new card below, then go on from there.',
  });
}

export function wrongStep(step: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'JOB-003',
    what: `The step "${step}" is not the open one.`,
    kept: KEPT,
    next: 'Answer the open card.',
  });
}

export function noWay(what: string, next: string): Refusal {
  return new Refusal({ kind: 'conflict', code: 'JOB-004', what, kept: KEPT, next });
}

/** The interlock's answer, in words. */
export function exposed(action: ActionClass, found: readonly Lack[]): Refusal {
  const lapsed = found.some((lack) => lack.lapsed !== null);
  return new Refusal({
    kind: 'unsafe',
    code: 'ILK-001',
    what: found.map((lack) => sayLack(lack, action)).join(' '),
    kept: 'Nothing was written.',
    next: lapsed
      ? 'Prove it again on this card, or make safe and stop.'
      : 'Go back to where it is shown safe, or make safe and stop.',
  });
}

/** The next procedure wants its gear chosen before this job closes. */
export function goesOnElsewhere(procedure: string): Refusal {
  return new Refusal({
    kind: 'conflict',
    code: 'HND-001',
    what: `The work goes on in the procedure "${procedure}", with everything as it stands.`,
    kept: 'This job stands as it was; its locks are on.',
    next: 'Choose the gear for it and open it: this job closes with the same line.',
  });
}
