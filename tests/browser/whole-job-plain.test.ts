import { expect, test } from 'vitest';
import { jobKind } from '../../server/jobs/job-stream.ts';
import { comparableJob } from '../builders/comparable-log.ts';
import { strokeCheckByJson } from './harness/by-json.ts';
import { BENCH_SET_READ } from './harness/commissioned.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { doJob, doStrokeCheck } from './harness/do-job.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, signIn } from './harness/people.ts';
import { words } from './harness/picture.ts';

/** The four ways of plug and air, as in `whole-job.test.ts`; the ordinary run does another one than that. */
const ALL = ['FV-101', 'FV-102', 'FV-103', 'FV-104'];
const LONG = process.env.YOKESIDE_LONG === '1';
const CLICKED = LONG ? ALL : ALL.slice(1, 2);
const ROWS = LONG ? {} : { rowsClicked: 2 };

const startsAt = new Date('2026-06-01T08:00:00Z');

inBrowser('a stroke check by plain forms, with the same log as one by JSON', (open) => {
  const plant = demoPlant({ startsAt });

  for (const tag of CLICKED) {
    test(`${tag} in the line without any script`, { timeout: 300_000 }, async () => {
      const { page } = await open({ origin: plant.server.origin, javaScript: false });
      await signIn(page, inRole(plant.people, 'technician'));
      const id = await doStrokeCheck({
        page,
        ...ROWS,
        plain: true,
        server: plant.server,
        tag,
        place: 'line',
        supervisor: inRole(plant.people, 'supervisor'),
      });
      expect((await plant.server.services.log.state(jobKind, id)).closedAs).toBe('done');
      expect(await comparableJob(plant.server.services.log, id)).toEqual(
        await strokeCheckByJson({ tag, startsAt }),
      );
    });
  }

  // Only the long run does more than a stroke check.
  for (const read of LONG ? [BENCH_SET_READ] : []) {
    test(`${read.procedure} of ${read.tag} without any script, to the signed record`, {
      timeout: 300_000,
    }, async () => {
      const { page } = await open({ origin: plant.server.origin, javaScript: false });
      await signIn(page, inRole(plant.people, 'technician'));
      const id = await doJob({
        ...read,
        page,
        plain: true,
        server: plant.server,
        supervisor: inRole(plant.people, 'supervisor'),
        at: (step, card) => words(page, `${read.tag}-${String(card).padStart(2, '0')}-${step}`),
      });
      const job = await plant.server.services.log.state(jobKind, id);
      expect(job.closedAs).toBe('done');
      expect(job.holds.length).toBeGreaterThan(0);
      await page.goto(`/jobs/${id}/record`);
      expect(await page.locator('body').textContent()).toContain(read.tag);
    });
  }
});
