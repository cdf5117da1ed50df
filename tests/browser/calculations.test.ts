import { expect, test } from 'vitest';
import { calculationOf } from '../../procedures/calculations/registry.ts';
import { exampleTexts } from '../server/calculations/examples.ts';
import { PHONE } from './harness/browser.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, signIn } from './harness/people.ts';
import { faultsOfPage } from './harness/whole-page.ts';

/** One of each kind: figures, a curve with a pasted table, a circle of bolts, a long list of words. */
const IN_ANY_RUN = ['bench-set', 'step-response', 'cross-pattern', 'energy-in-plain-terms'];
const LOOKED_AT =
  process.env.YOKESIDE_LONG === '1'
    ? [
        ...IN_ANY_RUN,
        'nozzle-back-pressure',
        'forces-at-lift',
        'stroke-table',
        'seat-leak-gas',
        'torque-passes',
      ]
    : IN_ANY_RUN;

inBrowser('the calculations', (open) => {
  const plant = demoPlant();

  async function opened(options: Parameters<typeof open>[0] = {}) {
    const { page } = await open({ origin: plant.server.origin, ...options });
    await signIn(page, inRole(plant.people, 'technician'));
    return page;
  }

  test.each(LOOKED_AT)('can be used by everybody: %s', { timeout: 120_000 }, async (id) => {
    const page = await opened();
    const texts = exampleTexts(calculationOf(id));
    const answer = await page.goto(`/calculations/${id}?${new URLSearchParams(texts)}`);
    expect(answer?.status()).toBe(200);
    expect(await faultsOfPage(page)).toEqual([]);
  });

  test('work out as one types, keep it in the address, and say beside the field what cannot be', async () => {
    const page = await opened();
    await page.goto('/calculations/bench-set?valve=FV-101');
    const result = page.locator('#result');
    await expect.poll(() => result.textContent()).toContain('1600.0 lbf/in');
    const travel = page.getByLabel('Travel', { exact: false }).first();
    await travel.fill('1.5 in');
    await expect.poll(() => result.textContent()).toContain('800.0 lbf/in');
    await expect.poll(() => new URL(page.url()).searchParams.get('travelM')).toBe('1.5 in');
    // Told in short to who cannot see it; the whole page below is not read out each time.
    await expect
      .poll(() => page.locator('#calc-told').textContent())
      .toContain('Spring rate: 140.10 N/mm, 800.0 lbf/in.');
    expect(await travel.evaluate((field) => field === document.activeElement)).toBe(true);
    await travel.fill('0');
    await expect.poll(() => page.locator('#travelM-error').textContent()).toContain('0 cannot be');
    expect(await travel.inputValue()).toBe('0');
    expect(await faultsOfPage(page)).toEqual([]);
    await expect.poll(() => new URL(page.url()).searchParams.get('travelM')).toBe('0');
    await page.reload();
    expect(await page.locator('#travelM').inputValue()).toBe('0');
    expect(await page.locator('#travelM').getAttribute('aria-invalid')).toBe('true');
    await page.locator('#travelM').fill('0,75 in');
    await expect.poll(() => result.textContent()).toContain('1600.0 lbf/in');
    await expect.poll(() => page.locator('#travelM-error').textContent()).toBe('');
  });

  test('take a pasted record, draw it, and lead to it as a link', async () => {
    const page = await opened({ viewport: PHONE });
    await page.goto('/calculations/step-response');
    await page.getByLabel('Samples').fill('time [ms];travel\n0;50\n1200;50\n2200;60\n4000;60');
    await page.getByLabel('Time of the input step').fill('1');
    await expect.poll(() => page.locator('#result').textContent()).toContain('0.8321 s');
    expect(await page.locator('#result svg').getAttribute('aria-label')).toContain('T63');
    const href = await page.getByRole('link', { name: 'This calculation as a link' }).getAttribute('href');
    await page.goto(href ?? '');
    expect(await page.getByLabel('Samples').inputValue()).toContain('1200;50');
    expect(await page.locator('#result').textContent()).toContain('0.8321 s');
  });

  test('work with a plain button where there is no script', async () => {
    const page = await opened({ javaScript: false });
    await page.goto('/calculations/step-response');
    await page.getByLabel('Samples').fill('0;50\n1,2;50\n2,2;60\n4;60');
    await page.getByLabel('Time of the input step').fill('1');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.waitForURL((url) => url.searchParams.get('stepTimeS') === '1');
    expect(await page.locator('#result').textContent()).toContain('0.8321 s');
    await page.goto('/calculations/bench-set');
    await page.locator('#travelM').fill('3/4');
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.waitForURL((url) => url.searchParams.get('travelM') === '3/4');
    expect(await page.locator('#travelM').inputValue()).toBe('3/4');
    expect(await page.locator('#travelM-error').textContent()).toContain('Write 0.75');
  });
});
