import type { Page } from 'playwright-core';

/** What a screen reader is given to say, by step: results before the card, then the card, its warning, its acts, its button. */
const ORDER: Readonly<Record<string, readonly string[]>> = {
  openBypass: ['.line .verdict', '#card-heading', '.signal__word', '.do > li', '#card form .button--main'],
  holdWork: ['.line .verdict', '#card-heading', '.evidence__state', '.signature h3', '.button--sign'],
};

/**
 * What is not in the tree that the browser hands to screen readers, or stands there before what it belongs behind.
 *
 * @returns nothing for steps that are not listed above
 */
export async function faultsAsHeard(page: Page, step: string): Promise<readonly string[]> {
  const heard = await page.locator('main').ariaSnapshot();
  const faults: string[] = [];
  let from = 0;
  for (const selector of ORDER[step] ?? []) {
    // Its last words: a mark and the number of a lock before them are things of their own.
    const text = await page
      .locator(selector)
      .first()
      .evaluate((element) => element.lastChild?.textContent?.trim() ?? '');
    const at = heard.indexOf(text, from);
    if (text === '' || at < 0)
      faults.push(`${step}: ${selector}, "${text}", is not heard after what comes before it`);
    else from = at + text.length;
  }
  return faults;
}
