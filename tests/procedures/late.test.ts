import { describe, expect, test } from 'vitest';
import { departureOf } from '../../procedures/departures.ts';
import type { Late } from '../../procedures/job.ts';
import { readLate } from '../../procedures/late.ts';
import { act, type JobRun, jobAt, playTo, SUPERVISOR } from '../builders/jobs.ts';
import { refusalOf } from '../builders/refusals.ts';

const at = { today: '2026-11-25', nowMs: Date.UTC(2026, 10, 25, 10) };

describe('A line that is written later than it was read', () => {
  test('keeps the server’s time, and what its writer says as a claim with its reason (SA-29)', () => {
    const run = jobAt('rigGauges');
    const atMs = run.nowMs;
    const given = { rigGaugePa: '9.00 psi', rigCheckPa: '9.05 psi' };
    act(run, { kind: 'answer', given, late: { claimedAt: '2026-11-25 07:30', reason: 'gloves on' } });
    const line = run.job.answers.at(-1);
    expect(line?.at).toBe(new Date(atMs).toISOString());
    expect(line?.late).toEqual({ claimedAt: '2026-11-25T07:30:00.000Z', reason: 'gloves on' });
  });

  test('wants its reason, and a time that was not long ago and has come (SA-29)', () => {
    expect(readLate({ claimedAt: '9:40', reason: 'x' }, at).claimedAt).toBe('2026-11-25T09:40:00.000Z');
    for (const claimedAt of ['10:01', '2026-11-23 09:40', 'this morning', '25:00'])
      expect(Object.keys(refusalOf(() => readLate({ claimedAt, reason: 'x' }, at)).fields ?? {})).toEqual([
        'readAt',
      ]);
    expect(refusalOf(() => readLate({ claimedAt: '09:40', reason: ' ' }, at)).fields).toEqual({
      lateReason: 'Write why it was not written then.',
    });
  });
});

describe('A job that was done by a form on paper', () => {
  const signed = (run: JobRun, claim: Late) =>
    act(run, { kind: 'sign', shownDigest: run.shownDigest, late: claim }, SUPERVISOR);
  const late = (claimedAt: string) => ({ claimedAt: `2026-11-25 ${claimedAt}`, reason: 'done on paper' });

  test('has its waits by the times that were written, not by the time of entering them', () => {
    const run = jobAt('drainOutlet');
    const given = { outletAfterPa: '0 psi', method: 'gauge', outletDrained: 'yes' };
    act(run, { kind: 'answer', given, late: late('06:30') });
    playTo(run, 'waitDrained');
    const arrivedMs = run.nowMs;
    expect(refusalOf(() => act(run, { kind: 'answer', given: {}, late: late('06:34') })).what).toBe(
      'The wait is not over: 60 s are left.',
    );
    act(run, { kind: 'answer', given: {}, late: late('06:35') });
    expect(run.job.step).toBe('drainsAgain');
    expect(run.nowMs - arrivedMs).toBeLessThan(300_000);
    expect(run.job.answers.at(-1)?.late?.claimedAt).toBe('2026-11-25T06:35:00.000Z');
  });

  test('is signed by its signer, who proves themselves now and says when it was signed', () => {
    const run = jobAt('holdWork');
    signed(run, late('07:10'));
    expect(run.job.answers.at(-1)).toMatchObject({
      act: 'hold-signed',
      person: SUPERVISOR.id,
      late: { claimedAt: '2026-11-25T07:10:00.000Z', reason: 'done on paper' },
    });
    const definition = run.compiled.definition;
    const last = run.job.answers.at(-1);
    if (last === undefined) throw new Error('nothing was signed');
    expect(departureOf(last, definition)).toBe('written late');
  });

  test('is refused where a signature says when, and not why', () => {
    const run = jobAt('holdWork');
    const bare = { claimedAt: '2026-11-25 07:10', reason: '' };
    expect(refusalOf(() => signed(run, bare)).code).toBe('REA-014');
  });
});
