/**
 * Everything that may be typed wrongly, each by its name, over HTTP, as JSON and as a form: told what is wrong, what
 * was kept and what to do, with a 4xx; nothing is written, and what was typed stays. Acts out of turn stand beside.
 */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { streamOf } from '../../../server/log/stream-kind.ts';
import { gearItem } from '../../builders/gear.ts';
import { aSheet, FV_214 } from '../../builders/sheets.ts';
import { strokeScript, textsAt } from '../../builders/stroke-script.ts';
import { attributeOf, readHtml } from '../../views/html.ts';
import { type AnApp, anApp, newRequestId, ORIGIN } from '../an-app.ts';
import {
  type AtCard,
  atCard,
  expectToldOn,
  markedWrong,
  type Problem,
  standing,
  type Texts,
} from '../jobs/at-card.ts';
import { gearNumbers, withGear, withValve } from '../jobs/site.ts';

let at: AtCard;

/** What is typed in a field, by the name of what is wrong with it. */
const READINGS: Readonly<
  Record<string, { readonly typed: Texts; readonly code: string; readonly what: string }>
> = {
  text: { typed: { travelM: 'about half' }, code: 'NUM-002', what: 'Travel: “about half” is not a number.' },
  empty: { typed: { travelM: '' }, code: 'NUM-001', what: 'Travel: Nothing was written.' },
  'only blanks': { typed: { travelM: '   ' }, code: 'NUM-001', what: 'Travel: Nothing was written.' },
  NaN: { typed: { travelM: 'NaN' }, code: 'NUM-002', what: 'Travel: “NaN” is not a number.' },
  Infinity: { typed: { travelM: 'Infinity' }, code: 'NUM-002', what: 'Travel: “Infinity” is not a number.' },
  '1e9': { typed: { travelM: '1e9' }, code: 'NUM-003', what: 'Travel: “1e9” has an exponent.' },
  '0x10': { typed: { travelM: '0x10' }, code: 'NUM-004', what: 'Travel: “0x10” is written in another base.' },
  'a negative travel': { typed: { travelM: '-9 %' }, code: 'REA-005', what: '-9 % is past this valve' },
  'a negative signal': {
    typed: { signalPa: '-3 psi', travelM: '0 %' },
    code: 'GEA-103',
    what: 'is beyond gauge G-101',
  },
  'a wrong unit': { typed: { travelM: '12 psi' }, code: 'NUM-012', what: 'Travel: “psi” measures pressure' },
  'a unit that nobody knows': {
    typed: { travelM: '12 furlong' },
    code: 'NUM-011',
    what: '“furlong” is no unit known here.',
  },
  'absolute pressure': {
    typed: { signalPa: '17.7 psia', travelM: '0 %' },
    code: 'NUM-013',
    what: 'Signal: “psia” is absolute pressure.',
  },
  'an ambiguous comma': {
    typed: { signalPa: '1,234', travelM: '0 %' },
    code: 'NUM-005',
    what: 'Signal: “1,234” may mean 1.234 or 1234.',
  },
  'two numbers': { typed: { travelM: '10 20' }, code: 'NUM-007', what: 'more than one number' },
  'beyond the gauge’s range': {
    typed: { signalPa: '31 psi', travelM: '0 %' },
    code: 'GEA-103',
    what: 'Signal: 31.00 psi is beyond gauge G-101, 0.00 psi to 30.00 psi.',
  },
  'beyond rated travel, in percent': {
    typed: { travelM: '120 %' },
    code: 'REA-005',
    what: "120 % is past this valve's travel, 0.750 in.",
  },
  'beyond rated travel, as a length': {
    typed: { travelM: '0.9 in' },
    code: 'REA-005',
    what: "120 % is past this valve's travel, 0.750 in.",
  },
  'a gauge that is not of this job': {
    typed: { travelM: '0 %', signalPa: '3 psi', signalPaGauge: 'G-777' },
    code: 'GEA-110',
    what: 'gauge "G-777" does not belong to this job',
  },
  'a signal that is not the one asked for': {
    typed: { signalPa: '9 psi', travelM: '50 %' },
    code: 'REA-011',
    what: '9 psi is not the setting of this row.',
  },
};

describe('a reading is refused, and what was typed stays, when it is', () => {
  beforeAll(async () => {
    at = await atCard('asFoundCycle');
  });
  afterAll(() => at.close());

  test.each(Object.entries(READINGS))('%s', async (_name, { typed, code, what }) => {
    const before = await at.length();
    const asJson = await at.sendJson({ ...(await at.cardFields('answer')), ...typed });
    expect(asJson.status).toBe(422);
    expect(asJson.problem.code).toBe(code);
    expect(asJson.problem.what).toContain(what);
    expect(asJson.problem.kept).toMatch(/What you typed is still/);
    const [field = ''] = Object.keys(asJson.problem.fields ?? {});
    expect(Object.keys(typed)).toContain(field);

    const asForm = await at.sendForm({ ...(await at.cardFields('answer')), ...typed });
    expect(asForm.status).toBe(422);
    expectToldOn(asForm.html, asJson.problem);
    const drawn = standing(asForm.html);
    for (const name of ['signalPa', 'travelM']) expect(drawn[name]).toBe(typed[name] ?? '');
    expect(markedWrong(asForm.html)).toEqual([field]);
    expect(await at.length()).toBe(before);
  });

  test('not JSON at all', async () => {
    const { place, step } = await at.job.job();
    const body = `{"act":"answer","place":"${place}","step":"${step}","travelM":NaN}`;
    const headers = {
      'content-type': 'application/json',
      accept: 'application/json',
      origin: ORIGIN,
      cookie: at.technician.browser.header,
    };
    const response = await at.app.send(at.acts, { method: 'POST', headers, body });
    expect(response.status).toBe(400);
    expect(await response.json()).toMatchObject({ code: 'REQ-003', kept: 'Nothing was recorded.' });
  });

  test('a number in JSON, and a thousand million is not taken for a travel', async () => {
    const body = { ...(await at.cardFields('answer')), travelM: 1e9 };
    const response = await at.app.postJson(at.acts, body, { as: at.technician.browser });
    expect(response.status).toBe(422);
    expect(await response.json()).toMatchObject({
      fields: { travelM: expect.stringContaining('1000000000') },
    });
  });

  test('two wrong fields: each is named', async () => {
    const typed = { signalPa: '1,234', travelM: 'half' };
    const { problem } = await at.sendJson({ ...(await at.cardFields('answer')), ...typed });
    expect(Object.keys(problem.fields ?? {}).sort()).toEqual(['signalPa', 'travelM']);
  });

  test('after all of these, the right reading is taken', async () => {
    const taken = await at.sendForm({
      ...(await at.cardFields('answer')),
      signalPa: '3 psi',
      travelM: '0 %',
    });
    expect(taken.status).toBe(303);
  });
});

describe('an overdue gauge', () => {
  let app: AnApp;
  beforeAll(async () => {
    app = await anApp({ people: true });
    const sheet = aSheet();
    await withValve(app, sheet);
    await withGear(app, [gearItem('signalGauge', { dueOn: '2024-01-15' })]);
  });
  afterAll(() => app.close());

  test('is read no more from the day after it was due, in a job that began before', async () => {
    const as = (await app.signedIn('technician')).browser;
    const post = (path: string, fields: Texts, at = as) =>
      app.postJson(path, { requestId: newRequestId(), ...fields }, { as: at });
    const opening = { tag: 'FV-214', procedure: 'stroke-check', place: 'bench', ...gearNumbers('bench') };
    expect((await post('/jobs', opening)).status).toBe(201);
    const job = () => app.services.log.state(jobKind, '1');
    const script = strokeScript((await job()).sheet);
    for (let { step, place } = await job(); step !== 'rigGauges'; { step, place } = await job()) {
      const given = textsAt(script, { step, row: 0 });
      const answered = await post('/jobs/1/acts', { act: 'answer', place: String(place), step, ...given });
      expect(answered.status, step).toBe(200);
    }
    const { place } = await job();
    const reading = {
      act: 'answer',
      place: String(place),
      step: 'rigGauges',
      rigGaugePa: '9 psi',
      rigCheckPa: '9 psi',
    };
    app.wait(24 * 3600 * 1000);
    const nextDay = (await app.signedIn('technician')).browser;
    const refused = await post('/jobs/1/acts', reading, nextDay);
    expect(refused.status).toBe(422);
    expect(await refused.json()).toMatchObject({
      code: 'GEA-102',
      what: 'Gauge G-101 was due for calibration on 2024-01-15.',
      next: 'Read on gear that is in date; open the job again with it if need be.',
      fields: { rigGaugePa: expect.any(String) },
    });
    const form = { ...reading, requestId: newRequestId() };
    const drawn = await app.post('/jobs/1/acts', form, { as: nextDay });
    expect(standing(await drawn.text())).toMatchObject({ rigGaugePa: '9 psi', rigCheckPa: '9 psi' });
    expect((await job()).place).toBe(place);
  });
});

describe('a sheet that contradicts itself', () => {
  test('is not saved, is told what stands against what, and the form keeps it', async () => {
    const app = await anApp({ people: true });
    const { browser } = await app.signedIn('engineer');
    const wrong = { ...FV_214, tag: 'FV-900', airAction: 'air-to-close', failPosition: 'open' };
    const asJson = await app.postJson('/valves', { requestId: newRequestId(), ...wrong }, { as: browser });
    expect(asJson.status).toBe(422);
    const problem = (await asJson.json()) as Problem;
    expect(problem).toMatchObject({ code: 'VAL-101', fields: { airAction: expect.any(String) } });
    const asForm = await app.post('/valves', { requestId: newRequestId(), ...wrong }, { as: browser });
    expect(asForm.status).toBe(422);
    const html = await asForm.text();
    expectToldOn(html, problem);
    const { elements } = readHtml(html);
    const kept = elements.find(
      (one) => one.tagName === 'input' && attributeOf(one, 'name') === 'benchSetLowPa',
    );
    expect(kept && attributeOf(kept, 'value')).toBe('3');
    const chosen = elements.filter((one) => attributeOf(one, 'value') === 'air-to-close');
    expect(chosen.map((one) => attributeOf(one, 'checked') ?? attributeOf(one, 'selected'))).toEqual(['']);
    expect(await app.services.log.entriesOf(streamOf('valve', 'FV-900'))).toEqual([]);
    await app.close();
  });
});
