import { expect, test } from 'vitest';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { inRole, menuOf, signIn } from './harness/people.ts';

inBrowser('a browser', (open) => {
  const plant = demoPlant();

  test('with no network but this server shows every page whole (WS-35)', { timeout: 120_000 }, async () => {
    const { page, context } = await open({ origin: plant.server.origin });
    const elsewhere: string[] = [];
    const missing: string[] = [];
    await context.route('**', (route) => {
      const { origin } = new URL(route.request().url());
      if (origin === plant.server.origin) return route.continue();
      elsewhere.push(route.request().url());
      return route.abort();
    });
    page.on('response', (response) => {
      if (response.status() >= 400) missing.push(response.url());
    });
    // What is still on its way when a page is left is cut by the browser (the live channel always is): not missing.
    page.on('requestfailed', (request) => {
      if (request.failure()?.errorText !== 'net::ERR_ABORTED') missing.push(request.url());
    });
    await signIn(page, inRole(plant.people, 'engineer'));
    const addresses = [
      ...(await menuOf(page)),
      '/help',
      '/people/review',
      '/screens',
      '/drafts',
      '/valves/FV-214',
      '/jobs/12',
    ];
    for (const address of addresses) {
      await page.goto(address, { waitUntil: 'load' });
      // Fetched once the page stands, and so a part of the whole page.
      await page.waitForFunction(() =>
        performance.getEntriesByType('resource').some(({ name }) => name.endsWith('/later.js')),
      );
    }
    expect([elsewhere, missing]).toEqual([[], []]);
    // The live channel of the last page is still asked through it as the page is shut.
    await context.unrouteAll({ behavior: 'ignoreErrors' });
  });

  test('runs no script that somebody got into a page (WS-32)', async () => {
    const { context } = await open({ origin: plant.server.origin });
    // Of its own, because here the breach is what is wanted.
    const unwatched = await context.browser()?.newContext({ baseURL: plant.server.origin });
    if (unwatched === undefined) throw new Error('The browser is not open.');
    const page = await unwatched.newPage();
    await page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', (event) => {
        console.log(`policy ${event.effectiveDirective} breached`);
      });
    });
    await page.route('**/help', async (route) => {
      const answer = await route.fetch();
      const text = (await answer.text()).replace(
        '</main>',
        '<script>document.title="run"</script><img src="/nowhere.png" onerror="document.title=\'run\'"></main>',
      );
      const headers = { ...answer.headers() };
      delete headers['content-encoding'];
      delete headers['content-length'];
      await route.fulfill({ response: answer, headers, body: text });
    });
    const breaches: string[] = [];
    page.on('console', (message) => {
      if (/policy .* breached/.test(message.text())) breaches.push(message.text());
    });
    await page.goto('/help');
    await expect.poll(() => breaches.length).toBeGreaterThanOrEqual(2);
    expect(await page.title()).not.toBe('run');
    await unwatched.close();
  });
});
