import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import type { DemoPerson } from '../../server/pages/set-up.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { signIn } from './harness/people.ts';
import { faultsOfPage } from './harness/whole-page.ts';

/** The job that the demo plant leaves locked, by technician 2. */
const JOB = 12;
const LABELS = ['IA-302-1', 'HV-302A', 'HV-302B'];

inBrowser('locks of the demo plant', (open) => {
  const plant = demoPlant();

  const personOf = (id: string): DemoPerson => {
    const found = plant.people.find((person) => person.id === id);
    if (found === undefined) throw new Error(`the demo plant has no ${id}`);
    return found;
  };

  async function as(id: string, javaScript = true): Promise<Page> {
    const { page } = await open({ origin: plant.server.origin, javaScript });
    await signIn(page, personOf(id));
    return page;
  }

  /** Labels and numbers as a scanner sends them: letters, then Enter. */
  async function scan(page: Page, texts: readonly string[]): Promise<void> {
    for (const text of texts) {
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    }
  }

  test('are on pages that everybody can use', { timeout: 120_000 }, async () => {
    const page = await as('s1');
    for (const address of [
      '/points',
      '/points?find=XV-1',
      `/points/${LABELS[0]}`,
      '/points/tables',
      `/jobs/${JOB}/people`,
      `/jobs/${JOB}/people/away?owner=t2`,
    ]) {
      expect((await page.goto(address))?.status(), address).toBe(200);
      expect(await faultsOfPage(page), address).toEqual([]);
    }
  });

  test('are found by scanning the label of a point (UI-32)', async () => {
    const page = await as('t1');
    await page.goto('/points');
    // The field takes the scanner by itself, with the first frame that is drawn.
    await page.locator('[name="find"]:focus').waitFor();
    await scan(page, ['hv-302a']);
    await page.waitForURL('**/points/HV-302A');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('HV-302A');
  });

  test('are scanned one after the other when somebody joins, and a wrong label is said in its field', async () => {
    const page = await as('t1');
    await page.goto(`/jobs/${JOB}/people`);
    const join = page.locator('#join');
    await join.getByLabel('Scan or write its label').first().focus();
    // The labels of inlet and outlet in the wrong order: both points stand side by side.
    await scan(page, ['IA-302-1', '41', 'HV-302B', '42', 'HV-302A', '43']);
    await join.getByText('I rest on the readings above').click();
    await join.getByLabel('Who joins').fill('t1');
    await join.getByLabel('Their PIN').fill(personOf('t1').pin);
    await join.getByRole('button', { name: 'My locks are on: join' }).click();
    await page.locator('.refusal').waitFor();
    const wrong = join.locator('[aria-invalid="true"]');
    expect(await wrong.getAttribute('name')).toBe('inletLockTag');
    expect(await faultsOfPage(page)).toEqual([]);
    await page.setViewportSize({ width: 1280, height: 800 });
    await wrong.fill('HV-302A');
    await join.locator('[name="outletLockTag"]').fill('HV-302B');
    await join.getByText('I rest on the readings above').click();
    await join.getByLabel('Their PIN').fill(personOf('t1').pin);
    await join.getByRole('button', { name: 'My locks are on: join' }).click();
    const people1 = page.locator('#people');
    await people1.getByText('Technician 1 (T1)').waitFor();
    expect(await people1.getByText('42 on HV-302A', { exact: false }).count()).toBe(1);
  });

  test('are handed over without any script, both people at one screen', async () => {
    const page = await as('t2', false);
    await page.goto(`/jobs/${JOB}/people`);
    const form = page.locator('#hand-over');
    await form.getByLabel('Who takes it on').fill('t1');
    await form.getByLabel('Their PIN').fill(personOf('t1').pin);
    await form.getByRole('button', { name: 'Both sets of locks seen: hand over' }).click();
    const rows = page.locator('#people tbody tr');
    await rows.filter({ hasText: 'Technician 1 (T1)' }).waitFor();
    expect(await rows.count()).toBe(1);
  });

  test('come off in the owner’s absence with every reason, and the owner reads it until they say so', async () => {
    const page = await as('s1');
    await page.goto(`/jobs/${JOB}/people`);
    await page.getByRole('link', { name: 'Owner is away' }).click();
    await page.getByLabel('How you know that they are not on site').fill('signed out at the gate at 14:10');
    await page.getByLabel('How you tried to reach them').fill('rang twice, no answer');
    await page
      .getByLabel('Who tells them before their next shift, and how')
      .fill('supervisor 2, at the gate');
    await page.getByLabel('Why the locks must come off').fill('the job waits for the night shift');
    await page.getByLabel('Your PIN').fill(personOf('s1').pin);
    await page.getByRole('button', { name: 'Take the locks off' }).click();
    await page.getByText('No lock hangs for this job.').waitFor();
    await page.goto('/points');
    expect(await page.locator('#removals tbody').textContent()).toContain('rang twice, no answer');
    const owner = await as('t1');
    await owner.goto('/shift');
    await owner.getByRole('link', { name: 'Read why' }).click();
    await owner.getByRole('button', { name: 'I know of this' }).waitFor();
    expect(await faultsOfPage(owner)).toEqual([]);
    await owner.getByRole('button', { name: 'I know of this' }).click();
    await owner.getByText('Nobody took a lock of yours off').waitFor();
  });
});
