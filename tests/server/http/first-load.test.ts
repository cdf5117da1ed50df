import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ASSET_FILES } from '../../../views/assets.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { ROOT } from '../../root.ts';
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

/**
 * What a browser has fetched before a page stands: the page and everything its head names, as bytes on the wire. News of other
 * screens (`later.js`, 2 kB) are fetched when it stands.
 */
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

test('a job half through, with its lines, a hold or a verdict open, is under 60 kB too', {
  timeout: 120_000,
}, async () => {
  const { browser, person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const sheet = aSheet({ tag: 'FV-216' });
  const job = await openSiteJob(app, { technician, supervisor, place: 'line', sheet });
  const address = `/jobs/${job.id}`;
  const files: Record<string, number> = {};
  for (const coding of CODINGS)
    files[coding] = sum({ ...(await loadOf({ path: address, coding, as: browser })), [address]: 0 });
  for (const step of ['holdWork', 'asFoundVerdict', 'asLeftVerdict', 'signReturn', 'loopBack']) {
    await job.playTo(step);
    for (const coding of CODINGS) {
      const headers = { 'accept-encoding': coding };
      const page = await (await app.get(address, { headers, as: browser })).arrayBuffer();
      expect((files[coding] ?? 0) + page.byteLength, `${step}, ${coding}`).toBeLessThan(60_000);
    }
  }
});

test('a job, its hold too, bears no class whose rules stand only in style sheets that it does not load', async () => {
  const { browser, person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, {
    technician,
    supervisor,
    place: 'line',
    sheet: aSheet({ tag: 'FV-215' }),
  });
  const elsewhere = classesOf('pages.css').filter((name) => !classesOf('style.css').includes(name));
  expect(elsewhere.length).toBeGreaterThan(20);
  for (const step of [(await job.job()).step, 'holdWork']) {
    await job.playTo(step);
    const html = await (await app.get(`/jobs/${job.id}`, { as: browser })).text();
    const borne = readHtml(html).elements.flatMap((one) => (attributeOf(one, 'class') ?? '').split(/\s+/));
    expect(borne).toContain('sheet-fill');
    expect(
      [...new Set(borne)].filter((name) => elsewhere.includes(name)),
      step,
    ).toEqual([]);
  }
});

/** Class names that the rules of a served style sheet name. */
function classesOf(file: string): readonly string[] {
  const source = ASSET_FILES[file];
  if (source === undefined || !('parts' in source)) throw new TypeError(`${file} is no style sheet of ours.`);
  const css = source.parts.map((part) => readFileSync(join(ROOT, 'views', part), 'utf8')).join('\n');
  return Array.from(
    css.replace(/\/\*[\s\S]*?\*\//g, '').matchAll(/\.([a-z][\w-]*)(?=[^{}]*\{)/g),
    ([, name = '']) => name,
  );
}

function sum(bytes: Readonly<Record<string, number>>): number {
  return Object.values(bytes).reduce((all, one) => all + one, 0);
}
