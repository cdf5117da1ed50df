import { describe, expect, test } from 'vitest';
import { advance } from '../../../procedures/advance.ts';
import type { Job } from '../../../procedures/job.ts';
import { ACTION_CLASSES, needsOf } from '../../../safety/action-classes.ts';
import { type ConditionId, LOCK_IDS, type States } from '../../../safety/conditions.ts';
import type { Lock, PointState } from '../../../safety/isolation-points.ts';
import {
  answer,
  around,
  COMPILED,
  type JobRun,
  jobAt,
  OTHER_TECHNICIAN,
  pointsOf,
  scripted,
  TECHNICIAN,
} from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';
import { aSheetOf } from '../../builders/sheets.ts';
import { strokeScript, textsAt } from '../../builders/stroke-script.ts';

const THEIRS: Lock = { lock: '99', owner: 'p-other', job: 'job:2' };
const { steps } = COMPILED.definition;
const TWO_FEEDS = aSheetOf({ secondSupplyHighPa: '20', secondSupplyPoint: 'IA-214-2' });

/** The run with its points as the site has them, one of them changed. */
function withPoint(run: JobRun, id: ConditionId, change: (point: PointState) => PointState): JobRun {
  const points = { ...pointsOf(run.job) };
  const point = points[id];
  if (point === undefined) throw new Error(`${id} is not locked here`);
  return { ...run, points: { ...points, [id]: change(point) } };
}

const alsoLocked = (point: PointState): PointState => ({ ...point, locks: [...point.locks, THEIRS] });

describe('[SAF-07] Putting a point back', () => {
  const locked = (step: string) => jobAt(step, { sheet: TWO_FEEDS });

  test.each([
    ['supplyBack', 'supplyLock'],
    ['secondBack', 'secondSupplyLock'],
    ['unlockBlocks', 'inletLock'],
    ['unlockBlocks', 'outletLock'],
  ] as const)(
    'is refused on %s while another job has its lock on %s, and done once it is off',
    (step, id) => {
      const run = locked(step);
      const refused = refusalOf(() => scripted(withPoint(run, id, alsoLocked)));
      expect(refused).toMatchObject({ code: 'PNT-001', kind: 'unsafe' });
      expect(refused.what).toContain('another job relies on it');
      scripted(run);
      expect(run.job.locks[id]).toBeUndefined();
    },
  );

  test('is refused by whoever owns no lock on it, also with nothing else against them', () => {
    const run = locked('supplyBack');
    const given = textsAt(strokeScript(run.job.sheet), { step: 'supplyBack', row: 0 });
    expect(refusalOf(() => answer(run, given, OTHER_TECHNICIAN))).toMatchObject({ code: 'PNT-001' });
  });

  test('is refused with the machine forced onto the step, whatever the job says of its energies', () => {
    const fresh = jobAt('otherEnergies', { sheet: TWO_FEEDS });
    for (const step of ['supplyBack', 'secondBack', 'unlockBlocks']) {
      for (const states of [fresh.job.situation.states, readyFor(step, fresh)]) {
        const job: Job = { ...fresh.job, step, situation: { states, lapsed: {} }, envelope: allowing(fresh) };
        const forced = LOCK_IDS.reduce<JobRun>((run, id) => withPoint(run, id, alsoLocked), {
          ...fresh,
          job,
        });
        const points = Object.fromEntries(
          LOCK_IDS.map((id) => [id, alsoLocked(pointsOf(job)[id] as PointState)]),
        );
        const run = { ...forced, points };
        const given = textsAt(strokeScript(job.sheet), { step, row: 0 });
        const act = { kind: 'answer', place: job.place, step, given } as const;
        expect(refusalOf(() => advance(job, act, around(run))).kind, step).toBe('unsafe');
      }
    }
  });
});

/** All that the step's action needs, in the first state that it allows. */
function readyFor(step: string, { job }: JobRun): States {
  const open = steps[step];
  const action = open === undefined || open.kind === 'end' ? undefined : open.action;
  if (action === undefined) throw new Error(`${step} has no action`);
  const ready = Object.entries(needsOf(action) as Record<string, readonly string[]>);
  return {
    ...job.situation.states,
    ...Object.fromEntries(ready.map(([id, states]) => [id, states[0]])),
  } as States;
}

function allowing({ nowMs }: JobRun): Job['envelope'] {
  return {
    hold: 'h',
    work: Object.keys(ACTION_CLASSES) as (keyof typeof ACTION_CLASSES)[],
    testAirPaMax: 1,
    untilMs: nowMs + 1,
    signedBy: 's',
    shownDigest: 'd',
  };
}

describe('work on two feeds', () => {
  const STANDS_ON: readonly ConditionId[] = ['inletLock', 'outletLock', 'supplyLock', 'secondSupplyLock'];

  test.each(STANDS_ON)(
    'is refused while one of them, %s, is not locked at the site by this job (EI-05)',
    (id) => {
      const run = jobAt('breakSignalLine', { sheet: TWO_FEEDS });
      const tags = Object.values(pointsOf(run.job)).map(({ tag }) => tag);
      expect(new Set(tags).size).toBe(4);
      const given = textsAt(strokeScript(run.job.sheet), { step: 'connectAir', row: 0 });
      // Forced onto work that stands on all four, with everything else shown.
      const job: Job = {
        ...run.job,
        step: 'connectAir',
        situation: { states: readyFor('connectAir', run), lapsed: {} },
        envelope: allowing(run),
      };
      const act = { kind: 'answer', place: job.place, step: 'connectAir', given } as const;
      const whole = { ...run, job, points: pointsOf(job) };
      expect(advance(job, act, around(whole)).effects.to).not.toBe('connectAir');
      const unlocked = withPoint(whole, id, (point) => ({ ...point, locks: [THEIRS] }));
      expect(refusalOf(() => advance(job, act, around(unlocked)))).toMatchObject({ code: 'ILK-001' });
      const open = withPoint(whole, id, (point) => ({ ...point, position: 'open', locks: [] }));
      expect(refusalOf(() => advance(job, act, around(open)))).toMatchObject({ code: 'ILK-001' });
    },
  );
});

describe('whoever has no lock of their own', () => {
  test('does no work that stands on locks, and everything else', () => {
    const run = jobAt('breakSignalLine');
    const given = textsAt(strokeScript(run.job.sheet), { step: 'breakSignalLine', row: 0 });
    const refused = refusalOf(() => answer(run, given, OTHER_TECHNICIAN));
    expect(refused).toMatchObject({ code: 'PNT-002' });
    expect(refused.what).toContain(String(run.job.sheet.inletPoint));
    const theirs: Lock = { lock: '21', owner: OTHER_TECHNICIAN.id, job: run.job.id };
    const two = { ...pointsOf(run.job) };
    for (const id of ['inletLock', 'outletLock'] as const) {
      const point = two[id] as PointState;
      two[id] = { ...point, locks: [...point.locks, theirs] };
    }
    expect(refusalOf(() => answer({ ...run, points: two }, given, OTHER_TECHNICIAN)).what).toBe(
      `You have no lock of your own on ${run.job.sheet.supplyPoint}.`,
    );
    const stop = { kind: 'make-safe', place: 0, reason: '' } as const;
    expect(advance(run.job, stop, around(run, OTHER_TECHNICIAN)).kind).toBe('made-safe');
  });

  test('is not left so by a further lock of the job: whoever is on it leaves first', () => {
    const run = jobAt('shutOutlet');
    const theirs: Lock = { lock: '21', owner: OTHER_TECHNICIAN.id, job: run.job.id };
    const inlet = pointsOf(run.job).inletLock as PointState;
    const outlet: PointState = { tag: String(run.job.sheet.outletPoint), position: 'open', locks: [] };
    const given = textsAt(strokeScript(run.job.sheet), { step: 'shutOutlet', row: 0 });
    const joined = {
      ...run,
      points: { inletLock: { ...inlet, locks: [...inlet.locks, theirs] }, outletLock: outlet },
    };
    expect(refusalOf(() => answer(joined, given, TECHNICIAN))).toMatchObject({ code: 'PNT-003' });
    expect(refusalOf(() => answer(joined, given, OTHER_TECHNICIAN))).toMatchObject({ code: 'PNT-003' });
    // A lock that hangs there for another job holds nothing for this one.
    const elsewhere: Lock = { ...theirs, job: 'another' };
    const covered = { ...joined.points, outletLock: { ...outlet, locks: [elsewhere] } };
    expect(refusalOf(() => answer({ ...run, points: covered }, given, TECHNICIAN))).toMatchObject({
      code: 'PNT-003',
    });
    answer({ ...run, points: { inletLock: inlet, outletLock: outlet } }, given, TECHNICIAN);
  });
});
