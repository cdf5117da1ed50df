import { LOWERED_BY_PAUSE } from '../../safety/situation.ts';
import { backIsSafe } from '../compile.ts';
import type { JobDraft } from '../evolve.ts';
import type { Job } from '../job.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { checkMayEnter, move, openStepOf } from './move.ts';
import { noWay } from './refusals.ts';

/** Stops the work and takes the way to safe. Nothing can stand against it. */
export function makeSafe(job: Job, action: ActionOf<'make-safe'>, around: Surroundings): JobDraft {
  openStepOf(job, around);
  return {
    kind: 'made-safe',
    inputs: { step: job.step, reason: action.reason.trim() },
    outcome: { name: 'stopped', figures: {} },
    effects: move(job, { event: { type: 'STOP', outcome: '' }, words: {}, around }),
  };
}

/** Earlier steps that a person may go back to: answered in this job, and safe from every state possible here. */
export function backTargets(job: Job, around: Surroundings): readonly string[] {
  const answered = [...new Set(job.answers.filter((one) => !one.superseded).map((one) => one.step))];
  return answered.filter(
    (to) => to !== job.step && backIsSafe(around.compiled, { from: job.step, to, facts: job.facts }),
  );
}

/** Goes back to an earlier card; what was answered since is kept, and is confirmed again on the way. */
export function goBack(job: Job, action: ActionOf<'go-back'>, around: Surroundings): JobDraft {
  openStepOf(job, around);
  if (!backTargets(job, around).includes(action.to)) {
    throw noWay('From this card there is no safe way back to that one.', 'Go on, or make safe and stop.');
  }
  const effects = move(job, { event: { type: `BACK.${action.to}`, outcome: '' }, words: {}, around });
  checkMayEnter(job, { effects, around });
  return {
    kind: 'went-back',
    inputs: { step: job.step },
    outcome: { name: 'went back', figures: {} },
    effects: { ...effects, ...since(job, action.to), ...clears(action.to, around) },
  };
}

/** Answers given from the newest answer of a step on: they stand until confirmed again. */
export function since(job: Job, step: string): { readonly supersedes: readonly number[] } {
  const from = job.answers.findLast((one) => one.step === step && !one.superseded)?.place ?? job.place + 1;
  return {
    supersedes: job.answers.filter((one) => one.place >= from && !one.superseded).map((one) => one.place),
  };
}

export function clears(to: string, { compiled }: Surroundings): { readonly clearsTable?: string } {
  return compiled.definition.steps[to]?.kind === 'table' ? { clearsTable: to } : {};
}

/** Leaves the job where it is: locks stay on, and what was shown is shown again before hands go in. */
export function park(job: Job, action: ActionOf<'park'>, around: Surroundings): JobDraft {
  openStepOf(job, around);
  return {
    kind: 'parked',
    inputs: { step: job.step, reason: action.reason.trim() },
    outcome: { name: 'parked', figures: {} },
    effects: {
      to: job.step,
      status: 'parked',
      lapses: { conditions: LOWERED_BY_PAUSE, reason: 'parked' },
    },
  };
}

export function takeUp(job: Job, _: ActionOf<'take-up'>, around: Surroundings): JobDraft {
  openStepOf(job, around);
  if (job.status !== 'parked') throw noWay('This job is not parked.', 'Go on with the open card.');
  return {
    kind: 'taken-up',
    inputs: { step: job.step },
    outcome: { name: 'taken up', figures: {} },
    effects: {
      to: job.step,
      status: 'open',
      // What one person saw is not what another knows: they look for themselves, and the record says whose look counts.
      ...(around.person.id === job.answers.at(-1)?.person
        ? {}
        : { lapses: { conditions: LOWERED_BY_PAUSE, reason: 'handover' } }),
    },
  };
}
