import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { newToken } from '../../../server/people/outside.ts';
import { type AnApp, anApp, Browser, newRequestId, PINS } from '../an-app.ts';

let app: AnApp;
beforeEach(async () => {
  app = await anApp({ people: true, routes: [] });
});
afterEach(() => app.close());

const MINUTE_MS = 60_000;

async function isIn(browser: Browser, path = '/people'): Promise<boolean> {
  return (await app.get(path, { as: browser })).status === 200;
}

const by = () => ({ requestId: newRequestId(), person: 'e1', screen: 'screen 9' });

describe('a session', () => {
  test('ends when nobody touches the screen for half an hour, and not before (WS-20)', async () => {
    const { browser } = await app.signedIn('technician');
    for (let time = 0; time < 5; time += 1) {
      app.wait(29 * MINUTE_MS);
      expect(await isIn(browser)).toBe(true);
    }
    app.wait(30 * MINUTE_MS);
    expect(await isIn(browser)).toBe(false);
  });

  test('ends after twelve hours, however busy (WS-20)', async () => {
    const { browser } = await app.signedIn('technician');
    for (let minutes = 0; minutes + 20 < 12 * 60; minutes += 20) {
      app.wait(20 * MINUTE_MS);
      expect(await isIn(browser)).toBe(true);
    }
    app.wait(20 * MINUTE_MS);
    expect(await isIn(browser)).toBe(false);
  });

  test('is not kept open by what the screen asks by itself (WS-20)', async () => {
    const { browser } = await app.signedIn('technician');
    for (let time = 0; time < 5; time += 1) {
      app.wait(6 * MINUTE_MS);
      expect(await isIn(browser, '/alive')).toBe(true);
      expect((await app.get('/nothing/here', { as: browser })).status).toBe(404);
    }
    expect(await isIn(browser)).toBe(false);
  });

  test('has limits that can be set', async () => {
    await app.close();
    app = await anApp({ folder: app.folder, routes: [], settings: { sessionIdleMinutesMax: 5 } });
    const browser = new Browser();
    await app.post('/sign-in', { who: 't1', pin: PINS.technician }, { as: browser });
    app.wait(5 * MINUTE_MS);
    expect(await isIn(browser)).toBe(false);
  });

  test('ends by signing out, and its cookie opens nothing afterwards (WS-21)', async () => {
    const { browser } = await app.signedIn('technician');
    const copy = browser.header;
    const response = await app.post('/sign-out', {}, { as: browser });
    expect(response.headers.get('location')).toBe('/sign-in?told=signed-out');
    expect(browser.cookies.has('yokeside-session')).toBe(false);
    expect((await app.get('/people', { headers: { cookie: copy } })).status).toBe(303);
    const kinds = (await app.services.log.entriesOf('person:t1')).map(({ kind, screen }) => [kind, screen]);
    expect(kinds.slice(-2)).toEqual([
      ['signed-in', 'screen 1'],
      ['signed-out', 'screen 1'],
    ]);
  });

  test('gets a new token at each sign-in, and the one before is dead (WS-18)', async () => {
    const { browser } = await app.signedIn('technician');
    const before = browser.header;
    await app.post('/sign-in', { who: 's1', pin: PINS.supervisor }, { as: browser });
    expect((await app.get('/people', { headers: { cookie: before } })).status).toBe(303);
    const page = await (await app.get('/people', { as: browser })).text();
    expect(page).toContain('supervisor 1 (s1), supervisor');
  });

  test.each([
    ['another role', () => app.services.people.changeRole({ id: 't1', role: 'engineer' }, by())],
    [
      'a new code',
      () => app.services.people.giveCode({ id: 't1', identityCheckedHow: 'works with me' }, by()),
    ],
    ['leaving the site', () => app.services.people.retire('t1', by())],
    ['being signed out by a supervisor', () => app.services.people.endSessions('t1', by())],
  ])('ends at once with %s (WS-21)', async (_, doing) => {
    const { browser } = await app.signedIn('technician');
    await doing();
    expect(await isIn(browser)).toBe(false);
  });

  test('survives a restart of the server', async () => {
    const { browser } = await app.signedIn('technician');
    await app.close();
    app = await anApp({ folder: app.folder, routes: [] });
    expect(await isIn(browser)).toBe(true);
  });

  test('is not opened by a token that nobody was given (WS-17)', async () => {
    const browser = new Browser();
    for (const token of ['x', 'A'.repeat(43), '', '__proto__']) {
      browser.cookies.set('yokeside-session', token);
      expect(await isIn(browser)).toBe(false);
    }
  });

  test('that is over leaves nothing behind', async () => {
    for (let time = 0; time < 3; time += 1) await app.signedIn('technician');
    app.wait(13 * 60 * MINUTE_MS);
    await app.signedIn('supervisor');
    expect(await app.services.store.outsideAll('session')).toHaveLength(1);
  });
});

describe('a screen', () => {
  test('keeps its number whoever signs in there, and another screen gets the next', async () => {
    const { browser } = await app.signedIn('technician');
    await app.post('/sign-out', {}, { as: browser });
    await app.post('/sign-in', { who: 's1', pin: PINS.supervisor }, { as: browser });
    const { browser: other } = await app.signedIn('engineer');
    const screens = await Promise.all(
      [browser, other].map(async (as) => {
        const answer = await app.get('/sign-in', { as, headers: { accept: 'application/json' } });
        return ((await answer.json()) as { screen: string }).screen;
      }),
    );
    expect(screens).toEqual(['screen 1', 'screen 2']);
  });

  test('has no number before somebody signed in there, and takes none that a browser invents', async () => {
    const browser = new Browser();
    browser.cookies.set('yokeside-screen', 'A'.repeat(43));
    const page = await (await app.get('/sign-in', { as: browser })).text();
    expect(page).toContain('unnumbered screen');
    await app.post('/sign-in', { who: 't1', pin: PINS.technician }, { as: browser });
    expect(browser.cookies.get('yokeside-screen')).not.toBe('A'.repeat(43));
  });

  test('is numbered once for two who sign in at once', async () => {
    await Promise.all([app.signedIn('technician'), app.signedIn('supervisor'), app.signedIn('engineer')]);
    const screens = await app.services.store.outsideAll('screen');
    expect(screens.map(({ body }) => (body as { number: number }).number).sort()).toEqual([1, 2, 3]);
  });
});

test('ten thousand tokens are all different and hold 256 bits (WS-17)', async () => {
  const tokens = new Set(Array.from({ length: 10_000 }, newToken));
  expect(tokens.size).toBe(10_000);
  for (const token of tokens) expect(Buffer.from(token, 'base64url')).toHaveLength(32);
});
