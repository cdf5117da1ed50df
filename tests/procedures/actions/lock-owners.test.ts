import { describe, expect, test } from 'vitest';
import { lockOwner } from '../../../procedures/actions/lock-owners.ts';
import { toProveAgain } from '../../../procedures/actions/prove-again.ts';
import { auditJob } from '../../../procedures/audit.ts';
import { departureOf } from '../../../procedures/departures.ts';
import type { Job } from '../../../procedures/job.ts';
import type { PointState } from '../../../safety/isolation-points.ts';
import {
  act,
  around,
  COMPILED,
  jobAt,
  OTHER_TECHNICIAN,
  openJob,
  pointsOf,
  SUPERVISOR,
  sign,
  TECHNICIAN,
} from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

const LOCKS = { supplyLock: '21', inletLock: '22', outletLock: '23' };
const handOver = { kind: 'hand-over', incoming: OTHER_TECHNICIAN.id, locks: LOCKS } as const;
const remove = { kind: 'remove-locks', owner: TECHNICIAN.id, heir: null, reason: 'went home' } as const;
const owners = (job: Job) => Object.values(job.locks).map((lock) => lock?.owner);

describe('a job that is handed over', () => {
  test('stands on the locks of whoever takes it on, where it stood', () => {
    const run = jobAt('asFoundCycle');
    act(run, handOver);
    expect(run.job.step).toBe('asFoundCycle');
    expect(run.job.locks.inletLock).toMatchObject({ lock: '22', owner: OTHER_TECHNICIAN.id });
    expect(lockOwner(run.job)).toBe(OTHER_TECHNICIAN.id);
    expect(auditJob(run.entries, COMPILED)).toEqual([]);
  });

  test('shows again what was shown, and has the work signed again (EI-17)', () => {
    const run = jobAt('asFoundCycle');
    const { states } = run.job.situation;
    act(run, handOver);
    expect(run.job.situation.states).toEqual(states);
    for (const id of ['supplyAir', 'processInlet', 'processOutlet', 'spring', 'workSignOff'] as const)
      expect(run.job.situation.lapsed[id], id).toBe('handover');
    expect(refusalOf(() => act(run, { kind: 'answer', given: {} }, OTHER_TECHNICIAN)).code).toBe('ILK-001');
  });

  test('leaves nobody without a lock: each point has one of the incoming person', () => {
    const run = jobAt('asFoundCycle');
    const { outletLock: _, ...two } = LOCKS;
    expect(refusalOf(() => act(run, { ...handOver, locks: two })).code).toBe('JOB-004');
    expect(owners(run.job)).toEqual([TECHNICIAN.id, TECHNICIAN.id, TECHNICIAN.id]);
  });

  test('is passed on by its owner alone, to somebody else, and not while it is parked', () => {
    const run = jobAt('asFoundCycle');
    expect(refusalOf(() => act(run, handOver, OTHER_TECHNICIAN)).code).toBe('JOB-004');
    expect(refusalOf(() => act(run, { ...handOver, incoming: TECHNICIAN.id })).code).toBe('JOB-004');
    act(run, { kind: 'park', reason: '' });
    expect(refusalOf(() => act(run, handOver)).code).toBe('JOB-001');
  });

  test('needs no lock where none hangs yet', () => {
    const run = openJob();
    act(run, { ...handOver, locks: {} });
    expect(owners(run.job)).toEqual([]);
  });
});

describe('a job whose owner is away', () => {
  test('has no lock and nothing shown once they are taken off, and may still be made safe', () => {
    const run = jobAt('asFoundCycle');
    act(run, { kind: 'park', reason: 'end of shift' });
    act(run, remove, SUPERVISOR);
    expect(run.job.locks).toEqual({});
    expect(run.job.situation.states).toMatchObject({
      supplyLock: 'off',
      inletLock: 'off',
      outletLock: 'off',
    });
    expect(run.job.situation.lapsed).toMatchObject({
      supplyAir: 'lock removed',
      workSignOff: 'lock removed',
    });
    act(run, { kind: 'make-safe', reason: '' }, OTHER_TECHNICIAN);
    expect(auditJob(run.entries, COMPILED)).toEqual([]);
  });

  test('stands on the locks of whoever else is on all its points', () => {
    const run = jobAt('asFoundCycle');
    const points = Object.fromEntries(
      Object.entries(pointsOf(run.job)).map(([id, point]): [string, PointState] => {
        const theirs = { lock: `B-${id}`, owner: OTHER_TECHNICIAN.id, job: run.job.id };
        return [id, { ...point, locks: [...point.locks, theirs] }];
      }),
    );
    run.points = points;
    act(run, { ...remove, heir: OTHER_TECHNICIAN.id }, SUPERVISOR);
    expect(owners(run.job)).toEqual([OTHER_TECHNICIAN.id, OTHER_TECHNICIAN.id, OTHER_TECHNICIAN.id]);
    expect(run.job.situation.states.supplyLock).toBe('on');
  });

  test('gives up no lock of anybody who is not named', () => {
    const run = jobAt('asFoundCycle');
    expect(refusalOf(() => act(run, { ...remove, owner: OTHER_TECHNICIAN.id }, SUPERVISOR)).code).toBe(
      'JOB-004',
    );
  });

  test('does not make the supervisor who took the locks off one of those who worked', () => {
    const run = jobAt('asFoundCycle');
    const { performers } = run.job;
    act(run, remove, SUPERVISOR);
    expect(run.job.performers).toEqual(performers);
  });
});

describe('a hold that waits meanwhile', () => {
  const ZEROS = {
    asLeft: 'yes',
    supplyAirAgainPa: '0',
    signalAirAgainPa: '0',
    processInletAgainPa: '0',
    processOutletAgainPa: '0',
  };

  test('is shown again by whoever took the job on, and signed (EI-17)', () => {
    const run = jobAt('holdWork');
    act(run, handOver);
    expect(refusalOf(() => sign(run)).code).toBe('HLD-003');
    act(run, { kind: 'prove-again', given: ZEROS }, OTHER_TECHNICIAN);
    sign(run);
    expect(run.job.step).toBe('connectAir');
  });

  test('is neither shown again nor signed once its locks are gone: it is isolated again from the first lock (EI-12)', () => {
    const run = jobAt('holdWork');
    act(run, remove, SUPERVISOR);
    expect(toProveAgain(run.job, around(run, OTHER_TECHNICIAN))).toEqual([]);
    expect(refusalOf(() => act(run, { kind: 'prove-again', given: ZEROS }, OTHER_TECHNICIAN)).code).toBe(
      'JOB-004',
    );
    // Whoever signs after it is told of it.
    const last = run.job.answers.at(-1);
    expect(last === undefined ? null : departureOf(last, COMPILED.definition)).toBe('locks removed');
    const { states } = run.job.situation;
    const claimed = { ...run, job: { ...run.job, situation: { states, lapsed: {} } } };
    expect(refusalOf(() => sign(claimed, { id: 'p-second', role: 'supervisor' })).what).toBe(
      'Not shown safe: Supply air, Process, inlet side, Process, outlet side.',
    );
  });
});
