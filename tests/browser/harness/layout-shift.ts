import type { Page } from 'playwright-core';

const SETTLES_MS = 300;

/** How much of the page has moved by itself since its first paint: the sum that browsers measure; 0 where nothing did. */
export async function layoutShift(page: Page): Promise<number> {
  return page.evaluate(
    (settlesMs) =>
      new Promise<number>((resolve) => {
        let sum = 0;
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) sum += (entry as PerformanceEntry & { value: number }).value;
        }).observe({ type: 'layout-shift', buffered: true });
        setTimeout(() => resolve(sum), settlesMs);
      }),
    SETTLES_MS,
  );
}
