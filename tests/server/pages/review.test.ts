import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type AnApp, anApp, type Browser, newRequestId, PINS } from '../an-app.ts';
import { textOf } from './texts.ts';

let app: AnApp;
let officer: Browser;
beforeEach(async () => {
  app = await anApp({ people: true, routes: [] });
  ({ browser: officer } = await app.signedIn('safety-officer'));
});
afterEach(() => app.close());

const page = async (path: string, as: Browser) => textOf(await (await app.get(path, { as })).text());

async function wrongPins(count: number, who = 't1'): Promise<void> {
  for (let time = 0; time < count; time += 1) await app.post('/sign-in', { who, pin: '1' });
}

describe('a run of wrong PINs', () => {
  test('stands above the safety officer’s very next page, with whose name and at which screen, and not before five (SA-21)', async () => {
    await wrongPins(4);
    expect(await page('/help', officer)).not.toContain('wrong PINs');
    await wrongPins(1);
    const banner =
      '2024-01-15 08:00 UTC: 5 wrong PINs in the name of technician 1 (t1), at unnumbered screen.';
    for (const path of ['/help', '/people', '/nothing/here'])
      expect(await page(path, officer)).toContain(banner);
  });

  test('is told to the one whose name it is as well, and to no other technician', async () => {
    const { browser: technician } = await app.signedIn('technician');
    await wrongPins(5, 's1');
    expect(await page('/help', technician)).not.toContain('wrong PINs');
    await wrongPins(5, 't1');
    expect(await page('/help', technician)).toContain('in the name of technician 1 (t1)');
  });

  test('in names that nobody has is told without the name', async () => {
    for (let time = 0; time < 6; time += 1) await wrongPins(1, `stranger ${time}`);
    const told = await page('/help', officer);
    expect(told).toContain('5 wrong PINs in names that nobody here has');
    expect(told).not.toContain('stranger');
  });

  test('goes when somebody has looked into it and says what they found, in an entry', async () => {
    await wrongPins(5);
    expect(await page('/people/review', officer)).toContain('Wrong PINs not looked into');
    expect((await app.post('/people/alarms', { note: '' }, { as: officer })).status).toBe(422);
    const fields = { note: 'A new glove; they asked for help.' };
    expect((await app.post('/people/alarms', fields, { as: officer })).status).toBe(303);
    expect(await page('/people/review', officer)).not.toContain('wrong PINs');
    const last = (await app.services.log.entriesOf('site')).at(-1);
    expect(last).toMatchObject({ kind: 'pin-alarms-looked-into', person: 'o1', inputs: fields });
    await wrongPins(1);
    app.wait(60_000);
    expect(await page('/help', officer)).not.toContain('wrong PINs');
  });
});

describe('the review of accounts', () => {
  test('shows each with role, last use, open sessions and age of the PIN, and says when it was last done (SA-19)', async () => {
    await app.signedIn('technician');
    const { services } = app;
    const by = { requestId: newRequestId(), person: 'e1', screen: 'screen 9' };
    await services.people.giveCode({ id: 's1', identityCheckedHow: 'works with me' }, by);
    app.wait(100 * 24 * 3600 * 1000);
    const browser = officer;
    await app.post('/sign-in', { who: 'o1', pin: PINS['safety-officer'] }, { as: browser });
    const told = await page('/people/review', browser);
    expect(told).toContain('last looked over: never');
    expect(told).toContain(
      't1 technician 1 technician 2024-01-15 08:00 UTC 2024-01-15 not used for 100 days',
    );
    expect(told).toContain('s1 supervisor 1 supervisor never 2024-01-15 code has run out');
    expect(told).toContain(
      'o1 safety officer 1 safety officer 2024-04-24 08:00 UTC 2024-01-15 signed in at screen 1',
    );
    await app.post('/people/review', { done: 'Nobody has left.' }, { as: browser });
    expect(await page('/people/review', browser)).toContain(
      'last looked over: 2024-04-24 08:00 UTC, by safety officer 1 (o1)',
    );
    const last = (await app.services.log.entriesOf('site')).at(-1);
    expect(last).toMatchObject({
      kind: 'accounts-reviewed',
      person: 'o1',
      inputs: { note: 'Nobody has left.' },
    });
  });

  test('is not for technicians', async () => {
    const { browser } = await app.signedIn('technician');
    expect((await app.get('/people/review', { as: browser })).status).toBe(403);
  });
});

describe('somebody let in from the server’s own console', () => {
  test('is read of by everybody for a week, and in the review for good', async () => {
    const { browser: technician } = await app.signedIn('technician');
    const by = { requestId: newRequestId(), person: null, screen: 'server console' };
    await app.services.people.letIn({ name: 'Engineer 1', newKey: false }, by);
    const told = '2024-01-15 08:00 UTC: Engineer 1 (e1) got a one-time code at the server’s own console.';
    expect(await page('/help', technician)).toContain(told);
    app.wait(7 * 24 * 3600 * 1000);
    for (const [role, as] of [
      ['t1', technician],
      ['o1', officer],
    ] as const) {
      const pin = role === 't1' ? PINS.technician : PINS['safety-officer'];
      await app.post('/sign-in', { who: role, pin }, { as });
    }
    expect(await page('/help', technician)).not.toContain('got a one-time code');
    expect(await page('/people/review', officer)).toContain('Let in from the server’s own console');
  });
});
