import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { aFolder } from '../folders.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { faintTexts, smallLetters } from './harness/letters.ts';
import { inRole, menuOf, signIn } from './harness/people.ts';
import { startServer, type TestServer } from './harness/server.ts';
import { enterState } from './harness/states.ts';
import { ALL_FOUR, faultsOfPage } from './harness/whole-page.ts';

const LONG = process.env.YOKESIDE_LONG === '1';

/** How large what is read at arm’s length is set; nothing at all is smaller than the last. */
const LEAST_PX = {
  '.card__minutes b, .shift-row__time': 34,
  '.card__say h2, .shift-row__tag, .title-block__value--tag, .findings__value, .pin-keys [data-key]:not(.pin-keys__word)': 24,
  '.button--main, input.control, select.control, .signal__word': 18,
  '.line .line__what, .evidence__name, .evidence__state': 16,
  'main :not(svg, svg *)': 14,
};

/** Least ratio of text to ground in each theme, as it stands on the page itself: the two for the sun have more. */
const THEMES = [
  { theme: 'light', contrast: 'plain', ratio: 4.5, large: 3 },
  { theme: 'dark', contrast: 'plain', ratio: 4.5, large: 3 },
  { theme: 'light', contrast: 'sun', ratio: 7, large: 4.5 },
  { theme: 'dark', contrast: 'sun', ratio: 7, large: 4.5 },
] as const;

/** States that are one to whoever reads the mark, and differ in the word beside it: shown safe, and what can hurt. */
const ONE_MARK: readonly (readonly string[])[] = [
  ['safe', 'cleared', 'hung', 'overridden'],
  ['live', 'hot'],
];

/** Buttons that are lower than a gloved hand wants, by selector, in CSS pixels. */
async function lowTargets(page: Page, leastPx: Readonly<Record<string, number>>): Promise<readonly string[]> {
  return page.evaluate(
    (least) =>
      Object.entries(least).flatMap(([selector, px]) =>
        [...document.querySelectorAll(selector)]
          .map((one) => ({ height: one.getBoundingClientRect().height, html: one.outerHTML.slice(0, 80) }))
          .filter(({ height }) => height > 0 && height < px - 0.5)
          .map(({ height, html }) => `${html} is ${height} high, at least ${px}`),
      ),
    leastPx,
  );
}

/** Leaves of the style page only the marks, one below the other, each with the name of what it says. */
async function marksAlone(page: Page): Promise<void> {
  await page.evaluate(() => {
    const boxes = document.querySelectorAll(
      '#part-energy-mark .specimen-box, #part-verdict-mark .specimen-box',
    );
    const marks = Array.from(boxes, (box) => {
      const mark = document.createElement('div');
      mark.title = box.querySelector('p')?.textContent ?? '';
      mark.style.width = '48px';
      mark.append(box.querySelector('svg') ?? '');
      return mark;
    });
    document.body.replaceChildren(...marks);
  });
}

/** Marks that look the same though they say different things. */
async function alike(page: Page): Promise<readonly string[]> {
  const pictures = new Map<string, string>();
  const pairs: string[] = [];
  for (const mark of await page.locator('body > div').all()) {
    const name = (await mark.getAttribute('title')) ?? '';
    const picture = (await mark.screenshot()).toString('base64');
    const before = pictures.get(picture);
    const stateOf = (of: string) => of.split(',')[0] ?? '';
    const isOne = ONE_MARK.some((group) => [before ?? '', name].every((one) => group.includes(stateOf(one))));
    if (before !== undefined && !isOne) pairs.push(`${before} and ${name}`);
    pictures.set(picture, name);
  }
  expect(pictures.size).toBeGreaterThan(10);
  return pairs;
}

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
    expect(await faultsOfPage(page)).toEqual([]);
  });

  // UI-02, UI-13, UI-24, UI-28, UI-33
  test('shows every part in every state, each told from the others without its colour', {
    timeout: 120_000,
  }, async () => {
    const { page } = await open({ origin: server.origin });
    await page.goto('/style');
    expect(await faultsOfPage(page, LONG ? ALL_FOUR : ['desk, light'])).toEqual([]);
    expect(await smallLetters(page, LEAST_PX)).toEqual([]);
    expect(
      await lowTargets(page, { '.button--main': 56, '.button--sign, .button--back, .button--safe': 72 }),
    ).toEqual([]);
    for (const { theme, contrast, ...least } of THEMES) {
      await page.evaluate((of) => Object.assign(document.documentElement.dataset, of), { theme, contrast });
      expect(await faintTexts(page, least), `${theme}, ${contrast}`).toEqual([]);
    }
    await marksAlone(page);
    for (const state of LONG ? (['achromatopsia', 'forced'] as const) : (['forced'] as const)) {
      await enterState(page, state);
      expect(await alike(page), state).toEqual([]);
    }
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
    await page.locator('[name="newPin"][aria-invalid="true"]').waitFor();
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
    expect(await faultsOfPage(page)).toEqual([]);
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
