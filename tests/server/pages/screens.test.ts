import { afterEach, beforeEach, expect, test } from 'vitest';
import { type AnApp, anApp, type Browser, PINS } from '../an-app.ts';
import { textOf } from './texts.ts';

let app: AnApp;
let engineer: Browser;
let technician: Browser;
beforeEach(async () => {
  app = await anApp({ people: true, routes: [] });
  ({ browser: engineer } = await app.signedIn('engineer'));
  ({ browser: technician } = await app.signedIn('technician'));
});
afterEach(() => app.close());

const page = async (path: string, as: Browser) => textOf(await (await app.get(path, { as })).text());
const name = (number: number, called: string) =>
  app.post(`/screens/${number}/name`, { name: called }, { as: engineer });

async function lastSignIn(id: string): Promise<string | undefined> {
  return (await app.services.log.entriesOf(`person:${id}`)).at(-1)?.screen;
}

test('an act carries the screen that it came from, and says so where the site does not know the screen (SA-09)', async () => {
  expect(await page('/people', technician)).toContain('at this screen screen 2');
  expect((await name(1, 'Valve shop, desk')).status).toBe(303);
  expect(await page('/people', engineer)).toContain('at this screen Valve shop, desk');
  expect(await page('/people', technician)).toContain('at this screen screen 2, not one of the site');
  await app.post('/sign-in', { who: 't1', pin: PINS.technician }, { as: technician });
  expect(await lastSignIn('t1')).toBe('screen 2, not one of the site');
  await name(2, 'Bench 2');
  await app.post('/sign-in', { who: 't1', pin: PINS.technician }, { as: technician });
  expect(await lastSignIn('t1')).toBe('Bench 2');
  const stranger = await app.get('/sign-in', { headers: { accept: 'application/json' } });
  expect(await stranger.json()).toMatchObject({ screen: 'unnumbered screen, not one of the site' });
});

test('names are kept apart, and a blank one takes a screen off again', async () => {
  await name(1, 'Bench 1');
  const same = await name(2, 'BENCH 1');
  expect([same.status, textOf(await same.text())]).toEqual([
    409,
    expect.stringContaining('This name is in use.'),
  ]);
  expect((await name(1, 'Bench 1')).status).toBe(303);
  for (const bad of ['screen 7', 'Server console', 'unnumbered screen'])
    expect((await name(2, bad)).status).toBe(422);
  expect((await name(7, 'Bench 7')).status).toBe(404);
  await name(1, '');
  expect(await page('/people', technician)).toContain('at this screen screen 2 ');
  const kinds = (await app.services.log.entriesOf('site')).filter(({ kind }) => kind === 'screen-named');
  expect(kinds.map(({ person, inputs }) => [person, inputs])).toEqual([
    ['e1', { screen: 'screen 1', name: 'Bench 1' }],
    ['e1', { screen: 'screen 1', name: 'Bench 1' }],
    ['e1', { screen: 'screen 1', name: '' }],
  ]);
});

test('the page lists them with the one that it stands on', async () => {
  const told = await page('/screens', engineer);
  expect(told).toContain('Screens 2 known');
  expect(told).toContain('Screen 1, this one');
  expect((await app.get('/screens', { as: technician })).status).toBe(403);
});
