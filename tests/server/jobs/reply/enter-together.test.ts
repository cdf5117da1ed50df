import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { factsOf } from '../../../../procedures/facts.ts';
import type { Json } from '../../../../procedures/json.ts';
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

/** Three plain steps, one with a warning, and the end. */
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
    write: plain('Write the tag down', 'warned'),
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

describe('Plain steps that are all done', () => {
  test('are offered together on the open card, each with what it has to be done, down to the warning', async () => {
    expect((await job()).together).toEqual(['bring', 'lay', 'write']);
    const html = await page();
    const { elements, faults } = readHtml(html);
    expect(faults).toEqual([]);
    expect(textOf(html)).toMatch(
      /The next 2 steps are done too.*Bring the tools.*Lay them out.*Write the tag down/s,
    );
    const upTo = elements.filter((one) => attributeOf(one, 'name') === 'upTo');
    expect(upTo.map((one) => attributeOf(one, 'value'))).toEqual(['bring', 'lay', 'write']);
  });

  test('are each a line of its own, which says that it was entered together and when', async () => {
    const { place, together } = await job();
    expect((await send({ place: String(place), steps: together })).status).toBe(200);
    const lines = (await entries()).slice(1);
    expect(lines.map(({ inputs }) => (inputs as { step: string }).step)).toEqual(['bring', 'lay', 'write']);
    const first = place + 1;
    for (const { inputs, at, person } of lines) {
      expect(inputs).toMatchObject({ together: { first } });
      expect([at, person]).toEqual([app.services.now().toISOString(), lines[0]?.person]);
    }
    const after = await job();
    expect(after.step).toBe('warned');
    expect(after.lines.map(({ verdict }) => verdict)).toEqual(Array(3).fill('done, entered together'));
  });

  test('are entered down to the one that is chosen', async () => {
    const { place, together } = await job();
    await send({ place: String(place), steps: together, upTo: 'lay' });
    expect((await job()).step).toBe('write');
  });

  test('keep when each was done, where that is remembered, beside the time at which it was written', async () => {
    const { place, together } = await job();
    const lateReason = 'The tablet was flat.';
    const now = app.services.now();
    const at = (minutesAgo: number) =>
      new Date(now.getTime() - minutesAgo * 60_000).toISOString().slice(0, 16).replace('T', ' ');
    const fields = { place: String(place), steps: together, lateReason };
    const backwards = await send({ ...fields, readAt: [at(5), at(9), ''] });
    expect([backwards.status, await backwards.json()]).toMatchObject([422, { code: 'RPL-011' }]);
    const unsaid = await send({ ...fields, lateReason: '', readAt: ['', at(9), ''] });
    expect([unsaid.status, await unsaid.json()]).toMatchObject([422, { code: 'REA-014' }]);
    expect((await entries()).length).toBe(1);
    expect((await send({ ...fields, readAt: [at(9), '', at(5)] })).status).toBe(200);
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

  test('never reach over a warning that nobody has seen', async () => {
    const { place } = await job();
    const refused = await send({ place: String(place), steps: ['bring', 'lay', 'write', 'warned'] });
    expect([refused.status, await refused.json()]).toMatchObject([409, { code: 'RPL-010' }]);
    expect((await entries()).length).toBe(1);
  });

  test('are refused whole where somebody else answered meanwhile', async () => {
    const { place, together } = await job();
    const acts = { act: 'answer', place: String(place), step: 'bring', requestId: newRequestId() };
    expect((await app.postJson('/jobs/77/acts', acts, { as: technician })).status).toBe(200);
    expect((await send({ place: String(place), steps: together })).status).toBe(409);
    expect((await entries()).length).toBe(2);
  });
});
