import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadDemoPlant } from '../../../server/demo/demo-plant.ts';
import { type AnApp, anApp, Browser } from '../an-app.ts';

let app: AnApp;
let browser: Browser;
beforeAll(async () => {
  app = await anApp();
  const people = await loadDemoPlant(app.services);
  const engineer = people.find(({ role }) => role === 'engineer');
  browser = new Browser();
  await app.post('/sign-in', { who: engineer?.id ?? '', pin: engineer?.pin ?? '' }, { as: browser });
  expect(browser.cookies.has('yokeside-session')).toBe(true);
});
afterAll(() => app.close());

const NASTY = [
  '',
  ' ',
  '0',
  '-1',
  'NaN',
  '1e309',
  '0x10',
  '1,5',
  "'; DROP TABLE entries; --",
  '<script>alert(1)</script>',
  '{{ 7 * 7 }}',
  '../../etc/passwd',
  'a\u0000b',
  'a\r\nSet-Cookie: x=y',
  '\u202egnp.exe',
  'Z\u0351\u036b'.repeat(50),
  'x'.repeat(100_000),
  '\ud83d',
];

/** Text without half a surrogate pair. */
const isWhole = (text: string): boolean => !/\p{Surrogate}/u.test(text);

describe('whatever is sent', () => {
  test.each(['a\u0000b', 'x'.repeat(300), '\u0001', ''])(
    'a job cannot be opened on the tag %j',
    async (tag) => {
      const fields = { tag, procedure: 'stroke-check', place: 'line' };
      const response = await app.post('/jobs', fields, { as: browser });
      expect(response.status).toBe(422);
      expect(await response.text()).not.toContain('TypeError');
      expect(app.lines).toEqual([]);
    },
  );

  test.each(NASTY)('as a name stands on the page as text or is refused: %j', async (text) => {
    const fields = { name: isWhole(text) ? text : 'x', role: 'technician', identity: 'works with me' };
    const response = await app.post('/people', fields, { as: browser });
    expect([201, 409, 422]).toContain(response.status);
    const page = await (await app.get('/people', { as: browser })).text();
    expect(page).not.toContain('<script>alert');
  });

  test('a form larger than a form is refused before it is read to its end', async () => {
    const response = await app.post(
      '/people',
      { name: 'x'.repeat(300_000), role: 'technician' },
      { as: browser },
    );
    expect(response.status).toBe(400);
    expect(await response.text()).toContain('The content is larger than 256 KiB.');
  });

  test('an address that cannot be is no page', async () => {
    for (const path of [
      '/people/%00',
      '/points/%EF%BB%BF',
      '/points/%20',
      '/people/%ff',
      `/people/${'x'.repeat(201)}`,
      '/people/%ed%a0%80',
    ]) {
      expect((await app.get(path, { as: browser })).status, path).toBe(404);
    }
  });
});
