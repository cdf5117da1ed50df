/** Is the log whole? Exports, checkpoints, numbers from paper, and a restored log taken by two people. */
import { Readable } from 'node:stream';
import { z } from 'zod';
import { type Compared, compareWithPaper } from '../audit/compare.ts';
import { builtVerifier, exportFiles } from '../audit/export-files.ts';
import { takeAsItIs } from '../audit/restore.ts';
import { tarOf } from '../audit/tar.ts';
import { optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { noSuchJob } from '../jobs/acts.ts';
import { checkNumber } from '../log/check-number.ts';
import { streamOf } from '../log/stream-kind.ts';
import { REVIEWERS } from '../people/review.ts';
import { codeVersion } from '../project-folder.ts';
import { shownTime } from '../shown-time.ts';
import { byOf, pinField, typedIn, whoField } from './parts.ts';

const ANSWER = z.object({
  line: z.int(),
  check: z.string(),
  keyNumber: z.string().nullable(),
  checkpoint: z.object({ line: z.int(), check: z.string(), at: z.iso.datetime() }).nullable(),
  readOnly: z.string().nullable(),
  paper: z.object({ result: z.string(), text: z.string() }).nullable(),
});

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

const NOT_TYPED = { line: '', check: '', other: '', why: '' };

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
  query: PAPER,
  answer: ANSWER,
  handle: async (call) => ({ data: await dataOf(call, call.query), page: await logPage(call, call.query) }),
});

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

function exportRoute(verifier: () => string): Route {
  return route({
    method: 'GET',
    path: '/audit/export.tar',
    name: 'exportLog',
    summary: 'The whole log, or one job of it, as plain files with a verifier that needs nothing but Node',
    roles: REVIEWERS,
    rawType: 'application/x-tar',
    query: z.object({ job: optionalText({ called: 'the number of the job', max: 20 }).default('') }),
    answer: z.object({ entries: z.int() }),
    handle: async ({ services, query: { job }, now }) => {
      const { store, checkpoints, log } = services;
      const stream = job === '' ? undefined : streamOf('job', job);
      const entries = stream === undefined ? (await store.head()).seq : await log.place(stream);
      if (stream !== undefined && entries === 0) throw noSuchJob(job);
      const of = { store, checkpoints, at: now, codeVersion: codeVersion(), verifier: verifier() };
      const files = await exportFiles(stream === undefined ? of : { ...of, stream });
      return {
        data: { entries },
        raw: {
          contentType: 'application/x-tar',
          // Node's own type of the same stream lacks what the browsers' has.
          body: Readable.toWeb(Readable.from(tarOf(files, now), { objectMode: false })) as ReadableStream,
          fileName: `yokeside-${job === '' ? 'site' : `job-${job}`}-${now.toISOString().slice(0, 10)}.tar`,
        },
      };
    },
  });
}

export function auditLogRoutes(verifier: () => string = builtVerifier): readonly Route[] {
  return [showLog, restoreLog, exportRoute(verifier)];
}
