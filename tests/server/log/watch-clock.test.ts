import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { verifyStore } from '../../../server/log/verify.ts';
import { movedMs, watchClock } from '../../../server/log/watch-clock.ts';
import { type AnApp, anApp } from '../an-app.ts';

let app: AnApp;
let clock = { clockMs: Date.UTC(2026, 2, 4, 8), countMs: 0 };
let stop: () => Promise<void>;

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
  app = await anApp({ people: true, routes: [] });
  clock = { clockMs: Date.UTC(2026, 2, 4, 8), countMs: 0 };
  stop = watchClock({
    log: app.services.log,
    read: () => clock,
    report: (error) => expect(error).toBeUndefined(),
  });
});
afterEach(async () => {
  await stop();
  vi.useRealTimers();
  await app.close();
});

/** So much time goes by, while the clock is also moved by so much. */
async function pass(seconds: number, movedSeconds = 0): Promise<void> {
  clock = {
    clockMs: clock.clockMs + (seconds + movedSeconds) * 1000,
    countMs: clock.countMs + seconds * 1000,
  };
  await vi.advanceTimersByTimeAsync(30_000);
}

const jumps = async () =>
  (await app.services.log.entriesOf('site'))
    .filter(({ kind }) => kind === 'clock-moved')
    .map(({ inputs }) => inputs);

test('a clock that jumps ahead or back is written down once with both times, and work goes on (R-10)', async () => {
  await pass(30);
  await pass(30, 3600);
  await pass(30);
  const { browser } = await app.signedIn('technician');
  await pass(30, -7200);
  await pass(30);
  expect(await jumps()).toEqual([
    { expectedAt: '2026-03-04T08:01:00.000Z', clockAt: '2026-03-04T09:01:00.000Z', bySeconds: 3600 },
    { expectedAt: '2026-03-04T09:02:00.000Z', clockAt: '2026-03-04T07:02:00.000Z', bySeconds: -7200 },
  ]);
  expect((await app.get('/people', { as: browser })).status).toBe(200);
  const report = await verifyStore(app.services.store, []);
  expect([report.fault, report.entries]).toEqual([null, (await app.services.log.head()).seq]);
});

test('what a time service puts right, and time that simply went by, is no jump', async () => {
  await pass(30, 59);
  await pass(7200);
  await pass(30, -59);
  expect(await jumps()).toEqual([]);
  expect(movedMs({ clockMs: 5000, countMs: 70 }, { clockMs: 65_000, countMs: 70 })).toBe(60_000);
});

test('a jump just before the server stops is written down as well', async () => {
  clock = { ...clock, clockMs: clock.clockMs + 600_000 };
  await stop();
  expect(await jumps()).toHaveLength(1);
});
