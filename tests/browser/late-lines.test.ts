import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { jobKind } from '../../server/jobs/job-stream.ts';
import { PHONE } from './harness/browser.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { nextTap } from './harness/next-tap.ts';
import { inRole, signIn } from './harness/people.ts';
import { picture } from './harness/picture.ts';
import { faultsOfPage } from './harness/whole-page.ts';

/** What a look at a new valve asks before it is looked over. */
const BEFORE: readonly Readonly<Record<string, string>>[] = [
  { step: 'needs' },
  { step: 'noLock', notLocked: 'yes' },
  { step: 'consent', operator: 'shift operator', consentGiven: 'yes' },
];

inBrowser('lines that are written late, or anew', (open) => {
  const plant = demoPlant({ startsAt: new Date('2026-06-01T08:00:00Z') });
  const jobOf = (id: string) => plant.server.services.log.state(jobKind, id);

  async function post(page: Page, path: string, data: object): Promise<{ readonly job: string }> {
    const headers = { origin: plant.server.origin, accept: 'application/json' };
    const answer = await page.request.post(path, { headers, data });
    if (!answer.ok()) throw new Error(await answer.text());
    return (await answer.json()) as { readonly job: string };
  }

  test('of several cards are entered with one tap after a walk round the valve, on a phone', async () => {
    const { page } = await open({ origin: plant.server.origin, viewport: PHONE });
    await signIn(page, inRole(plant.people, 'technician'));
    const opened = { tag: 'FV-101', procedure: 'first-commissioning', place: 'line' };
    const { job: id } = await post(page, '/jobs', opened);
    for (const answer of BEFORE)
      await post(page, `/jobs/${id}/acts`, {
        act: 'answer',
        place: String((await jobOf(id)).place),
        ...answer,
      });
    await page.goto(`/jobs/${id}`);
    const group = page.locator('details.together');
    const cards = group.locator('.asks');
    await group.locator('summary').first().click();
    expect(await cards.count()).toBe(5);
    const enter = group.getByRole('button', { name: 'Enter them together' });

    // Plates and flow as they should be; the handwheel is not; the rest is not looked at yet.
    for (const card of [0, 1])
      for (const yes of await cards.nth(card).getByText('Yes', { exact: true }).all()) await yes.click();
    for (const [index, fieldset] of (await cards.nth(2).locator('fieldset').all()).entries())
      await fieldset.getByText(index === 0 ? 'No' : 'Yes', { exact: true }).click();
    await cards.nth(0).getByLabel('Done at, hour and minute, UTC').fill('07:55');
    await enter.click();
    // A time that lies before now wants its reason: nothing is counted, all of it stands there still.
    await expect.poll(() => page.locator('#lateReason-error').count()).toBe(1);
    expect((await jobOf(id)).step).toBe('plate');
    expect(await cards.nth(2).getByLabel('No', { exact: true }).first().isChecked()).toBe(true);
    await picture(page, 'one-go-refused');
    expect(await faultsOfPage(page)).toEqual([]);

    await page.getByLabel('Why it was not written then').last().fill('Both hands were full.');
    await nextTap(page);
    await enter.click();
    await expect.poll(async () => (await jobOf(id)).step).toBe('actuator');
    const { answers } = await jobOf(id);
    const last = answers.slice(-2);
    expect(last.map(({ step, late }) => [step, late?.reason])).toEqual([
      ['plate', 'Both hands were full.'],
      ['flow', undefined],
    ]);
    expect(new Set(last.map(({ together }) => together?.first)).size).toBe(1);
    // Its own card says why it stands open, and takes the answer that leads elsewhere.
    await expect.poll(() => page.locator('#card .refusal').textContent()).toMatch(/RPL-013.*handwheel/s);
    await picture(page, 'one-go-stopped');
  });

  test('corrected, a line has the cursor in the first field that is wrong, and what was typed', async () => {
    const { page } = await open({ origin: plant.server.origin, viewport: PHONE });
    await signIn(page, inRole(plant.people, 'technician'));
    await page.goto('/jobs/12/lines/16');
    const field = page.locator('form[action="/jobs/12/acts"] input[inputmode="decimal"]').first();
    await field.fill('nine');
    await page.getByRole('button', { name: 'Correct line 16' }).click();
    await page.locator('#reason-error').waitFor();
    expect(await field.inputValue()).toBe('nine');
    expect(await field.evaluate((one) => one === document.activeElement)).toBe(true);
  });
});
