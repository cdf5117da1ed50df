import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true });
});
afterAll(() => app.close());

/** What a browser has fetched before a page stands: the page and everything its head names, as bytes on the wire. */
async function loadOf(path: string, as?: Browser): Promise<Readonly<Record<string, number>>> {
  const bytes: Record<string, number> = {};
  const fetched = async (address: string) => {
    const sent = { headers: { 'accept-encoding': 'gzip, br' }, ...(as === undefined ? {} : { as }) };
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

test('the first page is under 60 kB on the wire, letters and script too, and asks nobody else', async () => {
  const bytes = await loadOf('/sign-in');
  expect(Object.keys(bytes).length).toBeGreaterThan(5);
  expect(sum(bytes), JSON.stringify(bytes)).toBeLessThan(60_000);
});

test('the page of a job is under 60 kB too, its drawing with it too', async () => {
  const { browser, person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, { technician, supervisor, place: 'line' });
  const bytes = await loadOf(`/jobs/${job.id}`, browser);
  expect(sum(bytes), JSON.stringify(bytes)).toBeLessThan(60_000);
});

function sum(bytes: Readonly<Record<string, number>>): number {
  return Object.values(bytes).reduce((all, one) => all + one, 0);
}
