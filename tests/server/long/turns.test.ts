import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { lettingOthersIn, turns } from '../../../server/long/turns.ts';

// The clock is the test's own, so that a busy machine changes nothing.
let nowMs = 0;
beforeEach(() => {
  vi.spyOn(performance, 'now').mockImplementation(() => nowMs);
});
afterEach(() => {
  vi.restoreAllMocks();
});

/** Keeps the processor for so long, as work does. */
function work(forMs: number): void {
  nowMs += forMs;
}

test('Others are let in once a work has been at it for a while, and not before', async () => {
  const turn = turns();
  let others = 0;
  setImmediate(() => {
    others += 1;
  });
  expect([await turn(), others]).toEqual([false, 0]);
  work(19);
  expect([await turn(), others]).toEqual([false, 0]);
  work(1);
  expect([await turn(), others]).toEqual([true, 1]);
  expect(await turn()).toBe(false);
});

test('Steps of a long sum are worked through to the end, with others let in between', async () => {
  let others = 0;
  const again = () => {
    others += 1;
    if (others < 100) setImmediate(again);
  };
  setImmediate(again);
  let done = 0;
  await lettingOthersIn(
    (function* () {
      for (; done < 3; done += 1) {
        work(25);
        yield;
      }
    })(),
  );
  expect(done).toBe(3);
  expect(others).toBeGreaterThanOrEqual(3);
});
