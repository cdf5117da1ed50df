/**
 * Takes pictures of the program as it runs. Without an argument: the pictures of README.md. With a folder: every
 * screen in every state of `harness/states.ts`, for looking at; prints are PDFs. With states behind it: those alone;
 * with a word behind them: the screens whose names hold it.
 *
 * npm run screenshots
 * npm run screenshots -- somewhere/else
 * npm run screenshots -- somewhere/else forced,achromatopsia,a4 shift
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { DemoPerson } from '../../server/pages/set-up.ts';
import { ROOT } from '../root.ts';
import { openBrowser, openPage } from './harness/browser.ts';
import { findChromium } from './harness/chromium.ts';
import { doStrokeCheck } from './harness/do-job.ts';
import { inRole, signIn } from './harness/people.ts';
import { eachCard, eachPage, LOOKERS, type Screen, type Site, TAG } from './harness/screens.ts';
import { startServer } from './harness/server.ts';
import { enterState, STATES, type StateName } from './harness/states.ts';

const PICTURES = join(ROOT, 'views', 'assets', 'pictures');
const STARTS_AT = new Date('2026-06-01T08:00:00Z');
/** The page of all parts is 8,000 elements. */
const SHOT_MS = 120_000;
const PAPER: Partial<Record<StateName, 'A4' | 'Letter'>> = { a4: 'A4', letter: 'Letter' };

interface Wanted {
  readonly folder: string;
  readonly states: readonly StateName[];
  /** What the names of the screens hold. */
  readonly named?: string | undefined;
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

async function everyScreen(site: Site, { folder, states, named }: Wanted): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const shootAll = async ({ name, page }: Screen) => {
    for (const state of states) await shoot(page, { state, path: join(folder, `${name}-${state}`) });
  };
  for (const who of LOOKERS) await eachPage(site, who, { named, at: shootAll });
  if (named === undefined || named.startsWith('card')) await eachCard(site, { at: shootAll });
}

/** One page in one state: a picture, and of what is printed the print itself. */
async function shoot(page: Page, { state, path }: { readonly state: StateName; readonly path: string }) {
  await enterState(page, state);
  const format = PAPER[state];
  if (format === undefined) await page.screenshot({ path: `${path}.png`, timeout: SHOT_MS });
  else await page.pdf({ path: `${path}.pdf`, format });
}

async function signedIn({ open, people }: Site, role: DemoPerson['role']) {
  const opened = await open();
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

async function takePictures(wanted: Wanted | undefined): Promise<void> {
  const data = mkdtempSync(join(tmpdir(), 'yokeside-pictures-'));
  const browser = await openBrowser(await findChromium());
  const server = await startServer({ folder: data, startsAt: STARTS_AT });
  try {
    if (wanted !== undefined) {
      const { page } = await openPage(browser, { origin: server.origin });
      mkdirSync(wanted.folder, { recursive: true });
      await page.goto('/');
      for (const state of wanted.states)
        await shoot(page, { state, path: join(wanted.folder, `set-up-${state}`) });
    }
    const people = await server.loadDemo();
    const site = { server, people, open: () => openPage(browser, { origin: server.origin }) };
    await (wanted === undefined ? forReadme(site) : everyScreen(site, wanted));
    const faults = server.faults();
    if (faults.length > 0) throw new Error(`The server had faults:\n${faults.join('\n')}`);
  } finally {
    await browser.close();
    await server.close();
    rmSync(data, { recursive: true, force: true, maxRetries: 3 });
  }
  console.log(`The pictures are in ${wanted?.folder ?? PICTURES}`);
}

/** @throws TypeError where a state is named that there is not */
function statesNamed(names: string | undefined): readonly StateName[] {
  const all = Object.keys(STATES) as readonly StateName[];
  if (names === undefined) return all;
  const unknown = names.split(',').filter((name) => !all.some((state) => state === name));
  if (unknown.length > 0) throw new TypeError(`No state is called ${unknown.join()}: ${all.join()}.`);
  return all.filter((state) => names.split(',').includes(state));
}

const [folder, states, named] = process.argv.slice(2);
await takePictures(folder === undefined ? undefined : { folder, states: statesNamed(states), named });
