import { afterEach, describe, expect, test } from 'vitest';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { auditors } from '../../../server/streams.ts';
import { comparableJob } from '../../builders/comparable-log.ts';
import { GEOMETRIES, sheetFor } from '../../builders/stroke-script.ts';
import { type AnApp, anApp, type Browser, newRequestId, PINS } from '../an-app.ts';
import { type Ask, JobClient, type Told, type Wire } from './job-client.ts';
import { gearNumbers, withValve } from './site.ts';

const open: AnApp[] = [];
afterEach(async () => {
  for (const app of open.splice(0)) await app.close();
});

function clientOf(
  app: AnApp,
  { browser, ask, sheet }: { readonly browser: Browser; readonly ask: Ask; readonly sheet: ValveSheet },
): JobClient {
  const wire: Wire = {
    newRequestId,
    post: (path, fields, as) =>
      as === 'json' ? app.postJson(path, fields, { as: browser }) : app.post(path, fields, { as: browser }),
    get: (path) => app.get(path, { as: browser, headers: { accept: 'application/json' } }),
  };
  return new JobClient({ wire, ask, sheet, signer: { id: 's1', pin: PINS.supervisor } });
}

async function doWholeJob(
  ask: Ask,
  { sheet, place }: { readonly sheet: ValveSheet; readonly place: 'bench' | 'line' },
): Promise<AnApp> {
  const app = await anApp({ people: true });
  open.push(app);
  await withValve(app, sheet);
  const { browser } = await app.signedIn('technician');
  const client = clientOf(app, { browser, ask, sheet });
  await client.open(place, gearNumbers(place));
  await client.doAll('1', (ms) => app.wait(ms || 5000));
  return app;
}

describe('a whole stroke check over HTTP', () => {
  for (const geometry of GEOMETRIES) {
    const name = `plug closes ${geometry.plugCloses}, air moves the stem ${geometry.airMovesStem}`;
    test(`${name}: forms without script and JSON leave the same log but for times and ids`, {
      timeout: 120_000,
    }, async () => {
      const sheet = sheetFor(geometry);
      const byForm = await doWholeJob('form', { sheet, place: 'line' });
      const byJson = await doWholeJob('json', { sheet, place: 'line' });
      const log = await comparableJob(byForm.services.log, '1');
      expect(log).toEqual(await comparableJob(byJson.services.log, '1'));
      // As many as the job has cards and its locks have lines: an empty list would be equal too.
      expect(log.filter(({ stream }) => stream === 'job').length).toBeGreaterThan(55);
      expect(log.filter(({ kind }) => kind === 'lock-hung')).toHaveLength(3);
      const report = await verifyStore(byForm.services.store, auditors);
      expect(report.fault).toBeNull();
      expect(report.problems).toEqual([]);
    });
  }

  test('on the bench nothing is locked, and the record is signed before the valve leaves', async () => {
    const app = await doWholeJob('json', {
      sheet: sheetFor({ plugCloses: 'down', airMovesStem: 'up' }),
      place: 'bench',
    });
    const job = await app.services.log.state(jobKind, '1');
    expect(job.closedAs).toBe('done');
    expect(job.holds.map((hold) => hold.step)).toEqual(['holdWork', 'signBench']);
    expect(await app.services.log.summaries('point')).toEqual([]);
  });

  test('leaves for whoever opens the next job what they will want to know', async () => {
    const sheet = sheetFor({ plugCloses: 'down', airMovesStem: 'up' });
    const app = await doWholeJob('json', { sheet, place: 'bench' });
    const { browser } = await app.signedIn('technician');
    const choosing = await app.get(`/jobs/new?tag=${sheet.tag}`, { as: browser });
    expect(await choosing.text()).toContain('Left for you by job 1');
    const client = clientOf(app, { browser, ask: 'json', sheet });
    await client.open('bench', gearNumbers('bench'));
    const first = await app.services.log.state(jobKind, '1');
    const { left } = (await client.job('2')) as Told & { readonly left: readonly object[] };
    expect(left).toContainEqual({ label: 'notes of this job', value: first.words.nextNotes });
    expect(left).toContainEqual(expect.objectContaining({ label: 'adjuster height' }));
  });

  test('in the line every lock is off the site again when the job is done', async () => {
    const app = await doWholeJob('json', {
      sheet: sheetFor({ plugCloses: 'up', airMovesStem: 'up' }),
      place: 'line',
    });
    expect(await app.services.log.summaries('point')).toEqual([]);
    const job = await app.services.log.state(jobKind, '1');
    expect(job.situation.states.bypass).toBe('shut');
    expect(job.situation.states.loop).toBe('automatic');
  });
});
