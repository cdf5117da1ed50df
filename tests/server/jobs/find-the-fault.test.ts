import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findTheFault } from '../../../procedures/troubleshooting/find-the-fault.ts';
import { adviceFor } from '../../../procedures/troubleshooting/job/advice.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { verifyStore } from '../../../server/log/verify.ts';
import { auditors } from '../../../server/streams.ts';
import { aSheet } from '../../builders/sheets.ts';
import { stickyLoop, withoutPosition } from '../../procedures/troubleshooting/loop-record/sticky-loop.ts';
import { readHtml, textOf } from '../../views/html.ts';
import { type AnApp, anApp, type Browser, newRequestId, ORIGIN } from '../an-app.ts';
import { gearNumbers, withValve } from './site.ts';

interface Told {
  readonly step: string;
  readonly place: number;
  readonly status: string;
  readonly card: {
    readonly fields: readonly {
      readonly name: string;
      readonly options: readonly { readonly value: string }[];
    }[];
  } | null;
}

const sheet = aSheet();
let app: AnApp;
let as: Browser;
beforeAll(async () => {
  app = await anApp({ people: true });
  await withValve(app, sheet);
  as = (await app.signedIn('technician')).browser;
  const opened = { tag: sheet.tag, procedure: findTheFault.id, place: 'line', ...gearNumbers('line') };
  const response = await app.postJson('/jobs', { requestId: newRequestId(), ...opened }, { as });
  expect(response.status, await response.clone().text()).toBe(201);
});
afterAll(() => app.close());

async function told(): Promise<Told> {
  const response = await app.get('/jobs/1', { as, headers: { accept: 'application/json' } });
  return (await response.json()) as Told;
}

async function answer(given: Readonly<Record<string, string>>): Promise<Told> {
  const { place, step } = await told();
  app.wait(60_000);
  const act = { requestId: newRequestId(), act: 'answer', place: String(place), step, ...given };
  const response = await app.postJson('/jobs/1/acts', act, { as });
  expect(response.status, await response.clone().text()).toBeLessThan(300);
  return told();
}

async function pageText(path = '/jobs/1'): Promise<string> {
  const { faults, elements } = readHtml(await (await app.get(path, { as })).text());
  expect(faults).toEqual([]);
  return elements.map((element) => textOf(element)).join(' ');
}

function cell(value: number): string {
  return value.toFixed(3).replace('.', ',');
}

/** The form of the card as a browser without script sends it: a file, and the blank text beside it. */
async function upload(table: string): Promise<Response> {
  const { place, step } = await told();
  const form = new FormData();
  const fields = { requestId: newRequestId(), act: 'answer', place: String(place), step, loopRecord: '' };
  for (const [name, value] of Object.entries(fields)) form.append(name, value);
  form.append('loopRecord', new Blob([`\ufeff${table}`], { type: 'text/csv' }), 'loop.csv');
  return await app.send('/jobs/1/acts', {
    method: 'POST',
    headers: { origin: ORIGIN, cookie: as.header, accept: 'text/html' },
    body: form,
  });
}

describe('A fault looked for over HTTP', () => {
  test('begins with a first line that is shown back before it counts', async () => {
    await answer({});
    const { place } = await told();
    const typed = 'does not move, controller 100 %, 12 psi at the valve';
    const response = await app.postJson(
      '/jobs/1/reply',
      { requestId: newRequestId(), place: String(place), reply: typed },
      { as },
    );
    expect(await response.json()).toMatchObject({
      kind: 'understood',
      rows: [
        [
          { label: 'What the operator says of it', value: 'Does not move' },
          { label: 'Signal at the valve', value: '12 psi' },
          { label: 'Controller output at that moment, as signal', value: '100 %' },
        ],
      ],
    });
    expect((await told()).step).toBe('complaint');
    const next = await answer({ symptom: 'doesNotMove', outputPercent: '100 %', signalSeenPa: '12 psi' });
    expect(next.step).toBe('fitted');
  });

  test('advises at the hub what tells most, first on the card and large on the page', async () => {
    await answer({});
    const hub = await answer({ operator: 'shift operator', consentGiven: 'yes', notLocked: 'yes' });
    expect(hub.step).toBe('inService');
    const text = await pageText();
    expect(text).toContain('Likely causes after');
    expect(text).toMatch(/in 10/);
    expect(text).toContain('Do this check');
    const offered = hub.card?.fields[0]?.options.map(({ value }) => value) ?? [];
    expect(offered).not.toContain('topPressure');
    expect(offered).toContain('name');
    const next = await answer({ hubChoice: offered[0] ?? '' });
    expect(next.step).toBe(`${offered[0]}InService`);
    await answer({ found: 'skip' });
  });

  test('says, asked what is likely, where it stands and that nothing is certain yet', async () => {
    const { place } = await told();
    const asked = { requestId: newRequestId(), place: String(place), reply: 'what is the likely cause?' };
    const reply = await (await app.postJson('/jobs/1/reply', asked, { as })).json();
    expect(JSON.stringify(reply)).toMatch(/likely causes stand on this card.*None is certain/);
  });

  test('folds a check that was chosen and made to one line, with who chose it behind it', async () => {
    const html = await (await app.get('/jobs/1', { as })).text();
    expect(html).not.toContain('<span class="line__what">In service: what to look at next</span>');
    expect(html).toMatch(/<dt>Chosen<\/dt><dd>\w+ \d\d:\d\d, line \d+<\/dd>/);
  });

  test('takes a record of the loop as a file: a wrong cell is named and kept, a good one is judged, drawn and kept', async () => {
    await answer({ hubChoice: 'loopRecord' });
    const sticks = withoutPosition(stickyLoop({ stickPercent: 5, jumpPercent: 2 }));
    const table = [
      'Zeit;t;OP;PV',
      ...sticks.map((one) => `;${one.timeS};${cell(one.outputPercent)};${cell(one.process)}`),
    ].join('\n');
    const refused = await upload(table.replace(/;50,/, ';5o,'));
    expect(refused.status).toBe(422);
    const again = await refused.text();
    expect(again).toMatch(/Row \d+, process: “5o,\d+” is no number\./);
    expect(again).toContain('<textarea');
    expect(readHtml(again).faults).toEqual([]);
    expect((await told()).step).toBe('loopRecordInService');
    expect((await upload(table)).status).toBe(303);
    expect((await told()).step).toBe('inService');
    const text = await pageText();
    expect(text).toContain('The valve sticks: two published methods agree.');
    expect(text).toContain('Output against process value');
    const job = await app.services.log.state(jobKind, '1');
    expect(job.answers.at(-1)?.csv?.loopRecord).toBe(table);
    expect(job.figures.loopRecordInService).toMatchObject({ found: 'sticks', loopRows: 1200 });
    expect(adviceFor(job, 'in service').evidence).toContainEqual(
      expect.objectContaining({ check: 'loopRecord', outcome: 'sticks' }),
    );
  });

  test('shows that record in the record of the job, as pictures, figures and rows, on page and paper', async () => {
    const asJson = { as, headers: { accept: 'application/json' } };
    const { record } = (await (await app.get('/jobs/1/record', asJson)).json()) as {
      record: { loops: { said: string; table: { rows: string[][] } }[] };
    };
    expect(record.loops[0]?.said).toContain('sticks');
    expect(record.loops[0]?.table.rows.length).toBeGreaterThan(10);
    const page = await (await app.get('/jobs/1/record', { as })).text();
    expect(readHtml(page).faults).toEqual([]);
    expect(page).toContain('Trend of output and process value over 1199 seconds.');
    const pdf = await app.get('/jobs/1/record.pdf', { as });
    expect([pdf.status, pdf.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  });

  test('comes to the cause by the soap, names it, and gives the valve back', async () => {
    await answer({ hubChoice: 'soapSignalTube' });
    await answer({ found: 'bubbles' });
    expect(await pageText()).toMatch(/Soap test of the signal tube and its fittings: Steady bubbles/);
    // The record of the loop said that it sticks: one look against it is not enough.
    await answer({ hubChoice: 'soapSignalTube' });
    await answer({ found: 'bubbles' });
    const naming = await answer({ hubChoice: 'name' });
    expect(naming.card?.fields[0]?.options[0]?.value).toBe('tightenSignalTube');
    await answer({ repairToDo: 'tightenSignalTube', causeSeen: 'a fitting drips bubbles' });
    await answer({ takenBackBy: 'shift operator', takenBack: 'yes' });
    expect((await answer({ choice: 'close' })).status).toBe('closed');
    const job = await app.services.log.state(jobKind, '1');
    expect(job.closedAs).toBe('done');
    expect(job.figures.nameCauseInService).toMatchObject({
      repair: 'tightenSignalTube',
      cause: 'signalTubeLeaks',
    });
    const report = await verifyStore(app.services.store, auditors);
    expect([report.fault, report.problems]).toEqual([null, []]);
  });

  test('says on the first sheet of its record what was complained of, named and found', async () => {
    const response = await app.get('/jobs/1/record', { as, headers: { accept: 'application/json' } });
    const { record } = (await response.json()) as {
      record: { search: readonly { label: string; value: string }[] };
    };
    const said = new Map(record.search.map(({ label, value }) => [label, value]));
    expect(said.get('complained of')).toBe('Does not move');
    expect(said.get('likeliest cause when it was named')).toBe('The signal tube or a fitting leaks');
    expect(said.get('repair named')).toBe('Make the signal tube tight');
    expect(said.get('what was found, in their words')).toBe('a fitting drips bubbles');
    expect(Number(said.get('checks made'))).toBeGreaterThan(0);
    expect(await pageText('/jobs/1/record')).toContain('repair named Make the signal tube tight');
  });
});
