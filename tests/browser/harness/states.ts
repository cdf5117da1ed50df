import type { CDPSession, Page } from 'playwright-core';
import { DESK, NARROWEST, PHONE } from './browser.ts';
import { showWhole } from './whole-page.ts';

type Media = NonNullable<Parameters<Page['emulateMedia']>[0]>;
type Vision = 'protanopia' | 'deuteranopia' | 'tritanopia' | 'achromatopsia';

/** How somebody may come to look at a page. */
export interface State {
  readonly screen: { readonly width: number; readonly height: number };
  readonly media?: Media;
  /** Colours as they are seen by who lacks some; painted over the page, so that the page itself is as ever. */
  readonly vision?: Vision;
  /** Letters as large as the browser was told, in hundredths of what is usual. */
  readonly lettersPercent?: number;
  /** What the foot of each page offers, kept in a cookie. */
  readonly choice?: 'sun' | 'night';
  /** As the screen shows it, and not as tall as the page is. */
  readonly asSeen?: true;
}

const colours = (vision: Vision): State => ({ screen: DESK, vision });
/** As wide as what is printed on, at 96 pixels an inch and without the margins of `@page`. */
const A4 = { width: 680, height: 1047 };
const LETTER = { width: 703, height: 980 };

export const STATES = {
  desk: { screen: DESK, asSeen: true },
  whole: { screen: DESK },
  dark: { screen: DESK, media: { colorScheme: 'dark' } },
  phone: { screen: PHONE },
  'phone-dark': { screen: PHONE, media: { colorScheme: 'dark' } },
  narrow: { screen: NARROWEST },
  'text-200': { screen: PHONE, lettersPercent: 200 },
  'text-200-desk': { screen: DESK, lettersPercent: 200 },
  forced: { screen: DESK, media: { forcedColors: 'active' } },
  'forced-dark': { screen: PHONE, media: { forcedColors: 'active', colorScheme: 'dark' } },
  contrast: { screen: DESK, media: { contrast: 'more' } },
  sun: { screen: PHONE, choice: 'sun' },
  night: { screen: PHONE, choice: 'night' },
  still: { screen: DESK, media: { reducedMotion: 'reduce' } },
  protanopia: colours('protanopia'),
  deuteranopia: colours('deuteranopia'),
  tritanopia: colours('tritanopia'),
  achromatopsia: colours('achromatopsia'),
  a4: { screen: A4, media: { media: 'print' } },
  letter: { screen: LETTER, media: { media: 'print' } },
} as const satisfies Readonly<Record<string, State>>;

export type StateName = keyof typeof STATES;

const PLAIN: Media = {
  media: 'screen',
  colorScheme: 'light',
  forcedColors: 'none',
  contrast: 'no-preference',
  reducedMotion: 'reduce',
};
/** What a browser has unless it is told. */
const LETTERS_PX = { standard: 16, fixed: 13 };

/** A browser paints no picture that is taller than 16,384 pixels. */
const TALLEST_PX = 12_000;

const sessions = new WeakMap<Page, Promise<CDPSession>>();

/** The same page as it is looked at in one state, whatever it was looked at before. The choice of a screen counts at its next load. */
export async function enterState(page: Page, name: StateName): Promise<void> {
  const { screen, media, vision, lettersPercent = 100, choice, asSeen }: State = STATES[name];
  const session = await sessionOf(page);
  await page.emulateMedia({ ...PLAIN, ...media });
  await session.send('Emulation.setEmulatedVisionDeficiency', { type: vision ?? 'none' });
  const { standard, fixed } = LETTERS_PX;
  const large = (px: number) => Math.round((px * lettersPercent) / 100);
  await session.send('Page.setFontSizes', { fontSizes: { standard: large(standard), fixed: large(fixed) } });
  await page.evaluate((to) => {
    const { dataset } = document.documentElement;
    dataset.theme = to === undefined ? 'auto' : to === 'night' ? 'dark' : 'light';
    dataset.contrast = to === undefined ? 'auto' : 'sun';
  }, choice);
  if (asSeen) await page.setViewportSize(screen);
  else await showWhole(page, screen, TALLEST_PX);
}

function sessionOf(page: Page): Promise<CDPSession> {
  const session = sessions.get(page) ?? page.context().newCDPSession(page);
  sessions.set(page, session);
  return session;
}
