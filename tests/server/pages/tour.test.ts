import { afterAll, beforeAll, expect, test } from 'vitest';
import { type AnApp, anApp } from '../an-app.ts';

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true });
});
afterAll(() => app.close());

test('the tour is offered on the bench, is walked by links alone, is left by one press, and is not offered again', async () => {
  const { browser } = await app.signedIn('technician');
  const bench = async () => (await app.get('/practice', { as: browser })).text();
  expect(await bench()).toContain('href="/practice/tour"');
  const seen: string[] = [];
  let next: string | undefined = '/practice/tour';
  while (next !== undefined && seen.length < 9) {
    seen.push(next);
    const page: string = await (await app.get(next, { as: browser })).text();
    expect(page).toContain(`stop ${seen.length} of 5`);
    next = page.match(/href="([^"]+)">Next stop</)?.[1];
  }
  expect(seen).toHaveLength(5);
  const before = await app.services.log.head();
  const left = await app.post('/practice/tour', {}, { as: browser });
  expect([left.status, left.headers.get('location')]).toEqual([303, '/practice']);
  expect(await bench()).not.toContain('href="/practice/tour"');
  expect((await app.services.log.head()).seq).toBe(before.seq);
});

test('whoever has not left it is still offered it', async () => {
  const { browser } = await app.signedIn('technician');
  await app.post('/practice/tour', {}, { as: browser });
  const { browser: other } = await app.signedIn('supervisor');
  expect(await (await app.get('/practice', { as: other })).text()).toContain('href="/practice/tour"');
});

test('help leads to the guide and the tour; the guide is for anyone', async () => {
  const help = await (await app.get('/help')).text();
  for (const address of ['/help/guide', '/practice/tour']) expect(help).toContain(`href="${address}"`);
  expect(await (await app.get('/help/guide')).text()).toContain('<h1>Quick guide</h1>');
});
