import { describe, expect, test } from 'vitest';
import { readLate } from '../../procedures/late.ts';
import { act, jobAt } from '../builders/jobs.ts';
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

  test('wants its reason, and a time that was not long ago and has come', () => {
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
