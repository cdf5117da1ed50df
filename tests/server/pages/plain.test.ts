import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AnApp, anApp, Browser } from '../an-app.ts';

let app: AnApp;
beforeAll(async () => {
  app = await anApp({ people: true, routes: [] });
});
afterAll(() => app.close());

describe('pages that need nobody', () => {
  test('help says what to do when a PIN is forgotten, to whoever asks', async () => {
    const page = await app.get('/help');
    expect([page.status, await page.text()]).toEqual([200, expect.stringContaining('gives you a new code')]);
  });

  test('the look of a screen is kept without script', async () => {
    const browser = new Browser();
    const response = await app.post('/screen', { screen: 'night' }, { as: browser });
    expect(response.status).toBe(303);
    expect(await (await app.get('/help', { as: browser })).text()).toContain(
      'data-theme="dark" data-contrast="sun"',
    );
    await app.post('/screen', { screen: '<script>' }, { as: browser });
    expect(await (await app.get('/help', { as: browser })).text()).toContain('data-theme="auto"');
  });

  test('the look of a screen leads back to the page it was chosen on, and to no other site', async () => {
    const from = async (referer: string) => {
      const response = await app.post('/screen', { screen: 'dark' }, { headers: { referer } });
      return response.headers.get('location');
    };
    expect(await from('http://127.0.0.1:8430/people?x=1')).toBe('/people?x=1');
    expect(await from('http://evil.example/people')).toBe('/');
    expect(await from('http://127.0.0.1:8430//evil.example')).toBe('/');
    expect(await from('no address')).toBe('/');
  });

  test('the sign of life counts the entries of the log, and keeps no session open', async () => {
    const { seq } = await app.services.log.head();
    const answer = await app.get('/alive', { headers: { accept: 'application/json' } });
    expect(await answer.json()).toEqual({ alive: true, entries: seq });
  });

  test('the style page shows every part', async () => {
    expect(await (await app.get('/style')).text()).toContain('Every part in every state');
  });
});
