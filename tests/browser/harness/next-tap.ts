import type { Page } from 'playwright-core';

/** With the page's script, a second tap within half a second counts as one. */
const TWICE_MS = 550;

const postedAtMs = new WeakMap<Page, number>();

/** Remembers when each act of the page was sent. */
export function noteTaps(page: Page): void {
  page.on('request', (request) => {
    if (request.method() === 'POST') postedAtMs.set(page, performance.now());
  });
}

/** Waits until a tap counts as another one than the last; not at all where that is long enough ago. */
export async function nextTap(page: Page): Promise<void> {
  const leftMs = (postedAtMs.get(page) ?? Number.NEGATIVE_INFINITY) + TWICE_MS - performance.now();
  if (leftMs > 0) await page.waitForTimeout(leftMs);
}
