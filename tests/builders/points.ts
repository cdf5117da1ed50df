import { compile } from '../../procedures/compile.ts';
import type { HoldStep } from '../../procedures/vocabulary.ts';
import { COMPILED, type JobRun, jobAt, openJob, playTo } from './jobs.ts';
import { withStep } from './mutants.ts';

/** A point that a procedure could have on its way through the rig, where nothing is isolated yet. */
export const A_POINT: HoldStep<string> = {
  kind: 'hold',
  phase: 'ready',
  title: 'Before the rig is believed',
  point: 'witness',
  criterion: 'Both gauges of the rig agree.',
  noticeS: 600,
  evidence: [],
  allows: [],
  signed: { to: 'rigHold' },
  sentBack: { to: 'rigFalls' },
  makeSafe: 'notStarted',
};

/** A job that stands at a point of its own kind, put in the place of a wait; its technician has answered two cards. */
export function atPoint(change: Partial<HoldStep<string>>): JobRun {
  const definition = withStep(COMPILED.definition, 'rigShutIn', { ...A_POINT, ...change });
  return playTo(openJob({ compiled: compile(definition) }), 'rigShutIn');
}

/** A job at the hold before work, whose definition asks more of it than the one that is served. */
export function atHoldWith(change: Partial<HoldStep<string>>): JobRun {
  const step = COMPILED.definition.steps.holdWork;
  if (step?.kind !== 'hold') throw new Error('holdWork is a hold');
  const definition = withStep(COMPILED.definition, 'holdWork', { ...step, ...change });
  return jobAt('holdWork', { compiled: { ...COMPILED, definition } });
}
