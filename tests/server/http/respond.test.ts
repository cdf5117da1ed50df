import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { CalcError } from '../../../procedures/calculations/calc-error.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { text } from '../../../server/http/fields.ts';
import { type Route, route } from '../../../server/http/route.ts';
import { LogDamaged } from '../../../server/log/chain.ts';
import { StorageUnavailable } from '../../../server/store/storage-unavailable.ts';
import { type AnApp, anApp } from '../an-app.ts';

const line = { seq: 1, stream: 'job:1', place: 1, hash: '', bytes: '' };

const FAULTS: Readonly<Record<string, () => Error>> = {
  bug: () => new TypeError('secret detail'),
  store: () => new StorageUnavailable('the disk is full'),
  damage: () => new LogDamaged(line, 'its content does not give its hash'),
  calculation: () =>
    new CalcError({ code: 'CALC-002', name: 'travelM', value: 0, range: 'above 0', unit: 'm' }),
  unsafe: () =>
    new Refusal({ kind: 'unsafe', code: 'LIM-002', what: 'Too much.', kept: 'All.', next: 'Vent.' }),
};

const faulty = route({
  method: 'GET',
  path: '/test/fault/:which',
  name: 'testFault',
  summary: 'Fails',
  roles: 'anyone',
  answer: z.null(),
  handle: ({ params }) => {
    throw FAULTS[params.which ?? '']?.() ?? new Error('not there');
  },
});

const save = route({
  method: 'POST',
  path: '/test/save',
  name: 'testSave',
  summary: 'Saves',
  roles: 'anyone',
  body: z.object({ name: text({ called: 'the name' }) }),
  answer: z.object({ name: z.string(), requestId: z.string() }),
  refused: () => ({
    page: { title: 'First sign-in', template: 'pages/first-pin.njk', params: { who: 'as typed' } },
  }),
  handle: ({ body, requestId }) => ({ data: { name: body.name, requestId }, seeOther: '/test/saved' }),
});

const file = route({
  method: 'GET',
  path: '/test/file',
  name: 'testFile',
  summary: 'A file',
  roles: 'anyone',
  rawType: 'text/csv',
  answer: z.object({ rows: z.int() }),
  handle: () => ({
    data: { rows: 1 },
    raw: { contentType: 'text/csv; charset=utf-8', body: 'a,b\r\n', fileName: 'sheet “7”.csv' },
  }),
});

const leaky = route({
  method: 'GET',
  path: '/test/leak',
  name: 'testLeak',
  summary: 'Tells more than its schema',
  roles: 'anyone',
  answer: z.object({ name: z.string() }),
  handle: () => {
    const data = { name: 'a', hash: 'b' };
    return { data };
  },
});

let app: AnApp;
beforeAll(async () => {
  const own: readonly Route[] = [faulty, save, file, leaky];
  app = await anApp({ people: true, routes: own });
});
afterAll(() => app.close());

describe('a post that was done', () => {
  test('sends a browser on, so that loading the page again does not post again', async () => {
    const response = await app.post('/test/save', { name: 'A' });
    expect([response.status, response.headers.get('location'), await response.text()]).toEqual([
      303,
      '/test/saved',
      '',
    ]);
  });

  test('tells htmx to go there, since it would follow a 303 unseen', async () => {
    const response = await app.post('/test/save', { name: 'A' }, { headers: { 'hx-request': 'true' } });
    expect([response.status, response.headers.get('hx-redirect'), response.headers.get('location')]).toEqual([
      204,
      '/test/saved',
      null,
    ]);
  });

  test('answers a program in JSON, from a form or from JSON alike, with the request id that it gave', async () => {
    const given = { name: 'A', requestId: 'my-own-id-1' };
    const json = await app.postJson('/test/save', given);
    const form = await app.post('/test/save', given, { headers: { accept: 'application/json' } });
    const expected = { name: 'A', requestId: 'my-own-id-1' };
    expect([json.status, await json.json()]).toEqual([200, expected]);
    expect([form.status, await form.json()]).toEqual([200, expected]);
  });

  test.each(['short', 'with blank 12', 'x'.repeat(101), '<script>x'])(
    'refuses %s as request id',
    async (requestId) => {
      const response = await app.postJson('/test/save', { name: 'A', requestId });
      expect([response.status, await response.json()]).toMatchObject([400, { code: 'REQ-006' }]);
    },
  );
});

describe('a post that was refused', () => {
  test('draws the form again with what was typed, the message at its field and the cause above', async () => {
    const response = await app.post('/test/save', { name: '' });
    const body = await response.text();
    expect(response.status).toBe(422);
    expect(body).toContain('value="as typed"');
    expect(body).toContain('One field is not right.');
    expect(body).toContain('<a href="#name">Write the name.</a>');
  });

  test('gives htmx the same to pick the form from', async () => {
    const response = await app.post('/test/save', { name: '' }, { headers: { 'hx-request': 'true' } });
    expect(response.headers.get('hx-retarget')).toBeNull();
    expect(await response.text()).toContain('id="sheets"');
  });

  test('tells a program the code, what, kept, next and the fields', async () => {
    const response = await app.postJson('/test/save', { name: '' });
    expect([response.status, await response.json()]).toEqual([
      422,
      {
        status: 422,
        code: 'FRM-002',
        what: 'One field is not right.',
        kept: 'What you typed stands in the form; nothing was recorded.',
        next: 'Put it right and send it again.',
        fields: { name: 'Write the name.' },
      },
    ]);
  });
});

describe('what is thrown', () => {
  test.each([
    ['unsafe', 422, 'LIM-002', 0],
    ['calculation', 422, 'CALC-002', 0],
    ['store', 503, 'STO-001', 1],
    ['damage', 500, 'LOG-002', 1],
    ['bug', 500, 'SRV-001', 1],
  ])('%s is answered with %i %s and written down %i times', async (which, status, code, times) => {
    for (const headers of [
      { accept: 'application/json' },
      { accept: 'text/html' },
      { 'hx-request': 'true' },
    ]) {
      app.lines.length = 0;
      const response = await app.get(`/test/fault/${which}`, { headers });
      const body = await response.text();
      expect(response.status).toBe(status);
      expect(body).toContain(code);
      expect(body).not.toContain('secret detail');
      expect(body).not.toMatch(/\bat .*\.ts|node_modules/);
      expect(app.lines).toHaveLength(times);
    }
  });

  test('by a fault is found again under the number that the person was told', async () => {
    app.lines.length = 0;
    const response = await app.get('/test/fault/bug', { headers: { accept: 'application/json' } });
    const { next } = (await response.json()) as { next: string };
    const written = JSON.parse(app.lines[0] ?? '') as { requestId: string; fault: string; event: string };
    expect(written).toMatchObject({ event: 'fault', fault: 'TypeError: secret detail' });
    expect(next).toContain(written.requestId);
  });

  test('by a full disk asks to come again', async () => {
    const response = await app.get('/test/fault/store');
    expect(response.headers.get('retry-after')).toBe('5');
    expect(await response.text()).toContain('it is never recorded twice');
  });

  test('by a calculation names the field', async () => {
    const response = await app.get('/test/fault/calculation', { headers: { accept: 'application/json' } });
    expect(await response.json()).toMatchObject({
      what: 'travelM is 0 m; allowed: above 0 m.',
      fields: { travelM: 'Allowed: above 0 m.' },
    });
  });
});

describe('other answers', () => {
  test('are a file for a browser and JSON for a program', async () => {
    const csv = await app.get('/test/file');
    expect(csv.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(csv.headers.get('content-disposition')).toBe(
      `attachment; filename="sheet__7_.csv"; filename*=UTF-8''sheet%20%E2%80%9C7%E2%80%9D.csv`,
    );
    expect(await csv.text()).toBe('a,b\r\n');
    const json = await app.get('/test/file', { headers: { accept: 'application/json' } });
    expect(await json.json()).toEqual({ rows: 1 });
  });

  test('that tell more than is described fail the tests', async () => {
    expect((await app.get('/test/leak')).status).toBe(500);
  });

  test.each([
    ['application/json', 'application/json'],
    ['text/html, application/json;q=0.5', 'text/html'],
    ['application/json;q=0.9, text/html;q=0.5', 'application/json'],
    ['application/json;q=0', 'text/html'],
    ['*/*', 'text/html'],
    ['', 'text/html'],
  ])('to "%s" are %s', async (accept, type) => {
    const response = await app.get('/help', { headers: { accept } });
    expect(response.headers.get('content-type')).toContain(type);
    expect(response.headers.get('vary')).toBe('Accept, Accept-Language, HX-Request, Accept-Encoding');
  });
});
