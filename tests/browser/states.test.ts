import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { LETTERS } from '../../server/http/font-letters.ts';
import { type Asked, axeViolations, sticksOut } from './harness/axe.ts';
import { NARROWEST } from './harness/browser.ts';
import { demoPlant } from './harness/demo-plant.ts';
import { inBrowser } from './harness/in-browser.ts';
import { layoutShift } from './harness/layout-shift.ts';
import {
  brokenWords,
  faintTexts,
  type LeastContrast,
  letteredOtherwise,
  movingParts,
} from './harness/letters.ts';
import { drawnParts } from './harness/marks.ts';
import { coloursOfPdf } from './harness/pdf-colours.ts';
import { inRole, signIn } from './harness/people.ts';
import { eachCard, LOOKERS, PAGES, type Screen, type Site, signedIn } from './harness/screens.ts';
import { enterState, type StateName } from './harness/states.ts';

/** The long run looks at every page in every state, the ordinary run at one hold. */
const LONG = process.env.YOKESIDE_LONG === '1';

/**
 * What axe is asked in each state: all of it where the page is another one, and else what can differ. Colours that are seen
 * otherwise are painted over a page that stays as it is, and what does not move is no state of the page: of these it says
 * the same as of the plain one.
 */
const ASKED: Readonly<Partial<Record<StateName, Asked>>> = {
  whole: 'all',
  phone: 'all',
  'text-200': 'places',
  dark: 'colours',
};
/** How far texts stand out from their ground where only colours differ: 7 to 1 for whoever asks for more. */
const AA = { ratio: 4.5, large: 3 };
const AAA = { ratio: 7, large: 4.5 };
const STAND_OUT: Readonly<Partial<Record<StateName, LeastContrast>>> = {
  contrast: AAA,
  sun: AAA,
  night: AAA,
  a4: AA,
  forced: AA,
  'forced-dark': AA,
};
const TIGHT: readonly StateName[] = ['narrow', 'text-200', 'text-200-desk'];
/** A page takes 2 to 4 s where nothing else is at work, the page of all parts 40. */
const PAGE_MS = 240_000;
const JOB_MS = 600_000;

async function faultsInStates({ page }: Pick<Screen, 'page'>): Promise<readonly string[]> {
  const faults: string[] = [];
  const say = (state: string, found: readonly string[]) =>
    faults.push(...found.map((fault) => `${state}: ${fault}`));
  say('as it came', await shifted(page));
  for (const [state, what] of Object.entries(ASKED)) {
    await enterState(page, state as StateName);
    say(state, await axeViolations(page, what));
    if (state === 'whole') await drawnParts(page, 'remember');
  }
  for (const [state, least] of Object.entries(STAND_OUT)) {
    await enterState(page, state as StateName);
    say(state, await faintTexts(page, least));
    if (state.startsWith('forced')) say(state, await drawnParts(page, 'name the lost'));
  }
  say('tight', await tightFaults(page));
  await enterState(page, 'still');
  say('still', await movingParts(page));
  await enterState(page, 'a4');
  for (const format of ['A4', 'Letter'] as const) say(format, coloursOfPdf(await page.pdf({ format })));
  return faults;
}

/** The letters are packed anew by the server: whether a browser takes them, and sets figures in columns. */
async function lettersOf(
  page: Page,
): Promise<readonly { readonly loaded: boolean; readonly inColumns: boolean }[]> {
  return page.evaluate(async () => {
    const face = async (weight: string) => {
      const faces = await document.fonts.load(`${weight} 16px Yokeside`);
      const widths = ['1111', '0000'].map((figures) => {
        const span = document.createElement('span');
        span.textContent = figures;
        span.style.fontFamily = 'Yokeside';
        span.style.fontWeight = weight;
        document.body.append(span);
        const { width } = span.getBoundingClientRect();
        span.remove();
        return width;
      });
      return { loaded: faces.every(({ status }) => status === 'loaded'), inColumns: widths[0] === widths[1] };
    };
    return [await face('400'), await face('600')];
  });
}

async function shifted(page: Page): Promise<readonly string[]> {
  const sum = await layoutShift(page);
  return sum === 0 ? [] : [`it moved by ${sum} after its first paint`];
}

async function tightFaults(page: Page): Promise<readonly string[]> {
  const faults: string[] = [];
  for (const state of TIGHT) {
    await enterState(page, state);
    for (const fault of [...(await sticksOut(page)), ...(await brokenWords(page))])
      faults.push(`${state}: ${fault}`);
  }
  return faults;
}

inBrowser('every page in every state in which somebody may look at it', (open) => {
  const plant = demoPlant({ startsAt: new Date('2026-06-01T08:00:00Z') });
  const site = (): Site => ({
    server: plant.server,
    people: plant.people,
    open: () => open({ origin: plant.server.origin }),
  });

  // UI-01, UI-02, UI-08, UI-44. One page a test, so that a part of them can be asked for by `-t`.
  describe.runIf(LONG).each(LOOKERS)('%s', (who) => {
    test.each(PAGES[who])('%s', { timeout: PAGE_MS }, async (address) => {
      const { page } = await signedIn(site(), who);
      await page.goto(address, { timeout: PAGE_MS });
      expect(await faultsInStates({ page })).toEqual([]);
    });
  });

  test.runIf(LONG)('the cards of a job', { timeout: JOB_MS }, async () => {
    const faults: string[] = [];
    await eachCard(site(), {
      at: async ({ name, page }) => {
        faults.push(...(await faultsInStates({ page })).map((fault) => `${name}, ${fault}`));
      },
    });
    expect(faults).toEqual([]);
  });

  test('the heads of a long list stay in sight at a desk and lie still on paper; a tag stays in one piece on the narrowest screen', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, inRole(plant.people, 'engineer'));
    await page.goto('/valves');
    await page.locator('tbody tr').last().scrollIntoViewIfNeeded();
    const head = page.locator('thead th').first();
    const seen = await head.evaluate((th) => {
      const { left, top, height } = th.getBoundingClientRect();
      const scrolled = window.scrollY > height;
      return [scrolled, top >= 0, th.contains(document.elementFromPoint(left + 20, top + height / 2))];
    });
    expect(seen).toEqual([true, true, true]);
    await page.emulateMedia({ media: 'print' });
    expect(await head.evaluate((th) => getComputedStyle(th).position)).toBe('static');
    await page.emulateMedia({ media: 'screen' });
    await page.setViewportSize(NARROWEST);
    await page.goto('/jobs/12');
    const tag = page.locator('.title-block__value--tag a');
    expect(await tag.textContent()).toContain('-');
    expect(await tag.evaluate((one) => one.getClientRects().length)).toBe(1);
  });

  test('a hold is read with large letters, on the narrowest screen, in colours that the machine sets, and in grey on paper, and nothing on it moves by itself (UI-08, UI-30, UI-44)', async () => {
    const { page } = await open({ origin: plant.server.origin });
    await signIn(page, inRole(plant.people, 'technician'));
    await page.goto('/jobs/12');
    expect(await lettersOf(page)).toEqual([
      { loaded: true, inColumns: true },
      { loaded: true, inColumns: true },
    ]);
    for (const weight of ['400', '600']) {
      const font = `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-${weight}-normal.woff2`;
      const base64 = readFileSync(createRequire(import.meta.url).resolve(font), 'base64');
      // The last one was left out, and would be found if it were one of those that are kept.
      const drawn = { letters: `${LETTERS}\u00df`, original: { weight, base64 } };
      expect(await letteredOtherwise(page, drawn)).toEqual(['\u00df']);
    }
    expect(await shifted(page)).toEqual([]);
    expect(await tightFaults(page)).toEqual([]);
    await enterState(page, 'whole');
    await drawnParts(page, 'remember');
    for (const state of ['forced', 'forced-dark', 'contrast', 'a4'] as const) {
      await enterState(page, state);
      expect(await faintTexts(page, STAND_OUT[state] ?? AAA), state).toEqual([]);
      if (state.startsWith('forced')) expect(await drawnParts(page, 'name the lost'), state).toEqual([]);
    }
    expect(coloursOfPdf(await page.pdf({ format: 'A4' }))).toEqual([]);
    await enterState(page, 'still');
    expect(await movingParts(page)).toEqual([]);
  });
});
