import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Route } from '../../../server/http/route.ts';
import { type AnApp, anApp, type Browser, ORIGIN } from '../an-app.ts';

let app: AnApp;
let browser: Browser;
beforeAll(async () => {
  app = await anApp({ people: true, routes: [] });
  ({ browser } = await app.signedIn('engineer'));
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

/** Names of the forms, names of what only the server may set, and any other. */
const name = fc.oneof(
  fc.constantFrom(
    'name',
    'role',
    'pin',
    'newPin',
    'newPinAgain',
    'who',
    'code',
    'plant',
    'next',
    'requestId',
    'token',
  ),
  fc.constantFrom('actor', 'ts', 'hash', 'person', '__proto__', 'constructor'),
  fc.string({ maxLength: 20 }),
);
const value = fc.oneof(fc.constantFrom(...NASTY), fc.string({ unit: 'binary', maxLength: 200 }));
const body = fc.oneof(
  fc.record({
    type: fc.constant('application/x-www-form-urlencoded'),
    text: fc
      .array(fc.tuple(name, value), { maxLength: 6 })
      .map((pairs) => new URLSearchParams(pairs.map(([a, b]) => [a, b])).toString()),
  }),
  fc.record({
    type: fc.constant('application/json'),
    text: fc.oneof(
      fc.dictionary(name, fc.oneof(value, fc.jsonValue())).map((fields) => JSON.stringify(fields)),
      fc.json(),
      fc.string(),
    ),
  }),
  fc.record({
    type: fc.constantFrom('', 'text/plain', 'application/json; charset=utf-16', 'multipart/form-data', 'x'),
    text: fc.string(),
  }),
);
/** What ends the session under test is tried by its own tests. */
const LEFT_OUT = ['signOut', 'changePin'];

async function send(
  route: Route,
  sent: { type: string; text: string; id: string; signedIn: boolean; json: boolean },
) {
  const path = route.path.replace(/:\w+(\{[^}]*\})?/g, encodeURIComponent(sent.id));
  const headers = {
    origin: ORIGIN,
    accept: sent.json ? 'application/json' : 'text/html',
    ...(sent.type === '' ? {} : { 'content-type': sent.type }),
    ...(sent.signedIn ? { cookie: browser.header } : {}),
  };
  const init = route.method === 'GET' ? { headers } : { method: 'POST', headers, body: sent.text };
  return { path, response: await app.send(path, init) };
}

describe('whatever is sent', () => {
  test('is answered with a plain refusal, never with a fault, and the log stays whole', async () => {
    const routes = fc.constantFrom(...app.routes.filter(({ name }) => !LEFT_OUT.includes(name)));
    const id = fc.oneof(
      fc.constantFrom('t1', 'e1', 'x9'),
      fc.constantFrom(...NASTY.filter((text) => isWhole(text))),
    );
    const about = fc.record({ id, signedIn: fc.boolean(), json: fc.boolean() });
    await fc.assert(
      fc.asyncProperty(routes, body, about, async (route, sent, rest) => {
        const { path, response } = await send(route, { ...sent, ...rest });
        const told = await response.text();
        expect(response.status, `${route.method} ${path} ${sent.text}\n${app.lines.at(-1)}`).toBeLessThan(
          500,
        );
        if (response.headers.get('content-type')?.startsWith('text/html')) {
          expect(told).not.toContain('<script>alert(1)');
        }
      }),
      { numRuns: 600, endOnFailure: true },
    );
    expect(app.lines).toEqual([]);
  });

  test.each(NASTY)('as a name stands on the page as text or is refused: %j', async (text) => {
    const fields = { name: isWhole(text) ? text : 'x', role: 'technician' };
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
    for (const path of ['/people/%00', '/people/%ff', `/people/${'x'.repeat(201)}`, '/people/%ed%a0%80']) {
      expect((await app.get(path, { as: browser })).status, path).toBe(404);
    }
  });
});
