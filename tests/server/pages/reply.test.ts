import { afterEach, describe, expect, test } from 'vitest';
import type { ReplyView } from '../../../server/jobs/reply/reply-view.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { newRequestId } from '../an-app.ts';
import { type AtCard, atCard, type Problem } from '../jobs/at-card.ts';
import { textOf } from './texts.ts';

let at: AtCard;
afterEach(() => at.close());

const path = (what: 'reply' | 'together') => `/jobs/${at.job.id}/${what}`;

async function reply(text: string, more: object = {}): Promise<ReplyView> {
  const fields = { reply: text, ...more };
  const response = await at.app.postJson(path('reply'), fields, { as: at.technician.browser });
  expect(response.status).toBe(200);
  return (await response.json()) as ReplyView;
}

/** The form that counts what was understood, sent as it stands. */
async function count({ send }: ReplyView, requestId = newRequestId()) {
  if (send === null) throw new Error('there is nothing to count');
  const body = { ...send.fields, requestId };
  const response = await at.app.postJson(send.address, body, { as: at.technician.browser });
  return { status: response.status, problem: (await response.json()) as Problem };
}

const entries = () => at.app.services.log.entriesOf(streamOf('job', at.job.id));

describe('A reply', () => {
  test('counts nothing by itself, and counts by the ordinary act with the fields of the card', async () => {
    at = await atCard('rigGauges');
    const before = await at.length();
    const replied = await reply('9 psi 9,1');
    expect(replied).toMatchObject({
      kind: 'understood',
      said: 'Signal gauge: 9 psi; Second gauge: 9,1 psi',
      send: {
        address: `/jobs/${at.job.id}/acts`,
        fields: { act: 'answer', step: 'rigGauges', rigGaugePa: '9 psi', rigCheckPa: '9,1' },
      },
    });
    expect(await at.length()).toBe(before);
    expect((await count(replied)).status).toBe(200);
    expect(await at.length()).toBe(before + 1);
    const [last] = (await entries()).toReversed();
    expect(last?.inputs).toMatchObject({ readings: [{ typed: '9 psi' }, { typed: '9,1' }] });
  });

  test('sent twice to be counted is one line', async () => {
    at = await atCard('rigGauges');
    const replied = await reply('9 9');
    const requestId = newRequestId();
    const before = await at.length();
    expect([(await count(replied, requestId)).status, (await count(replied, requestId)).status]).toEqual([
      200, 200,
    ]);
    expect(await at.length()).toBe(before + 1);
  });

  test('as a plain form comes back on the whole page: what was typed, what was understood, and the form that counts it', async () => {
    at = await atCard('rigGauges');
    const { place } = await at.job.job();
    const response = await at.app.post(
      path('reply'),
      { reply: '9 9.1', place: String(place) },
      { as: at.technician.browser },
    );
    const html = await response.text();
    const { elements, faults } = readHtml(html);
    expect([response.status, faults]).toEqual([200, []]);
    expect(textOf(html)).toMatch(/Understood: not counted yet.*Signal gauge.*9 psi.*Count it.*Change it/s);
    const named = (name: string) => elements.filter((one) => attributeOf(one, 'name') === name);
    expect(named('reply').map((one) => attributeOf(one, 'value'))).toEqual(['9 9.1']);
    expect(named('rigGaugePa').map((one) => attributeOf(one, 'value') ?? '')).toContain('9');
  });

  test('by htmx comes back as the piece above the line, and nothing else is swapped', async () => {
    at = await atCard('rigGauges');
    const { place } = await at.job.job();
    const response = await at.app.post(
      path('reply'),
      { reply: '9', place: String(place) },
      { as: at.technician.browser, headers: { 'hx-request': 'true' } },
    );
    const html = await response.text();
    expect(html).not.toMatch(/<html|id="work"|hx-swap-oob/);
    expect(textOf(html)).toMatch(/“9” may mean:.*Signal gauge: 9 psi.*Second gauge: 9 psi/s);
  });

  test('that was meant for a card which is open no more is read for no other', async () => {
    at = await atCard('rigGauges');
    const { place } = await at.job.job();
    await at.job.answer({ rigGaugePa: '9', rigCheckPa: '9' });
    const replied = await reply('done', { place: String(place) });
    expect(replied).toMatchObject({ kind: 'unknown', send: null });
    expect(replied.what).toContain('Another line was written');
  });

  test('cannot sign a hold, in whatever words', async () => {
    at = await atCard('holdWork');
    const before = await at.length();
    for (const text of ['yes', 'sign', 'agree', 'done', '1234']) {
      expect(await reply(text), text).toMatchObject({ kind: 'told', send: null });
    }
    expect(await at.length()).toBe(before);
  });

  test('answers a question with the numbers of the valve and the address of the calculation', async () => {
    at = await atCard('needs');
    const replied = await reply('what is bench set?');
    expect(replied.lines.join()).toContain('bench set, low 3.00 psi');
    const { address = '' } = replied.calculation ?? {};
    expect(address).toBe(`/calculations/bench-set?valve=${(await at.job.job()).tag}`);
    expect((await at.app.get(address, { as: at.technician.browser })).status).toBe(200);
  });

  test('that is the label of another component is kept in the log of the site', async () => {
    at = await atCard('openBypass');
    const wrongTags = async () =>
      (await at.app.services.log.entriesOf('site')).filter(({ kind }) => kind === 'wrong-tag').length;
    const before = await wrongTags();
    expect(await reply('HV-214A')).toMatchObject({ kind: 'unknown', send: null });
    expect(await wrongTags()).toBe(before + 1);
  });

  test('longer than can be read, or with what cannot be seen, is refused and kept', async () => {
    at = await atCard('needs');
    for (const text of ['x'.repeat(401), 'a\u0007b']) {
      const response = await at.app.postJson(path('reply'), { reply: text }, { as: at.technician.browser });
      expect(response.status).toBe(422);
      expect(Object.keys(((await response.json()) as Problem).fields ?? {})).toEqual(['reply']);
    }
  });

  test('goes back, parks and makes safe by the ordinary acts', async () => {
    at = await atCard('rigBleed');
    expect(await reply('back')).toMatchObject({ kind: 'understood' });
    expect((await reply('back')).send?.fields).toMatchObject({ act: 'go-back' });
    expect((await reply('park')).send?.fields).toMatchObject({ act: 'park' });
    expect((await count(await reply('stop'))).status).toBe(200);
    expect((await entries()).at(-1)?.kind).toBe('made-safe');
  });
});

describe('Several rows in one reply', () => {
  test('are each a line of its own that says so, judged in order', async () => {
    at = await atCard('asFoundCycle');
    const before = await at.length();
    const replied = await reply('0 %; 24 %; 50 %');
    expect(replied.rows.length).toBe(3);
    expect(replied.send).toMatchObject({ address: path('together'), text: 'Count 3 rows' });
    const requestId = newRequestId();
    expect((await count(replied, requestId)).status).toBe(200);
    const lines = (await entries()).slice(before);
    expect(lines.map(({ kind }) => kind)).toEqual(['row-read', 'row-read', 'row-read']);
    const first = lines[0]?.place;
    expect(lines.map(({ inputs }) => (inputs as { together?: unknown }).together)).toEqual([
      { first },
      { first },
      { first },
    ]);
    // Sent again it is the same answer, and no further line.
    expect((await count(replied, requestId)).status).toBe(200);
    expect(await at.length()).toBe(before + 3);
    const page = await (await at.app.get(`/jobs/${at.job.id}`, { as: at.technician.browser })).text();
    expect(textOf(page)).toContain('3 readings read, entered together');
  });

  test('stop at the first that is refused, and say what was kept', async () => {
    at = await atCard('asFoundCycle');
    const before = await at.length();
    const place = String((await at.job.job()).place);
    const steps = ['asFoundCycle', 'asFoundCycle', 'asFoundCycle'];
    const body = { place, steps, travelM: ['0 %', '300 %', '50 %'], requestId: newRequestId() };
    const response = await at.app.postJson(path('together'), body, { as: at.technician.browser });
    const problem = (await response.json()) as Problem;
    expect(response.status).toBe(422);
    expect(problem).toMatchObject({
      code: 'REA-005',
      kept: expect.stringContaining('The first is kept of 3'),
    });
    expect(await at.length()).toBe(before + 1);
  });

  test('are refused from where another line came between', async () => {
    at = await atCard('asFoundCycle');
    const place = String((await at.job.job()).place);
    await at.job.answer({ travelM: '0 %' });
    const before = await at.length();
    const body = { place, steps: ['asFoundCycle', 'asFoundCycle'], travelM: ['0 %', '24 %'] };
    const response = await at.app.postJson(path('together'), body, { as: at.technician.browser });
    expect(response.status).toBe(409);
    expect(await at.length()).toBe(before);
  });
});

test('cards that are read, signed or warned about are never entered together (RPL-010)', async () => {
  at = await atCard('needs');
  const { place } = await at.job.job();
  const before = await at.length();
  for (const steps of [
    ['needs', 'rigGauges'],
    ['needs', 'needs'],
    ['needs', 'noSuchStep'],
    ['holdWork', 'connectAir'],
  ]) {
    const body = { place: String(place), steps };
    const response = await at.app.postJson(path('together'), body, { as: at.technician.browser });
    const problem = (await response.json()) as Problem;
    expect([response.status, problem.code], steps.join()).toEqual([409, 'RPL-010']);
  }
  expect(await at.length()).toBe(before);
});
