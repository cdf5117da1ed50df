import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { factsOf } from '../../../../procedures/facts.ts';
import type { Json } from '../../../../procedures/json.ts';
import { yesNo } from '../../../../procedures/phases/common.ts';
import { asJson, type InstructionStep, procedure } from '../../../../procedures/vocabulary.ts';
import { hashOf } from '../../../../server/jobs/catalogue.ts';
import { streamOf } from '../../../../server/log/stream-kind.ts';
import { gearFor } from '../../../builders/gear.ts';
import { aSheet } from '../../../builders/sheets.ts';
import { attributeOf, readHtml } from '../../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId } from '../../an-app.ts';
import { textOf } from '../../pages/texts.ts';
import { withValve } from '../site.ts';

const plain = (title: string, to: string): InstructionStep<string> => ({
  kind: 'instruction',
  phase: 'one',
  title,
  do: ['Read the manual.'],
  makeSafe: 'end',
  next: { to },
});

/** Two plain steps, one that is ticked off, one with a warning, and the end. */
const CHAIN = procedure<string>({
  id: 'chain',
  title: 'A chain of plain steps',
  energyControl: { use: 'Tests.', isolation: 'None.', locks: 'None.', verification: 'None.' },
  revisions: [{ letter: 'A', date: '2026-11-25', change: 'First issue.' }],
  phases: [{ id: 'one', title: 'One' }],
  start: 'bring',
  safe: ['end'],
  steps: {
    bring: plain('Bring the tools', 'lay'),
    lay: plain('Lay them out', 'write'),
    write: {
      kind: 'reading',
      phase: 'one',
      title: 'Write the tag down',
      asks: [yesNo('written', 'The tag is written down'), { name: 'tagRead', label: 'Tag', type: 'text' }],
      oneGo: true,
      judge: { rule: 'allYes', with: { fields: 'written' } },
      ways: { yes: { to: 'warned' }, no: { to: 'noTag' } },
      makeSafe: 'end',
    },
    noTag: plain('Ask for the tag', 'write'),
    warned: {
      ...plain('Stand aside', 'end'),
      caution: { word: 'warning', hazard: 'It moves.', consequence: 'It can crush.', avoid: 'Hands off.' },
    },
    end: { kind: 'end', phase: 'one', title: 'Over', closes: 'done' },
  },
});

let app: AnApp;
let technician: Browser;

beforeEach(async () => {
  app = await anApp({ people: true });
  ({ browser: technician } = await app.signedIn('technician'));
  const sheet = aSheet();
  await withValve(app, sheet);
  const hash = hashOf(CHAIN);
  const opened = {
    id: '77',
    tag: sheet.tag,
    sheet,
    sheetRevision: 1,
    gear: gearFor('line'),
    facts: factsOf(sheet, 'line'),
    procedure: CHAIN.id,
    procedureRevision: 'A',
    definitionHash: hash,
  } as unknown as Json;
  const bare = { outcome: {}, person: null };
  await app.services.log.act({
    requestId: newRequestId(),
    fingerprint: hash,
    person: null,
    screen: 'test',
    streams: [streamOf('procedure', hash), streamOf('job', '77')],
    decide: () => ({
      entries: [
        {
          stream: streamOf('procedure', hash),
          kind: 'procedure-stored',
          inputs: asJson(CHAIN),
          ...bare,
          effects: {},
        },
        {
          stream: streamOf('job', '77'),
          kind: 'job-opened',
          inputs: opened,
          ...bare,
          effects: { to: 'bring' },
        },
      ],
      answer: {},
    }),
  });
});
afterEach(() => app.close());

const entries = () => app.services.log.entriesOf(streamOf('job', '77'));
const job = async () =>
  (await (await app.get('/jobs/77', { as: technician, headers: { accept: 'application/json' } })).json()) as {
    step: string;
    place: number;
    together: string[];
    lines: { verdict: string }[];
  };
const page = async () => (await app.get('/jobs/77', { as: technician })).text();
const send = (fields: object) =>
  app.postJson('/jobs/77/together', { requestId: newRequestId(), ...fields }, { as: technician });
/** All three filled in, as the form sends them. */
const allDone = async () => ({
  place: String((await job()).place),
  steps: ['bring', 'lay', 'write'],
  'bring-done': 'yes',
  'lay-done': 'yes',
  'write-written': 'yes',
  'write-tagRead': 'FV-101',
});
const steps = async () => (await entries()).slice(1).map(({ inputs }) => (inputs as { step: string }).step);

describe('Cards that are all done', () => {
  test('are both named where one is left beside the open card', async () => {
    const { place, steps } = await allDone();
    expect((await send({ place, steps, 'bring-done': 'yes' })).status).toBeLessThan(300);
    expect(textOf(await page())).toContain('The next card is done too: enter both together');
  });

  test('are offered together on the open card, each with what it has to be done, down to the warning', async () => {
    expect((await job()).together).toEqual(['bring', 'lay', 'write']);
    const html = await page();
    const { elements, faults } = readHtml(html);
    expect(faults).toEqual([]);
    expect(textOf(html)).toMatch(
      /The next 2 cards are done too.*Bring the tools.*Lay them out.*Write the tag down/s,
    );
    const ofCard = /^(bring|lay|write)-/;
    const names = elements.map((one) => attributeOf(one, 'name') ?? '').filter((name) => ofCard.test(name));
    expect(new Set(names)).toEqual(
      new Set([
        ...['bring-done', 'bring-readAt', 'lay-done', 'lay-readAt'],
        ...['write-written', 'write-tagRead', 'write-readAt'],
      ]),
    );
  });

  test('are each a line of its own, which says that it was entered together and when', async () => {
    const { place } = await job();
    expect((await send(await allDone())).status).toBe(200);
    const lines = (await entries()).slice(1);
    expect(await steps()).toEqual(['bring', 'lay', 'write']);
    const first = place + 1;
    for (const { inputs, at, person } of lines) {
      expect(inputs).toMatchObject({ together: { first } });
      expect([at, person]).toEqual([app.services.now().toISOString(), lines[0]?.person]);
    }
    expect(lines[2]?.inputs).toMatchObject({ words: { written: 'yes', tagRead: 'FV-101' } });
    const after = await job();
    expect(after.step).toBe('warned');
    expect(after.lines.map(({ verdict }) => verdict.includes('entered together'))).toEqual([
      true,
      true,
      true,
    ]);
  });

  test('are entered down to the first that is left blank', async () => {
    const { 'write-written': _, 'write-tagRead': __, ...two } = await allDone();
    expect((await send(two)).status).toBe(200);
    expect([await steps(), (await job()).step]).toEqual([['bring', 'lay'], 'write']);
  });

  test('are one plain line where only one was done', async () => {
    const fields = {
      place: String((await job()).place),
      steps: ['bring', 'lay', 'write'],
      'bring-done': 'yes',
    };
    expect((await send(fields)).status).toBe(200);
    const inputs = (await entries())[1]?.inputs as object;
    expect([await steps(), Object.hasOwn(inputs, 'together')]).toEqual([['bring'], false]);
  });

  test('leave no gap: a blank one above one that is filled in counts nothing (RPL-012)', async () => {
    for (const blank of ['bring-done', 'lay-done']) {
      const refused = await send({ ...(await allDone()), [blank]: '' });
      expect([refused.status, await refused.json()]).toMatchObject([422, { code: 'RPL-012' }]);
    }
    const nothing = { place: String((await job()).place), steps: ['bring', 'lay', 'write'] };
    expect((await send(nothing)).status).toBe(422);
    expect(await steps()).toEqual([]);
  });

  test('stop before one that is not as it should be: that is answered on its own card (RPL-013)', async () => {
    const refused = await send({ ...(await allDone()), 'write-written': 'no' });
    expect([refused.status, await refused.json()]).toMatchObject([
      409,
      { code: 'RPL-013', kept: expect.stringContaining('The first 2 are kept of 3') },
    ]);
    expect([await steps(), (await job()).step]).toEqual([['bring', 'lay'], 'write']);
  });

  test('are all read before any counts; what was typed is drawn again, the fault at its own card', async () => {
    const { 'write-tagRead': _, ...fields } = await allDone();
    const refused = await send(fields);
    expect(refused.status).toBe(422);
    expect(Object.keys(((await refused.json()) as { fields: object }).fields)).toEqual(['write-tagRead']);
    const again = await app.post(
      '/jobs/77/together',
      { requestId: newRequestId(), ...fields },
      { as: technician },
    );
    const { elements } = readHtml(await again.text());
    const drawn = (name: string) => elements.find((one) => attributeOf(one, 'name') === name);
    expect(attributeOf(drawn('bring-done') as never, 'checked')).toBe('');
    expect(elements.some((one) => attributeOf(one, 'id') === 'write-tagRead-error')).toBe(true);
    expect(await steps()).toEqual([]);
  });

  test('keep when each was done, where that is remembered, beside the time at which it was written', async () => {
    const fields = await allDone();
    const lateReason = 'The tablet was flat.';
    const now = app.services.now();
    const at = (minutesAgo: number) =>
      new Date(now.getTime() - minutesAgo * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    const backwards = await send({ ...fields, lateReason, 'bring-readAt': at(5), 'lay-readAt': at(9) });
    expect([backwards.status, await backwards.json()]).toMatchObject([422, { code: 'RPL-011' }]);
    const unsaid = await send({ ...fields, 'lay-readAt': at(9) });
    expect([unsaid.status, await unsaid.json()]).toMatchObject([
      422,
      { code: 'REA-014', fields: { lateReason: expect.any(String) } },
    ]);
    const unreadable = await send({ ...fields, lateReason, 'lay-readAt': 'noon' });
    expect(Object.keys(((await unreadable.json()) as { fields: object }).fields)).toEqual(['lay-readAt']);
    expect(await steps()).toEqual([]);
    expect((await send({ ...fields, lateReason, 'bring-readAt': at(9), 'write-readAt': at(5) })).status).toBe(
      200,
    );
    const late = (await entries()).slice(1).map(({ inputs }) => (inputs as { late?: object }).late);
    const claimed = (minutesAgo: number) => `${at(minutesAgo).replace(' ', 'T')}:00.000Z`;
    expect(late).toEqual([
      { claimedAt: claimed(9), reason: lateReason },
      undefined,
      { claimedAt: claimed(5), reason: lateReason },
    ]);
    const words = (await job()).lines.map(({ verdict }) => verdict);
    expect(words.map((word) => word.includes('written late'))).toEqual([true, false, true]);
    expect(words.every((word) => word.includes('entered together'))).toBe(true);
  });

  test('that are late without a reason lead from the refusal to the field of their own form, and open no other', async () => {
    const now = app.services.now();
    const earlier = new Date(now.getTime() - 9 * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    const again = await app.post(
      '/jobs/77/together',
      { requestId: newRequestId(), ...(await allDone()), 'lay-readAt': earlier },
      { as: technician },
    );
    const html = await again.text();
    const { elements, faults } = readHtml(html);
    expect(faults).toEqual([]);
    expect(html).toContain('<a href="#lateReason">Write why it was not written then.</a>');
    expect(elements.filter((one) => attributeOf(one, 'id') === 'lateReason').length).toBe(1);
    const together = html.indexOf('<details class="together" open>');
    expect(together).toBeGreaterThan(0);
    expect(html.indexOf('id="lateReason"')).toBeGreaterThan(together);
    expect(html.match(/aria-invalid="true"/g)?.length).toBe(1);
    expect(html).toContain('<details class="by-radio"><summary>Done earlier than it is written</summary>');
  });

  test('never reach over a warning that nobody has seen', async () => {
    const fields = { ...(await allDone()), steps: ['bring', 'lay', 'write', 'warned'], 'warned-done': 'yes' };
    const refused = await send(fields);
    expect([refused.status, await refused.json()]).toMatchObject([409, { code: 'RPL-010' }]);
    expect((await entries()).length).toBe(1);
  });

  test('are refused whole where somebody else answered meanwhile', async () => {
    const fields = await allDone();
    const acts = { act: 'answer', place: fields.place, step: 'bring', requestId: newRequestId() };
    expect((await app.postJson('/jobs/77/acts', acts, { as: technician })).status).toBe(200);
    expect((await send(fields)).status).toBe(409);
    expect((await entries()).length).toBe(2);
  });

  test('sent again are the same lines', async () => {
    const fields = { ...(await allDone()), requestId: newRequestId() };
    expect((await send(fields)).status).toBe(200);
    expect((await send(fields)).status).toBe(200);
    expect(await steps()).toEqual(['bring', 'lay', 'write']);
  });
});
