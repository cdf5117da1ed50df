import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { By } from '../../../server/people/people.ts';
import { type AnApp, anApp, newRequestId, PINS } from '../an-app.ts';

let app: AnApp;
beforeEach(async () => {
  app = await anApp({ people: true, routes: [] });
});
afterEach(() => app.close());

const by = (person: string | null = 'e1', requestId = newRequestId()): By => ({
  requestId,
  person,
  screen: 'screen 9',
});

const HOW = { identityCheckedHow: 'works with me' };

const verify = (who: string, pin: string) => app.services.people.verify({ who, pin, screen: 'screen 9' });

async function codeOf(doing: Promise<unknown>): Promise<string> {
  const error: unknown = await doing.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  return (error as { text?: { code: string } })?.text?.code ?? `not refused: ${error}`;
}

async function entries(stream: string): Promise<readonly string[]> {
  return (await app.services.log.entriesOf(stream)).map(
    ({ kind, inputs }) => `${kind} ${JSON.stringify(inputs)}`,
  );
}

describe('proving who one is', () => {
  test('takes name or id, whatever the capitals, and the PIN exactly', async () => {
    for (const who of ['technician 1', 'Technician 1', 'T1', ' t1 ']) {
      expect(await verify(who, PINS.technician)).toMatchObject({ id: 't1', role: 'technician' });
    }
    expect(await codeOf(verify('t1', ` ${PINS.technician}`))).toBe('PPL-001');
    expect(await codeOf(verify('t1', PINS.supervisor))).toBe('PPL-001');
  });

  test('looks the same for a name that nobody has and for a wrong PIN, through all ten tries (WS-12)', async () => {
    const answers = async (who: string) => {
      const seen: unknown[] = [];
      for (let time = 0; time < 12; time += 1) {
        const response = await app.postJson('/sign-in', { who, pin: '999999' });
        const headers = [...response.headers].filter(([name]) => name !== 'date');
        seen.push([response.status, await response.text(), headers]);
      }
      return seen;
    };
    expect(await answers('nobody of that name')).toEqual(await answers('t1'));
  });

  test('is held back after five wrong tries at any door, and a moved clock opens it (WS-08, WS-11)', async () => {
    for (const pin of ['1', '2', '3']) await app.post('/sign-in', { who: 't1', pin });
    for (const pin of ['4', '5']) expect(await codeOf(verify('t1', pin))).toBe('PPL-001');
    expect(await codeOf(verify('t1', PINS.technician))).toBe('PPL-002');
    const held = await app.post('/sign-in', { who: 't1', pin: PINS.technician });
    expect([held.status, await held.text()]).toEqual([
      429,
      expect.stringContaining('looked at in 30 seconds'),
    ]);
    app.wait(29_000);
    expect(await codeOf(verify('t1', PINS.technician))).toBe('PPL-002');
    app.wait(1000);
    expect(await verify('t1', PINS.technician)).toMatchObject({ id: 't1' });
  });

  test('is held back for others not at all: nobody locks a supervisor out by locking a technician', async () => {
    for (let time = 0; time < 5; time += 1) await codeOf(verify('t1', '1'));
    expect(await codeOf(verify('t1', '1'))).toBe('PPL-002');
    expect(await verify('s1', PINS.supervisor)).toMatchObject({ id: 's1' });
  });

  test('keeps a session open that was there before the account was held', async () => {
    const { browser } = await app.signedIn('technician');
    for (let time = 0; time < 5; time += 1) await codeOf(verify('t1', '1'));
    expect((await app.get('/people', { as: browser })).status).toBe(200);
  });

  test('counts on after a restart (WS-08)', async () => {
    for (let time = 0; time < 5; time += 1) await codeOf(verify('t1', '1'));
    await app.close();
    app = await anApp({ folder: app.folder, routes: [] });
    expect(await codeOf(verify('t1', PINS.technician))).toBe('PPL-002');
  });

  test('is not got round by many tries at once', async () => {
    const tries = await Promise.all(Array.from({ length: 12 }, () => codeOf(verify('t1', '1'))));
    expect(tries.filter((code) => code === 'PPL-001')).toHaveLength(5);
    expect(tries.filter((code) => code === 'PPL-002')).toHaveLength(7);
  });

  test('begins to count anew after the right PIN', async () => {
    for (let round = 0; round < 3; round += 1) {
      for (let time = 0; time < 4; time += 1) expect(await codeOf(verify('t1', '1'))).toBe('PPL-001');
      await verify('t1', PINS.technician);
    }
  });

  test('tells wrong tries in the site’s log, coalesced, with the screen', async () => {
    for (let time = 0; time < 5; time += 1) await codeOf(verify('t1', '1'));
    app.wait(30_000);
    await verify('t1', PINS.technician);
    await codeOf(verify('s1', '1'));
    await codeOf(verify('s1', '1'));
    await verify('s1', PINS.supervisor);
    const told = (await app.services.log.entriesOf('site')).filter(({ kind }) => kind === 'pin-refused');
    expect(told.map(({ inputs, screen, person }) => [inputs, screen, person])).toEqual([
      [{ person: 't1', inARow: 1 }, 'screen 9', null],
      [{ person: 't1', inARow: 5 }, 'screen 9', null],
      [{ person: 's1', inARow: 1 }, 'screen 9', null],
      [{ person: 's1', inARow: 2 }, 'screen 9', null],
    ]);
  });

  test('tells tries on names that nobody has at most each quarter of an hour, and never the name', async () => {
    for (let time = 0; time < 6; time += 1) await codeOf(verify(`stranger ${time}`, '1'));
    app.wait(15 * 60_000);
    await codeOf(verify('stranger again', '1'));
    const told = (await entries('site')).filter((entry) => entry.startsWith('pin-refused'));
    expect(told).toEqual([
      'pin-refused {"inARow":1,"person":null}',
      'pin-refused {"inARow":5,"person":null}',
      'pin-refused {"inARow":6,"person":null}',
    ]);
  });

  test('rehashes at the cost of now when an old hash has matched (WS-06)', async () => {
    await app.close();
    app = await anApp({ folder: app.folder, routes: [], settings: { hashCost: { N: 512, r: 8, p: 1 } } });
    await verify('t1', PINS.technician);
    const secrets = await app.services.store.outsideAll('secret');
    const costs = secrets.map(({ id, body }) => [id, (body as { hashed: { N: number } }).hashed.N]);
    expect(Object.fromEntries(costs)).toMatchObject({ t1: 512, s1: 256 });
    expect(await verify('t1', PINS.technician)).toMatchObject({ id: 't1' });
  });

  test('is refused to somebody who works here no longer', async () => {
    await app.services.people.retire('t1', by());
    expect(await codeOf(verify('t1', PINS.technician))).toBe('PPL-001');
  });
});

describe('the list of people', () => {
  test('gives ids by role, never one twice, also not at once or after somebody has left (SA-18)', async () => {
    const { people } = app.services;
    const added = await Promise.all(
      ['A', 'B', 'C'].map((name) => people.add({ name, role: 'technician', ...HOW }, by())),
    );
    expect(added.map(({ person }) => person.id)).toEqual(['t2', 't3', 't4']);
    await people.retire('t4', by());
    expect((await people.add({ name: 'D', role: 'technician', ...HOW }, by())).person.id).toBe('t5');
  });

  test('has no two people of one name, or a name that is another’s id', async () => {
    const { people } = app.services;
    for (const name of ['Technician 1', 'TECHNICIAN 1', 't1']) {
      expect(await codeOf(people.add({ name, role: 'engineer', ...HOW }, by()))).toBe('PPL-005');
    }
    const twice = await Promise.all(
      [1, 2].map(() => codeOf(people.add({ name: 'Twin', role: 'technician', ...HOW }, by()))),
    );
    expect(twice.sort()).toEqual(['PPL-005', 'not refused: undefined']);
    expect(await codeOf(people.rename({ id: 's1', name: 'Technician 1' }, by()))).toBe('PPL-005');
    expect((await people.rename({ id: 't1', name: 'technician 1' }, by())).name).toBe('technician 1');
  });

  test('is changed once by a request, however often it is sent', async () => {
    const { people } = app.services;
    const once = by();
    const [first, again] = [
      await people.add({ name: 'New', role: 'technician', ...HOW }, once),
      await people.add({ name: 'New', role: 'technician', ...HOW }, once),
    ];
    expect(again.person).toEqual(first.person);
    // Only the last code told is good, since the first may never have arrived.
    const newPin = '738159';
    expect(await codeOf(people.setFirstPin({ who: 'New', code: first.code, newPin }, by(null)))).toBe(
      'PPL-001',
    );
    await people.setFirstPin({ who: 'New', code: again.code, newPin }, by(null));
    expect(await codeOf(people.add({ name: 'New', role: 'technician', ...HOW }, once))).toBe('PPL-007');
    expect(await verify('New', newPin)).toMatchObject({ id: 't2' });
    const retiring = by();
    expect(await people.retire('t2', retiring)).toEqual(await people.retire('t2', retiring));
    expect((await entries('person:t2')).map((entry) => entry.split(' ')[0])).toEqual([
      'person-added',
      'rule-accepted',
      'pin-set',
      'person-retired',
    ]);
  });

  test('always has somebody who can add people', async () => {
    const { people } = app.services;
    await people.retire('s1', by('e1'));
    expect(await codeOf(people.retire('e1', by('x')))).toBe('PPL-012');
    expect(await codeOf(people.changeRole({ id: 'e1', role: 'technician' }, by('x')))).toBe('PPL-012');
    expect((await people.changeRole({ id: 'e1', role: 'supervisor' }, by('x'))).role).toBe('supervisor');
  });

  test('is not changed by anybody for themselves, but for the name', async () => {
    const { people } = app.services;
    expect(await codeOf(people.changeRole({ id: 's1', role: 'engineer' }, by('s1')))).toBe('PPL-009');
    expect(await codeOf(people.retire('s1', by('s1')))).toBe('PPL-009');
    expect(await codeOf(people.giveCode({ id: 's1', ...HOW }, by('s1')))).toBe('PPL-009');
    expect((await people.rename({ id: 's1', name: 'Supervisor One' }, by('s1'))).name).toBe('Supervisor One');
  });

  test('refuses what is asked of nobody', async () => {
    const { people } = app.services;
    for (const doing of [
      () => people.retire('x1', by()),
      () => people.rename({ id: 'x1', name: 'A' }, by()),
      () => people.giveCode({ id: 'x1', ...HOW }, by()),
      () => people.endSessions('x1', by()),
    ]) {
      expect(await codeOf(doing())).toBe('PPL-006');
    }
    await people.retire('t1', by());
    expect(await codeOf(people.rename({ id: 't1', name: 'A' }, by()))).toBe('PPL-006');
  });

  test('is set up once', async () => {
    const { people } = app.services;
    const first = { plant: 'P', name: 'Me', newPin: '738159' };
    expect(await codeOf(people.setUp(first, by(null)))).toBe('PPL-008');
    expect(await codeOf(people.setUpDemo('Demo', by(null)))).toBe('PPL-008');
  });

  test('is set up by one of two who come at once', async () => {
    const empty = await anApp({ routes: [] });
    const both = ['A', 'B'].map((name) =>
      empty.services.people.setUp({ plant: name, name, newPin: '738159' }, by(null)),
    );
    expect((await Promise.all(both.map(codeOf))).sort()).toEqual([
      'PPL-008',
      expect.stringContaining('not refused'),
    ]);
    await empty.close();
  });
});

describe('a one-time code', () => {
  const newPin = '738159';

  test('is good once, for choosing a PIN and for nothing else (WS-14)', async () => {
    const { people } = app.services;
    const { code, person } = await people.add({ name: 'New', role: 'technician', ...HOW }, by());
    expect(code).toMatch(/^\d{8}$/);
    expect(await codeOf(verify(person.id, code))).toBe('PPL-004');
    expect(await codeOf(people.setFirstPin({ who: 'New', code: '00000000', newPin }, by(null)))).toBe(
      'PPL-001',
    );
    const setting = by(null);
    await people.setFirstPin({ who: 'New', code, newPin }, setting);
    // Its answer was lost and it is sent again.
    expect(await people.setFirstPin({ who: 'New', code, newPin }, setting)).toMatchObject({ id: person.id });
    expect(await codeOf(people.setFirstPin({ who: 'New', code, newPin: '517394' }, by(null)))).toBe(
      'PPL-001',
    );
    expect(await verify('New', newPin)).toMatchObject({ id: person.id });
  });

  test('is over after a day (WS-14)', async () => {
    const { people } = app.services;
    const { code, validUntil } = await people.add({ name: 'New', role: 'technician', ...HOW }, by());
    expect(validUntil).toBe('2024-01-16T08:00:00.000Z');
    app.wait(86_400_000);
    expect(await codeOf(people.setFirstPin({ who: 'New', code, newPin }, by(null)))).toBe('PPL-001');
  });

  test('is not used up by a PIN that is soon guessed', async () => {
    const { people } = app.services;
    const { code } = await people.add({ name: 'New', role: 'technician', ...HOW }, by());
    for (const bad of ['123456', '111111', '12345', '240385']) {
      expect(await codeOf(people.setFirstPin({ who: 'New', code, newPin: bad }, by(null)))).toBe('FRM-002');
    }
    await people.setFirstPin({ who: 'New', code, newPin }, by(null));
  });

  test('is not used up by the number in one’s own name (WS-13)', async () => {
    const { people } = app.services;
    const { code } = await people.add({ name: 'Technician 4829', role: 'technician', ...HOW }, by());
    const claim = { who: 'Technician 4829', code };
    for (const own of ['004829', '482900'])
      expect(await codeOf(people.setFirstPin({ ...claim, newPin: own }, by(null)))).toBe('FRM-002');
  });

  test('takes the place of a forgotten PIN, ends sessions, and opens an account that is held', async () => {
    const { browser } = await app.signedIn('technician');
    for (let time = 0; time < 5; time += 1) await codeOf(verify('t1', '1'));
    const { code } = await app.services.people.giveCode({ id: 't1', ...HOW }, by('s1'));
    expect((await app.get('/people', { as: browser })).status).toBe(303);
    expect(await codeOf(verify('t1', PINS.technician))).toBe('PPL-001');
    await app.services.people.setFirstPin({ who: 't1', code, newPin }, by(null));
    expect(await verify('t1', newPin)).toMatchObject({ id: 't1' });
    expect(await entries('person:t1')).toContain('code-given {"identityCheckedHow":"works with me"}');
  });
});

describe('the own PIN', () => {
  test('is changed by whoever knows the one before, which ends all sessions (WS-14)', async () => {
    const { people } = app.services;
    const { browser } = await app.signedIn('technician');
    const change = { id: 't1', pin: PINS.technician, newPin: '738159' };
    expect(await codeOf(people.changePin({ ...change, pin: '1' }, by('t1')))).toBe('PPL-001');
    expect(await codeOf(people.changePin({ ...change, newPin: PINS.technician }, by('t1')))).toBe('FRM-002');
    expect(await codeOf(people.changePin({ ...change, newPin: '111111' }, by('t1')))).toBe('FRM-002');
    await people.changePin(change, by('t1'));
    expect((await app.get('/people', { as: browser })).status).toBe(303);
    expect(await codeOf(verify('t1', PINS.technician))).toBe('PPL-001');
    expect(await verify('t1', '738159')).toMatchObject({ id: 't1' });
  });

  test('is found nowhere: not in the database, the log, the operations log or any page (WS-47)', async () => {
    const canary = '738159046';
    const code = await (async () => {
      const added = await app.services.people.add({ name: 'Canary', role: 'engineer', ...HOW }, by());
      return added.code;
    })();
    const fields = { who: 'Canary', code, newPin: canary, newPinAgain: canary, rule: 'accepted' };
    const pages = [
      await app.post('/first-pin', { ...fields, newPinAgain: '1' }),
      await app.post('/first-pin', fields),
      await app.post('/sign-in', { who: 'Canary', pin: canary }),
      await app.post('/sign-in', { who: canary, pin: canary }),
      await app.postJson('/sign-in', { who: canary, pin: `${canary}0` }),
      await app.postJson('/sign-in', { who: 'Canary', pin: canary, actor: canary }),
    ];
    expect(pages.map(({ status }) => status)).toEqual([422, 303, 303, 403, 403, 400]);
    for (const page of pages) {
      const shown = (await page.text()).replaceAll(
        `id="who" name="who" required type="text" value="${canary}"`,
        '',
      );
      expect(shown).not.toContain(canary);
      expect([...page.headers].join()).not.toContain(canary);
    }
    expect(app.lines.join()).not.toContain(canary);
    await app.close();
    const files = readdirSync(app.folder);
    expect(files).toContain('yokeside.sqlite');
    for (const file of files) {
      const bytes = readFileSync(join(app.folder, file));
      expect(bytes.includes(canary), file).toBe(false);
      expect(bytes.includes(code), file).toBe(false);
    }
    app = await anApp({ folder: app.folder, routes: [] });
  });
});
