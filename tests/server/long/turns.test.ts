import { expect, test } from 'vitest';
import { turns } from '../../../server/long/turns.ts';

/** Keeps the processor for so long, as work does. */
function work(forMs: number): void {
  const untilMs = performance.now() + forMs;
  while (performance.now() < untilMs);
}

test('Others are let in once a work has been at it for a while, and not before', async () => {
  const turn = turns();
  let others = 0;
  setImmediate(() => {
    others += 1;
  });
  expect([await turn(), others]).toEqual([false, 0]);
  work(25);
  expect([await turn(), others]).toEqual([true, 1]);
  expect(await turn()).toBe(false);
});
