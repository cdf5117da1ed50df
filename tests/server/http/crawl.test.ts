/** Every page of a filled site, seen by everybody who may see it. */
import { isDeepStrictEqual } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadDemoPlant } from '../../../server/demo/demo-plant.ts';
import { DEMO_VALVES } from '../../../server/demo/demo-valves.ts';
import { mayAsk } from '../../../server/http/route.ts';
import { ROLES, type Role } from '../../../server/people/person.ts';
import { FV_214 } from '../../builders/sheets.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import alike from '../../views/language/alike.json' with { type: 'json' };
import { englishLeft } from '../../views/language/english-left.ts';
import { type AnApp, anApp, Browser, newRequestId } from '../an-app.ts';
import { helpPlace, pageFaults } from './page-faults.ts';

/** Text that would become an element, end an attribute or begin a formula. */
const MARKER = `=1+1 <img src=x onerror=alert(1)> "quoted" 'and' &amp;`;

let app: AnApp;
const browsers = new Map<Role, Browser>();

function as(role: Role): Browser {
  const browser = browsers.get(role);
  if (browser === undefined) throw new Error(`Nobody is signed in as ${role}.`);
  return browser;
}

async function done(path: string, fields: Readonly<Record<string, string>>): Promise<void> {
  const response = await app.post(path, { requestId: newRequestId(), ...fields }, { as: as('engineer') });
  expect([201, 303], `${path}: ${response.status}`).toContain(response.status);
}

beforeAll(async () => {
  app = await anApp();
  for (const { id, pin, role } of await loadDemoPlant(app.services)) {
    const browser = new Browser();
    await app.post('/sign-in', { who: id, pin }, { as: browser });
    browsers.set(role, browser);
  }
  await done('/valves', {
    ...FV_214,
    tag: 'XV-900',
    service: MARKER,
    location: MARKER,
    seatLoadSource: MARKER,
  });
  await done('/gear', {
    ...{ number: 'G-99', kind: 'pressure gauge', unit: 'psi', rangeLow: '0', rangeHigh: '30' },
    ...{ accuracyPercentOfSpan: '0.25', calibratedOn: '2023-11-02', dueOn: '2024-11-02' },
    ...{ certificate: MARKER.slice(0, 40), bleedsDown: '', note: MARKER },
  });
  await done('/people', { name: MARKER, role: 'technician', identity: MARKER });
  await done('/screens/1/name', { name: MARKER.slice(0, 40) });
  await done('/people/alarms', { note: MARKER });
}, 120_000);
afterAll(() => app.close());

/** Sheets of procedures are in English; the style page shows parts of every kind. */
const WAITS = /^\/(?:procedures\/|style)/;

/** Names, and words of the people and the valves of the filled site. */
const THEIRS: readonly (string | RegExp)[] = [
  /^(?:now )?(?:Technician|Supervisor|Engineer|Safety officer) \d/,
  'onerror',
  'board operator',
  'cooled over night',
  'all as on the plate',
  'an invented job',
  'published table',
  ...DEMO_VALVES.flatMap(({ service = '', location = '', notes = '' }) => [service, location, notes]).filter(
    (own) => own !== '',
  ),
];

/** Addresses that exist, for each way of naming something. */
const THINGS: Readonly<Record<string, readonly string[]>> = {
  '/valves/:tag': ['XV-900', 'FV-214'],
  '/gear/:number': ['G-99'],
  '/people/:id': ['t1', 't3'],
  '/jobs/:id': ['1', '12'],
};

function addresses(role: Role): readonly string[] {
  const gets = app.routes.filter(
    ({ method, roles, name }) => method === 'GET' && name !== 'getAsset' && mayAsk(roles, role),
  );
  return gets.flatMap(({ path }) => {
    if (!path.includes(':')) return [path];
    const head = Object.keys(THINGS).find((one) => path.startsWith(one));
    return (head === undefined ? ['1'] : (THINGS[head] ?? [])).map((thing) =>
      path.replace(head ?? /:\w+/, (found) => found.replace(/:\w+/, thing)).replace(/:\w+(\{[^}]*\})?/g, '3'),
    );
  });
}

interface Seen {
  readonly path: string;
  readonly status: number;
  readonly type: string;
  readonly text: string;
}

interface Crawl {
  readonly seen: readonly Seen[];
  /** Whether the log was as before after all of it. */
  readonly isUnchanged: boolean;
}

const crawls = new Map<Role, Promise<Crawl>>();

/** Every page there is for somebody, asked for once. */
function crawlBy(role: Role): Promise<Crawl> {
  const crawl = crawls.get(role) ?? crawlNow(role);
  crawls.set(role, crawl);
  return crawl;
}

async function crawlNow(role: Role): Promise<Crawl> {
  const before = await app.services.log.head();
  const seen: Seen[] = [];
  for (const path of addresses(role)) {
    const response = await app.get(path, { as: as(role) });
    const type = response.headers.get('content-type') ?? '';
    if (type.startsWith('text/event-stream')) await response.body?.cancel();
    else seen.push({ path, status: response.status, type, text: await response.text() });
  }
  return { seen, isUnchanged: isDeepStrictEqual(await app.services.log.head(), before) };
}

const isPage = ({ type, text }: Seen) => type.startsWith('text/html') && text.includes('<body');

describe('looking', () => {
  test.each(ROLES)(
    'changes nothing: after every page there is for the %s, the log is as before (WS-25)',
    async (role) => {
      const { seen, isUnchanged } = await crawlBy(role);
      expect(seen.filter(({ status }) => status === 200).length).toBeGreaterThan(8);
      expect(isUnchanged).toBe(true);
    },
  );

  test.each(ROLES)('always shows the %s the way out, on every page, the job’s too (WS-22)', async (role) => {
    for (const page of (await crawlBy(role)).seen.filter(isPage))
      expect(page.text, page.path).toMatch(/action="\/sign-out"[\s\S]*?<button[^>]*>Sign out<\/button>/);
  });

  // UI-05, UI-14, UI-19, UI-26, UI-27
  test.each(ROLES)(
    'on every page for the %s: one heading, one main part, buttons that name their act, nothing to drag, nothing sent unasked, no date read in two ways',
    async (role) => {
      // The style page shows heads of other pages.
      const pages = (await crawlBy(role)).seen.filter((page) => isPage(page) && page.path !== '/style');
      expect(pages.flatMap(({ path, text }) => pageFaults(text).map((fault) => `${path}: ${fault}`))).toEqual(
        [],
      );
      expect([...new Set(pages.map(({ text }) => helpPlace(text)))]).toEqual(['Help']);
    },
  );

  test('is said in Spanish on every page but the sheets of procedures, which wait for somebody of the trade', async () => {
    const same = new Set<string>(alike);
    const pages = new Map<string, string>();
    for (const role of ROLES)
      for (const page of (await crawlBy(role)).seen.filter(isPage))
        if (!WAITS.test(page.path)) pages.set(page.path, page.text);
    const left = [...pages].flatMap(([path, text]) =>
      englishLeft(text, same)
        .filter((one) => !THEIRS.some((own) => (typeof own === 'string' ? one.includes(own) : own.test(one))))
        .map((one) => `${path}: ${one}`),
    );
    expect(pages.size).toBeGreaterThan(40);
    expect(left).toEqual([]);
  });

  test('shows what somebody typed as text, on every page and in every file that is taken along (WS-41)', async () => {
    const places: string[] = [];
    for (const { path, type, text } of (await crawlBy('engineer')).seen) {
      if (type.startsWith('text/html')) {
        const wrong = readHtml(text).elements.filter(
          (element) => attributeOf(element, 'onerror') !== undefined,
        );
        expect(wrong, path).toEqual([]);
        if (text.includes('&lt;img src=x onerror=alert(1)&gt;')) places.push(path);
      } else if (type.startsWith('application/json') && text.includes('onerror')) {
        expect(() => JSON.parse(text), path).not.toThrow();
        places.push(path);
      }
      if (type.startsWith('text/html')) expect(text, path).not.toContain('<img src=x');
    }
    expect(places).toEqual(
      expect.arrayContaining([
        '/valves',
        '/valves/XV-900',
        '/valves/sheets.json',
        '/gear/G-99',
        '/people',
        '/people/t3',
        '/screens',
      ]),
    );
  });

  test('takes along a table in which no cell of ours is a formula (WS-42)', async () => {
    const table = await (await app.get('/valves/sheets.csv', { as: as('technician') })).text();
    expect(table).toContain(`"'=1+1 <img src=x onerror=alert(1)> ""quoted"" 'and' &amp;"`);
    const cells = table.split(/[,\r\n]+(?=(?:[^"]*"[^"]*")*[^"]*$)/);
    const formulas = cells.filter(
      (cell) => /^"?[=+@\t]/.test(cell) || (/^"?-/.test(cell) && !/^-?\d+(\.\d+)?$/.test(cell)),
    );
    expect(formulas).toEqual([]);
  });
});
