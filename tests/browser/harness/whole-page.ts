import type { Page } from 'playwright-core';
import { axeViolations, smallTargets, sticksOut, widenText } from './axe.ts';
import { DESK, NARROWEST, ON_ITS_SIDE, PHONE } from './browser.ts';

/**
 * As wide as the screen and as tall as the page: what sticks to an edge of the screen would else lie half over
 * whatever is there at the moment, and a control that can be scrolled free would count as hidden.
 */
export async function showWhole(
  page: Page,
  screen: { readonly width: number; readonly height: number },
  tallestPx = Number.POSITIVE_INFINITY,
): Promise<void> {
  await page.setViewportSize(screen);
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({
    width: screen.width,
    height: Math.max(screen.height, Math.min(height, tallestPx)),
  });
}

const LOOKS = {
  'desk, light': { screen: DESK, colorScheme: 'light' },
  'phone, dark': { screen: PHONE, colorScheme: 'dark' },
  'desk, dark': { screen: DESK, colorScheme: 'dark' },
  'phone, light': { screen: PHONE, colorScheme: 'light' },
} as const;

export type Look = keyof typeof LOOKS;

/** Each screen once and each theme once. */
const TWO: readonly Look[] = ['desk, light', 'phone, dark'];
export const ALL_FOUR = Object.keys(LOOKS) as readonly Look[];
const isLong = process.env.YOKESIDE_LONG === '1';

/**
 * The long run looks at each page at a desk in light and on a phone in dark. The ordinary run takes turns between the
 * two: pages are made of the same parts, and each part is looked at both ways on one page or another.
 */
let turn = 0;
function byTurns(): readonly Look[] {
  turn += 1;
  return isLong ? TWO : TWO.filter((_, at) => at === turn % 2);
}

/**
 * Everything that a machine can say about a page as it stands: what axe finds at each look (in the second theme of a screen
 * only what colours can break), sideways scrolling down to
 * the narrowest screen and with the reader's own text spacing, and small targets.
 * The page is left as wide as a desk, with that spacing: load it anew to go on.
 */
export async function faultsOfPage(
  page: Page,
  looks: readonly Look[] = byTurns(),
): Promise<readonly string[]> {
  const faults: string[] = [];
  const seen = new Set<object>();
  for (const look of looks) {
    const { screen, colorScheme } = LOOKS[look];
    await page.emulateMedia({ colorScheme });
    await showWhole(page, screen);
    const what = seen.has(screen) ? 'colours' : 'all';
    seen.add(screen);
    faults.push(...(await axeViolations(page, what)).map((fault) => `${look}: ${fault}`));
  }
  await page.emulateMedia({ colorScheme: 'light' });
  faults.push(...(await smallTargets(page)));
  faults.push(...(await tornApart(page)));
  for (const screen of [PHONE, ON_ITS_SIDE, NARROWEST]) {
    await page.setViewportSize(screen);
    faults.push(...(await sticksOut(page)).map((fault) => `${screen.width} px: ${fault}`));
  }
  await widenText(page);
  faults.push(...(await sticksOut(page)).map((fault) => `wide text: ${fault}`));
  await page.setViewportSize(DESK);
  return faults;
}

/** A tag that is kept whole by an element of its own tears a text apart whose container lays its pieces out side by side. */
async function tornApart(page: Page): Promise<readonly string[]> {
  const texts = await page
    .locator('.whole')
    .evaluateAll((tags) =>
      tags.flatMap(({ parentElement }) =>
        parentElement !== null && /flex|grid/.test(getComputedStyle(parentElement).display)
          ? [parentElement.textContent ?? '']
          : [],
      ),
    );
  return texts.map((text) => `torn apart at a tag: ${text}`);
}
