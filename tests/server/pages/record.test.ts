import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { JobRecord } from '../../../server/jobs/record/schema.ts';
import { checkNumber } from '../../../server/log/check-number.ts';
import type { Person, Role } from '../../../server/people/person.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp } from '../an-app.ts';
import { textOf } from './texts.ts';

let app: AnApp;
let technician: Person;
let supervisor: Person;

beforeEach(async () => {
  app = await anApp({ people: true });
  technician = (await app.signedIn('technician')).person;
  supervisor = (await app.signedIn('supervisor')).person;
});
afterEach(() => app.close());

async function openedJob(
  place: 'bench' | 'line' = 'line',
  notes = 'Cock behind <the> column.',
): Promise<SiteJob> {
  return openSiteJob(app, { technician, supervisor, place, sheet: aSheet({ notes }) });
}

async function recordOf(id: string, role: Role = 'safety-officer') {
  const { browser } = await app.signedIn(role);
  const path = `/jobs/${id}/record`;
  const json = await app.get(path, { as: browser, headers: { accept: 'application/json' } });
  const page = await app.get(path, { as: browser });
  expect([json.status, page.status]).toEqual([200, 200]);
  const html = await page.text();
  return { record: ((await json.json()) as { record: JobRecord }).record, html, text: textOf(html) };
}

/** Every text and number of a JSON answer, as a page would say it. */
function saidIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return value === '' ? [] : [value.replaceAll(/\s+/g, ' ')];
  if (typeof value === 'number') return [String(value)];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(saidIn);
}

describe('the record of a job', () => {
  test('says everything of its JSON on the page too, escaped', async () => {
    const job = await openedJob();
    await job.playTo('asFoundStrokes');
    const row = (await job.job()).answers.find((one) => one.step === 'asFoundCycle' && one.row === 2);
    const given = { signalPa: '9 psi', travelM: '47.0 %' };
    await job.act({ kind: 'correct', corrects: row?.place ?? 0, given, reason: 'misread <it>' });
    await job.playTo('done');
    const { record, html, text } = await recordOf(job.id);
    const { status: _, ...said } = record;
    const missing = saidIn(said).filter((word) => !text.toLowerCase().includes(word.toLowerCase()));
    expect(missing).toEqual([]);
    expect(html).not.toMatch(/misread <it>|behind <the>/);
    expect(html).toContain('<s>9 psi, 47.5 %</s> 9 psi, 47.0 %');
  });

  test('carries the check number of the newest line of the job on every sheet', async () => {
    const job = await openedJob('bench');
    await job.playTo('done');
    const { record, html, text } = await recordOf(job.id);
    const newest = (await app.services.log.entriesOf(`job:${job.id}`)).at(-1);
    expect(record.log).toEqual({
      line: newest?.seq,
      place: newest?.place,
      check: checkNumber(newest?.hash ?? ''),
    });
    const sheets = html.split('class="record__sheet"').length - 1;
    expect(sheets).toBeGreaterThan(3);
    expect(html.split(`<dd>${record.log.check}</dd>`).length - 1).toBe(sheets);
    for (let sheet = 1; sheet <= sheets; sheet += 1) expect(text).toContain(`${sheet} of ${sheets}`);
    expect(html).not.toContain('OPEN ');
  });

  test('shouts OPEN on every sheet, with what is missing and lines to fill in, while the job is not closed', async () => {
    const job = await openedJob();
    await job.playTo('chooseWork');
    const { record, html, text } = await recordOf(job.id);
    expect(record.open).toBe(
      'Not closed: it stands at “What this valve wants now”. Hold 2 not signed. The cycle as left is not complete. What is missing is left blank.',
    );
    const sheets = html.split('class="record__sheet"').length - 1;
    expect(text.split(`OPEN ${record.open}`).length - 1).toBe(sheets);
    expect(html).toContain('class="blank-line"');
    expect(record.asLeft?.rows).toHaveLength(5);
    expect(text).toContain('not closed');
  });

  test('may be read by everybody who is signed in, and by nobody else', async () => {
    const job = await openedJob('bench');
    for (const role of ['technician', 'supervisor', 'engineer', 'safety-officer'] as const)
      expect((await recordOf(job.id, role)).record.job).toBe(job.id);
    expect((await app.get(`/jobs/${job.id}/record`)).status).not.toBe(200);
  });

  test('of a job that is not there is refused', async () => {
    const { browser } = await app.signedIn('engineer');
    expect((await app.get('/jobs/77/record', { as: browser })).status).toBe(404);
  });
});
