/** Is the log whole? Exports, checkpoints, numbers from paper, and a restored log taken by two people. */
import { z } from 'zod';
import { type Compared, compareWithPaper } from '../audit/compare.ts';
import { builtVerifier, exportFiles } from '../audit/export-files.ts';
import { takeAsItIs } from '../audit/restore.ts';
import { type TarFile, tarOf } from '../audit/tar.ts';
import { markVerification } from '../backups/marks.ts';
import { optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { streamed } from '../http/streamed.ts';
import { noSuchJob } from '../jobs/acts.ts';
import { checkNumber } from '../log/check-number.ts';
import { streamOf } from '../log/stream-kind.ts';
import { type Report, verifyTold } from '../log/verify.ts';
import { TELL_NOBODY, type Tell } from '../long/long-work.ts';
import { REVIEWERS } from '../people/review.ts';
import { codeVersion } from '../project-folder.ts';
import { shownTime } from '../shown-time.ts';
import { auditors } from '../streams.ts';
import { pathOfWork, resultOf } from './long-work.ts';
import { byOf, pinField, typedIn, whoField } from './parts.ts';

const ANSWER = z.object({
  line: z.int(),
  check: z.string(),
  keyNumber: z.string().nullable(),
  checkpoint: z.object({ line: z.int(), check: z.string(), at: z.iso.datetime() }).nullable(),
  readOnly: z.string().nullable(),
  paper: z.object({ result: z.string(), text: z.string() }).nullable(),
});

const REPORT = z.object({
  whole: z.boolean(),
  entries: z.int().describe('Good from the start on'),
  check: z.string().describe('Check number of the last good one'),
  faults: z
    .array(z.string())
    .describe('The first bad entry, or jobs that come out otherwise when worked out again'),
});

type Told = z.output<typeof REPORT>;

function reportOf({ entries, head, fault, problems, photos }: Report): Told {
  const bad =
    fault === null
      ? []
      : [`Line ${fault.seq}${fault.stream === null ? '' : ` (${fault.stream})`}: ${fault.what}.`];
  const faults = [
    ...bad,
    ...problems.map(({ stream, place, what }) => `${stream}, place ${place}: ${what}.`),
    ...photos.map(({ seq, stream, what }) => `Photo of line ${seq} (${stream}) ${what}.`),
  ];
  return { whole: faults.length === 0, entries, check: checkNumber(head.hash), faults };
}

const PAPER = z.object({
  line: optionalText({ called: 'the line', max: 12 })
    .refine((value) => /^\d*$/.test(value), 'Write the number of the line, as on the paper.')
    .default(''),
  check: optionalText({ called: 'the check number', max: 20 }).default(''),
});

async function dataOf(
  { services }: BareCall,
  paper: { readonly line: string; readonly check: string } = { line: '', check: '' },
): Promise<z.output<typeof ANSWER>> {
  const { store, checkpoints } = services;
  const { seq, hash } = await store.head();
  const latest = checkpoints?.latest ?? null;
  const asked = paper.line !== '' && paper.check !== '';
  const compared: Compared | null = asked
    ? await compareWithPaper(store, { line: Number(paper.line), check: paper.check })
    : null;
  return {
    line: seq,
    check: checkNumber(hash),
    keyNumber: checkpoints?.keyNumber ?? null,
    checkpoint: latest === null ? null : { line: latest.seq, check: latest.check, at: latest.at },
    readOnly: checkpoints?.distrust?.what ?? null,
    paper: compared === null ? null : { ...compared },
  };
}

const ASKED = PAPER.extend({
  verified: optionalText({ called: 'the work', max: 100 }).default(''),
  exported: optionalText({ called: 'the work', max: 100 }).default(''),
});

const NOT_TYPED = { line: '', check: '', other: '', why: '', verified: '', exported: '' };

/** What a long work ended with, shown where it was begun; null where none is asked for. */
function endOf<Result>({ services, person }: BareCall, id: string): Result | null {
  if (id === '' || person === null) return null;
  const { outcome } = services.long.at(id, person.id);
  // Each address that names a work was made by the route that began it.
  return outcome.state === 'done' ? (outcome.result as Result) : null;
}

async function logPage(call: BareCall, typed: Partial<typeof NOT_TYPED> = {}): Promise<PageView> {
  const given = { ...NOT_TYPED, ...typed };
  const data = await dataOf(call, given);
  const params = {
    facts: [
      { label: 'last line', value: String(data.line) },
      { label: 'its check number', value: data.check },
      { label: 'number of the key', value: data.keyNumber ?? 'no checkpoints are kept' },
      {
        label: 'last checkpoint',
        value:
          data.checkpoint === null
            ? 'none yet'
            : `line ${data.checkpoint.line}, ${shownTime(data.checkpoint.at)}`,
      },
    ],
    paper: data.paper,
    readOnly: data.readOnly,
    verified: endOf<Told>(call, given.verified),
    exported: endOf<Exported>(call, given.exported) === null ? '' : tarOfWork(given.exported),
    typed: given,
  };
  return { title: 'Is the log whole?', template: 'pages/audit-log.njk', params };
}

const showLog = route({
  method: 'GET',
  path: '/audit/log',
  name: 'showLog',
  summary: 'How far the log has come, its last checkpoint, and what a check number from paper says of it',
  roles: REVIEWERS,
  query: ASKED,
  answer: ANSWER,
  handle: async (call) => ({ data: await dataOf(call, call.query), page: await logPage(call, call.query) }),
});

const verifyLog = route({
  method: 'POST',
  path: '/audit/verify',
  name: 'verifyLog',
  summary: 'Check the whole log here: every line as it was sealed, and every job worked out again',
  roles: REVIEWERS,
  body: z.object({}),
  answer: REPORT,
  refused: async (call) => ({ page: await logPage(call) }),
  handle: async (call) => {
    const { long, store } = call.services;
    const shows = (id: string) => `/audit/log?verified=${encodeURIComponent(id)}`;
    const begun = { title: 'Checking the whole log', person: call.person.id, back: '/audit/log', shows };
    const id = long.start(begun, async (tell) => {
      const report = reportOf(await verifyTold(store, { auditors, tell }));
      const { entries, whole: isWhole } = report;
      await markVerification(store, {
        at: call.services.now().toISOString(),
        entries,
        isWhole,
        by: 'a person',
      });
      return report;
    });
    const report = await resultOf<Told>(call, id);
    if (report === null) return { data: NOT_YET, seeOther: pathOfWork(id) };
    return { data: report, seeOther: shows(id) };
  },
});

/** Never sent: a page is sent on to the work. */
const NOT_YET: Told = { whole: false, entries: 0, check: '', faults: [] };

const restoreLog = route({
  method: 'POST',
  path: '/audit/restore',
  name: 'restoreLog',
  summary: 'Take a log that does not fit its last checkpoint as it is, signed by two people',
  roles: REVIEWERS,
  body: z.object({
    pin: pinField,
    other: whoField,
    otherPin: pinField,
    why: text({ called: 'what happened and what is lost', max: 500 }),
  }),
  answer: z.object({ line: z.int() }),
  refused: async (call) => ({ page: await logPage(call, typedIn(call.typed, ['other', 'why'])) }),
  handle: async (call) => {
    await takeAsItIs(call.services, { ...call.body, person: call.person, by: byOf(call) });
    return { data: { line: (await call.services.store.head()).seq }, seeOther: '/audit/log' };
  },
});

/** Files that were measured, ready to be saved. */
interface Exported {
  readonly files: readonly TarFile[];
  readonly entries: number;
  readonly fileName: string;
  readonly at: Date;
}

const tarOfWork = (id: string): string => `/audit/export.tar?${new URLSearchParams({ work: id })}`;

async function exported(
  { services, now }: BareCall,
  { job, verifier, tell = TELL_NOBODY }: { readonly job: string; verifier(): string; readonly tell?: Tell },
): Promise<Exported> {
  const { store, checkpoints, log } = services;
  const stream = job === '' ? undefined : streamOf('job', job);
  const entries = stream === undefined ? (await store.head()).seq : await log.place(stream);
  if (stream !== undefined && entries === 0) throw noSuchJob(job);
  const of = { store, checkpoints, at: now, codeVersion: codeVersion(), verifier: verifier(), tell };
  const files = await exportFiles(stream === undefined ? of : { ...of, stream });
  const day = now.toISOString().slice(0, 10);
  return { files, entries, at: now, fileName: `yokeside-${job === '' ? 'site' : `job-${job}`}-${day}.tar` };
}

function makeExportRoute(verifier: () => string): Route {
  return route({
    method: 'POST',
    path: '/audit/export',
    name: 'makeExport',
    summary: 'Measure the whole log, or one job of it, for an export; says where that is saved from',
    roles: REVIEWERS,
    body: z.object({ job: optionalText({ called: 'the number of the job', max: 20 }).default('') }),
    answer: z.object({ entries: z.int(), export: z.string() }),
    refused: async (call) => ({ page: await logPage(call) }),
    handle: async (call) => {
      const { job } = call.body;
      const shows = (id: string) => `/audit/log?exported=${encodeURIComponent(id)}`;
      const begun = { title: 'Making the export', person: call.person.id, back: '/audit/log', shows };
      const id = call.services.long.start(begun, (tell) => exported(call, { job, verifier, tell }));
      const made = await resultOf<Exported>(call, id);
      if (made === null) return { data: { entries: 0, export: '' }, seeOther: pathOfWork(id) };
      return { data: { entries: made.entries, export: tarOfWork(id) }, seeOther: shows(id) };
    },
  });
}

function exportRoute(verifier: () => string): Route {
  return route({
    method: 'GET',
    path: '/audit/export.tar',
    name: 'exportLog',
    summary: 'The whole log, or one job of it, as plain files with a verifier that needs nothing but Node',
    roles: REVIEWERS,
    rawType: 'application/x-tar',
    query: z.object({
      job: optionalText({ called: 'the number of the job', max: 20 }).default(''),
      work: optionalText({ called: 'the work that measured it', max: 100 }).default(''),
    }),
    answer: z.object({ entries: z.int() }),
    handle: async (call) => {
      const { job, work } = call.query;
      const made = endOf<Exported>(call, work) ?? (await exported(call, { job, verifier }));
      const { files, at, entries, fileName } = made;
      const body = streamed(tarOf(files, at));
      return { data: { entries }, raw: { contentType: 'application/x-tar', body, fileName } };
    },
  });
}

export function auditLogRoutes(verifier: () => string = builtVerifier): readonly Route[] {
  return [showLog, verifyLog, restoreLog, makeExportRoute(verifier), exportRoute(verifier)];
}
