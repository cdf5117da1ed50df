import { afterAll, beforeAll, expect, test } from 'vitest';
import { aFolder } from '../folders.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, menuOf, signIn } from './harness/people.ts';
import { startServer, type TestServer } from './harness/server.ts';
import { ALL_FOUR, faultsOfPage } from './harness/whole-page.ts';

inBrowser('an empty site', (open) => {
  let server: TestServer;
  beforeAll(async () => {
    server = await startServer({ folder: aFolder() });
  });
  afterAll(() => server.close());

  test('offers its first set-up to everybody', async () => {
    const { page } = await open({ origin: server.origin });
    await page.goto('/');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Set up this site');
    expect(await faultsOfPage(page, ALL_FOUR)).toEqual([]);
  });

  test('shows every part in every state', { timeout: 120_000 }, async () => {
    const { page } = await open({ origin: server.origin });
    await page.goto('/style');
    expect(await faultsOfPage(page, ALL_FOUR)).toEqual([]);
  });

  test('says in words what is wrong with a PIN, and keeps the rest of the form', async () => {
    const { page } = await open({ origin: server.origin, javaScript: false });
    await page.goto('/');
    await page.getByLabel('What the plant is called').fill('Plant 7');
    await page.getByLabel('Your name').fill('Engineer 1');
    await page.getByLabel('Your PIN', { exact: true }).fill('111111');
    await page.getByLabel('Your PIN again').fill('111111');
    await page.getByText('I have read it').click();
    await page.getByRole('button', { name: 'Set up this site' }).click();
    expect(await page.getByLabel('What the plant is called').inputValue()).toBe('Plant 7');
    expect(await page.getByLabel('Your PIN', { exact: true }).getAttribute('aria-invalid')).toBe('true');
  });
});

inBrowser('the demo plant', (open) => {
  const plant = demoPlant();

  test('is entered by name and PIN', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await page.goto('/');
    expect(new URL(page.url()).pathname).toBe('/sign-in');
    expect(await faultsOfPage(page, ALL_FOUR)).toEqual([]);
  });

  test('refuses a wrong PIN in words', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await page.goto('/sign-in');
    await page.getByLabel('Name or id').fill('t1');
    await page.getByLabel('PIN', { exact: true }).fill('000000');
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.locator('.refusal').waitFor();
    expect(await page.getByLabel('Name or id').inputValue()).toBe('t1');
    expect(await faultsOfPage(page)).toEqual([]);
  });

  /** Pages that somebody before has gone through are the same page. */
  const gone = new Set<string>();

  test.each(['engineer', 'supervisor', 'safety-officer', 'technician'] as const)(
    // UI-01, UI-04, UI-06, UI-07, UI-08, UI-09, UI-28
    'has pages that everybody can use, for the %s',
    { timeout: 120_000 },
    async (role) => {
      const { page } = await open({ origin: plant.server.origin });
      await signIn(page, inRole(plant.people, role));
      const addresses = [...(await menuOf(page)), '/help'];
      expect(addresses.length).toBeGreaterThan(1);
      for (const address of addresses.filter((one) => !gone.has(one))) {
        gone.add(address);
        const answer = await page.goto(address);
        expect(answer?.status(), address).toBe(200);
        expect(await faultsOfPage(page), address).toEqual([]);
      }
    },
  );
});
