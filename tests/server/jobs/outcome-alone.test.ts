/** What a program is told that wants the outcome of an act and nothing more (RFC 7240, `Prefer: return=minimal`). */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { sheetFor, strokeScript, textsAt } from '../../builders/stroke-script.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../an-app.ts';
import { gearNumbers, withValve } from './site.ts';

const sheet = sheetFor({ plugCloses: 'down', airMovesStem: 'up' });
const script = strokeScript(sheet);
const JSON_ALONE = { accept: 'application/json' };
const MINIMAL = { ...JSON_ALONE, prefer: 'handling=strict, Return = "minimal"' };

let app: AnApp;
let browser: Browser;
let card: { readonly step: string; readonly place: number };
beforeEach(async () => {
  app = await anApp({ people: true });
  await withValve(app, sheet);
  ({ browser } = await app.signedIn('technician'));
  await app.postJson(
    '/jobs',
    { tag: sheet.tag, procedure: 'stroke-check', place: 'line', ...gearNumbers('line') },
    { as: browser },
  );
  card = (await (await job()).json()) as typeof card;
});
afterEach(() => app.close());

const job = () => app.get('/jobs/1', { as: browser, headers: JSON_ALONE });

function answer(headers: Readonly<Record<string, string>>, requestId = newRequestId()): Promise<Response> {
  const { step, place } = card;
  const fields = { act: 'answer', step, place: String(place), ...textsAt(script, { step, row: 0 }) };
  return app.post('/jobs/1/acts', { ...fields, requestId }, { as: browser, headers });
}

describe('a program that wants the outcome alone', () => {
  test('is told where the job stands now and nothing else, and that this is what it asked for', async () => {
    const answered = await answer(MINIMAL);
    expect(answered.status).toBe(200);
    expect(answered.headers.get('preference-applied')).toBe('return=minimal');
    expect(answered.headers.get('vary')).toContain('Prefer');
    const told = await answered.json();
    const whole = (await (await job()).json()) as Record<string, unknown>;
    const { id, status, step, place } = whole;
    expect(told).toEqual({ id, status, step, place });
    expect(place).toBe(card.place + 1);
    expect(step).not.toBe(card.step);
  });

  test('gets the same when it sends the same request again, and one line is written', async () => {
    const requestId = newRequestId();
    const first = await (await answer(MINIMAL, requestId)).json();
    const again = await answer(MINIMAL, requestId);
    expect(await again.json()).toEqual(first);
    expect(await app.services.log.place('job:1')).toBe(card.place + 1);
  });

  test('is told all of a refusal', async () => {
    await answer(MINIMAL);
    const refused = await answer(MINIMAL);
    expect(refused.status).toBe(409);
    expect(refused.headers.has('preference-applied')).toBe(false);
    expect(await refused.json()).toMatchObject({ code: 'JOB-002', next: expect.any(String) });
  });

  test('is told all where it does not ask for less, or asks for something else', async () => {
    const answered = await answer({ ...JSON_ALONE, prefer: 'return=representation, xreturn=minimal' });
    expect(answered.headers.has('preference-applied')).toBe(false);
    expect(await answered.json()).toMatchObject({ card: expect.any(Object), lines: expect.any(Array) });
  });

  test('is told all by an address that knows of no outcome alone', async () => {
    const shown = await app.get('/jobs/1', { as: browser, headers: MINIMAL });
    expect(shown.headers.has('preference-applied')).toBe(false);
    expect(await shown.json()).toMatchObject({ card: expect.any(Object) });
  });
});

test('whoever looks gets the next card, whatever was preferred', async () => {
  const page = await answer({ accept: 'text/html', 'hx-request': 'true', prefer: 'return=minimal' });
  expect(page.headers.has('preference-applied')).toBe(false);
  expect(await page.text()).toContain('id="card"');
});

test('the description for programs says where it may be asked for', async () => {
  const described = await (await app.get('/openapi.json', { headers: JSON_ALONE })).json();
  const { paths } = described as {
    paths: Record<string, Record<string, { parameters: { name: string }[] }>>;
  };
  const taking = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods)
      .filter(([, { parameters }]) => parameters.some(({ name }) => name === 'Prefer'))
      .map(([method]) => `${method} ${path}`),
  );
  expect(taking).toEqual(['post /jobs/{id}/acts', 'post /practice/jobs/{id}/acts']);
});
