import { expect, test } from 'vitest';
import { minutesSince, waitWords } from '../../../../server/jobs/view/waits.ts';

test('how long a job waits is said in minutes, then hours, then days, and never rounded up', () => {
  expect([0, 1, 119, 120, 179, 2879, 2880, 40_000].map(waitWords)).toEqual([
    '0 minutes',
    '1 minute',
    '119 minutes',
    '2 hours',
    '2 hours',
    '47 hours',
    '2 days',
    '27 days',
  ]);
});

test('a clock that was set back makes no wait below nothing', () => {
  const at = '2026-03-04T10:00:00.000Z';
  expect(minutesSince(at, { nowMs: Date.parse(at) - 60_000 })).toBe(0);
  expect(minutesSince(at, { nowMs: Date.parse(at) + 119_999 })).toBe(1);
});
