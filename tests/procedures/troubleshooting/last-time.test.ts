import { expect, test } from 'vitest';
import type { Job } from '../../../procedures/job.ts';
import { lastTimeOf, sayLastTime } from '../../../procedures/troubleshooting/job/last-time.ts';
import { seenBefore } from '../../../procedures/troubleshooting/job/seen-before.ts';
import { openJob } from '../../builders/jobs.ts';

const { job: open } = openJob();

/** A search that closed with a repair named. */
function search(more: Partial<Job> = {}): Job {
  const named = {
    step: 'nameCauseInService',
    figures: { repair: 'changeDiaphragm', cause: 'diaphragmTorn' },
  };
  return {
    ...open,
    id: '12',
    procedure: 'find-the-fault',
    status: 'closed',
    closedAs: 'done',
    closedAt: '2026-11-20T10:00:00.000Z',
    answers: [{ superseded: false, ...named }] as unknown as Job['answers'],
    ...more,
  };
}
const closed = (procedure: string, closedAs = 'done'): Job =>
  search({ id: '15', procedure, closedAs, closedAt: '2026-11-22T10:00:00.000Z', answers: [] });

test('the job that made the named repair is found after it; one that was broken off did not make it', () => {
  const made = lastTimeOf([closed('stroke-check'), closed('diaphragm-renewal'), search()]);
  expect(made).toMatchObject({ job: '12', repair: 'changeDiaphragm', madeBy: '15', on: '2026-11-22' });
  const stopped = lastTimeOf([closed('diaphragm-renewal', 'stopped'), search()]);
  expect(stopped).toMatchObject({ madeBy: null, on: '2026-11-20' });
  expect(lastTimeOf([closed('diaphragm-renewal')])).toBeNull();
});

test('what was named and never made is said so, and counts for nothing', () => {
  const named = lastTimeOf([search()]);
  if (named === null) throw new Error('nothing was found');
  expect(sayLastTime(named)).toContain('No job here shows that it was made');
  expect(seenBefore(named, '2026-11-26T00:00:00.000Z')).toEqual([]);
});

test('what was made counts the less the longer ago it is, and after a year for nothing', () => {
  const made = lastTimeOf([closed('diaphragm-renewal'), search()]);
  if (made === null) throw new Error('nothing was found');
  const doubts = ['2026-11-26', '2027-04-26', '2028-11-26'].map((on) => seenBefore(made, on)[0]?.doubt ?? 0);
  expect(doubts[0]).toBeGreaterThan(0.5);
  expect(doubts).toEqual(doubts.toSorted((one, other) => one - other));
  expect(doubts[2]).toBe(1);
  const unproved = { ...made, madeBy: '12', proof: null };
  expect(seenBefore(unproved, '2026-11-26')[0]?.doubt).toBeLessThan(doubts[0] ?? 0);
});
