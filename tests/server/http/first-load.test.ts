import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true });
});
afterAll(() => app.close());

/** What browsers take over TLS and from their own machine, and what they take over plain HTTP from another one. */
const CODINGS = ['gzip, deflate, br', 'gzip, deflate'];

interface Loaded {
  readonly path: string;
  readonly coding: string;
  readonly as?: Browser;
}

/** What a browser has fetched before a page stands: the page and everything its head names, as bytes on the wire. */
async function loadOf({ path, coding, as }: Loaded): Promise<Readonly<Record<string, number>>> {
  const bytes: Record<string, number> = {};
  const fetched = async (address: string) => {
    const sent = { headers: { 'accept-encoding': coding }, ...(as === undefined ? {} : { as }) };
    const answer = await app.get(address, sent);
    expect(answer.status, address).toBe(200);
    bytes[address] = (await answer.arrayBuffer()).byteLength;
  };
  await fetched(path);
  const html = await (await app.get(path, as === undefined ? {} : { as })).text();
  const named = readHtml(html).elements.flatMap((one) => {
    const at = attributeOf(one, 'src') ?? (one.tagName === 'link' ? attributeOf(one, 'href') : undefined);
    return at === undefined ? [] : [at];
  });
  for (const address of new Set(named)) {
    expect(address, 'nothing comes from elsewhere').toMatch(/^\/[^/]/);
    await fetched(address);
  }
  return bytes;
}

test.each(CODINGS)(
  'the first page is under 60 kB on the wire, letters and script too, and asks nobody else: %s',
  async (coding) => {
    const bytes = await loadOf({ path: '/sign-in', coding });
    expect(Object.keys(bytes).length).toBeGreaterThan(5);
    expect(sum(bytes), JSON.stringify(bytes)).toBeLessThan(60_000);
  },
);

test('the page of a job and the shift list are under 60 kB too, with everything drawn on them', async () => {
  const { browser, person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, { technician, supervisor, place: 'line' });
  for (const coding of CODINGS)
    for (const path of [`/jobs/${job.id}`, '/shift']) {
      const bytes = await loadOf({ path, coding, as: browser });
      expect(sum(bytes), JSON.stringify(bytes)).toBeLessThan(60_000);
    }
});

function sum(bytes: Readonly<Record<string, number>>): number {
  return Object.values(bytes).reduce((all, one) => all + one, 0);
}
