import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadDemoPlant } from '../../../server/demo/demo-plant.ts';
import type { Route } from '../../../server/http/route.ts';
import { type AnApp, anApp, Browser, ORIGIN } from '../an-app.ts';

let app: AnApp;
let browser: Browser;
let routes: readonly Route[] = [];
/** Ids of what is there. */
const known: string[] = [];
/** Names of the fields of all forms. */
const ownNames: string[] = [];
beforeAll(async () => {
  app = await anApp();
  const people = await loadDemoPlant(app.services);
  const engineer = people.find(({ role }) => role === 'engineer');
  browser = new Browser();
  await app.post('/sign-in', { who: engineer?.id ?? '', pin: engineer?.pin ?? '' }, { as: browser });
  expect(browser.cookies.has('yokeside-session')).toBe(true);
  const valves = await app.services.log.summaries('valve', { limit: 2 });
  const jobs = await app.services.log.summaries('job', { limit: 2 });
  known.push('t1', 'e1', 'x9', '1', ...valves.map(({ id }) => id), ...jobs.map(({ id }) => id));
  routes = app.routes.filter(({ name }) => !LEFT_OUT.includes(name) && !MADE_ALIKE.test(name));
  ownNames.push(...new Set(app.routes.flatMap(({ body }) => Object.keys(body?.shape ?? {}))));
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

/** What somebody might mean. */
const PLAUSIBLE = [
  '1',
  '9 psi',
  '50 %',
  'yes',
  'bench',
  'line',
  'technician',
  'stroke-check',
  'FV-214',
  '2024-01-15',
  'psi',
];

/** Text without half a surrogate pair. */
const isWhole = (text: string): boolean => !/\p{Surrogate}/u.test(text);

/** Names of the forms, names of what only the server may set, and any other. */
const name = fc.oneof(
  fc.nat().map((at) => ownNames[at % ownNames.length] ?? 'name'),
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
/** What ends the session under test, and what is told for as long as one listens, is tried by its own tests. */
const LEFT_OUT = ['signOut', 'changePin', 'endSessions', 'listenLive', 'practiseListenLive'];
/** So many, made of one registry, that they would crowd the others out; their own tests try them. */
const MADE_ALIKE = /^calculate(?!LongStepResponse|BenchSet)/;

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
  async function expectRefusal(route: Route, sent: Parameters<typeof send>[1]): Promise<void> {
    const { path, response } = await send(route, sent);
    const told = await response.text();
    const what = `${route.method} ${path} ${sent.text}\n${app.lines.at(-1)}`;
    expect(response.status, what).toBeLessThan(500);
    if (response.headers.get('content-type')?.startsWith('text/html')) {
      expect(told).not.toContain('<script>alert(1)');
    }
  }

  const route = fc.nat().map((at) => routes[at % routes.length] as Route);
  const about = fc.record({
    id: fc.oneof(
      fc.nat().map((at) => known[at % known.length] ?? ''),
      fc.constantFrom(...NASTY.filter(isWhole)),
    ),
    signedIn: fc.boolean(),
    json: fc.boolean(),
  });

  test('is answered with a plain refusal, never with a fault', async () => {
    await fc.assert(
      fc.asyncProperty(route, body, about, (of, sent, rest) => expectRefusal(of, { ...sent, ...rest })),
      { numRuns: 500, endOnFailure: true },
    );
    expect(app.lines).toEqual([]);
  });

  test('into the very fields of each form is answered so too', async () => {
    const values = fc.array(fc.oneof(value, fc.constantFrom(...PLAUSIBLE)), { minLength: 40, maxLength: 40 });
    await fc.assert(
      fc.asyncProperty(route, values, about, async (of, given, rest) => {
        const names = Object.keys(of.body?.shape ?? {});
        const pairs = names.map((field, at) => [field, given[at % given.length] ?? '']);
        const text = rest.json
          ? JSON.stringify(Object.fromEntries(pairs))
          : new URLSearchParams(pairs).toString();
        const type = rest.json ? 'application/json' : 'application/x-www-form-urlencoded';
        await expectRefusal(of, { text, type, ...rest, signedIn: true });
      }),
      { numRuns: 500, endOnFailure: true },
    );
    expect(app.lines).toEqual([]);
  });

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
    for (const path of ['/people/%00', '/people/%ff', `/people/${'x'.repeat(201)}`, '/people/%ed%a0%80']) {
      expect((await app.get(path, { as: browser })).status, path).toBe(404);
    }
  });
});
