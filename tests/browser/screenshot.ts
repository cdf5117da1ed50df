/**
 * Takes pictures of the program as it runs. Without an argument: the pictures of README.md. With a folder: every
 * screen, each at desk and phone, dark, whole, and as it prints, for looking at.
 *
 * npm run screenshots
 * npm run screenshots -- somewhere/else
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { DemoPerson } from '../../server/pages/set-up.ts';
import { ROOT } from '../root.ts';
import { DESK, openBrowser, openPage, PHONE } from './harness/browser.ts';
import { findChromium } from './harness/chromium.ts';
import { doStrokeCheck } from './harness/do-job.ts';
import { inRole, menuOf, signIn } from './harness/people.ts';
import { startServer, type TestServer } from './harness/server.ts';
import { showWhole } from './harness/whole-page.ts';

const PICTURES = join(ROOT, 'views', 'assets', 'pictures');
const STARTS_AT = new Date('2026-06-01T08:00:00Z');
/** A valve of the demo plant whose plug closes moving down and whose air opens it. */
const TAG = 'FV-101';
/** A4 at 96 pixels an inch. */
const PAPER = { width: 794, height: 1123 };

interface Site {
  readonly server: TestServer;
  readonly browser: Browser;
  readonly people: readonly DemoPerson[];
}

/** What stands in README.md: a step and the row of its table, and how the picture is called. */
const IN_README: Readonly<Record<string, string>> = { 'holdWork:0': 'hold', 'asFoundCycle:8': 'readings' };

async function forReadme(site: Site): Promise<void> {
  mkdirSync(PICTURES, { recursive: true });
  const { page } = await signedIn(site, 'technician');
  await strokeCheck(site, page, async (step, row) => {
    const name = IN_README[`${step}:${row}`];
    if (name !== undefined) await page.screenshot({ path: join(PICTURES, `${name}.png`) });
  });
}

async function everyScreen(site: Site, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const { origin } = site.server;
  const nobody = await openPage(site.browser, { origin });
  await shoot(nobody.context, { address: '/sign-in', folder, name: 'sign-in' });
  for (const role of ['engineer', 'supervisor', 'safety-officer'] as const) {
    const { page, context } = await signedIn(site, role);
    for (const address of [
      ...(await menuOf(page)),
      '/help',
      '/style',
      `/valves/${TAG}`,
      `/valves/${TAG}/edit`,
    ]) {
      await shoot(context, { address, folder, name: `${role}${address.replaceAll('/', '-')}` });
    }
  }
  const { page, context } = await signedIn(site, 'technician');
  const openJob = `/jobs/new?tag=${TAG}&procedure=stroke-check&place=line`;
  await shoot(context, { address: openJob, folder, name: 'open-job' });
  let cards = 0;
  const id = await strokeCheck(site, page, async (step, row) => {
    cards += 1;
    if (row !== 0 && row !== 6) return;
    const address = new URL(page.url()).pathname;
    await shoot(context, { address, folder, name: `card-${String(cards).padStart(2, '0')}-${step}-${row}` });
  });
  await shoot(context, { address: `/jobs/${id}/record`, folder, name: 'record' });
}

/**
 * The same address at each look, on a page of its own, so that the one that works stays as it is: as the screen shows
 * it, then as tall as it is.
 */
async function shoot(
  context: BrowserContext,
  { address, folder, name }: { readonly address: string; readonly folder: string; readonly name: string },
): Promise<void> {
  const page = await context.newPage();
  const picture = (look: string) => page.screenshot({ path: join(folder, `${name}-${look}.png`) });
  await page.setViewportSize(DESK);
  await page.goto(address);
  await picture('desk');
  await page.emulateMedia({ colorScheme: 'dark' });
  await picture('dark');
  await page.emulateMedia({ colorScheme: 'light' });
  await showWhole(page, DESK);
  await picture('whole');
  await page.setViewportSize(PHONE);
  await page.goto(address);
  await picture('phone');
  await page.emulateMedia({ media: 'print' });
  await showWhole(page, PAPER);
  await picture('print');
  await page.close();
}

async function signedIn({ browser, server, people }: Site, role: DemoPerson['role']) {
  const opened = await openPage(browser, { origin: server.origin });
  await signIn(opened.page, inRole(people, role));
  return opened;
}

function strokeCheck(
  { server, people }: Site,
  page: Page,
  at: (step: string, row: number) => Promise<void>,
): Promise<string> {
  return doStrokeCheck({
    page,
    server,
    tag: TAG,
    place: 'line',
    supervisor: inRole(people, 'supervisor'),
    at,
  });
}

async function takePictures(folder: string | undefined): Promise<void> {
  const data = mkdtempSync(join(tmpdir(), 'yokeside-pictures-'));
  const browser = await openBrowser(await findChromium());
  const server = await startServer({ folder: data, startsAt: STARTS_AT });
  try {
    if (folder !== undefined) {
      const { context } = await openPage(browser, { origin: server.origin });
      mkdirSync(folder, { recursive: true });
      await shoot(context, { address: '/', folder, name: 'set-up' });
    }
    const site = { server, browser, people: await server.loadDemo() };
    await (folder === undefined ? forReadme(site) : everyScreen(site, folder));
    const faults = server.faults();
    if (faults.length > 0) throw new Error(`The server had faults:\n${faults.join('\n')}`);
  } finally {
    await browser.close();
    await server.close();
    rmSync(data, { recursive: true, force: true, maxRetries: 3 });
  }
  console.log(`The pictures are in ${folder ?? PICTURES}`);
}

await takePictures(process.argv[2]);
