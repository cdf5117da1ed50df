import { expect, test } from 'vitest';
import { GEAR_IN_PSI } from '../../server/demo/earlier-jobs.ts';
import { DESK, PHONE } from './harness/browser.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { nextTap } from './harness/next-tap.ts';
import { inRole, signIn } from './harness/people.ts';
import { picture } from './harness/picture.ts';
import { faultsOfPage, showWhole } from './harness/whole-page.ts';

inBrowser('finding a fault', (open) => {
  const plant = demoPlant({ startsAt: new Date('2026-06-01T08:00:00Z') });

  test('without any script a hub shows likely causes and the check to make, and a button makes it', async () => {
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
    await page.locator('#sourceKind').waitFor();
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

  test('is practised on a simulated valve to its end, with the cards of the real job and gauges that move', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, inRole(plant.people, 'supervisor'));
    await page.goto('/practice?tag=LV-201');
    await page.getByText('A fault that you choose, for somebody else').click();
    await page.getByText('Choose the fault', { exact: true }).click();
    await page.locator('select[name=cause1]').selectOption('caseJoint');
    await picture(page, 'practice-set');
    const press = async (name: string) => {
      plant.server.wait(30_000);
      // A second press so soon after another counts as the same one.
      await nextTap(page);
      await page.getByRole('button', { name, exact: true }).click();
    };
    await press('Set it and begin');
    await press('Done');
    await page.getByText('The operator says: ').waitFor();
    // The mark of the bench makes the head taller; the card begins below it all the same.
    const edgePx = (selector: string, edge: 'top' | 'bottom') =>
      page.locator(selector).evaluate((one, at) => one.getBoundingClientRect()[at], edge);
    await expect.poll(() => edgePx('#card', 'top')).toBeGreaterThanOrEqual(await edgePx('.head', 'bottom'));
    await picture(page, 'practice-complaint');
    await page.locator('#symptom label').last().click();
    await press('Count it');
    await page.locator('#sourceKind').waitFor();
    await press('Count it');
    await page.locator('input[name=operator]').fill('operator of the bench');
    for (const name of ['consentGiven', 'notLocked']) await page.locator(`#${name} label`).first().click();
    await press('Count it');
    const choose = async (check: string) => {
      await page.locator(`main input[value=${check}] + label`).click();
      await press('Choose it');
    };
    await choose('travelAgainstOutput');
    const pointer = page.locator('#gauge-openedM');
    const before = await pointer.getAttribute('transform');
    await page.locator('#bench-output').fill('20');
    await press('Have the operator set it');
    await expect.poll(() => pointer.getAttribute('transform')).not.toBe(before);
    await showWhole(page, PHONE);
    await picture(page, 'practice-check-phone');
    await showWhole(page, DESK);
    await picture(page, 'practice-check');
    expect(await faultsOfPage(page, ['phone, dark'])).toEqual([]);
    await page.getByText('Skip it', { exact: true }).click();
    await press('Count it');
    await choose('soapCaseJoint');
    await page.getByText('You find: ').waitFor();
    await page.locator('#found label').nth(1).click();
    await press('Count it');
    await page.getByText('What the engine makes of it').click();
    await picture(page, 'practice-hub');
    await page.locator('main input[value=name] + label').click();
    await press('Choose it');
    await page.locator('main input[value=tightenCase] + label').click();
    await press('Count it');
    await page.getByRole('link', { name: 'What was wrong with this valve' }).click();
    await page.getByText('What you named puts it right.').waitFor();
    await page.emulateMedia({ colorScheme: 'dark' });
    await showWhole(page, DESK);
    await picture(page, 'practice-result-dark');
    expect(await faultsOfPage(page, ['desk, dark'])).toEqual([]);
  });
});
