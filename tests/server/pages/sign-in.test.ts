import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AnApp, anApp, Browser, PINS } from '../an-app.ts';

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true, routes: [] });
});
afterAll(() => app.close());

const piece = { 'hx-request': 'true' };

describe('signing in', () => {
  test('leads back to the page that was asked for', async () => {
    const response = await app.post('/sign-in', { who: 't1', pin: PINS.technician, next: '/people' });
    expect([response.status, response.headers.get('location')]).toEqual([303, '/people']);
    const first = await app.post('/sign-in', { who: 't1', pin: PINS.technician });
    expect(first.headers.get('location')).toBe('/');
  });

  test.each(['//evil.example', 'https://evil.example', '/\\evil.example', 'javascript:alert(1)', '/a\r\nb'])(
    'never leads elsewhere: %j',
    async (next) => {
      const response = await app.post('/sign-in', { who: 't1', pin: PINS.technician, next });
      expect([response.status, response.headers.get('location')]).toEqual([422, null]);
      expect(response.headers.getSetCookie()).toEqual([]);
    },
  );

  test('with a wrong PIN shows the form again with the name and without the PIN', async () => {
    const response = await app.post('/sign-in', { who: 'supervisor 1', pin: '555444', next: '/people' });
    const page = await response.text();
    expect(response.status).toBe(403);
    expect(page).toContain('Name and PIN do not belong together.');
    expect(page).toContain('value="supervisor 1"');
    expect(page).toContain('name="next" value="/people"');
    expect(page).not.toContain('555444');
    expect(response.headers.getSetCookie()).toEqual([]);
  });

  test('works by script as well: a piece of the form, or the way on', async () => {
    const wrong = await app.post('/sign-in', { who: 's1', pin: '1' }, { headers: piece });
    expect([wrong.status, await wrong.text()]).toEqual([403, expect.stringContaining('id="sheets"')]);
    const right = await app.post('/sign-in', { who: 's1', pin: PINS.supervisor }, { headers: piece });
    expect([right.status, right.headers.get('hx-redirect')]).toEqual([204, '/']);
    expect(right.headers.getSetCookie()).toHaveLength(2);
  });

  test('is an answer in JSON for a program, which then sends the cookies', async () => {
    const browser = new Browser();
    const response = await app.postJson(
      '/sign-in',
      { who: 'o1', pin: PINS['safety-officer'] },
      { as: browser },
    );
    expect(await response.json()).toMatchObject({ person: { id: 'o1', role: 'safety-officer' } });
    const people = await app.get('/people', { as: browser, headers: { accept: 'application/json' } });
    expect(people.status).toBe(200);
  });

  test('with a one-time code in the place of the PIN says where it belongs', async () => {
    const by = { requestId: 'adding-somebody-1', person: 'e1', screen: 'screen 9' };
    const { code } = await app.services.people.add(
      { name: 'New', role: 'technician', identityCheckedHow: 'works with me' },
      by,
    );
    const response = await app.post('/sign-in', { who: 'New', pin: code });
    expect([response.status, await response.text()]).toEqual([
      403,
      expect.stringContaining('That is the one-time code'),
    ]);
    const choice = { who: 'New', code, newPin: '738159', newPinAgain: '738159' };
    const set = await app.post('/first-pin', { ...choice, rule: 'accepted' });
    expect([set.status, set.headers.get('location')]).toEqual([303, '/sign-in?told=pin-set']);
    const page = await (await app.get('/sign-in?told=pin-set')).text();
    expect(page).toContain('Your PIN is set. Sign in with it.');
  });

  test('has a field that hides the PIN, takes a pasted one, and can be filled in by the browser (WS-15) (UI-18)', async () => {
    const page = await (await app.get('/sign-in')).text();
    const field = /<input[^>]*name="pin"[^>]*>/.exec(page)?.[0] ?? '';
    expect(field).toContain('type="password"');
    expect(field).toContain('inputmode="numeric"');
    expect(field).toContain('autocomplete="current-password"');
    expect(page).not.toMatch(/onpaste|oncopy/);
  });

  test('has a form that works without script: address, method, and a request id of its own', async () => {
    const form = async () =>
      /<form[^>]*action="\/sign-in"[^>]*>[\s\S]*?name="requestId" value="([^"]+)"/.exec(
        await (await app.get('/sign-in')).text(),
      );
    const [one, other] = [await form(), await form()];
    expect(one?.[0]).toContain('method="post"');
    expect(one?.[1]).not.toBe(other?.[1]);
  });
});

describe('changing the own PIN', () => {
  test('asks for the one before, then signs out everywhere', async () => {
    const { browser } = await app.signedIn('safety-officer');
    const fields = { pin: PINS['safety-officer'], newPin: '517394', newPinAgain: '517394' };
    const wrong = await app.post('/pin', { ...fields, pin: '1' }, { as: browser });
    expect([wrong.status, await wrong.text()]).toEqual([403, expect.stringContaining('Change my PIN')]);
    const differs = await app.post('/pin', { ...fields, newPinAgain: '517395' }, { as: browser });
    expect(await differs.text()).toContain('The two are not the same.');
    const done = await app.post('/pin', fields, { as: browser });
    expect([done.status, done.headers.get('location')]).toEqual([303, '/sign-in?told=pin-set']);
    expect(browser.cookies.has('yokeside-session')).toBe(false);
    expect((await app.post('/sign-in', { who: 'o1', pin: '517394' })).status).toBe(303);
  });
});

test('everybody who is signed in finds the way out on every page', async () => {
  const { browser } = await app.signedIn('engineer');
  for (const path of ['/people', '/people/t1', '/pin', '/help', '/sign-in', '/style', '/nothing/here']) {
    const page = await (await app.get(path, { as: browser })).text();
    expect(page, path).toContain('action="/sign-out"');
  }
});
