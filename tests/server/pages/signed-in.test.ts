import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type AnApp, anApp, Browser } from '../an-app.ts';

let app: AnApp;
beforeEach(async () => {
  app = await anApp({ people: true, routes: [] });
});
afterEach(() => app.close());

const MINUTE_MS = 60_000;
const JSON_TOO = { headers: { accept: 'application/json' } };

describe('how long somebody stays signed in', () => {
  test('is told without counting as somebody at the screen, and a key begins it anew (UI-15)', async () => {
    const { browser } = await app.signedIn('technician');
    const left = async () => (await app.get('/signed-in', { as: browser, ...JSON_TOO })).json();
    expect(await left()).toEqual({ person: 't1', endsInS: 1800, canStay: true });
    app.wait(28 * MINUTE_MS);
    expect(await left()).toEqual({ person: 't1', endsInS: 120, canStay: true });
    const stayed = await app.post('/signed-in', {}, { as: browser, ...JSON_TOO });
    expect(await stayed.json()).toEqual({ person: 't1', endsInS: 1800, canStay: true });
    app.wait(30 * MINUTE_MS);
    expect(await left()).toEqual({ person: null, endsInS: 0, canStay: false });
    expect((await app.post('/signed-in', {}, { as: browser, ...JSON_TOO })).status).toBe(401);
  });

  test('can be begun anew as often as it takes, until the twelve hours are over (UI-15)', async () => {
    const { browser } = await app.signedIn('technician');
    for (let minutes = 0; minutes < 700; minutes += 28) {
      app.wait(28 * MINUTE_MS);
      expect((await app.post('/signed-in', {}, { as: browser, ...JSON_TOO })).status).toBe(200);
    }
    const { canStay, endsInS } = await (await app.get('/signed-in', { as: browser, ...JSON_TOO })).json();
    expect([canStay, endsInS]).toEqual([false, 20 * 60]);
  });

  test('is not made longer by a page that shows news by itself (WS-20)', async () => {
    const { browser } = await app.signedIn('technician');
    for (let time = 0; time < 5; time += 1) {
      app.wait(6 * MINUTE_MS);
      await app.get('/people', { as: browser, headers: { 'by-itself': 'yes' } });
    }
    expect((await (await app.get('/signed-in', { as: browser, ...JSON_TOO })).json()).person).toBeNull();
  });

  test('is nothing to nobody', async () => {
    const answer = await app.get('/signed-in', { as: new Browser(), ...JSON_TOO });
    expect(await answer.json()).toEqual({ person: null, endsInS: 0, canStay: false });
  });
});
