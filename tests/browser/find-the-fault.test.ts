import { expect, test } from 'vitest';
import { GEAR_IN_PSI } from '../../server/demo/earlier-jobs.ts';
import { DESK, PHONE } from './harness/browser.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, signIn } from './harness/people.ts';
import { picture } from './harness/picture.ts';
import { faultsOfPage, showWhole } from './harness/whole-page.ts';

inBrowser('finding a fault, without any script', (open) => {
  const plant = demoPlant({ startsAt: new Date('2026-06-01T08:00:00Z') });

  test('a hub shows likely causes and the check to make, and a button makes it', {
    timeout: 60_000,
  }, async () => {
    const { page } = await open({ origin: plant.server.origin, javaScript: false });
    await signIn(page, inRole(plant.people, 'technician'));
    await page.goto('/jobs/new?tag=FV-101&procedure=find-the-fault&place=line');
    for (const [role, number] of Object.entries(GEAR_IN_PSI)) {
      const select = page.locator(`select[name=${role}]`);
      if ((await select.count()) > 0) await select.selectOption(number);
    }
    const press = async (name: string) => {
      plant.server.wait(30_000);
      await page.getByRole('button', { name, exact: true }).click();
    };
    await press('Open the job');
    await press('Done');
    await page.getByText('Does not move', { exact: true }).click();
    await page.locator('input[name=outputPercent]').fill('100 %');
    await page.locator('input[name=signalSeenPa]').fill('12 psi');
    await press('Count it');
    await press('Count it');
    await page.locator('input[name=operator]').fill('shift operator');
    for (const name of ['consentGiven', 'notLocked']) await page.locator(`#${name} label`).first().click();
    await press('Count it');
    await page.locator('.next-check').waitFor();
    expect(await page.locator('.causes tbody tr').count()).toBeGreaterThan(1);
    const looker = await open({ origin: plant.server.origin });
    await signIn(looker.page, inRole(plant.people, 'safety-officer'));
    await looker.page.goto(new URL(page.url()).pathname);
    await showWhole(looker.page, DESK);
    await picture(looker.page, 'fault-hub-desk');
    expect(await faultsOfPage(looker.page)).toEqual([]);
    await looker.page.emulateMedia({ colorScheme: 'dark' });
    await showWhole(looker.page, PHONE);
    await picture(looker.page, 'fault-hub-phone-dark');
    await press('Do this check');
    await page.locator('input[name=found]').first().waitFor({ state: 'attached' });
    await picture(page, 'fault-check');
    await page.getByText('Skip it', { exact: true }).click();
    await press('Count it');
    await page.locator('.next-check').waitFor();
  });
});
