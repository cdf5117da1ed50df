import { afterAll, beforeAll, expect, test } from 'vitest';
import { openSiteJob, type SiteJob } from '../../../builders/site-jobs.ts';
import { type AnApp, anApp, type Browser } from '../../an-app.ts';

let app: AnApp;
let as: Browser;
let job: SiteJob;
beforeAll(async () => {
  app = await anApp({ people: true });
  const { browser, person } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  as = browser;
  job = await openSiteJob(app, { technician: person, supervisor, place: 'line' });
  await job.playTo('shutInlet');
});
afterAll(() => app.close());

const html = async (path: string, headers: Readonly<Record<string, string>> = {}) =>
  (await app.get(path, { as, headers })).text();

test('every line stays in sight on the page of a job; what stands behind an older one is at its address', async () => {
  const page = await html(`/jobs/${job.id}`);
  expect(page).toMatch(
    /Read both gauges of the rig on one pressure<\/span>\s*<span class="line__reading">9\.00 psi, 9\.05 psi</,
  );
  expect(page).not.toContain('Correct line 4<');
  expect(page).toMatch(/<a class="line line__sum" id="line-4" href="\/jobs\/\d+\/lines\?line=4">/);
  const piece = await html(`/jobs/${job.id}/lines?line=4`, { 'hx-request': 'true' });
  expect(piece).toContain('Correct line 4<');
  expect(piece).not.toContain('Correct line 6<');
  expect(piece).not.toContain('<html');
});

test('without a script a line opens as a page of its own, and all lines are one page', async () => {
  const one = await html(`/jobs/${job.id}/lines?line=4`);
  expect(one).toContain('<html');
  expect(one).toContain('Correct line 4<');
  expect(one).not.toContain('Correct line 6<');
  expect(await html(`/jobs/${job.id}/lines`)).toContain('Correct line 6<');
});

test('a program is told the same lines; a number that is none is refused, and a line that is not there is none', async () => {
  const headers = { accept: 'application/json' };
  const told = JSON.parse(await html(`/jobs/${job.id}/lines`, headers)) as {
    phases: { lines: { place: number }[] }[];
  };
  expect(told.phases.flatMap(({ lines }) => lines).map(({ place }) => place)).toContain(4);
  expect((await app.get(`/jobs/${job.id}/lines?line=x`, { as })).status).toBe(422);
  expect(JSON.parse(await html(`/jobs/${job.id}/lines?line=900`, headers))).toMatchObject({ phases: [] });
});
