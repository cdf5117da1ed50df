import { afterEach, describe, expect, test } from 'vitest';
import type { LoadDemo } from '../../../server/pages/set-up.ts';
import { type AnApp, type AnAppOptions, anApp, Browser, newRequestId } from '../an-app.ts';

let app: AnApp;
afterEach(() => app.close());

async function start(options: AnAppOptions = {}): Promise<AnApp> {
  app = await anApp({ routes: [], ...options });
  return app;
}

const FIRST = {
  plant: 'Condensate plant',
  name: 'Engineer 7',
  newPin: '738159',
  newPinAgain: '738159',
  rule: 'accepted',
};

const loadDemo: LoadDemo = async ({ people, newId }) => {
  const by = { requestId: newId(), person: null, screen: 'demo plant' };
  const { id, name, role } = await people.addWithPin(
    { name: 'Technician 1', role: 'technician', pin: '482915' },
    by,
  );
  return [{ id, name, role, pin: '482915' }];
};

describe('an empty site', () => {
  test('offers to set up the first person at its first page, and sends every other page there', async () => {
    await start();
    const page = await app.get('/');
    expect([page.status, await page.text()]).toEqual([200, expect.stringContaining('Set up this site')]);
    expect((await app.get('/sign-in')).headers.get('location')).toBe('/');
    expect((await app.get('/people')).headers.get('location')).toBe('/sign-in?next=%2Fpeople');
  });

  test('becomes the plant of its first person, an engineer, who is signed in at once', async () => {
    await start();
    const browser = new Browser();
    const response = await app.post('/set-up', FIRST, { as: browser });
    expect([response.status, response.headers.get('location')]).toEqual([303, '/people']);
    const page = await (await app.get('/people', { as: browser })).text();
    expect(page).toContain('Engineer 7 (e1), engineer');
    const json = await app.get('/', { as: browser, headers: { accept: 'application/json' } });
    expect(await json.json()).toMatchObject({ plant: 'Condensate plant', demo: false, isSetUp: true });
    const entries = await app.services.log.entriesOf('person:e1');
    expect(entries.map(({ kind, person }) => [kind, person])).toEqual([
      ['person-added', 'e1'],
      ['pin-set', 'e1'],
      ['rule-accepted', 'e1'],
      ['signed-in', 'e1'],
    ]);
  });

  test('has nobody in it, and is set up once (WS-16): afterwards the form is refused and the first page asks to sign in', async () => {
    await start();
    await app.post('/set-up', FIRST);
    const again = await app.post('/set-up', { ...FIRST, name: 'Intruder' });
    const told = await again.text();
    expect([again.status, told]).toEqual([409, expect.stringContaining('This site is set up already.')]);
    expect(told).not.toContain('Your PIN again');
    expect((await app.get('/')).headers.get('location')).toBe('/sign-in');
    expect(await app.services.people.list()).toHaveLength(1);
  });

  test('tells what is wrong at each field, keeps what was typed, and never shows a PIN again', async () => {
    await start();
    const response = await app.post('/set-up', { ...FIRST, plant: '', newPinAgain: '738150' });
    const first = await response.text();
    expect(response.status).toBe(422);
    expect(first).toContain('Write what the plant is called.');
    expect(first).toContain('value="Engineer 7"');
    expect(first).not.toContain('738159');
    const differs = await (await app.post('/set-up', { ...FIRST, newPinAgain: '738150' })).text();
    expect(differs).toContain('The two are not the same. Write both again.');
    const weak = await (
      await app.post('/set-up', { ...FIRST, newPin: '123456', newPinAgain: '123456' })
    ).text();
    expect(weak).toContain('Digits in a row are guessed first.');
    expect(await app.services.people.isEmpty()).toBe(true);
  });

  test('wants the token that was printed, where it can be reached from other machines (WS-16)', async () => {
    await start({ settings: { setUpToken: 'k3-Token' }, loadDemo });
    expect(await (await app.get('/')).text()).toContain('Set-up token');
    for (const token of ['', 'k3-Toke', 'k3-Token ', 'K3-TOKEN'].filter(
      (text) => text.trim() !== 'k3-Token',
    )) {
      const refused = await app.post('/set-up', { ...FIRST, token });
      expect([refused.status, await refused.text()]).toEqual([403, expect.stringContaining('PPL-013')]);
    }
    expect((await app.post('/set-up/demo', {})).status).toBe(403);
    expect(await app.services.people.isEmpty()).toBe(true);
    expect((await app.post('/set-up', { ...FIRST, token: 'k3-Token' })).status).toBe(303);
  });

  test('offers the demo plant only where there is one', async () => {
    await start();
    expect(await (await app.get('/')).text()).not.toContain('demo plant');
    expect((await app.post('/set-up/demo', {})).status).toBe(404);
  });

  test('becomes the demo plant, whose PINs are shown on that page and nowhere else', async () => {
    await start({ loadDemo });
    const requestId = newRequestId();
    const response = await app.post('/set-up/demo', { requestId });
    const page = await response.text();
    expect(response.status).toBe(200);
    expect(page).toContain('482915');
    expect(page).toContain('Technician 1');
    const again = await app.post('/set-up/demo', { requestId });
    expect([again.status, await again.text()]).toEqual([409, expect.not.stringContaining('482915')]);
    for await (const { bytes } of app.services.store.lines(1)) expect(bytes).not.toContain('482915');
    expect((await app.post('/sign-in', { who: 't1', pin: '482915' })).status).toBe(303);
    const told = await app.get('/', { headers: { accept: 'application/json' } });
    expect(await told.json()).toMatchObject({ plant: 'Demo plant', demo: true });
  });
});

test('an old set-up sent again with another PIN, by somebody who read its id in the log, changes no PIN', async () => {
  await start();
  const requestId = newRequestId();
  await app.post('/set-up', { ...FIRST, requestId });
  const forged = { ...FIRST, requestId, newPin: '517394', newPinAgain: '517394' };
  expect((await app.post('/set-up', forged)).status).toBe(403);
  expect((await app.post('/sign-in', { who: 'e1', pin: '517394' })).status).toBe(403);
  expect((await app.post('/sign-in', { who: 'e1', pin: FIRST.newPin })).status).toBe(303);
});

test('the same set-up sent twice by an impatient hand makes one person', async () => {
  await start();
  const once = { ...FIRST, requestId: newRequestId() };
  const both = await Promise.all([app.post('/set-up', once), app.post('/set-up', once)]);
  expect(both.map(({ status }) => status)).toEqual([303, 303]);
  expect(await app.services.people.list()).toHaveLength(1);
});
