import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { PlantHistory } from '../../../server/history/plant-history.ts';
import type { ValveHistory } from '../../../server/history/valve-history.ts';
import type { JobRecord } from '../../../server/jobs/record/schema.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp, type Browser } from '../an-app.ts';
import { textOf } from './texts.ts';

let app: AnApp;
let as: Browser;
let job: SiteJob;
beforeEach(async () => {
  app = await anApp({ people: true });
  const technician = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  job = await openSiteJob(app, { technician: technician.person, supervisor, place: 'bench' });
  as = technician.browser;
});
afterEach(() => app.close());

const WORN = { kind: 'finding', found: 'eroded', where: 'seat', words: '=half <round>, 0.3 mm' };
const RINGS = { kind: 'part', description: 'Packing rings', number: 'P-17', quantity: '5', batch: 'B-2206' };
let request = 0;
const post = (fields: Readonly<Record<string, string>>) => {
  request += 1;
  return app.post(`/jobs/${job.id}/notes`, { requestId: `note-${request}-xxxx`, ...fields }, { as });
};
const pageAt = async (path: string) => textOf(await (await app.get(path, { as })).text());
const json = async <T>(path: string) =>
  (await (await app.get(path, { as, headers: { accept: 'application/json' } })).json()) as T;

describe('Findings and parts', () => {
  test('noted by plain form fold into the lines of the card, and stand on record, history, plant and table', async () => {
    const again = { ...WORN, requestId: 'the-same-request' };
    expect((await post(again)).status).toBe(303);
    expect((await post(again)).headers.get('location')).toBe(`/jobs/${job.id}/notes#noted`);
    await post(RINGS);
    await post({ ...WORN, words: 'not this valve' });
    const wrong = (await job.job()).notes.at(-1)?.place ?? 0;
    await post({ kind: 'strike', about: String(wrong), reason: 'the valve beside it' });
    expect((await job.job()).notes).toHaveLength(3);

    const card = await (await app.get(`/jobs/${job.id}`, { as })).text();
    expect(card).toContain('Found on seat ring: eroded or wire-drawn');
    expect(card).toContain(`/jobs/${job.id}/notes#note-${wrong - 1}`);
    expect(card).not.toContain('<round>');
    expect(await pageAt(`/jobs/${job.id}/notes`)).toContain('struck on line');

    await job.playTo('done');
    as = (await app.signedIn('technician')).browser;
    const { record } = await json<{ record: JobRecord }>(`/jobs/${job.id}/record`);
    expect(record.findings.map(({ words, struck }) => [words, struck])).toEqual([
      [WORN.words, ''],
      ['not this valve', `struck on line ${wrong + 1}: the valve beside it`],
    ]);
    expect(record.parts).toMatchObject([{ part: 'Packing rings', quantity: 5, batch: 'B-2206' }]);
    expect(record.lines.find(({ place }) => place === wrong)?.struck).toBe(true);
    expect(record.lines.map(({ place }) => place)).toEqual(
      record.lines.map(({ place }) => place).toSorted((one, other) => one - other),
    );

    const { tag } = await job.job();
    const history = await json<ValveHistory>(`/valves/${tag}/history`);
    expect(history.noted.map(({ kind, what, quantity }) => [kind, what, quantity])).toEqual([
      ['finding', 'Seat ring: eroded or wire-drawn', null],
      ['part', 'Packing rings', 5],
    ]);
    expect(await pageAt(`/valves/${tag}/history`)).toContain('5 off Packing rings');
    const { causes } = await json<PlantHistory>('/history');
    expect(causes).toEqual([{ cause: 'Seat ring: eroded or wire-drawn', jobs: 1, valves: 1 }]);
    expect(await pageAt('/history')).toContain('Commonest causes');

    const table = await (await app.get(`/history/noted.csv?tag=${tag}`, { as })).text();
    expect(table).toContain(`"'=half <round>, 0.3 mm"`);
    expect(table).toContain('Packing rings,,5,P-17,B-2206\r\n');
    expect(await (await app.get('/history/noted.csv?tag=none', { as })).text()).toMatch(/^valve,[^\n]*\r\n$/);
  });

  test('that are not right come back as typed, each field with its message', async () => {
    const refused = await post({ kind: 'finding', found: '', where: 'plug', words: 'kept <text>' });
    const text = await refused.text();
    expect(refused.status).toBe(422);
    expect(text).toContain('kept &lt;text&gt;');
    expect(text).toContain('Choose what was found.');
    expect(text).toMatch(/value="plug" selected/);
    expect((await post({ kind: 'strike', about: '1', reason: 'why' })).status).toBe(409);
    expect((await post({ kind: 'guess' })).status).toBe(422);
    expect((await job.job()).notes).toEqual([]);
  });

  test('are read by a safety officer, who notes nothing', async () => {
    await post(RINGS);
    as = (await app.signedIn('safety-officer')).browser;
    const page = await pageAt(`/jobs/${job.id}/notes`);
    expect(page).toContain('Put in: Packing rings, 5 off');
    expect(page).not.toContain('Note what was found');
    expect((await post(WORN)).status).toBe(403);
  });
});
