import type { Page } from 'playwright-core';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import type { Texts } from '../../builders/stroke-script.ts';

/** More stops than any page has. */
const STOPS_MAX = 150;

/** Goes on by the Tab key to the first stop that fits the selector. @throws Error where none is reached */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let stops = 0; stops < STOPS_MAX; stops += 1) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${selector} is not reached by the Tab key.`);
}

/** Chooses among radio buttons of a name with the arrow keys, once one of them has the focus. */
async function chooseByKeys(page: Page, { name, value }: { name: string; value: string }): Promise<void> {
  await tabTo(page, `#card [name="${name}"]`);
  await page.keyboard.press('Space');
  for (let presses = 0; presses < 20; presses += 1) {
    const isChosen = await page.evaluate(
      (wanted) =>
        document.activeElement instanceof HTMLInputElement && document.activeElement.value === wanted,
      value,
    );
    if (isChosen) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`${value} of ${name} is not reached by the arrow keys.`);
}

/** Chooses a line of a list that drops down, by its value. */
export async function selectByKeys(page: Page, selector: string, value: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.press('Home');
  for (let presses = 0; presses < 60; presses += 1) {
    if ((await page.locator(selector).inputValue()) === value) return;
    await page.keyboard.press('ArrowDown');
  }
  throw new Error(`${value} is not reached by the arrow keys.`);
}

/** Presses a button with Enter. */
export async function pressByKeys(page: Page, selector: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.press('Enter');
}

/** Fills in the open card and sends it, or signs it. */
export async function answerByKeys(
  page: Page,
  card: { readonly isSigned: boolean; readonly supervisor: DemoPerson; readonly texts: Texts },
): Promise<void> {
  const { supervisor, texts } = card;
  if (card.isSigned) {
    await selectByKeys(page, 'select[name=signer]', supervisor.id);
    await tabTo(page, '.signature input[name=pin]');
    await page.keyboard.type(supervisor.pin);
    return pressByKeys(page, '.button--sign');
  }
  for (const [name, value] of Object.entries(texts)) {
    const isRadio = (await page.locator(`#card [name="${name}"]`).first().getAttribute('type')) === 'radio';
    if (isRadio) await chooseByKeys(page, { name, value });
    else await typeInto(page, { selector: `#card [name="${name}"]`, value });
  }
  return pressByKeys(page, '#card form .button--main');
}

async function typeInto(
  page: Page,
  field: { readonly selector: string; readonly value: string },
): Promise<void> {
  await tabTo(page, field.selector);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(field.value);
}

/**
 * What is wrong with how the focus is seen where it stands: off the screen, under something that stays there, or
 * without a ring.
 */
export async function focusFaults(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return [];
    const name = element.outerHTML.slice(0, 90);
    // Of a box with its label, and of a link over two lines, one part in sight is enough.
    const labels = element instanceof HTMLInputElement ? [...(element.labels ?? [])] : [];
    const isSeen = [element, ...labels].some((part) =>
      [...part.getClientRects()].some((box) => {
        const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
        if (box.width < 2 || x < 0 || y < 0 || x > innerWidth || y > innerHeight) return false;
        const top = document.elementFromPoint(x, y);
        return (
          top !== null &&
          (part.contains(top) || top.contains(part) || labels.includes(top as HTMLLabelElement))
        );
      }),
    );
    const rings = [element, ...labels, element.parentElement ?? element].map((part) =>
      getComputedStyle(part),
    );
    const hasRing = rings.some(
      ({ outlineStyle, outlineWidth }) => outlineStyle !== 'none' && outlineWidth !== '0px',
    );
    // A heading that reading goes on at is no control: the open card shows where that is.
    const needsRing = element.getAttribute('tabindex') !== '-1';
    return [
      ...(isSeen ? [] : [`out of sight: ${name}`]),
      ...(hasRing || !needsRing ? [] : [`no ring: ${name}`]),
    ];
  });
}

/** Goes through a page by the Tab key from its top to its end. @returns what {@link focusFaults} finds at each stop */
export async function tabThrough(page: Page): Promise<{ stops: number; faults: readonly string[] }> {
  await page.evaluate(() => {
    window.scrollTo(0, 0);
    (document.activeElement as HTMLElement | null)?.blur();
  });
  const faults: string[] = [];
  for (let stops = 0; stops < STOPS_MAX; stops += 1) {
    await page.keyboard.press('Tab');
    if (await page.evaluate(() => document.activeElement === document.body)) return { stops, faults };
    faults.push(...(await focusFaults(page)));
  }
  return { stops: STOPS_MAX, faults: [...faults, 'the keyboard does not come to the end of the page'] };
}
