import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { jobKind } from '../../server/jobs/job-stream.ts';
import { comparableJob } from '../builders/comparable-log.ts';
import { strokeCheckByJson } from './harness/by-json.ts';
import { focusFaults } from './harness/by-keys.ts';
import { CYLINDER_CALIBRATED, POSITIONER_CALIBRATED } from './harness/commissioned.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { doJob, doStrokeCheck } from './harness/do-job.ts';
import { faultsAsHeard } from './harness/heard.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, signIn } from './harness/people.ts';
import { picture, words } from './harness/picture.ts';
import { faultsOfPage } from './harness/whole-page.ts';

/** The four ways of plug and air stand in the demo plant as FV-101 to FV-104. */
const ALL = ['FV-101', 'FV-102', 'FV-103', 'FV-104'];
/** The long run does all four, the ordinary run one. */
const LONG = process.env.YOKESIDE_LONG === '1';
const CLICKED = LONG ? ALL : ALL.slice(0, 1);
const ROWS = LONG ? {} : { rowsClicked: 2 };

/** Cards on which everything that a machine can say about the page is asked. */
const IN_ANY_RUN = ['holdWork:0', 'asFoundCycle:1', 'closed:0'];
const LOOKED_AT = LONG
  ? [...IN_ANY_RUN, 'openBypass:0', 'otherEnergies:0', 'asFoundCycle:6', 'asFoundVerdict:0', 'turnStem:0']
  : IN_ANY_RUN;

/** The open card begins in the upper half of the screen, whatever the last one was; the last card of all has little below it. */
const IN_REACH_PX = 400;

/** A card is brought there once it stands: so long is waited for the first that is not, and a moment for those behind it. */
const PATIENCE_MS = { first: 10_000, later: 1000 };
async function comesInReach(page: Page, patienceMs: number): Promise<boolean> {
  const isInReach = (px: number) => {
    const top = document.querySelector('#card')?.getBoundingClientRect().top ?? -1;
    return top >= 0 && top <= px;
  };
  const found = page.waitForFunction(isInReach, IN_REACH_PX, { timeout: patienceMs, polling: 50 });
  return found.then(
    () => true,
    () => false,
  );
}

const startsAt = new Date('2026-06-01T08:00:00Z');

inBrowser('a stroke check of the demo plant by clicking, with the same log as one by JSON', (open) => {
  const plant = demoPlant({ startsAt });

  for (const tag of CLICKED) {
    test(`${tag} in the line, to the signed record, each card read out in the order of the work (UI-21)`, {
      timeout: 300_000,
    }, async () => {
      const { page } = await open({ origin: plant.server.origin });
      await signIn(page, inRole(plant.people, 'technician'));
      const faults: string[] = [];
      const outOfReach: string[] = [];
      const asHeard: string[] = [];
      const id = await doStrokeCheck({
        ...ROWS,
        page,
        server: plant.server,
        tag,
        place: 'line',
        supervisor: inRole(plant.people, 'supervisor'),
        at: async (step, row) => {
          const patienceMs = outOfReach.length === 0 ? PATIENCE_MS.first : PATIENCE_MS.later;
          if (!(await comesInReach(page, patienceMs))) outOfReach.push(`${step}:${row}`);
          asHeard.push(...(await faultsAsHeard(page, step)));
          if (!LOOKED_AT.includes(`${step}:${row}`)) return;
          faults.push(...(await faultsOfPage(page)).map((fault) => `${step}: ${fault}`));
          await page.reload();
        },
      });
      expect(faults).toEqual([]);
      expect(outOfReach).toEqual([]);
      expect(asHeard).toEqual([]);
      const job = await plant.server.services.log.state(jobKind, id);
      expect(job.closedAs).toBe('done');
      expect(job.holds.length).toBe(2);
      await page.getByRole('link', { name: 'Open the record' }).click();
      await page.waitForURL(/record/);
      expect(await page.locator('body').textContent()).toContain(tag);
      expect(await comparableJob(plant.server.services.log, id)).toEqual(
        await strokeCheckByJson({ tag, startsAt }),
      );
    });
  }

  // A whole job by keys takes three minutes: the long run does it, the ordinary run goes through one card.
  test.runIf(LONG)('FV-103 in the line by the keyboard alone (UI-11)', { timeout: 900_000 }, async () => {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, inRole(plant.people, 'technician'));
    const faults: string[] = [];
    const id = await doStrokeCheck({
      page,
      server: plant.server,
      tag: 'FV-103',
      place: 'line',
      byKeys: true,
      supervisor: inRole(plant.people, 'supervisor'),
      at: async () => {
        faults.push(...(await focusFaults(page)));
      },
    });
    expect(faults).toEqual([]);
    expect((await plant.server.services.log.state(jobKind, id)).closedAs).toBe('done');
  });

  // Only the long run does more than a stroke check.
  for (const read of LONG ? [POSITIONER_CALIBRATED, CYLINDER_CALIBRATED] : []) {
    test(`${read.procedure} of ${read.tag}, ${read.place}, to the record`, { timeout: 300_000 }, async () => {
      const { page } = await open({ origin: plant.server.origin });
      await signIn(page, inRole(plant.people, 'technician'));
      const faults: string[] = [];
      const id = await doJob({
        ...read,
        page,
        server: plant.server,
        supervisor: inRole(plant.people, 'supervisor'),
        at: async (step, card) => {
          await words(page, `${read.tag}-${String(card).padStart(2, '0')}-${step}`);
          await picture(page, `${read.tag}-${String(card).padStart(2, '0')}-${step}`);
          faults.push(...(await faultsOfPage(page)).map((fault) => `${step}: ${fault}`));
        },
      });
      expect(faults).toEqual([]);
      expect((await plant.server.services.log.state(jobKind, id)).closedAs).toBe('done');
      await page.getByRole('link', { name: 'Open the record' }).click();
      await page.waitForURL(/record/);
      await picture(page, `${read.tag}-record`);
      expect(await page.locator('body').textContent()).toContain('zero, % of travel');
    });
  }
});
