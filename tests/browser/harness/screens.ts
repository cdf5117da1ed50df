import type { Browser, Page } from 'playwright-core';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import { openPage } from './browser.ts';
import { doStrokeCheck } from './do-job.ts';
import { inRole, signIn } from './people.ts';
import type { TestServer } from './server.ts';

export interface Site {
  readonly server: TestServer;
  readonly browser: Browser;
  readonly people: readonly DemoPerson[];
}

/** A page that stands open, and what it is called. */
export interface Screen {
  readonly name: string;
  readonly page: Page;
}

/** A valve of the demo plant whose plug closes moving down and whose air opens it. */
export const TAG = 'FV-101';
/** The job that the demo plant leaves locked, and one that it closed. */
const [LOCKED, CLOSED] = ['/jobs/12', '/jobs/1'];

/** Every page of the demo plant, by who looks at it; the cards of a job are looked at while one is done. */
export const PAGES: Readonly<Record<DemoPerson['role'] | 'nobody', readonly string[]>> = {
  nobody: ['/sign-in', '/first-pin', '/nothing/here'],
  technician: [
    '/shift',
    `/jobs/new?tag=${TAG}`,
    `/jobs/new?tag=${TAG}&procedure=stroke-check&place=line`,
    LOCKED,
    `${LOCKED}/notes`,
    `${LOCKED}/steps`,
    `${LOCKED}/radio`,
    `${LOCKED}/lines/16`,
    `${LOCKED}/lines/16/again`,
    `${LOCKED}/record`,
    `${CLOSED}/record`,
    '/drafts',
    '/practice',
    '/practice/tour',
    '/calculations',
    '/calculations/seating-turns',
    '/valves',
    `/valves/${TAG}`,
    `/valves/${TAG}/history`,
    '/procedures',
    '/procedures/stroke-check',
    '/procedures/stroke-check/form',
    '/help',
    '/help/guide',
    '/pin',
    '/points',
  ],
  supervisor: [
    '/',
    '/to-sign',
    `${LOCKED}/people`,
    `${LOCKED}/people/away?owner=t2`,
    '/points/HV-302A',
    '/points/tables',
  ],
  'safety-officer': [
    '/audit',
    '/audit/jobs/12',
    '/audit/log',
    '/removals',
    '/people',
    '/people/t1',
    '/people/review',
  ],
  engineer: [
    `/valves/${TAG}/edit`,
    '/valves/new',
    '/valves/tables',
    '/gear',
    '/gear/new',
    '/gear/tables',
    '/plans',
    '/plans/new',
    '/plans/P-1',
    '/plans/tables',
    '/history',
    '/screens',
    '/status',
    '/style',
  ],
};

/** Cards of a stroke check that differ in kind, by step and row of its table. */
const CARDS: readonly string[] = [
  'knowEnergies:0',
  'rigShutIn:0',
  'openBypass:0',
  'otherEnergies:0',
  'holdWork:0',
  'asFoundCycle:6',
  'asFoundVerdict:0',
  'turnStem:0',
  'closed:0',
];

/**
 * Opens every page and looks at it, then does a stroke check and looks at its cards.
 *
 * @param named only those whose names hold this
 */
export async function eachScreen(
  site: Site,
  look: (screen: Screen) => Promise<void>,
  named = '',
): Promise<void> {
  for (const role of Object.keys(PAGES) as readonly (keyof typeof PAGES)[]) {
    const wanted = PAGES[role].filter((address) => nameOf(role, address).includes(named));
    if (wanted.length === 0) continue;
    const { page } = await signedIn(site, role);
    for (const address of wanted) {
      await page.goto(address);
      await look({ name: nameOf(role, address), page });
    }
    await page.context().close();
  }
  if (named === '' || named.startsWith('card')) await eachCard(site, look);
}

async function eachCard(site: Site, look: (screen: Screen) => Promise<void>): Promise<void> {
  const { server, people } = site;
  const { page, context } = await signedIn(site, 'technician');
  const id = await doStrokeCheck({
    page,
    server,
    tag: TAG,
    place: 'line',
    supervisor: inRole(people, 'supervisor'),
    at: async (step, row) => {
      if (!CARDS.includes(`${step}:${row}`)) return;
      // On a page of its own, so that the one that works stays as it is.
      const looked = await context.newPage();
      await looked.goto(new URL(page.url()).pathname);
      await look({ name: `card-${step}-${row}`, page: looked });
      await looked.close();
    },
  });
  await page.goto(`/jobs/${id}/record`);
  await look({ name: 'record-of-stroke-check', page });
  await context.close();
}

async function signedIn({ browser, server, people }: Site, role: keyof typeof PAGES) {
  const opened = await openPage(browser, { origin: server.origin });
  if (role !== 'nobody') await signIn(opened.page, inRole(people, role));
  return opened;
}

function nameOf(role: string, address: string): string {
  return `${role}${address.replace(/[?&=/]+/g, '-').replace(/-$/, '')}`;
}
