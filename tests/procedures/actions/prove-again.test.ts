import { describe, expect, test } from 'vitest';
import { situationNow } from '../../../procedures/actions/move.ts';
import { proveAgainFields, toProveAgain } from '../../../procedures/actions/prove-again.ts';
import { stateThatCounts } from '../../../safety/situation.ts';
import { act, answer, around, type JobRun, jobAt, sign } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

const HOURS_MS = 3_600_000;
const ZEROS = {
  supplyAirAgainPa: '0',
  signalAirAgainPa: '0',
  processInletAgainPa: '0',
  processOutletAgainPa: '0',
};

function paused(step: string): JobRun {
  const run = jobAt(step);
  act(run, { kind: 'park', reason: 'meal' });
  act(run, { kind: 'take-up' });
  return run;
}

describe('[SAF-11] After a pause', () => {
  test('a card that exposes somebody asks again, and says what to do (HP-49)', () => {
    const asked = refusalOf(() => answer(paused('connectAir')));
    expect(asked.code).toBe('ILK-001');
    expect(asked.what).toContain('Supply air counts as live, because of parked');
    expect(asked.next).toBe('Prove it again on this card, or make safe and stop.');
  });

  test('one walk-round lets it pass: everything as it was left, every gauge at zero', () => {
    const run = paused('connectAir');
    const before = run.job.situation.states;
    act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...ZEROS } });
    expect(run.job.situation).toMatchObject({ states: before });
    answer(run, { peopleClear: 'yes' });
    expect(run.job.step).toBe('contactFound');
  });

  test('a hold whose signer was long in coming is shown again where it stands, and signed; only what they are shown is asked', () => {
    const run = jobAt('holdWork');
    run.nowMs += 13 * HOURS_MS;
    expect(refusalOf(() => sign(run)).code).toBe('HLD-003');
    const asked = proveAgainFields(run.job, around(run)).map((field) => field.name);
    expect(asked).toEqual(['asLeft', ...Object.keys(ZEROS)]);
    act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...ZEROS } });
    sign(run);
    expect(run.job.step).toBe('connectAir');
  });

  test('the walk-round asks for a zero on each gauge behind a lock or on the case', () => {
    const run = paused('connectAir');
    const names = proveAgainFields(run.job, around(run)).map((field) => field.name);
    expect(names).toEqual([
      'asLeft',
      'supplyAirAgainPa',
      'signalAirAgainPa',
      'processInletAgainPa',
      'processOutletAgainPa',
    ]);
  });

  test('a gauge that is not at zero now stops the work', () => {
    const run = paused('connectAir');
    const risen = refusalOf(() =>
      act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...ZEROS, processInletAgainPa: '4 psi' } }),
    );
    expect(risen).toMatchObject({
      kind: 'unsafe',
      code: 'ILK-002',
      what: 'Not at zero: Process, inlet side.',
    });
  });

  test('a gauge that is left blank proves nothing', () => {
    const { supplyAirAgainPa: _, ...others } = ZEROS;
    const run = paused('connectAir');
    expect(refusalOf(() => act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...others } })).kind).toBe(
      'unreadable',
    );
  });

  test('what was moved meanwhile is isolated again', () => {
    const run = paused('connectAir');
    expect(refusalOf(() => act(run, { kind: 'prove-again', given: { asLeft: 'no', ...ZEROS } })).what).toBe(
      'It is not as it was left.',
    );
  });

  test('held air is set and read afresh, never proved from memory', () => {
    const run = paused('turnStem');
    expect(toProveAgain(run.job, around(run))).toContain('signalAir');
    expect(refusalOf(() => act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...ZEROS } })).what).toBe(
      'Held air is not proved again from memory.',
    );
  });

  test('a signature is not proved again either', () => {
    const run = jobAt('connectAir');
    const proof = run.job.evidence.supplyAir?.place ?? 0;
    act(run, {
      kind: 'correct',
      corrects: proof,
      given: { supplyAfterPa: '0.2', method: 'gauge' },
      reason: 'misread',
    });
    expect(refusalOf(() => act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...ZEROS } })).what).toBe(
      'The signature over this work has lapsed.',
    );
  });
});

describe('[SAF-11] A proof older than four hours', () => {
  test('counts no more, until the walk-round', () => {
    const run = jobAt('connectAir');
    run.nowMs += 4 * HOURS_MS;
    expect(refusalOf(() => answer(run)).what).toContain('because of age');
    act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...ZEROS } });
    answer(run, { peopleClear: 'yes' });
    expect(run.job.step).toBe('contactFound');
  });

  test('is not the spring, which does not load itself, nor the locks', () => {
    const run = jobAt('connectAir');
    run.nowMs += 4 * HOURS_MS;
    expect(toProveAgain(run.job, around(run))).toEqual([
      'supplyAir',
      'signalAir',
      'processInlet',
      'processOutlet',
    ]);
    expect(stateThatCounts(situationNow(run.job, run.nowMs), 'spring')).toBe('contained');
  });

  test('still counts up to its hour', () => {
    const run = jobAt('connectAir');
    const oldest = Date.parse(run.job.evidence.supplyAir?.at ?? '');
    run.nowMs = oldest + 4 * HOURS_MS;
    expect(toProveAgain(run.job, around(run))).toEqual([]);
    expect(refusalOf(() => act(run, { kind: 'prove-again', given: {} })).what).toBe(
      'Nothing on this card has to be proved again.',
    );
    run.nowMs += 1;
    expect(toProveAgain(run.job, around(run))).toEqual(['supplyAir']);
  });
});

test('[SAF-04] A lock that is gone from the site is not proved back by the word of the job', () => {
  const run = paused('connectAir');
  act(run, { kind: 'prove-again', given: { asLeft: 'yes', ...ZEROS } });
  run.points = {};
  expect(refusalOf(() => answer(run)).what).toContain('Supply air counts as live;');
});
