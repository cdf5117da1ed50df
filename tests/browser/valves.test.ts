import { expect, test } from 'vitest';
import { valveKind } from '../../server/valves/valve-stream.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, signIn } from './harness/people.ts';
import { faultsOfPage } from './harness/whole-page.ts';

inBrowser('valve sheets', (open) => {
  const plant = demoPlant();

  async function asEngineer(javaScript = true) {
    const { page } = await open({ origin: plant.server.origin, javaScript });
    await signIn(page, inRole(plant.people, 'engineer'));
    return page;
  }

  test('are found, read and drawn by anybody', { timeout: 120_000 }, async () => {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, inRole(plant.people, 'technician'));
    await page.goto('/valves');
    await page.getByLabel('Find by tag').fill('condensate');
    await page.getByRole('button', { name: 'Find' }).click();
    await page.waitForURL((url) => url.searchParams.has('find'));
    expect(await faultsOfPage(page)).toEqual([]);
    await page.goto('/valves/FV-214');
    expect(await page.locator('svg.valve').getAttribute('aria-label')).toContain('plug closes moving down');
    expect(await page.getByText('3 to 15 psi').first().isVisible()).toBe(true);
    expect(await faultsOfPage(page)).toEqual([]);
  });

  test.each([true, false])(
    'are changed by an engineer, with a script: %s',
    { timeout: 120_000 },
    async (javaScript) => {
      const page = await asEngineer(javaScript);
      await page.goto('/valves/FV-214');
      await page.getByRole('link', { name: 'Change the sheet' }).click();
      await page.getByLabel('Rated travel').fill('1,234');
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.locator('.refusal').waitFor();
      expect(await page.getByLabel('Rated travel').inputValue()).toBe('1,234');
      expect(await page.getByText('may mean 1.234 or 1234').first().isVisible()).toBe(true);
      if (javaScript) expect(await faultsOfPage(page)).toEqual([]);
      await page.getByLabel('Rated travel').fill('0.75');
      await page.getByLabel('Notes').fill(`Supply cock behind the east column. ${javaScript}`);
      await page.getByRole('button', { name: 'Save the sheet' }).click();
      await page.waitForURL((url) => url.pathname === '/valves/FV-214');
      const { sheet } = await plant.server.services.log.state(valveKind, 'FV-214');
      expect(sheet?.notes).toBe(`Supply cock behind the east column. ${javaScript}`);
    },
  );

  test('come in as a table: wrong cells named, then shown, then saved', { timeout: 120_000 }, async () => {
    const page = await asEngineer();
    const table = await (await page.request.get('/valves/sheets.csv?units=us')).text();
    await page.goto('/valves/tables');
    await page.getByLabel('Table or JSON').fill(table.replace('FV-214,', 'FV-214/A,'));
    await page.getByRole('button', { name: 'Show what it would change' }).click();
    await page.locator('#table-faults').waitFor();
    expect(await page.getByText('is no tag').first().isVisible()).toBe(true);
    expect(await faultsOfPage(page)).toEqual([]);
    await page.getByLabel('Table or JSON').fill(table.replace('FV-214,', 'FV-215,'));
    await page.getByRole('button', { name: 'Show what it would change' }).click();
    await page.getByRole('heading', { name: 'Nothing is saved yet' }).waitFor();
    expect(await faultsOfPage(page)).toEqual([]);
  });
});
