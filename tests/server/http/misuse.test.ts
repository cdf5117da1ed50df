/** What the server does for those who try a way round. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import type { Access } from '../../../server/http/route.ts';
import { route } from '../../../server/http/route.ts';
import { faultDetails, operationsLog } from '../../../server/operations-log.ts';
import { StorageUnavailable } from '../../../server/store/storage-unavailable.ts';
import { ROOT } from '../../root.ts';
import { type AnApp, anApp, type Browser, form, ORIGIN, PINS } from '../an-app.ts';

const breaks = route({
  method: 'POST',
  path: '/breaks',
  name: 'breaks',
  summary: 'x',
  roles: 'signed-in',
  answer: z.object({}),
  handle: () => {
    throw new TypeError('a fault inside');
  },
});

let app: AnApp;
let technician: Browser;
let engineer: Browser;
beforeAll(async () => {
  app = await anApp({ people: true });
  ({ browser: technician } = await app.signedIn('technician'));
  ({ browser: engineer } = await app.signedIn('engineer'));
});
afterAll(() => app.close());

const json = { accept: 'application/json' };
const codeOf = async (response: Response) => ((await response.json()) as { code?: string }).code;

describe('a field of every form', () => {
  let tried: AnApp;
  let as: Browser;
  beforeAll(async () => {
    tried = await anApp({ people: true });
    ({ browser: as } = await tried.signedIn('engineer'));
  });
  afterAll(() => tried.close());
  const LONG = 'x'.repeat(1_000_000);
  /** They end the session that tries. */
  const LEFT_OUT = ['signOut', 'changePin', 'endSessions'];
  const ODD = [
    'a\u0000b',
    '\u202egnp.exe',
    '1e309',
    '1,5',
    ' 12 ',
    "x'); DROP TABLE log; --",
    '\u001b[31mred',
    'a\r\nb',
  ];

  test('that holds what nobody means is refused or taken as text, never a fault, and nothing is lost by it (WS-38, WS-40)', {
    timeout: 120_000,
  }, async () => {
    let count = 0;
    for (const { method, path, body, name } of tried.routes) {
      if (method !== 'POST' || body === undefined || LEFT_OUT.includes(name)) continue;
      const address = path.replace(/:\w+(\{[^}]*\})?/g, '1');
      const names = Object.keys(body.shape);
      for (const field of names) {
        for (const odd of ODD) {
          const others = Object.fromEntries(names.map((other) => [other, 'x']));
          const answer = await tried.post(address, { ...others, [field]: odd }, { as });
          expect(answer.status, `${name} ${field} ${JSON.stringify(odd)}`).toBeLessThan(500);
          count += 1;
        }
      }
      const [first = ''] = names;
      if (first === '') continue;
      const long = await tried.post(address, { [first]: LONG }, { as });
      expect(long.status, `${name} long`).toBeLessThan(500);
      const twice = await tried.post(address, { [first]: ['1', '2'] }, { as, headers: json });
      // What an engineer may not do is refused before it is read.
      expect([400, 403, 422], `${name} twice`).toContain(twice.status);
      const nested = await tried.postJson(address, { [first]: { $ne: '' } }, { as });
      expect([400, 403, 404], `${name} nested`).toContain(nested.status);
    }
    expect(count).toBeGreaterThan(300);
    expect(tried.lines).toEqual([]);
    expect((await tried.services.people.list()).length).toBeGreaterThanOrEqual(4);
  });

  test('cannot set what only the server knows: who, when, in which role, with which hash (WS-39)', async () => {
    for (const name of [
      'actor',
      'person',
      'by',
      'ts',
      'at',
      'time',
      'hash',
      'seq',
      'screen',
      'retired',
      'id',
    ]) {
      const fields = { name: `N ${name}`, role: 'technician', identity: 'works with me' };
      const answer = await app.postJson('/people', { ...fields, [name]: 'e1' }, { as: engineer });
      expect([answer.status, await codeOf(answer)], name).toEqual([400, 'FRM-001']);
    }
    const before = { role: 'technician', id: 't1' };
    await app.postJson(
      '/pin',
      { ...before, pin: '1', newPin: '738159', newPinAgain: '738159' },
      { as: technician },
    );
    expect(await app.services.people.find('t1')).toMatchObject({ role: 'technician', retired: false });
  });
});

/** Names of schemas, tables and columns, numbers of values and locks: what a request says goes beside a statement, as a value. */
const OF_THE_PROGRAM: readonly string[] = [
  'schema',
  'this.#schema',
  'log',
  'name',
  'of.from',
  "columns.join(', ')",
  "key.join(', ')",
  'lists',
  'marks',
  'where',
  'page',
  'direction',
  'rowsAtOnce',
  'LINE',
  'PAGE_ROWS',
  'FORM',
  'DURABLE',
  'LOCK_WAIT_S',
  'THINK_S',
  "lockKey(schema, 'log')",
  "lockKey(schema, 'form')",
  "lockKey(to.schema, 'log')",
  'puttingSummaries(schema, 6)',
];

test('no text of a request is ever part of an SQL statement (WS-40)', () => {
  const folder = join(ROOT, 'server', 'store');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );
  const statements = files.flatMap((name) => {
    const text = readFileSync(join(folder, name), 'utf8');
    return [...text.matchAll(/`[^`]*\b(?:SELECT|INSERT|UPDATE|DELETE)\b[^`]*`/g)].map(([sql]) => ({
      name,
      sql,
    }));
  });
  expect(statements.length + files.length).toBeGreaterThan(5);
  const joined = statements.flatMap(({ name, sql }) =>
    [...sql.matchAll(/\$\{[^}]*\}/g)].map(([piece]) => ({ name, piece: piece.slice(2, -1) })),
  );
  expect(joined.filter(({ piece }) => !OF_THE_PROGRAM.includes(piece))).toEqual([]);
});

test('no route lets anybody choose another person’s PIN (WS-14, SA-17)', () => {
  const choosing = app.routes.filter(({ body }) => body !== undefined && 'newPin' in body.shape);
  expect(choosing.map(({ name }) => name).sort()).toEqual(['changePin', 'setFirstPin', 'setUp']);
  for (const { path } of choosing) expect(path).not.toContain(':');
});

describe('what is tried', () => {
  async function lastOf(doing: Promise<Response>): Promise<unknown> {
    await doing;
    const { at: _, requestId: __, ...rest } = JSON.parse(app.refusals.at(-1) ?? '{}');
    return rest;
  }

  test.each([
    [
      'a form of another site',
      () => app.post('/pin', {}, { as: technician, headers: { origin: 'http://evil.example' } }),
      { code: 'REQ-004', route: 'changePin', person: null, screen: 'unnumbered screen' },
    ],
    [
      'an act of another role',
      () => app.post('/people/e1/retire', {}, { as: technician }),
      { code: 'PPL-011', route: 'retirePerson', person: 't1', screen: 'screen 1' },
    ],
    [
      'an act without signing in',
      () => app.post('/people/e1/retire', {}),
      { code: 'PPL-010', route: 'retirePerson', person: null, screen: 'unnumbered screen' },
    ],
    [
      'a field that no form has',
      () => app.post('/people/t1/name', { name: 'x', role: 'engineer' }, { as: engineer }),
      { code: 'FRM-001', route: 'renamePerson', person: 'e1', screen: 'screen 2' },
    ],
    [
      'an act on oneself',
      () => app.post('/people/e1/retire', {}, { as: engineer }),
      { code: 'PPL-009', route: 'retirePerson', person: 'e1', screen: 'screen 2' },
    ],
    [
      'a wrong PIN',
      () => app.post('/sign-in', { who: 'o1', pin: '1' }),
      { code: 'PPL-001', route: 'signIn', person: null, screen: 'unnumbered screen' },
    ],
  ])(
    'is written down for whoever looks after the server, with who, what and where: %s (WS-45)',
    async (_, doing, told) => {
      expect(await lastOf(doing())).toEqual({ event: 'refused', ...told });
    },
  );

  test('and what was done has its entry: signed in, signed out, a wrong PIN; a fault has its line (WS-45, SA-50)', async () => {
    const { browser } = await app.signedIn('safety-officer');
    await app.post('/sign-out', {}, { as: browser });
    const kinds = (await app.services.log.entriesOf('person:o1')).map(({ kind }) => kind);
    expect(kinds.slice(-2)).toEqual(['signed-in', 'signed-out']);
    await app.post('/sign-in', { who: 's1', pin: '1' });
    expect((await app.services.log.entriesOf('site')).at(-1)).toMatchObject({
      kind: 'pin-refused',
      inputs: { person: 's1', inARow: 1 },
    });
    const broken = await anApp({ people: true, routes: [breaks] });
    const { browser: as } = await broken.signedIn('technician');
    const answer = await broken.post('/breaks', {}, { as });
    const told = await answer.text();
    expect([answer.status, broken.lines]).toEqual([500, [expect.stringContaining('a fault inside')]]);
    expect(told).not.toMatch(/a fault inside|TypeError|\.ts:\d+/);
    await broken.close();
  });

  test('carries the time with its zone, in the log and beside it (WS-46)', async () => {
    const utc = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/;
    const entries = await app.services.log.entriesOf('site');
    for (const { at } of entries) expect(at).toMatch(utc);
    await app.post('/people/e1/retire', {});
    for (const line of app.refusals) expect((JSON.parse(line) as { at: string }).at).toMatch(utc);
    const page = await (await app.get('/people/review', { as: engineer })).text();
    for (const time of page.match(/\d{4}-\d\d-\d\d \d\d:\d\d[^<]*/g) ?? []) expect(time).toContain('UTC');
  });
});

describe('a line of the operations log', () => {
  test('stays one line, whatever is in it (WS-48)', () => {
    const lines: string[] = [];
    const log = operationsLog({ now: () => new Date(0), out: (line) => lines.push(line) });
    log.write('fault', {
      ...faultDetails(new Error('a\r\n{"event":"forged"}\u001b[2J\u2028')),
      name: 'b\nc',
    });
    expect(lines).toHaveLength(1);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is kept out
    expect(lines[0]).not.toMatch(/[\u0000-\u001f\u007f]/);
  });

  test('is served nowhere, nor is a name with a line end taken (WS-48)', async () => {
    const fields = { name: 'A\r\nB\u001b[2J', role: 'technician', identity: 'works with me' };
    expect((await app.post('/people', fields, { as: engineer })).status).toBe(422);
    // What people did is for the officer to read; what the program wrote about itself stays on the server.
    const logs = app.routes.filter(({ path, roles }) => /\blogs?\b/.test(path) && !isForFew(roles));
    expect(logs.map(({ path }) => path)).toEqual([]);
    expect(app.routes.filter(({ path }) => path.includes('operations'))).toEqual([]);
  });
});

function isForFew(roles: Access): boolean {
  return typeof roles !== 'string' && !roles.includes('technician');
}

describe('where the store fails while a person is recognised', () => {
  test('they are refused, told plainly, and shown nothing of the inside (WS-50)', async () => {
    const failing = await anApp({ people: true, routes: [] });
    const { browser } = await failing.signedIn('engineer');
    const { store } = failing.services;
    const [outside, stream] = [store.outside.bind(store), store.stream.bind(store)];
    const failures = [
      new StorageUnavailable('the disk is full'),
      new TypeError("Cannot read properties of undefined (reading 'role')"),
    ];
    for (const failure of failures) {
      store.outside = () => Promise.reject(failure);
      store.stream = () => Promise.reject(failure);
      for (const path of ['/people', '/people/t1', '/help']) {
        const answer = await failing.get(path, { as: browser });
        const told = await answer.text();
        expect([500, 503], path).toContain(answer.status);
        expect(told, path).not.toMatch(/TypeError|undefined|\.ts:|at Object/);
        expect(told, path).not.toContain('safety officer 1');
      }
      const posted = await failing.post('/people/t1/retire', {}, { as: browser });
      expect([500, 503]).toContain(posted.status);
    }
    Object.assign(store, { outside, stream });
    expect(await failing.services.people.find('t1')).toMatchObject({ retired: false });
    await failing.close();
  });
});

test.each([
  '/.git/config',
  '/.env',
  '/package.json',
  '/server/main.ts',
  '/dist/server/main.js',
  '/node_modules/hono/package.json',
  '/yokeside.sqlite',
  '/yokeside-data/yokeside.sqlite',
  '/assets/',
  '/assets/../package.json',
  '/assets/..%2f..%2fpackage.json',
  '/debug',
  '/metrics',
  '/server-status',
  '/admin',
  '/backup.zip',
  '/.well-known/security.txt',
])('there is nothing at %s (WS-51)', async (path) => {
  const answer = await app.get(path, { as: engineer });
  expect(answer.status).toBe(404);
  expect(await answer.text()).toContain('There is no page at this address.');
});

test('there is no method but looking and sending, and nobody is there before somebody is added (WS-51, WS-16)', async () => {
  for (const method of ['PUT', 'DELETE', 'PATCH', 'PROPFIND']) {
    const answer = await app.send('/people', { method, headers: { ...json, origin: ORIGIN } });
    expect(answer.status, method).toBe(405);
  }
  const empty = await anApp({ routes: [] });
  expect(await empty.services.people.list()).toEqual([]);
  for (const who of ['admin', 'root', 'e1', 'demo'])
    expect((await empty.post('/sign-in', { who, pin: PINS.engineer })).status).toBe(403);
  await empty.close();
});

test('a file is no content that is read: nothing is uploaded anywhere', async () => {
  const answer = await app.send('/people', {
    method: 'POST',
    headers: {
      ...json,
      origin: ORIGIN,
      cookie: engineer.header,
      'content-type': 'multipart/form-data; boundary=x',
    },
    body: `--x\r\nContent-Disposition: form-data; name="f"; filename="../a.svg"\r\n\r\n<svg/>\r\n--x--\r\n${form({})}`,
  });
  expect([answer.status, await codeOf(answer)]).toEqual([400, 'REQ-002']);
});
