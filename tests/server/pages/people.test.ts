import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type AnApp, anApp, type Browser } from '../an-app.ts';

let app: AnApp;
let engineer: Browser;
let technician: Browser;
beforeAll(async () => {
  app = await anApp({ people: true, routes: [] });
  ({ browser: engineer } = await app.signedIn('engineer'));
  ({ browser: technician } = await app.signedIn('technician'));
});
afterAll(() => app.close());

describe('the page of people', () => {
  test('shows everybody to everybody, and the form only to those who may add', async () => {
    const seen = await (await app.get('/people', { as: technician })).text();
    for (const name of ['technician 1', 'supervisor 1', 'safety officer 1', 'Engineer 1'])
      expect(seen).toContain(name);
    expect(seen).not.toContain('Add somebody');
    expect(seen).not.toContain('href="/people/t1"');
    const own = await (await app.get('/people', { as: engineer })).text();
    expect(own).toContain('Add somebody');
    expect(own).toContain('href="/people/t1"');
  });

  test('adds somebody and shows their code once', async () => {
    const response = await app.post(
      '/people',
      { name: ' Technician 2 ', role: 'technician', identity: 'works with me' },
      { as: engineer },
    );
    const page = await response.text();
    expect(response.status).toBe(201);
    expect(page).toContain('One-time code for Technician 2');
    expect(page).toMatch(/<b>\d{8}<\/b>/);
    expect(page).toContain('2024-01-16 08:00 UTC');
  });

  test('keeps what was typed when a name is in use', async () => {
    const response = await app.post(
      '/people',
      { name: 'Supervisor 1', role: 'engineer', identity: 'works with me' },
      { as: engineer },
    );
    const page = await response.text();
    expect(response.status).toBe(409);
    expect(page).toContain('Somebody is called &quot;Supervisor 1&quot; already.');
    expect(page).toContain('value="Supervisor 1"');
    expect(page).toMatch(/value="engineer" checked/);
    expect(page).toContain('This name is in use.');
  });

  test('refuses a role that there is not', async () => {
    const response = await app.post('/people', { name: 'X', role: 'admin' }, { as: engineer });
    expect([response.status, await response.text()]).toEqual([
      422,
      expect.stringContaining('Choose one of: technician, supervisor, safety-officer, engineer.'),
    ]);
  });
});

describe('the page of one person', () => {
  test('changes name and role, gives a code, signs out, retires', async () => {
    const path = '/people/t1';
    const named = await app.post(`${path}/name`, { name: 'Technician One' }, { as: engineer });
    expect(named.headers.get('location')).toBe(path);
    const role = await app.post(`${path}/role`, { role: 'supervisor' }, { as: engineer });
    expect(role.status).toBe(303);
    expect(await (await app.get(path, { as: engineer })).text()).toContain('t1, supervisor');
    const code = await app.post(`${path}/code`, { identity: 'works with me' }, { as: engineer });
    expect([code.status, await code.text()]).toEqual([
      200,
      expect.stringContaining('One-time code for Technician One'),
    ]);
    expect((await app.post(`${path}/sign-out`, {}, { as: engineer })).status).toBe(303);
    // It is not taken back, so one press with a glove is not enough.
    const offered = await (await app.get(path, { as: engineer })).text();
    expect(offered).toMatch(
      /<details><summary>Retire Technician One<\/summary>\s*<div class="acts">[\s\S]*Retire Technician One for good<\/button>/,
    );
    const retired = await app.post(`${path}/retire`, {}, { as: engineer });
    expect(retired.headers.get('location')).toBe('/people');
    const page = await (await app.get(path, { as: engineer })).text();
    expect(page).toContain('works here no longer');
    expect(page).not.toContain('action="/people/t1/');
    const entries = (await app.services.log.entriesOf('person:t1')).map(
      ({ kind, person }) => `${kind} by ${person}`,
    );
    expect(entries.slice(-5)).toEqual([
      'person-renamed by e1',
      'role-changed by e1',
      'code-given by e1',
      'signed-out by e1',
      'person-retired by e1',
    ]);
  });

  test('offers nobody to change their own role', async () => {
    const page = await (await app.get('/people/e1', { as: engineer })).text();
    expect(page).toContain('action="/people/e1/name"');
    expect(page).not.toContain('action="/people/e1/role"');
    expect((await app.post('/people/e1/retire', {}, { as: engineer })).status).toBe(403);
  });

  test('is not there for nobody', async () => {
    expect((await app.get('/people/x7', { as: engineer })).status).toBe(404);
    const refused = await app.post('/people/x7/name', { name: 'A' }, { as: engineer });
    expect([refused.status, await refused.text()]).toEqual([
      404,
      expect.stringContaining('Nobody with the id x7'),
    ]);
  });
});
