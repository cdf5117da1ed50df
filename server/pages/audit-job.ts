/** One job's whole log in its order, each number with its gauge, and "reviewed up to here" by somebody with no part in it. */
import { z } from 'zod';
import type { JobDraft, JobInputs } from '../../procedures/evolve.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { definitionOf } from '../audit/audit-site.ts';
import { RULES } from '../audit/exceptions/exception.ts';
import { auditJobLines, wordsFor } from '../audit/job-rows.ts';
import { auditKind, refuseOwnAudit } from '../audit/review-stream.ts';
import { type LineWords, sayGiven, sayOutcome, sayStep } from '../audit/say-line.ts';
import { oneOf, optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { noSuchJob } from '../jobs/acts.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { sayMore, sayNote } from '../jobs/notes/words.ts';
import { type Names, nameOf } from '../jobs/view/words.ts';
import { fingerprintOf } from '../log/chain.ts';
import { checkNumber } from '../log/check-number.ts';
import { streamOf } from '../log/stream-kind.ts';
import { REVIEWERS } from '../people/review.ts';
import { cardWords, jobLogPdf } from '../record-pdf/audit-pdf.ts';
import { pdfFaces } from '../record-pdf/faces.ts';
import { shownTime } from '../shown-time.ts';
import type { LogEntry } from '../store/store.ts';
import { linesShown } from './audit.ts';
import { paperAnchor } from './paper-anchor.ts';
import { byOf, typedIn } from './parts.ts';

const ANSWER = z.object({
  job: z.string(),
  tag: z.string(),
  procedure: z.string(),
  title: z.string(),
  lines: z.array(
    z.object({
      line: z.int(),
      at: z.string(),
      name: z.string(),
      screen: z.string(),
      kind: z.string(),
      step: z.string(),
      what: z.string(),
      outcome: z.string(),
      check: z.string(),
    }),
  ),
  exceptions: z.array(z.object({ says: z.string(), lines: z.array(z.int()), what: z.string() })),
  marks: z.array(z.object({ name: z.string(), at: z.string(), upTo: z.int(), note: z.string() })),
  unreviewed: z.int(),
  hadPart: z.boolean(),
});

export type JobAuditAnswer = z.output<typeof ANSWER>;

type Asked = Pick<BareCall, 'services' | 'params' | 'now' | 'person'>;

/** @throws Refusal JOB-000 */
async function jobOf({ services, params, now }: Asked, catalogue: Catalogue) {
  const { log } = services;
  const id = params.id ?? '';
  const entries = await log.entriesOf(streamOf('job', id));
  if (entries.length === 0) throw noSuchJob(id);
  const crew = await log.entriesOf(streamOf('crew', id));
  const definition = await definitionOf(entries, { catalogue, log });
  const audit = auditJobLines(id, { entries, definition, now: now.toISOString() });
  const parts = new Set([...audit.people, ...crew.flatMap(crewPeople)]);
  return { id, entries, audit, parts, words: wordsFor(entries, definition) };
}

function crewPeople({ person, inputs }: LogEntry): readonly string[] {
  const { person: member, to, heir } = inputs as Readonly<Record<string, unknown>>;
  return [person, member, to, heir].filter((one): one is string => typeof one === 'string');
}

async function dataOf(call: Asked, catalogue: Catalogue): Promise<JobAuditAnswer> {
  const { id, entries, audit, parts, words } = await jobOf(call, catalogue);
  const names: Names = new Map((await call.services.people.list()).map(({ id: who, name }) => [who, name]));
  const { marks } = await call.services.log.state(auditKind, id);
  const upTo = Math.max(0, ...marks.map((mark) => mark.upTo));
  return {
    job: id,
    tag: audit.tag,
    procedure: audit.procedure,
    title: audit.title,
    lines: entries.map((entry) => lineOf(entry, { names, words })),
    exceptions: audit.exceptions.map(({ rule, lines, what }) => ({
      says: RULES[rule].says,
      lines: [...lines],
      what,
    })),
    marks: marks.map(({ person, at, upTo: line, note }) => ({
      name: nameOf(person, names),
      at,
      upTo: line,
      note,
    })),
    unreviewed: entries.length - upTo,
    hadPart: parts.has(call.person?.id ?? ''),
  };
}

/** Kinds of lines in words; any other is said by its own name. */
const ACTS: Readonly<Record<string, string>> = {
  'step-answered': 'answered',
  'row-read': 'row read',
  'hold-signed': 'hold signed',
  'hold-sent-back': 'hold sent back',
  'hold-waived': 'hold waived',
  'went-back': 'went back',
  'made-safe': 'made safe',
  'proved-again': 'proved again',
  'taken-up': 'taken up',
  'handed-over': 'handed over',
  'read-again': 'read again',
  'finding-noted': 'finding noted',
  'part-noted': 'part noted',
  'photo-noted': 'photo noted',
  'note-struck': 'note struck',
  'radio-confirmed': 'radio confirmed',
};

function lineOf(
  entry: LogEntry,
  { names, words }: { readonly names: Names; readonly words: LineWords },
): JobAuditAnswer['lines'][number] {
  const { place, at, person, screen, kind, inputs, outcome, hash } = entry;
  const of = {
    line: place,
    at,
    name: nameOf(person ?? 'server', names),
    screen,
    kind: ACTS[kind] ?? kind.replaceAll('-', ' '),
    check: checkNumber(hash),
  };
  if (kind === 'job-opened') return { ...of, step: '', what: openedWith(entry, words), outcome: '' };
  const given = inputs as unknown as JobInputs;
  const { name } = outcome as unknown as JobDraft['outcome'];
  return {
    ...of,
    step: given.step === undefined ? '' : sayStep(given.step, words),
    what: whatOf(given, words),
    outcome: name === undefined ? '' : sayOutcome(given.step, { name, of: words }),
  };
}

/** The procedure and its revision, and the gear that was chosen. */
function openedWith({ inputs }: LogEntry, { definition }: LineWords): string {
  const { procedure, procedureRevision, gear } = inputs as unknown as {
    readonly procedure: string;
    readonly procedureRevision: string;
    readonly gear: Readonly<Record<string, GearItem | undefined>>;
  };
  const numbers = Object.values(gear).flatMap((item) => (item === undefined ? [] : [item.number]));
  return [
    `${definition?.title ?? procedure}, revision ${procedureRevision}`,
    numbers.length === 0 ? '' : `gear ${[...new Set(numbers)].join(', ')}`,
  ]
    .filter((one) => one !== '')
    .join('; ');
}

function whatOf(given: JobInputs, words: LineWords): string {
  const { reason = '', corrects, late, signature, note, about } = given;
  return [
    ...(note === undefined ? [] : [sayNote(note), sayMore(note)]),
    about === undefined ? '' : `about line ${about}`,
    sayGiven(given, words),
    signature === undefined ? '' : `${signature.meaning}, ${signature.way}`,
    signature?.why ?? '',
    corrects === undefined ? '' : `corrects line ${corrects}`,
    late === undefined || late === null
      ? ''
      : `written later, read at ${shownTime(late.claimedAt)}: ${late.reason}`,
    reason,
  ]
    .filter((one) => one !== '')
    .join('; ');
}

async function jobPage(
  call: Asked,
  { catalogue, typed }: { readonly catalogue: Catalogue; readonly typed: { readonly note: string } },
): Promise<PageView> {
  const data = await dataOf(call, catalogue);
  const params = {
    ...data,
    lines: data.lines.map((line) => ({ ...line, card: cardWords(line), at: shownTime(line.at) })),
    exceptions: data.exceptions.map((one) => ({ ...one, lines: linesShown(one.lines) })),
    marks: data.marks.map((mark) => ({ ...mark, at: shownTime(mark.at) })),
    note: typed.note,
  };
  return { title: `Audit of job ${data.job}`, template: 'pages/audit-job.njk', params };
}

export function auditJobRoutes(catalogue: Catalogue): readonly Route[] {
  return [showJobAudit(catalogue), exportJobLog(catalogue), auditJob(catalogue)];
}

const showJobAudit = (catalogue: Catalogue): Route =>
  route({
    method: 'GET',
    path: '/audit/jobs/:id',
    name: 'showJobAudit',
    summary:
      'The whole log of one job in its order, each number with its gauge, with its exceptions and who reviewed it',
    roles: REVIEWERS,
    answer: ANSWER,
    handle: async (call) => ({
      data: await dataOf(call, catalogue),
      page: await jobPage(call, { catalogue, typed: { note: '' } }),
    }),
  });

const exportJobLog = (catalogue: Catalogue): Route =>
  route({
    method: 'GET',
    path: '/audit/jobs/:id/log.pdf',
    name: 'exportJobLogPdf',
    summary: 'The whole log of one job with its exceptions and reviews as a document for paper, A4 or Letter',
    roles: REVIEWERS,
    rawType: 'application/pdf',
    query: z.object({ paper: oneOf(['a4', 'letter']).default('a4') }),
    answer: z.object({ lines: z.int() }),
    handle: async (call) => {
      const data = await dataOf(call, catalogue);
      const about = {
        size: call.query.paper,
        printedAtMs: call.now.getTime(),
        faces: pdfFaces(),
        language: call.language,
      };
      const body = await jobLogPdf({ ...data, anchor: await paperAnchor(call) }, about);
      const fileName = `audit-job-${data.job}.pdf`;
      return { data: { lines: data.lines.length }, raw: { contentType: 'application/pdf', body, fileName } };
    },
  });

const auditJob = (catalogue: Catalogue): Route =>
  route({
    method: 'POST',
    path: '/audit/jobs/:id',
    name: 'auditJob',
    summary: 'Say that the log of a job was reviewed up to a line, by somebody with no part in it',
    roles: REVIEWERS,
    body: z.object({
      upTo: text({ called: 'the last line', max: 8 }).refine(
        (value) => /^[1-9]\d*$/.test(value),
        'Write the number of a line.',
      ),
      note: optionalText({ called: 'what you found', max: 500 }).default(''),
    }),
    answer: z.object({ upTo: z.int() }),
    refused: async (call) => ({
      page: await jobPage(call, { catalogue, typed: typedIn(call.typed, ['note']) }),
    }),
    handle: async (call) => {
      const { services, person, body } = call;
      const { id, entries, parts } = await jobOf(call, catalogue);
      refuseOwnAudit(person.id, parts);
      const upTo = Math.min(Number(body.upTo), entries.length);
      const stream = streamOf('audit', id);
      const inputs = { upTo, note: body.note };
      await services.log.act({
        ...byOf(call),
        fingerprint: fingerprintOf({ audit: id, ...inputs }),
        streams: [stream],
        decide: () => ({
          entries: [{ stream, kind: 'audited', inputs, outcome: {}, effects: {} }],
          answer: {},
        }),
      });
      return { data: { upTo }, seeOther: `/audit/jobs/${id}` };
    },
  });
