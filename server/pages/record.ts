/** The record of a job, for the screen, for paper and for programs. */
import { z } from 'zod';
import { gearKind } from '../gear/gear-stream.ts';
import { oneOf } from '../http/fields.ts';
import { type Route, route } from '../http/route.ts';
import { noSuchJob } from '../jobs/acts.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { type JobRecord, recordSchema } from '../jobs/record/schema.ts';
import { type JobSheets, recordOf } from '../jobs/record.ts';
import { wholeBlob } from '../log/blobs.ts';
import { streamOf } from '../log/stream-kind.ts';
import { isTurnedPng } from '../photos/png.ts';
import { pdfFaces } from '../record-pdf/faces.ts';
import { isPrintable } from '../record-pdf/photos.ts';
import { recordPdf } from '../record-pdf/record-pdf.ts';
import type { Services } from '../services.ts';
import { siteKind } from '../site-stream.ts';

/** So much fits on one sheet of A4 or Letter. */
const HOLDS_A_SHEET = 1;
const LINES_A_SHEET = 36;
const PHOTOS_A_SHEET = 4;
/** Beside departures, findings and what comes next; the others have sheets of their own. */
const CAUTIONS_BESIDE = 6;
const CAUTIONS_A_SHEET = 15;

export function recordRoutes(catalogue: Catalogue): readonly Route[] {
  return [
    route({
      method: 'GET',
      path: '/jobs/:id/record',
      name: 'showRecord',
      summary:
        'The record of a job: as found, as left, evidence, signatures, departures, and its check number',
      roles: 'signed-in',
      answer: z.object({ record: recordSchema }),
      handle: async ({ services, params, now }) => {
        const sheets = await sheetsOf(params.id ?? '', { services, catalogue, nowMs: now.getTime() });
        const { record } = sheets;
        return {
          data: { record },
          page: { title: record.title, template: 'pages/record.njk', params: pageParams(sheets) },
        };
      },
    }),
    route({
      method: 'GET',
      path: '/jobs/:id/record.pdf',
      name: 'exportRecordPdf',
      summary: 'The record of a job as a document for paper, A4 or Letter',
      roles: 'signed-in',
      rawType: 'application/pdf',
      query: z.object({ paper: oneOf(['a4', 'letter']).default('a4') }),
      answer: z.object({ record: recordSchema }),
      handle: async ({ services, params, query, now, language }) => {
        const nowMs = now.getTime();
        const sheets = await sheetsOf(params.id ?? '', { services, catalogue, nowMs });
        const body = await recordPdf(sheets, {
          size: query.paper,
          printedAtMs: nowMs,
          faces: pdfFaces(),
          language,
          photos: await photosFor(sheets.record, services),
        });
        const fileName = `record-${sheets.record.job}-${sheets.record.tag}.pdf`;
        return { data: { record: sheets.record }, raw: { contentType: 'application/pdf', body, fileName } };
      },
    }),
  ];
}

/** @throws Refusal JOB-000 */
async function sheetsOf(
  id: string,
  {
    services,
    catalogue,
    nowMs,
  }: { readonly services: Services; readonly catalogue: Catalogue; readonly nowMs: number },
): Promise<JobSheets> {
  const { log, people } = services;
  const job = await log.state(jobKind, id);
  if (job.status === 'none') throw noSuchJob(id);
  const [entries, compiled, everybody, site] = await Promise.all([
    log.entriesOf(streamOf('job', id)),
    catalogue.of(job, log),
    people.list(),
    log.state(siteKind),
  ]);
  const names = new Map(everybody.map(({ id: person, name }) => [person, name]));
  const plant = `${site.plant ?? ''}${site.demo ? ' (demo: nothing of it is true)' : ''}`;
  const numbers = [...new Set(Object.values(job.gear).map((item) => item.number))];
  const gearNow = new Map(
    await Promise.all(numbers.map(async (number) => [number, await log.state(gearKind, number)] as const)),
  );
  return recordOf({ entries, compiled, names, plant, nowMs, gearNow });
}

/** The bytes of those that a document can show, each held against its hash. */
async function photosFor(
  { job, photos }: JobRecord,
  { log, store }: Services,
): Promise<ReadonlyMap<number, Uint8Array>> {
  const { notes } = await log.state(jobKind, job);
  const bytes = new Map<number, Uint8Array>();
  for (const { place, sha256 } of photos.filter(isPrintable)) {
    const seq = notes.find((one) => one.place === place)?.seq ?? 0;
    const photo = await wholeBlob({ seq, place, stream: streamOf('job', job), hash: sha256 }, store);
    if (!isTurnedPng(photo)) bytes.set(place, photo);
  }
  return bytes;
}

function pageParams({ record, pictures }: JobSheets) {
  const holdSheets = chunks(record.holds, HOLDS_A_SHEET);
  const lineSheets = chunks(record.lines, LINES_A_SHEET);
  const photoSheets = chunks(record.photos, PHOTOS_A_SHEET);
  const cautionsBeside = record.cautions.slice(0, CAUTIONS_BESIDE);
  const cautionSheets = chunks(record.cautions.slice(CAUTIONS_BESIDE), CAUTIONS_A_SHEET);
  const forced = record.forces === null ? 0 : 1;
  const many = [record.loops, holdSheets, cautionSheets, photoSheets, lineSheets];
  const count = 2 + forced + many.reduce((sheets, { length }) => sheets + length, 0);
  const blocks = Array.from({ length: count }, (_, at) => ({
    ...blockOf(record),
    sheet: `${at + 1} of ${count}`,
  }));
  const shown = (table: JobRecord['asFound']) =>
    table === null ? null : { ...table, hideCaption: true, notes: [table.notes.join(' ')] };
  const tables = { asFound: shown(record.asFound), asLeft: shown(record.asLeft) };
  const sheets = { holdSheets, cautionsBeside, cautionSheets, photoSheets, lineSheets };
  return { record, tables, pictures, ...sheets, blocks };
}

/** The title block along the foot of every sheet. */
function blockOf(record: JobRecord) {
  return {
    valve: record.tag,
    what: record.title,
    procedure: record.procedure,
    plant: record.plant,
    openedClosed: openedClosed(record),
    printed: record.printedAt,
    check: record.log.check,
  };
}

/** The day once, where it is the same. */
function openedClosed({ openedAt, closedAt }: JobRecord): string {
  if (closedAt === '') return `${openedAt}, not closed`;
  const [day = '', time = '', zone = ''] = closedAt.split(' ');
  return openedAt.startsWith(day)
    ? `${openedAt.replace(` ${zone}`, '')}, ${time} ${zone}`
    : `${openedAt}, ${closedAt}`;
}

function chunks<T>(all: readonly T[], size: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(all.length / size) }, (_, at) =>
    all.slice(at * size, (at + 1) * size),
  );
}
