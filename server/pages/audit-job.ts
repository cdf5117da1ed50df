/** One job's whole log in its order, each number with its gauge, and "reviewed up to here" by somebody with no part in it. */
import { z } from 'zod';
import type { JobInputs } from '../../procedures/evolve.ts';
import { auditJobLines, proofOf } from '../audit/job-rows.ts';
import { auditKind, refuseOwnAudit } from '../audit/review-stream.ts';
import { ruleWords } from '../audit/search.ts';
import { optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { noSuchJob } from '../jobs/acts.ts';
import { type Names, nameOf } from '../jobs/view/words.ts';
import { fingerprintOf } from '../log/chain.ts';
import { checkNumber } from '../log/check-number.ts';
import { streamOf } from '../log/stream-kind.ts';
import { REVIEWERS } from '../people/review.ts';
import { shownTime } from '../shown-time.ts';
import type { LogEntry } from '../store/store.ts';
import { byOf, typedIn } from './parts.ts';

const ANSWER = z.object({
  job: z.string(),
  tag: z.string(),
  procedure: z.string(),
  lines: z.array(
    z.object({
      line: z.int(),
      at: z.string(),
      name: z.string(),
      screen: z.string(),
      kind: z.string(),
      step: z.string(),
      what: z.string(),
      check: z.string(),
    }),
  ),
  exceptions: z.array(z.object({ says: z.string(), lines: z.array(z.int()), what: z.string() })),
  marks: z.array(z.object({ name: z.string(), at: z.string(), upTo: z.int(), note: z.string() })),
  unreviewed: z.int(),
  hadPart: z.boolean(),
});

/** @throws Refusal JOB-000 */
async function jobOf({ services, params, now }: Pick<BareCall, 'services' | 'params' | 'now'>) {
  const id = params.id ?? '';
  const entries = await services.log.entriesOf(streamOf('job', id));
  if (entries.length === 0) throw noSuchJob(id);
  const crew = await services.log.entriesOf(streamOf('crew', id));
  const audit = auditJobLines(id, { entries, now: now.toISOString() });
  return { id, entries, audit, parts: new Set([...audit.people, ...crew.flatMap(crewPeople)]) };
}

function crewPeople({ person, inputs }: LogEntry): readonly string[] {
  const { person: member, to, heir } = inputs as Readonly<Record<string, unknown>>;
  return [person, member, to, heir].filter((one): one is string => typeof one === 'string');
}

async function dataOf(call: BareCall): Promise<z.output<typeof ANSWER>> {
  const { id, entries, audit, parts } = await jobOf(call);
  const names: Names = new Map((await call.services.people.list()).map(({ id: who, name }) => [who, name]));
  const { marks } = await call.services.log.state(auditKind, id);
  const upTo = Math.max(0, ...marks.map((mark) => mark.upTo));
  return {
    job: id,
    tag: audit.tag,
    procedure: audit.procedure,
    lines: entries.map((entry) => lineOf(entry, names)),
    exceptions: audit.exceptions.map(({ rule, lines, what }) => ({
      says: ruleWords(rule),
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

function lineOf({ place, at, person, screen, kind, inputs, hash }: LogEntry, names: Names) {
  const given = kind === 'job-opened' ? { step: '' } : (inputs as unknown as JobInputs);
  const { reason = '', corrects } = given as JobInputs;
  const said = [
    proofOf(given as JobInputs),
    corrects === undefined ? '' : `corrects line ${corrects}`,
    reason,
  ];
  return {
    line: place,
    at,
    name: nameOf(person ?? 'server', names),
    screen,
    kind: kind.replaceAll('-', ' '),
    step: given.step ?? '',
    what: said.filter((one) => one !== '').join('; '),
    check: checkNumber(hash),
  };
}

async function jobPage(call: BareCall, typed: { readonly note: string }): Promise<PageView> {
  const data = await dataOf(call);
  const params = {
    ...data,
    lines: data.lines.map((line) => ({ ...line, at: shownTime(line.at) })),
    exceptions: data.exceptions.map((one) => ({ ...one, lines: one.lines.slice(0, 6).join(', ') })),
    marks: data.marks.map((mark) => ({ ...mark, at: shownTime(mark.at) })),
    note: typed.note,
  };
  return { title: `Audit of job ${data.job}`, template: 'pages/audit-job.njk', params };
}

const showJobAudit = route({
  method: 'GET',
  path: '/audit/jobs/:id',
  name: 'showJobAudit',
  summary:
    'The whole log of one job in its order, each number with its gauge, with its exceptions and who reviewed it',
  roles: REVIEWERS,
  answer: ANSWER,
  handle: async (call) => ({ data: await dataOf(call), page: await jobPage(call, { note: '' }) }),
});

const auditJob = route({
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
  refused: async (call) => ({ page: await jobPage(call, typedIn(call.typed, ['note'])) }),
  handle: async (call) => {
    const { services, person, body } = call;
    const { id, entries, parts } = await jobOf(call);
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

export const auditJobRoutes: readonly Route[] = [showJobAudit, auditJob];
