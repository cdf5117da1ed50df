import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import type { FoundChromium } from './chromium.ts';
import { noteTaps } from './next-tap.ts';
import { type Watch, watch } from './watch.ts';

export const DESK = { width: 1280, height: 800 } as const;
export const PHONE = { width: 390, height: 844 } as const;
/** The same phone on its side. */
export const ON_ITS_SIDE = { width: 844, height: 390 } as const;
/** The narrowest screen that a page must fit on without scrolling sideways (WCAG 1.4.10). */
export const NARROWEST = { width: 320, height: 640 } as const;

export interface PageOptions {
  /** Address that paths are taken from: `http://127.0.0.1:40123`. */
  readonly origin?: string;
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly javaScript?: boolean;
  readonly colorScheme?: 'light' | 'dark';
  /** Several pages of one person share cookies: give the context of the first. */
  readonly context?: BrowserContext;
}

export interface Opened {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly watch: Watch;
}

/** Nothing of the machine outside this process is asked for, and no page is kept from one start to the next. */
const ARGUMENTS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export async function openBrowser(found: FoundChromium): Promise<Browser> {
  if ('missing' in found) throw new Error(found.missing);
  return chromium.launch({
    executablePath: found.executablePath,
    args: ARGUMENTS,
    env: { ...process.env, ...found.environment } as Record<string, string>,
  });
}

/** A page of its own, as one person at one screen has it, with everything on it that goes wrong being written down. */
export async function openPage(browser: Browser, options: PageOptions = {}): Promise<Opened> {
  const { origin, viewport = DESK, javaScript = true, colorScheme = 'light' } = options;
  const context =
    options.context ??
    (await browser.newContext({
      ...(origin === undefined ? {} : { baseURL: origin }),
      viewport: { ...viewport },
      javaScriptEnabled: javaScript,
      colorScheme,
      locale: 'en-GB',
      timezoneId: 'UTC',
      reducedMotion: 'reduce',
    }));
  const page = await context.newPage();
  // Long enough for a busy machine: what runs into it does not come.
  page.setDefaultTimeout(30_000);
  noteTaps(page);
  return { page, context, watch: await watch(page) };
}
