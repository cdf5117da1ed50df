import { describe, expect, test } from 'vitest';
import { backTargets } from '../../../procedures/actions/leave.ts';
import { ENERGY_IDS } from '../../../safety/conditions.ts';
import { act, answer, around, jobAt, OTHER_TECHNICIAN, openJob } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

describe('[SAF-09] A stop', () => {
  test('is taken whatever another screen did meanwhile', () => {
    const run = jobAt('turnStem');
    act(run, { kind: 'make-safe', reason: 'gauge moved', place: 3 } as Parameters<typeof act>[1]);
    expect(run.job.step).toBe('ventNow');
    expect(run.job.answers.at(-1)).toMatchObject({ act: 'made-safe', step: 'turnStem' });
  });

  test('is taken by anybody, and takes a parked job up', () => {
    const run = jobAt('turnStem');
    act(run, { kind: 'park', reason: 'shift ends' });
    act(run, { kind: 'make-safe', reason: '' }, OTHER_TECHNICIAN);
    expect(run.job).toMatchObject({ status: 'open', step: 'ventNow' });
  });

  test('before anything was changed closes the job as stopped', () => {
    const run = openJob();
    act(run, { kind: 'make-safe', reason: 'other work first' });
    expect(run.job).toMatchObject({ status: 'closed', closedAs: 'stopped', step: 'notStarted' });
  });

  test('gives the valve back with air off, locks off and bypass shut', () => {
    const run = jobAt('contactFound');
    act(run, { kind: 'make-safe', reason: 'called away' });
    answer(run, { lastAirPa: '6 psi', airZeroPa: '0', method: 'gauge' });
    answer(run, { choice: 'giveBack' });
    expect(run.job.step).toBe('disconnectAir');
  });
});

describe('[SAF-13] A way back', () => {
  test('leads to an earlier card from which everything that is possible here is possible', () => {
    const run = jobAt('rigBleed');
    expect(backTargets(run.job, around(run))).toEqual([
      'needs',
      'knowEnergies',
      'rigGauges',
      'rigShutIn',
      'rigHold',
    ]);
    act(run, { kind: 'go-back', to: 'rigGauges' });
    expect(run.job.step).toBe('rigGauges');
    expect(run.job.answers.filter((one) => !one.superseded).map((one) => one.step)).toEqual([
      'needs',
      'knowEnergies',
      'rigBleed',
    ]);
  });

  test('is none to a card that an isolation has been made since (HP-31)', () => {
    const run = jobAt('connectAir');
    expect(backTargets(run.job, around(run))).toEqual([]);
    for (const to of ['needs', 'shutInlet', 'ventSupply', 'holdWork'])
      expect(refusalOf(() => act(run, { kind: 'go-back', to })).code).toBe('JOB-004');
  });

  test('is never one forward (HP-31)', () => {
    const run = jobAt('rigGauges');
    expect(refusalOf(() => act(run, { kind: 'go-back', to: 'rigBleed' })).code).toBe('JOB-004');
  });
});

describe('[SAF-11] A parked job', () => {
  const run = jobAt('connectAir');
  act(run, { kind: 'park', reason: 'shift ends' });

  test('keeps its locks and its signature, and counts what was shown as live until it is shown again', () => {
    expect(run.job.status).toBe('parked');
    expect(Object.keys(run.job.locks).sort()).toEqual(['inletLock', 'outletLock', 'supplyLock']);
    const { states, lapsed } = run.job.situation;
    const shown = ENERGY_IDS.filter((id) => !['live', 'loaded', 'absent'].includes(states[id]));
    expect(Object.keys(lapsed).sort()).toEqual([...shown].sort());
  });

  test('takes no answer and no second pause until it is taken up', () => {
    expect(refusalOf(() => answer(run))).toMatchObject({ code: 'JOB-001', what: 'This job is parked.' });
    expect(refusalOf(() => act(run, { kind: 'park', reason: '' })).code).toBe('JOB-001');
  });

  test('is taken up once', () => {
    act(run, { kind: 'take-up' }, OTHER_TECHNICIAN);
    expect(run.job.status).toBe('open');
    expect(refusalOf(() => act(run, { kind: 'take-up' })).what).toBe('This job is not parked.');
  });
});
