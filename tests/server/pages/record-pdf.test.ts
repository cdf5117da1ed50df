import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { JobRecord } from '../../../server/jobs/record/schema.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { type AnApp, anApp } from '../an-app.ts';

let app: AnApp;
beforeEach(async () => {
  app = await anApp({ people: true });
});
afterEach(() => app.close());

async function openedJob(): Promise<SiteJob> {
  const { person: technician } = await app.signedIn('technician');
  const { person: supervisor } = await app.signedIn('supervisor');
  return await openSiteJob(app, { technician, supervisor, place: 'line' });
}

async function pdfOf(job: SiteJob, paper: 'a4' | 'letter') {
  const as = (await app.signedIn('safety-officer')).browser;
  const path = `/jobs/${job.id}/record`;
  const response = await app.get(`${path}.pdf?paper=${paper}`, { as });
  expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  const bytes = new Uint8Array(await response.arrayBuffer());
  const folder = process.env.YOKESIDE_PICTURES;
  if (folder !== undefined) writeFileSync(join(folder, `record-${paper}-${job.id}.pdf`), bytes);
  const headers = { accept: 'application/json' };
  const { record } = (await (await app.get(path, { as, headers })).json()) as { record: JobRecord };
  // The reader takes the bytes away with it.
  const raw = Buffer.from(bytes).toString('latin1');
  const document = await getDocumentProxy(bytes);
  const { text } = await extractText(document, { mergePages: false });
  const page = await document.getPage(1);
  return { record, pages: text, raw, view: page.view };
}

/** Every text and number of a JSON answer. */
function saidIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return value === '' ? [] : [value];
  if (typeof value === 'number') return [String(value)];
  if (value === null || typeof value !== 'object') return [];
  return Object.values(value).flatMap(saidIn);
}

const close = (text: string) => text.replaceAll(/\s+/g, '').toLowerCase();

test('the document read back holds every number and every text of the JSON, its pages numbered, its typeface embedded (UI-42)', async () => {
  const job = await openedJob();
  await job.playTo('asFoundStrokes');
  const row = (await job.job()).answers.find((one) => one.step === 'asFoundCycle' && one.row === 2);
  const given = { signalPa: '9 psi', travelM: '47.0 %' };
  await job.act({ kind: 'correct', corrects: row?.place ?? 0, given, reason: 'misread the scale' });
  await job.playTo('done');
  const { record, pages, raw, view } = await pdfOf(job, 'a4');
  const { status: _, open: __, ...said } = record;
  const whole = close(pages.join(' '));
  // A text that runs over the end of a page is looked for word by word.
  const missing = saidIn(said).filter(
    (text) => !whole.includes(close(text)) && !text.split(/\s+/).every((word) => whole.includes(close(word))),
  );
  expect(missing).toEqual([]);
  expect(record.asFound?.rows.length).toBeGreaterThan(4);
  for (const [at, page] of pages.entries()) {
    expect(close(page)).toContain(close(`page ${at + 1} of ${pages.length}`));
    expect(close(page)).toContain(close(`check number ${record.log.check}`));
  }
  expect(whole).not.toMatch(/open:job|\?/);
  // The valve itself is drawn: its tags and the ends of its travel are texts of the picture.
  for (const drawn of ['in section', '100 open', '0 shut', 'Supply air'])
    expect(whole).toContain(close(drawn));
  expect(raw).toContain('/FontFile2');
  expect(raw).not.toMatch(/\/Subtype \/Image/);
  expect(view.map(Math.round)).toEqual([0, 0, 595, 842]);
});

test('the document of an open job shouts OPEN on every page, on Letter too (UI-45, UI-46)', async () => {
  const job = await openedJob();
  await job.playTo('asFoundStrokes');
  const { pages, record, view } = await pdfOf(job, 'letter');
  for (const page of pages) expect(page).toContain('OPEN');
  expect(close(pages[0] ?? '')).toContain(close(record.open));
  expect(view).toEqual([0, 0, 612, 792]);
});
