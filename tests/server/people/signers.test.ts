/** How somebody comes to sign: who says that it is they, what they take on, and who knows their PIN. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type AnApp, anApp, type Browser, PINS } from '../an-app.ts';
import { textOf } from '../pages/texts.ts';

let app: AnApp;
let engineer: Browser;
beforeEach(async () => {
  app = await anApp({ people: true, routes: [] });
  ({ browser: engineer } = await app.signedIn('engineer'));
});
afterEach(() => app.close());

async function codeFor(fields: Readonly<Record<string, string>>, path = '/people'): Promise<string> {
  const answer = await app.post(path, fields, { as: engineer });
  return /<b>(\d{8})<\/b>/.exec(await answer.text())?.[1] ?? '';
}

const NEW = { name: 'Technician 7', role: 'technician', identity: 'Site pass 4471 seen' };
const entries = async (id: string) =>
  (await app.services.log.entriesOf(`person:${id}`)).map(({ kind, person, inputs }) => [
    kind,
    person,
    inputs,
  ]);

describe('whoever adds somebody', () => {
  test('says how they know that it is they, and the entry has it with their own name (SA-14)', async () => {
    for (const identity of ['', '   ']) {
      const refused = await app.post('/people', { ...NEW, identity }, { as: engineer });
      expect([refused.status, textOf(await refused.text())]).toEqual([
        422,
        expect.stringContaining('Write how you know that it is they.'),
      ]);
    }
    expect(await codeFor(NEW)).toMatch(/^\d{8}$/);
    expect(await entries('t2')).toEqual([
      ['person-added', 'e1', { name: NEW.name, role: NEW.role, identityCheckedHow: NEW.identity }],
    ]);
  });

  test('says it again with every new code (SA-14)', async () => {
    expect((await app.post('/people/t1/code', {}, { as: engineer })).status).toBe(422);
    await codeFor({ identity: 'In person' }, '/people/t1/code');
    expect((await entries('t1')).at(-1)).toEqual(['code-given', 'e1', { identityCheckedHow: 'In person' }]);
  });
});

describe('the first PIN', () => {
  test('is not set before its owner was shown the rule of signing and took it on, which is an entry of theirs (SA-10)', async () => {
    const code = await codeFor(NEW);
    const page = textOf(await (await app.get('/first-pin')).text());
    expect(page).toContain('What is done under your name and PIN, you answer for');
    const choice = { who: NEW.name, code, newPin: '738159', newPinAgain: '738159' };
    for (const rule of [{}, { rule: '' }, { rule: 'no' }]) {
      const refused = await app.post('/first-pin', { ...choice, ...rule });
      expect([refused.status, textOf(await refused.text())]).toEqual([
        422,
        expect.stringContaining('Read the rule and tick it'),
      ]);
    }
    expect((await app.post('/first-pin', { ...choice, rule: 'accepted' })).status).toBe(303);
    expect((await entries('t2')).slice(1)).toEqual([
      ['rule-accepted', 't2', { rule: 1 }],
      ['pin-set', 't2', {}],
    ]);
  });

  test('of the very first person asks for the same (SA-10)', async () => {
    const empty = await anApp({ routes: [] });
    expect(textOf(await (await empty.get('/')).text())).toContain('you answer for');
    const first = { plant: 'P', name: 'E', newPin: '738159', newPinAgain: '738159' };
    expect((await empty.post('/set-up', first)).status).toBe(422);
    expect((await empty.post('/set-up', { ...first, rule: 'accepted' })).status).toBe(303);
    const kinds = (await empty.services.log.entriesOf('person:e1')).map(({ kind }) => kind);
    expect(kinds).toContain('rule-accepted');
    await empty.close();
  });

  test('is known to its owner alone: whoever gave the code sees no more of it, and both acts are entries (SA-17)', async () => {
    const code = await codeFor({ identity: 'In person' }, '/people/t1/code');
    const newPin = '517394';
    await app.post('/first-pin', { who: 't1', code, newPin, newPinAgain: newPin, rule: 'accepted' });
    for (const path of ['/people', '/people/t1', '/people/review']) {
      const page = await (await app.get(path, { as: engineer })).text();
      for (const secret of [newPin, code, PINS.technician]) expect(page, path).not.toContain(secret);
    }
    expect((await entries('t1')).slice(-3).map(([kind, person]) => [kind, person])).toEqual([
      ['code-given', 'e1'],
      ['rule-accepted', 't1'],
      ['pin-set', 't1'],
    ]);
    expect((await app.post('/sign-in', { who: 't1', pin: code })).status).toBe(403);
    expect((await app.post('/sign-in', { who: 't1', pin: newPin })).status).toBe(303);
  });
});
