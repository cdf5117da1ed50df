import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ownHosts, ownOrigin } from '../../../server/http/security.ts';
import { type AnApp, anApp, Browser, form, ORIGIN, PINS } from '../an-app.ts';

let app: AnApp;

beforeAll(async () => {
  app = await anApp({ people: true, routes: [] });
});
afterAll(() => app.close());

const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; " +
  "form-action 'self'; base-uri 'none'; object-src 'none'; frame-ancestors 'none'";

function expectHeaders(response: Response): void {
  expect(response.headers.get('content-security-policy')).toBe(POLICY);
  expect(response.headers.get('x-content-type-options')).toBe('nosniff');
  expect(response.headers.get('referrer-policy')).toBe('same-origin');
  expect(response.headers.get('cache-control')).toBe('no-store');
  expect(response.headers.get('access-control-allow-origin')).toBeNull();
  expect(response.headers.get('cross-origin-resource-policy')).toBe('same-origin');
  expect(response.headers.get('cross-origin-opener-policy')).toBe('same-origin');
  const type = response.headers.get('content-type');
  if (type !== null) expect(type).toMatch(/^(text\/(html|plain)|application\/json); charset=utf-8$/);
}

describe('the host that a request names', () => {
  test.each([
    ['127.0.0.1:8430', 303],
    ['evil.example', 421],
    ['127.0.0.1:8430.evil.example', 421],
    ['127.0.0.1.evil.example:8430', 421],
    ['127.0.0.1:8431', 421],
    ['127.0.0.1', 421],
    ['127.0.0.1:8430.', 421],
    ['127.0.0.1.:8430', 421],
    ['localhost:8430', 421],
    ['evil.example, 127.0.0.1:8430', 421],
    ['user@127.0.0.1:8430', 421],
  ])('%s is answered with %i, over plain http as well (WS-28, WS-29)', async (host, status) => {
    const response = await app.send('/', { headers: { host, origin: 'http://evil.example' } });
    expect(response.status).toBe(status);
    expectHeaders(response);
    expect(response.headers.getSetCookie()).toEqual([]);
  });

  test('must be there, and is looked at before anything else', async () => {
    for (const path of ['/', '/people', '/nothing/here', '/assets/x/style.css']) {
      const response = await app.app.request(`${ORIGIN}${path}`);
      expect(response.status).toBe(400);
      expectHeaders(response);
      const wrong = await app.send(path, { headers: { host: 'evil.example' } });
      expect(wrong.status).toBe(421);
      expect(await wrong.text()).not.toContain('<');
    }
  });

  test('may leave out the port that the scheme has anyway, and is compared without regard to capitals', () => {
    const hosts = ownHosts(['https://Valves.example', 'http://[::1]:8430']);
    const asked = (host: string) => ownOrigin(new Headers({ host }), hosts);
    for (const host of ['valves.example', 'VALVES.example:443'])
      expect(asked(host)).toEqual({ origin: 'https://valves.example' });
    expect(asked('[::1]:8430')).toEqual({ origin: 'http://[::1]:8430' });
    expect(asked('valves.example:80')).toMatchObject({ status: 421 });
  });

  test('is never taken from a header that a proxy would set (WS-30)', async () => {
    const headers = {
      host: 'evil.example',
      'x-forwarded-host': '127.0.0.1:8430',
      forwarded: 'host=127.0.0.1:8430',
    };
    expect((await app.send('/', { headers })).status).toBe(421);
    const good = await app.send('/', {
      headers: { 'x-forwarded-host': 'evil.example', accept: 'text/html' },
    });
    expect(good.headers.get('location')).toBe('/sign-in');
  });
});

describe('the page that a form comes from', () => {
  const sites = ['cross-site', 'same-site', 'same-origin', 'none', null] as const;
  const origins = [
    ORIGIN,
    'http://evil.example',
    'http://127.0.0.1:8431',
    'https://127.0.0.1:8430',
    'null',
    null,
  ];
  const kinds = ['application/x-www-form-urlencoded', 'application/json', 'text/plain'] as const;
  const cases = sites.flatMap((site) =>
    origins.flatMap((origin) => kinds.map((kind) => ({ site, origin, kind }))),
  );

  test.each(cases)('site $site, origin $origin, $kind (WS-26)', async ({ site, origin, kind }) => {
    const isOwn =
      site === null ? origin === ORIGIN : site === 'same-origin' && (origin === ORIGIN || origin === null);
    const fields = { who: 'nobody', pin: '1' };
    const response = await app.send('/sign-in', {
      method: 'POST',
      headers: {
        accept: 'application/json',
        'content-type': kind,
        ...(site === null ? {} : { 'sec-fetch-site': site }),
        ...(origin === null ? {} : { origin }),
      },
      body: kind === 'application/json' ? JSON.stringify(fields) : form(fields),
    });
    const { code } = (await response.json()) as { code: string };
    if (!isOwn) expect([response.status, code]).toEqual([403, 'REQ-004']);
    else if (kind === 'text/plain') expect([response.status, code]).toEqual([400, 'REQ-002']);
    // Through the door, where the name is looked at.
    else expect(['PPL-001', 'PPL-002']).toContain(code);
    expectHeaders(response);
  });

  test('decides before anybody is recognised: a foreign post with a good cookie changes nothing', async () => {
    const { browser } = await app.signedIn('engineer');
    const before = await app.services.log.head();
    const response = await app.post(
      '/people',
      { name: 'Intruder', role: 'engineer' },
      { as: browser, headers: { origin: 'http://evil.example' } },
    );
    expect(response.status).toBe(403);
    expect(await response.text()).not.toContain('safety officer 1');
    expect(await app.services.log.head()).toEqual(before);
  });
});

describe('every answer', () => {
  test('carries the headers: each route by each method, as page, piece and JSON, signed in or not (WS-31, WS-32, WS-33)', async () => {
    const { browser } = await app.signedIn('safety-officer');
    for (const route of app.routes) {
      if (route.name === 'getAsset') continue;
      const path = route.path.replace(/:\w+/g, 'x');
      for (const method of ['GET', 'POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) {
        for (const headers of [
          { accept: 'text/html' },
          { accept: 'application/json' },
          { 'hx-request': 'true' },
        ]) {
          for (const cookie of [{}, { cookie: browser.header }]) {
            const response = await app.send(path, {
              method,
              headers: { ...headers, ...cookie, origin: ORIGIN },
            });
            expectHeaders(response);
            expect(response.status, `${method} ${path}`).toBeLessThan(500);
          }
        }
      }
    }
  });

  test('carries them where nothing is, and says by which methods something is there', async () => {
    const unknown = await app.get('/nothing/here');
    expect(unknown.status).toBe(404);
    expectHeaders(unknown);
    expect(await unknown.text()).toContain('There is no page at this address.');
    const wrong = await app.send('/people', { method: 'DELETE', headers: { accept: 'application/json' } });
    expect([wrong.status, wrong.headers.get('allow')]).toEqual([405, 'GET, POST']);
    expectHeaders(wrong);
  });

  test('answers HEAD as GET without a body', async () => {
    const response = await app.send('/help', { method: 'HEAD', headers: { accept: 'text/html' } });
    expect([response.status, await response.text()]).toEqual([200, '']);
    expectHeaders(response);
  });
});

describe('cookies', () => {
  test('are unseen by scripts and by other sites, and named for TLS only with TLS (WS-19)', async () => {
    const browser = new Browser();
    const plain = await app.post('/sign-in', { who: 'e1', pin: PINS.engineer }, { as: browser });
    for (const line of plain.headers.getSetCookie())
      expect(line).toMatch(
        /^yokeside-(session|screen)=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict(; Max-Age=\d+)?$/,
      );
    const secure = await anApp({ routes: [], settings: { origins: ['https://127.0.0.1:8430'] } });
    const set = await secure.post(
      '/set-up',
      { plant: 'P', name: 'E', newPin: PINS.engineer, newPinAgain: PINS.engineer, rule: 'accepted' },
      { headers: { origin: 'https://127.0.0.1:8430' } },
    );
    const lines = set.headers.getSetCookie();
    expect(lines).toHaveLength(2);
    for (const line of lines) {
      expect(line).toMatch(
        /^__Host-yokeside-(session|screen)=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict; Secure/,
      );
    }
    await secure.close();
  });

  test('hold the token nowhere else: not in the page, its address, the log or the operations log', async () => {
    const { browser } = await app.signedIn('technician');
    const token = browser.cookies.get('yokeside-session') ?? '';
    expect(token).toHaveLength(43);
    const page = await app.get('/people', { as: browser });
    expect(await page.text()).not.toContain(token);
    expect(app.lines.join()).not.toContain(token);
    for await (const { bytes } of app.services.store.lines(1)) expect(bytes).not.toContain(token);
    expect(JSON.stringify(await app.services.store.outsideAll('session'))).not.toContain(token);
  });
});
