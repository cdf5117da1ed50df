import { afterEach, beforeEach, expect, test } from 'vitest';
import { readingsCsv } from '../../../server/gear/rests-on.ts';
import type { ValveHistory } from '../../../server/history/valve-history.ts';
import type { JobRecord } from '../../../server/jobs/record/schema.ts';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp, newRequestId } from '../an-app.ts';
import { textOf } from './texts.ts';

let app: AnApp;
beforeEach(async () => {
  app = await anApp({ people: true });
});
afterEach(() => app.close());

const accept = { accept: 'application/json' };

test('gear found wrong lists every reading that rests on it, marks the record of its job, and is out of use', async () => {
  const { person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, { technician, supervisor, place: 'bench' });
  await job.playTo('asFoundVerdict');
  const { gear, answers } = await job.job();
  const number = gear.signalGauge?.number ?? '';
  const expected = answers.flatMap(({ seq, readings }) =>
    readings.filter(({ gauge }) => gauge === number).map(() => seq),
  );
  expect(expected.length).toBeGreaterThan(9);

  const as = (await app.signedIn('engineer')).browser;
  const today = app.services.now().toISOString().slice(0, 10);
  const told = { foundOn: today, rightUntil: '2020-01-01', howFar: 'reads 0.4 psi high at 12 psi' };
  const tell = (fields: Record<string, string>) =>
    app.post(`/gear/${number}/wrong`, { requestId: newRequestId(), ...fields }, { as });
  const later = await tell({ ...told, rightUntil: '2999-01-01' });
  expect(later.status).toBe(422);
  expect(textOf(await later.text())).toContain('must not be after');
  expect((await tell(told)).status).toBe(303);

  const path = `/gear/${number}/readings`;
  const listed = (await (await app.get(path, { as, headers: accept })).json()) as {
    readings: { line: number; stands: boolean }[];
  };
  expect(listed.readings.map(({ line }) => line)).toEqual(expected);
  expect(textOf(await (await app.get(path, { as })).text())).toContain(
    `${expected.length} readings on 1 job`,
  );
  const csv = await (await app.get(`${path}.csv`, { as })).text();
  expect(csv.trim().split('\r\n')).toHaveLength(expected.length + 1);

  const at = `/jobs/${job.id}/record`;
  const { record } = (await (await app.get(at, { as, headers: accept })).json()) as { record: JobRecord };
  expect(record.gearWrong).toMatchObject([{ number, howFar: told.howFar, foundOn: today }]);
  const text = textOf(await (await app.get(at, { as })).text());
  expect(text).toContain(`Found wrong since: ${number}`);
  const places = answers.filter(({ seq }) => expected.includes(seq)).map(({ place }) => place);
  expect(record.lines.filter(({ doubt }) => doubt === number).map(({ place }) => place)).toEqual(places);
  expect(text.split(`${number} in doubt`)).toHaveLength(places.length + 1);

  await job.playTo('done');
  const engineer = (await app.signedIn('engineer')).browser;
  const history = `/valves/${(await job.job()).tag}/history`;
  const { quantities } = (await (
    await app.get(history, { as: engineer, headers: accept })
  ).json()) as ValveHistory;
  const points = quantities.flatMap((one) => one.points);
  expect(points.length).toBeGreaterThan(0);
  expect(points.every(({ doubt }) => doubt === number)).toBe(true);
  expect(textOf(await (await app.get(history, { as: engineer })).text())).toContain(
    `${number} found wrong since`,
  );
  const shown = textOf(await (await app.get(`/gear/${number}`, { as })).text());
  expect(shown).toContain('Found wrong on');
  expect(shown).toContain('retired');
});

test('readings taken before the last day that it was right are not listed', async () => {
  const { person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, { technician, supervisor, place: 'bench' });
  await job.playTo('asFoundStrokes');
  const number = (await job.job()).gear.signalGauge?.number ?? '';
  app.wait(3 * 24 * 3600 * 1000);
  const as = (await app.signedIn('engineer')).browser;
  const today = app.services.now().toISOString().slice(0, 10);
  const fields = { requestId: newRequestId(), foundOn: today, rightUntil: today, howFar: 'dropped' };
  expect((await app.post(`/gear/${number}/wrong`, fields, { as })).status).toBe(303);
  const listed = await (await app.get(`/gear/${number}/readings`, { as, headers: accept })).json();
  expect(listed).toMatchObject({ readings: [] });
});

test('no cell of the table begins like a formula', () => {
  const reading = {
    job: '1',
    line: 4,
    place: 2,
    at: '',
    person: 't1',
    step: '=cmd()',
    reading: '-1',
    stands: true,
  };
  expect(readingsCsv([{ ...reading, tag: '@FV' }])).toContain("1,'@FV,4,2,,t1,'=cmd(),-1,yes");
});
