import { afterEach, beforeEach, expect, test } from 'vitest';
import type { PlantHistory } from '../../../server/history/plant-history.ts';
import type { ValveHistory } from '../../../server/history/valve-history.ts';
import { openSiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp } from '../an-app.ts';
import { textOf } from './texts.ts';

let app: AnApp;
beforeEach(async () => {
  app = await anApp({ people: true });
});
afterEach(() => app.close());

test('a closed job stands in the history of its valve and of the plant, as page and as JSON, an open one does not', async () => {
  const technician = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  const job = await openSiteJob(app, { technician: technician.person, supervisor, place: 'bench' });
  let as = technician.browser;
  const { tag } = await job.job();
  const json = async <T>(path: string) =>
    (await (await app.get(path, { as, headers: { accept: 'application/json' } })).json()) as T;
  const path = `/valves/${tag}/history`;
  expect((await json<ValveHistory>(path)).jobs).toEqual([]);
  await job.playTo('done');
  // The job took longer than a session lasts.
  as = (await app.signedIn('technician')).browser;

  const history = await json<ValveHistory>(path);
  const { figures } = await job.job();
  const error = history.quantities.find(({ id }) => id === 'error');
  expect(history.jobs.map((one) => one.job)).toEqual([job.id]);
  expect(error?.points.map(({ value }) => value)).toEqual(
    [figures.asFoundVerdict, figures.asLeftVerdict].flatMap((cycle) => cycle?.errorWorstPercent ?? []),
  );
  const text = textOf(await (await app.get(path, { as })).text());
  expect(text).toContain(`job ${job.id}`);
  for (const sentence of history.quantities.flatMap(({ says }) => says)) expect(text).toContain(sentence);

  const plant = await json<PlantHistory>('/history');
  expect(plant.worst.map((one) => one.job)).toEqual([job.id]);
  expect(textOf(await (await app.get('/history?months=6', { as })).text())).toContain(tag);
  expect((await app.get('/history?months=0', { as })).status).toBe(422);
});
