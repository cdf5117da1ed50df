import type { Page } from 'playwright-core';
import type { DemoPerson } from '../../../server/pages/set-up.ts';
import type { Opened } from './browser.ts';
import { doStrokeCheck } from './do-job.ts';
import { inRole, signIn } from './people.ts';
import type { TestServer } from './server.ts';

export interface Site {
  readonly server: TestServer;
  readonly people: readonly DemoPerson[];
  /** A page of its own, at nobody's address. */
  open(): Promise<Opened>;
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

export const LOOKERS = Object.keys(PAGES) as readonly (keyof typeof PAGES)[];

export interface Look {
  /** Only the pages whose names hold this. */
  readonly named?: string | undefined;
  at(screen: Screen): Promise<void>;
}

/** Opens every page of one person and looks at it. */
export async function eachPage(site: Site, who: keyof typeof PAGES, { named = '', at }: Look): Promise<void> {
  const wanted = PAGES[who].filter((address) => nameOf(who, address).includes(named));
  if (wanted.length === 0) return;
  const { page } = await signedIn(site, who);
  for (const address of wanted) {
    await page.goto(address);
    await at({ name: nameOf(who, address), page });
  }
  await page.context().close();
}

/** Does a stroke check and looks at its cards, each on a page of its own, so that the one that works stays as it is. */
export async function eachCard(site: Site, { at: look }: Look): Promise<void> {
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
      const looked = await context.newPage();
      await looked.goto(new URL(page.url()).pathname);
      await look({ name: `card-${step}-${row}`, page: looked });
      await looked.close();
    },
  });
  await page.goto(`/jobs/${id}/record`);
  await look({ name: 'card-record', page });
  await context.close();
}

/** A page of somebody in a role, signed in where there is somebody. */
export async function signedIn({ open, people }: Site, who: keyof typeof PAGES): Promise<Opened> {
  const opened = await open();
  if (who !== 'nobody') await signIn(opened.page, inRole(people, who));
  return opened;
}

function nameOf(role: string, address: string): string {
  return `${role}${address.replace(/[?&=/]+/g, '-').replace(/-$/, '')}`;
}
