import { describe, expect, test } from 'vitest';
import { advance } from '../../procedures/advance.ts';
import type { Job } from '../../procedures/job.ts';
import { ACTION_CLASSES, type ActionClass, needsOf } from '../../safety/action-classes.ts';
import {
  type AnyState,
  CONDITION_IDS,
  CONDITIONS,
  type ConditionId,
  everythingLive,
  type States,
} from '../../safety/conditions.ts';
import { Refusal } from '../../safety/refusal.ts';
import { around, COMPILED, type JobRun, openJob, pointsOf, TECHNICIAN } from '../builders/jobs.ts';
import { exposing } from '../builders/mutants.ts';
import { sheetFor, strokeScript, textsAt } from '../builders/stroke-script.ts';

const sheet = sheetFor({ plugCloses: 'down', airMovesStem: 'up' });
const script = strokeScript(sheet);
const { definition } = COMPILED;

/** Steps whose action needs anything at all; venting never does. */
const STEPS = exposing(definition)
  .filter((id) => id in script || hasNeeds(id))
  .filter(hasNeeds);

function actionAt(id: string) {
  const step = definition.steps[id];
  if (step === undefined || step.kind === 'end' || step.action === undefined)
    throw new Error(`${id} has no action`);
  return step.action;
}

function hasNeeds(id: string): boolean {
  return Object.keys(needsOf(actionAt(id))).length > 0;
}

/** The job put on a step by force, whatever its log says. */
function forced(step: string, states: States): JobRun {
  const run = openJob({ sheet });
  const job: Job = { ...run.job, step, situation: { states, lapsed: {} } };
  return { ...run, job };
}

function codeOf(run: JobRun): string {
  const { step } = run.job;
  try {
    advance(
      run.job,
      { kind: 'answer', place: run.job.place, step, given: textsAt(script, { step, row: 0 }) },
      around(run),
    );
    return 'done';
  } catch (error) {
    if (error instanceof Refusal) return error.text.code;
    throw error;
  }
}

type Needs = { readonly [C in ConditionId]?: readonly AnyState[] };

/** Forced into a step with all that its action needs, but for what is named; signed for, and locked. */
function readyBut(step: string, but: Partial<Record<ConditionId, AnyState>>): JobRun {
  const needs: Needs = needsOf(actionAt(step));
  const ready = Object.entries(needs).map(([id, states]) => [id, states?.[0]]);
  // What the cards before left, so that the card after is not what holds it back.
  const states = {
    ...everythingLive(),
    loop: 'manual',
    commands: 'isolated',
    bypass: 'open',
    processFlow: 'set up',
    inletLock: 'on',
    ...Object.fromEntries(ready),
    ...but,
  };
  const run = forced(step, states as States);
  const lock = { lock: '1', point: 'P', owner: TECHNICIAN.id };
  const job = {
    ...run.job,
    locks: { supplyLock: lock, secondSupplyLock: lock, inletLock: lock, outletLock: lock },
    envelope: {
      hold: 'h',
      // The card after is signed for too, so that it is not what holds this one back.
      work: Object.keys(ACTION_CLASSES) as ActionClass[],
      testAirPaMax: 1,
      untilMs: run.nowMs + 1,
      signedBy: 's',
      shownDigest: 'd',
    },
  };
  return { ...run, job, points: pointsOf(job) };
}

const NEEDED = STEPS.flatMap((step) =>
  (Object.keys(needsOf(actionAt(step))) as ConditionId[]).map((condition) => ({ step, condition })),
);

describe('[SAF-04] With the machine forced into a step', () => {
  // Where the valve is live the bypass may be left as it is: that card gives back what was never isolated.
  test.each(STEPS.filter((id) => id !== 'shutBypass' && id !== 'undoBypass'))(
    '%s is refused while everything is live',
    (step) => {
      expect(codeOf(forced(step, everythingLive()))).toBe('ILK-001');
    },
  );

  test.each(NEEDED)(
    '$step is refused for every state of $condition that its action does not allow',
    ({ step, condition }) => {
      const needs: Needs = needsOf(actionAt(step));
      for (const state of CONDITIONS[condition].states.filter((one) => !needs[condition]?.includes(one)))
        expect(codeOf(readyBut(step, { [condition]: state })), state).toBe('ILK-001');
    },
  );

  // Without this, a step that is refused for some other lack would pass for one that minds each condition.
  test.each(STEPS)('%s is not held back where all that its action needs stands', (step) => {
    expect(codeOf(readyBut(step, {}))).not.toBe('ILK-001');
  });

  test('a stop is taken from every card, with everything live', () => {
    for (const [id, step] of Object.entries(definition.steps)) {
      if (step.kind === 'end') continue;
      const run = forced(id, everythingLive());
      const stop = advance(run.job, { kind: 'make-safe', place: -1, reason: '' }, around(run));
      expect(stop.effects.to, id).toBe(step.makeSafe);
    }
  });
});

test('Every condition that some action of this procedure needs has been tried', () => {
  const tried = new Set(NEEDED.map(({ condition }) => condition));
  const never = CONDITION_IDS.filter((id) => !tried.has(id));
  // No action of a stroke check touches these; the hold still shows the energies among them.
  expect(never).toEqual([
    'temperature',
    'weight',
    'residue',
    'safetyFunction',
    'supplyLock',
    'secondSupplyLock',
    'shortBolts',
    'isolationGrade',
    'gasTest',
  ]);
});
