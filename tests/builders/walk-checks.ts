/** What may never be on a job, whatever people do. */
import { expect } from 'vitest';
import { situationNow } from '../../procedures/actions/move.ts';
import { advance } from '../../procedures/advance.ts';
import type { JobDraft } from '../../procedures/evolve.ts';
import { lacks } from '../../safety/interlock.ts';
import { stateThatCounts } from '../../safety/situation.ts';
import { around, type JobRun, OTHER_TECHNICIAN, type Person, pointsOf } from './jobs.ts';

export interface Taken {
  readonly before: JobRun;
  readonly after: JobRun;
  readonly draft: JobDraft;
  readonly person: Person;
}

/** What may never be, whatever people do: looked at around each act that was taken. */
export function checkAct({ before, after, draft, person }: Taken): void {
  const { definition } = before.compiled;
  const step = definition.steps[before.job.step];
  if (step === undefined || step.kind === 'end') throw new Error('an ended job took an act');
  if (draft.kind === 'step-answered' || draft.kind === 'row-read') {
    expect(step.kind, 'a hold is passed by a signature alone').not.toBe('hold');
    const { job, nowMs } = before;
    const standing = {
      job: job.id,
      situation: situationNow(job, nowMs),
      envelope: job.envelope,
      points: pointsOf(job),
      nowMs,
    };
    expect(step.action === undefined ? [] : lacks(step.action, standing)).toEqual([]);
  }
  if (draft.kind === 'hold-signed') {
    expect(step.kind).toBe('hold');
    expect(person.role).toBe('supervisor');
    const last = before.job.holds.at(-1)?.place ?? 1;
    const workers = before.entries.filter(({ place, kind, inputs }) => {
      // Refusing is no work, and reading a gauge alone is an inspection.
      const words = (inputs as { readonly words?: { readonly mode?: string } }).words;
      const looksOnly = kind === 'hold-sent-back' || (kind === 'read-again' && words?.mode === 'independent');
      return place > last && !looksOnly;
    });
    expect(workers.map((entry) => entry.person)).not.toContain(person.id);
    if (step.kind === 'hold')
      for (const id of step.evidence.filter(
        (one) => one === 'supplyAir' || one === 'signalAir' || one === 'spring',
      ))
        expect(['live', 'loaded']).not.toContain(stateThatCounts(situationNow(before.job, before.nowMs), id));
  }
  if (after.job.status === 'closed' && after.job.closedAs !== 'handed over') {
    const { states } = after.job.situation;
    expect(states).toMatchObject({
      supplyLock: 'off',
      secondSupplyLock: 'off',
      inletLock: 'off',
      outletLock: 'off',
      testAir: 'off',
    });
    expect(states.bypass).not.toBe('open');
    expect(after.job.locks).toEqual({});
  }
}

/** Whoever stops is led to where nothing more has to be done to be safe, or to the end. */
export function checkStop(run: JobRun): void {
  const { definition } = run.compiled;
  if (run.job.status === 'closed') return;
  const stop = advance(run.job, { kind: 'make-safe', place: 0, reason: '' }, around(run, OTHER_TECHNICIAN));
  const to = definition.steps[stop.effects.to];
  expect(definition.safe.includes(stop.effects.to) || to?.kind === 'end').toBe(true);
}
