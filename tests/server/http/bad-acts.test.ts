/**
 * Acts that are forged, replayed, reordered or out of turn, and holds that may not be signed, over HTTP: told what is
 * wrong, what was kept and what to do, with a 4xx, and nothing is written.
 */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { Browser, newRequestId, PINS } from '../an-app.ts';
import { type AtCard, atCard, expectToldOn, expectWhole, standing, type Texts } from '../jobs/at-card.ts';
import { textOf } from '../pages/texts.ts';
import { signing } from '../signing/at-hold.ts';

let at: AtCard;
afterEach(() => at.close());

describe('an act out of its turn is refused', () => {
  beforeEach(async () => {
    at = await atCard('rigGauges');
  });

  const reading = { rigGaugePa: '9.00 psi', rigCheckPa: '9.05 psi' };

  test('on a step that is not open, and what was typed there is shown beside the card that is', async () => {
    const before = await at.length();
    const fields = { ...(await at.cardFields('answer')), step: 'turnStem', turnsMade: '2', lockNuts: 'yes' };
    const { status, problem } = await at.sendJson(fields);
    expect([status, problem.code]).toEqual([409, 'JOB-003']);
    expect(problem.what).toBe('The step "turnStem" is not the open one.');
    const { html } = await at.sendForm({ ...fields, requestId: newRequestId() });
    expectToldOn(html, problem);
    expect(textOf(html)).toContain('Typed on the card that was open before, and not counted:');
    expect(await at.length()).toBe(before);
  });

  test('on a step that no procedure has', async () => {
    const { status, problem } = await at.sendJson({
      ...(await at.cardFields('answer')),
      step: 'constructor',
    });
    expect([status, problem.code]).toEqual([409, 'JOB-003']);
  });

  test('replayed with a new id: once it was counted, the same form again is told so', async () => {
    const fields = { ...(await at.cardFields('answer')), ...reading };
    expect((await at.sendForm(fields)).status).toBe(303);
    const { status, problem } = await at.sendJson({ ...fields, requestId: newRequestId() });
    expect([status, problem.code]).toEqual([409, 'JOB-002']);
    expect(problem.what).toMatch(/^This step was answered by technician 1 \(T1\) at \d\d:\d\d UTC/);
  });

  test('replayed to the letter it gets its first answer, and no second entry', async () => {
    const fields = { ...(await at.cardFields('answer')), ...reading };
    expect((await at.sendForm(fields)).status).toBe(303);
    const after = await at.length();
    expect((await at.sendForm(fields)).status).toBe(303);
    expect((await at.sendJson(fields)).status).toBe(200);
    expect(await at.length()).toBe(after);
  });

  test('replayed with other readings under its id', async () => {
    const fields = { ...(await at.cardFields('answer')), ...reading };
    await at.sendForm(fields);
    const after = await at.length();
    const { status, problem } = await at.sendJson({ ...fields, rigGaugePa: '9.05 psi' });
    expect([status, problem.code]).toEqual([409, 'LOG-001']);
    expect(problem.kept).toBe('What was sent first stands; nothing of this was recorded.');
    expect(await at.length()).toBe(after);
  });

  test('replayed by somebody else under its id', async () => {
    const fields = { ...(await at.cardFields('answer')), ...reading };
    await at.sendForm(fields);
    const { status, problem } = await at.sendJson(fields, at.supervisor.browser);
    expect([status, problem.code]).toEqual([409, 'LOG-001']);
  });

  test('reordered: the form of the next card before that of this one', async () => {
    const first: Texts = { ...(await at.cardFields('answer')), ...reading };
    const second = {
      ...first,
      requestId: newRequestId(),
      place: String(Number(first.place) + 1),
      step: 'rigShutIn',
    };
    const early = await at.sendJson(second);
    expect([early.status, early.problem.code]).toEqual([409, 'JOB-002']);
    expect((await at.sendForm(first)).status).toBe(303);
    at.app.wait(60_000);
    expect((await at.sendForm({ ...second, requestId: newRequestId() })).status).toBe(303);
  });

  test.each([
    ['a place that is not one', { place: '-1' }, 422, 'FRM-002'],
    ['a place that has not come', { place: '999999999' }, 409, 'JOB-002'],
    ['no act', { act: '' }, 422, 'FRM-002'],
    ['an act of no person', { act: 'job-opened' }, 422, 'FRM-002'],
    ['no step', { step: '' }, 422, 'FRM-002'],
  ])('forged with %s', async (_name, forged, status, code) => {
    const before = await at.length();
    const told = await at.sendJson({ ...(await at.cardFields('answer')), ...reading, ...forged });
    expect([told.status, told.problem.code]).toEqual([status, code]);
    expectWhole(told.problem);
    expect(await at.length()).toBe(before);
  });

  test('forged with outcome, effects, person and time: none of these is taken from a form', async () => {
    const forged = {
      outcome: 'differ',
      to: 'done',
      person: 's1',
      at: '2020-01-01',
      effects: 'closed',
      seq: '1',
    };
    const fields = { ...(await at.cardFields('answer')), ...reading, ...forged };
    expect((await at.sendJson(fields)).status).toBe(200);
    const entry = (await at.app.services.log.entriesOf(streamOf('job', at.job.id))).at(-1);
    expect(entry).toMatchObject({
      person: at.technician.person.id,
      outcome: { name: 'agree' },
      effects: { to: 'rigShutIn' },
    });
    expect(entry?.at.startsWith('2020')).toBe(false);
  });

  test('forged from another site, and without a session', async () => {
    const before = await at.length();
    const fields = { ...(await at.cardFields('answer')), ...reading };
    const headers = { origin: 'http://127.0.0.1:9999' };
    const foreign = await at.app.postJson(at.acts, fields, { as: at.technician.browser, headers });
    expect(foreign.status).toBe(403);
    expect(await foreign.json()).toMatchObject({ code: 'REQ-004' });
    const nobody = await at.app.postJson(at.acts, fields, { as: new Browser() });
    expect(nobody.status).toBe(401);
    expect(await at.length()).toBe(before);
  });

  test('a correction of a reading keeps what was typed, on the form of that line', async () => {
    await at.sendForm({ ...(await at.cardFields('answer')), ...reading });
    const corrects = String((await at.job.job()).place);
    const before = await at.length();
    const typed = { rigGaugePa: '1,234', rigCheckPa: '9.1 psi', reason: 'misread' };
    const { place } = await at.cardFields('correct');
    const response = await at.app.post(
      at.acts,
      { requestId: newRequestId(), act: 'correct', place: place ?? '', corrects, ...typed },
      { as: at.technician.browser },
    );
    expect(response.status).toBe(422);
    const html = await response.text();
    expect(textOf(html)).toContain('“1,234” may mean 1.234 or 1234.');
    const inputs = readHtml(html).elements.filter(({ tagName }) => tagName === 'input');
    const value = (name: string) => {
      const input = inputs.find((one) => attributeOf(one, 'name') === name);
      return input && attributeOf(input, 'value');
    };
    for (const [name, text] of Object.entries(typed)) expect(value(name)).toBe(text);
    expect(value('corrects')).toBe(corrects);
    expect(await at.length()).toBe(before);
  });
});

describe('two screens at one card', () => {
  test('the second is told plainly and gets the next card, with what was typed beside it and not in it', async () => {
    at = await atCard('asFoundCycle');
    const fields = await at.cardFields('answer');
    const first = await at.sendForm({ ...fields, signalPa: '3 psi', travelM: '0 %' });
    expect(first.status).toBe(303);
    const typed = { signalPa: '3.05 psi', travelM: '0.4 %' };
    const second = await at.sendForm(
      { ...fields, requestId: newRequestId(), ...typed },
      (await at.app.signedIn('technician')).browser,
    );
    expect(second.status).toBe(409);
    const text = textOf(second.html);
    expect(text).toMatch(
      /This step was answered by technician 1 \(T1\) at \d\d:\d\d UTC, while your card was open\./,
    );
    expect(text).toContain('Signal: 3.05 psi Travel: 0.4 %');
    // The reading of the first row must not wait in the field of the second.
    expect(standing(second.html)).toMatchObject({ signalPa: '', travelM: '' });
    expect(text).toContain('Set 6.00 psi going up.');
    expect((await at.job.job()).tables.asFoundCycle).toHaveLength(1);
  });

  test('who meant the same card after somebody put a question beside it keeps what was typed in it', async () => {
    at = await atCard('asFoundCycle');
    const fields = await at.cardFields('answer');
    await at.job.act({
      kind: 'correct',
      corrects: await placeOf('rigGauges'),
      given: { rigGaugePa: '9.01', rigCheckPa: '9.05' },
      reason: 'misread',
    });
    const typed = { signalPa: '3 psi', travelM: '0.4 %' };
    const moved = await at.sendForm({ ...fields, ...typed });
    expect(moved.status).toBe(409);
    expect(textOf(moved.html)).toContain('An earlier line was corrected by technician 1 (T1)');
    expect(standing(moved.html)).toMatchObject(typed);
  });
});

async function placeOf(step: string): Promise<number> {
  return (await at.job.job()).answers.findLast((one) => one.step === step && !one.superseded)?.place ?? 0;
}

describe('a hold is not signed', () => {
  beforeEach(async () => {
    at = await atCard('holdWork');
  });

  async function expectUnsigned({ status, problem }: Awaited<ReturnType<AtCard['sendJson']>>, code: string) {
    expect([status >= 400 && status < 500, problem.code]).toEqual([true, code]);
    expectWhole(problem);
    const { step, holds } = await at.job.job();
    expect([step, holds]).toEqual(['holdWork', []]);
  }

  test('by a technician', async () => {
    const pin = '591736';
    const by = { requestId: newRequestId(), person: null, screen: 'test' };
    const other = await at.app.services.people.addWithPin(
      { name: 'technician 2', role: 'technician', pin },
      by,
    );
    await expectUnsigned(await at.sendJson(await signing(at, { signer: other.id, pin })), 'HLD-001');
  });

  test('by whoever acknowledged part of the work, a supervisor too', async () => {
    await at.close();
    at = await atCard('springLook');
    await at.job.act({ kind: 'answer', given: { caseTight: 'yes' } }, at.supervisor.person);
    await expectUnsigned(await at.sendJson(await signing(at)), 'HLD-002');
  });

  test.each([
    ['a wrong PIN', { pin: '000000' }, 'PPL-001'],
    ['no PIN', { pin: '' }, 'FRM-002'],
    ['no name', { signer: '' }, 'FRM-002'],
    ['nobody’s name', { signer: 'x99' }, 'PPL-001'],
    ['a digest of something else than was shown', { shownDigest: 'a'.repeat(64) }, 'HLD-016'],
    ['a step further on', { step: 'turnStem' }, 'JOB-003'],
  ])('with %s', async (_name, forged, code) => {
    await expectUnsigned(await at.sendJson(await signing(at, forged)), code);
    const { status, html } = await at.sendForm(await signing(at, forged));
    expect(status).toBeGreaterThanOrEqual(400);
    expect(html).not.toContain(PINS.supervisor);
  });

  test('by an answer instead of a signature', async () => {
    await expectUnsigned(await at.sendJson({ ...(await at.cardFields('answer')), signed: 'yes' }), 'JOB-004');
  });

  test('twice: the same signature again signs nothing more', async () => {
    const fields = await signing(at);
    expect((await at.sendForm(fields)).status).toBe(303);
    const after = await at.length();
    const again = await at.sendJson({ ...fields, requestId: newRequestId() });
    expect([again.status, again.problem.code]).toEqual([409, 'HLD-007']);
    expect(await at.length()).toBe(after);
  });
});
