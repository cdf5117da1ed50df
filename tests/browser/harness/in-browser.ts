import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, inject } from 'vitest';
import { type Opened, openBrowser, openPage, type PageOptions } from './browser.ts';

/**
 * A chapter of tests with a browser. Every page that a test opens is watched, and the test fails where anything on
 * it went wrong; where this machine has no browser the chapter is left out, and the run says so.
 *
 * @example
 * inBrowser('the list of valves', (open) => {
 *   test('names every valve', async () => {
 *     const { page } = await open({ origin, viewport: PHONE });
 *     await page.goto('/valves');
 *   });
 * });
 */
export function inBrowser(
  title: string,
  tests: (open: (options?: PageOptions) => Promise<Opened>) => void,
): void {
  const found = inject('chromium');
  // Left out only where the machine has no browser and none can be installed; the run then says so.
  describe.skipIf('missing' in found)(title, () => {
    let browser: Browser | undefined;
    let opened: Opened[] = [];
    beforeAll(async () => {
      browser = await openBrowser(found);
    });
    afterEach(async () => {
      const faults = opened.flatMap(({ watch }) => watch.faults());
      const contexts = new Set<BrowserContext>(opened.map(({ context }) => context));
      opened = [];
      await Promise.all(Array.from(contexts, (context) => context.close()));
      expect(faults, 'what went wrong on the pages of this test').toEqual([]);
    });
    afterAll(async () => {
      await browser?.close();
    });
    tests(async (options) => {
      if (browser === undefined) throw new Error('The browser is not open.');
      const one = await openPage(browser, options);
      opened.push(one);
      return one;
    });
  });
}
