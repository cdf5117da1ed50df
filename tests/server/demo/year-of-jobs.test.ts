import { afterAll, beforeAll, expect, test } from 'vitest';
import { loadDemoPlant } from '../../../server/demo/demo-plant.ts';
import { valveHistory } from '../../../server/history/valve-history.ts';
import type { JobLine } from '../../../server/jobs/job-stream.ts';
import { valveKind } from '../../../server/valves/valve-stream.ts';
import { type AnApp, anApp } from '../an-app.ts';

const DAY_MS = 24 * 3600 * 1000;

let app: AnApp;
let loadedAtMs = 0;
beforeAll(async () => {
  app = await anApp();
  loadedAtMs = app.services.now().getTime();
  let backMs = 0;
  await loadDemoPlant(app.services, (wantedMs) => {
    app.wait(backMs - wantedMs);
    backMs = wantedMs;
  });
}, 120_000);
afterAll(() => app.close());

/** How many days before the loading each entry of a job was written. */
async function daysBack(id: string): Promise<readonly number[]> {
  const entries = await app.services.log.entriesOf(`job:${id}`);
  return entries.map(({ at }) => (loadedAtMs - Date.parse(at)) / DAY_MS);
}

test('a plant loaded with a clock that can be set back has most of a year of earlier jobs, and one of today', async () => {
  const jobs = await app.services.log.summaries('job', { limit: 100 });
  const began = await Promise.all(jobs.map(async ({ id }) => (await daysBack(id))[0] ?? 0));
  expect(began.length).toBeGreaterThan(5);
  expect(Math.max(...began)).toBeGreaterThan(330);
  expect(Math.min(...began)).toBeLessThan(1);
  // Spread over the year, not heaped at its ends.
  expect(new Set(began.map((days) => Math.floor(days / 60))).size).toBeGreaterThan(4);
});

test('one valve was looked at in five of them over the years, so that its history has a trend to show', async () => {
  const lines = (await app.services.log.summaries('job')).map(({ body }) => body as unknown as JobLine);
  const { sheet } = await app.services.log.state(valveKind, 'FV-102');
  if (sheet === null) throw new Error('the demo plant has no FV-102');
  const { history } = valveHistory(
    lines.filter(({ tag }) => tag === 'FV-102'),
    sheet,
  );
  const error = history.quantities.find(({ id }) => id === 'error');
  expect(error?.points.filter(({ counted }) => counted)).toHaveLength(5);
  expect(history.proposedMonths).not.toBeNull();
  const plans = await app.services.log.summaries('plan');
  expect(plans.map(({ id }) => id)).toEqual(['P-1', 'P-2', 'P-3', 'P-4']);
});

test('its log never runs back in time, and the clock is true again afterwards', async () => {
  const jobs = await app.services.log.summaries('job', { limit: 100 });
  for (const { id } of jobs) {
    const days = await daysBack(id);
    expect(
      [...days].sort((a, b) => b - a),
      id,
    ).toEqual(days);
    expect(Math.min(...days), id).toBeGreaterThanOrEqual(0);
  }
  expect(app.services.now().getTime()).toBeGreaterThanOrEqual(loadedAtMs);
});
