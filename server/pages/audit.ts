/** The safety officer's pages: what was signed and isolated, by whom, shown how; what is worth a question; jobs looked over. */
import { z } from 'zod';
import { CONDITIONS, ENERGY_IDS, LOCK_IDS } from '../../safety/conditions.ts';
import { SiteAudit } from '../audit/audit-site.ts';
import { csvOf } from '../audit/csv.ts';
import { RULES } from '../audit/exceptions/exception.ts';
import { ROW_KINDS } from '../audit/job-rows.ts';
import { oneOf } from '../http/fields.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import type { Person } from '../people/person.ts';
import { REVIEWERS } from '../people/review.ts';
import { auditPdf, PAPER_MOST } from '../record-pdf/audit-pdf.ts';
import { pdfFaces } from '../record-pdf/faces.ts';
import { shownTime } from '../shown-time.ts';
import {
  type AuditFound,
  exceptionSchema,
  findAudit,
  periodOf,
  QUERY,
  type Query,
  rowSchema,
  ruleSchema,
} from './audit-query.ts';
import { pathOfWork, resultOf } from './long-work.ts';
import { paperAnchor } from './paper-anchor.ts';

const ROWS_A_PAGE = 25;
const EXCEPTIONS_A_PAGE = 25;

const ANSWER = z.object({
  from: z.string(),
  to: z.string(),
  jobs: z.int(),
  count: z.int(),
  page: z.int(),
  rows: z.array(rowSchema),
  /** Each rule that shows, with how many jobs have it, the rarest first. */
  rules: z.array(ruleSchema),
  /** In all; the list holds the rarest. */
  exceptionCount: z.int(),
  exceptions: z.array(exceptionSchema),
  siteExceptions: z.array(z.object({ says: z.string(), at: z.string(), what: z.string() })),
});

type Answer = z.output<typeof ANSWER>;

const pageOf = (query: Query): number => Math.max(1, Number(query.page || '1'));

function answerOf(
  { rows, rules, exceptions, site, procedures: _, ...found }: AuditFound,
  query: Query,
): Answer {
  const page = pageOf(query);
  return {
    ...found,
    page,
    rows: rows.slice((page - 1) * ROWS_A_PAGE),
    rules: [...rules],
    exceptions: [...exceptions],
    siteExceptions: [...site],
  };
}

function addressOf(path: string, query: Query, change: Partial<Query>): string {
  const given = Object.entries({ ...query, ...change }).filter(([, value]) => value !== '');
  return `${path}?${new URLSearchParams(given)}`;
}

function options(values: readonly (readonly [string, string])[], chosen: string) {
  return [['', 'any'] as const, ...values].map(([value, label]) => ({
    value,
    label,
    selected: value === chosen,
  }));
}

function pageParams(
  answer: Answer,
  { query, procedures }: { query: Query; procedures: AuditFound['procedures'] },
) {
  const { page: pageNumber, ...data } = answer;
  const pages = Math.max(1, Math.ceil(data.count / ROWS_A_PAGE));
  const to = (page: number): string => `${addressOf('/audit', query, { page: String(page) })}#rows`;
  return {
    ...data,
    pageNumber,
    pages,
    rows: data.rows.map((row) => ({ ...row, at: shownTime(row.at) })),
    rules: data.rules.map((one) => ({
      ...one,
      rare: `${one.jobs} of ${one.of}`,
      href: `${addressOf('/audit', query, { rule: one.rule, page: '' })}#found`,
    })),
    how: Object.values(RULES).map(({ says, how }) => ({ says, how })),
    chosenRule: query.rule === '' ? '' : (RULES[query.rule as keyof typeof RULES]?.says ?? ''),
    anyRule: `${addressOf('/audit', query, { rule: '', page: '' })}#found`,
    exceptions: data.exceptions.map((one) => ({
      ...one,
      at: shownTime(one.at),
      lines: linesShown(one.lines),
      rare: `${one.jobs} of ${one.of}`,
    })),
    siteExceptions: data.siteExceptions.map((one) => ({ ...one, at: shownTime(one.at) })),
    query: { ...query, from: data.from },
    kinds: options(
      ROW_KINDS.map((kind) => [kind, kind]),
      query.kind,
    ),
    energies: options(
      [...ENERGY_IDS, ...LOCK_IDS].map((id) => [id, CONDITIONS[id].name]),
      query.energy,
    ),
    procedures: options(
      [...procedures].sort(([, one], [, other]) => (one < other ? -1 : 1)),
      query.procedure,
    ),
    earlier: pageNumber < pages ? to(pageNumber + 1) : '',
    later: pageNumber > 1 ? to(pageNumber - 1) : '',
    csv: addressOf('/audit/rows.csv', query, { page: '' }),
    pdf: addressOf('/audit/report.pdf', query, { page: '' }),
  };
}

const LINES_SHOWN = 4;

/** @example linesShown([27, 28, 29, 30, 31]) // '27, 28, 29 and 2 more' */
export function linesShown(lines: readonly number[]): string {
  if (lines.length <= LINES_SHOWN) return lines.join(', ');
  const first = lines.slice(0, LINES_SHOWN - 1);
  return `${first.join(', ')} and ${lines.length - first.length} more`;
}

/** So many jobs are worked out while a page waits for them. */
const AT_ONCE_MAX = 50;

/** Never sent: a page is sent on to the work. */
const NOT_YET: Answer = {
  from: '',
  to: '',
  jobs: 0,
  count: 0,
  page: 1,
  rows: [],
  rules: [],
  exceptionCount: 0,
  exceptions: [],
  siteExceptions: [],
};

/** Works out what is not known yet. @returns the work that still does, where that is more than a page may wait for */
async function readJobs(
  call: BareCall & { readonly person: Person; readonly query: Query },
  { audit, path }: { readonly audit: SiteAudit; readonly path: string },
): Promise<string | null> {
  const { services, person, now, query } = call;
  const period = periodOf(call);
  const asked = { period, now: now.toISOString() };
  if ((await audit.wanting(services, asked)) <= AT_ONCE_MAX) return null;
  const today = asked.now.slice(0, 10);
  const begun = {
    title: 'Reading the jobs of these days',
    person: person.id,
    back: addressOf('/audit', query, { from: today, to: '', page: '' }),
    shows: addressOf(path, query, {}),
  };
  const work = services.long.startOrJoin(begun, async (tell) => {
    await audit.jobs(services, { ...asked, tell });
    return true;
  });
  return (await resultOf<true>(call, work)) === null ? work : null;
}

function listAudit(audit: SiteAudit): Route {
  return route({
    method: 'GET',
    path: '/audit',
    name: 'listAudit',
    summary:
      'Sign-offs, isolations and locks by person, energy, valve, procedure and date; exceptions with how rare they are',
    roles: REVIEWERS,
    menu: { text: 'Audit', order: 80 },
    query: QUERY,
    answer: ANSWER,
    handle: async (call) => {
      const work = await readJobs(call, { audit, path: '/audit' });
      if (work !== null) return { data: NOT_YET, seeOther: pathOfWork(work) };
      const most = { rows: pageOf(call.query) * ROWS_A_PAGE, exceptions: EXCEPTIONS_A_PAGE };
      const found = await findAudit(call, { audit, most });
      const data = answerOf(found, call.query);
      const params = pageParams(data, { query: call.query, procedures: found.procedures });
      return { data, page: { title: 'Audit', template: 'pages/audit.njk', params } };
    },
  });
}

const COLUMNS = [
  'time, UTC',
  'kind',
  'what',
  'of',
  'proof',
  'person',
  'name',
  'screen',
  'valve',
  'procedure',
  'job',
  'line',
];

function exportRows(audit: SiteAudit): Route {
  return route({
    method: 'GET',
    path: '/audit/rows.csv',
    name: 'exportAuditRows',
    summary: 'The same rows as a table, all pages, safe to open in a spreadsheet',
    roles: REVIEWERS,
    rawType: 'text/csv',
    query: QUERY,
    answer: z.object({ rows: z.int() }),
    handle: async (call) => {
      const work = await readJobs(call, { audit, path: '/audit/rows.csv' });
      if (work !== null) return { data: { rows: 0 }, seeOther: pathOfWork(work) };
      const most = { rows: Number.POSITIVE_INFINITY, exceptions: 0 };
      const { rows } = await findAudit(call, { audit, most });
      const cells = rows.map((row) => [
        row.at,
        row.kind,
        row.what,
        row.about,
        row.proof,
        row.person,
        row.name,
        row.screen,
        row.tag,
        row.procedure,
        row.job,
        String(row.line),
      ]);
      const raw = {
        contentType: 'text/csv; charset=utf-8',
        body: csvOf([COLUMNS, ...cells]),
        fileName: 'audit.csv',
      };
      return { data: { rows: rows.length }, raw };
    },
  });
}

function exportReport(audit: SiteAudit): Route {
  return route({
    method: 'GET',
    path: '/audit/report.pdf',
    name: 'exportAuditPdf',
    summary: 'What is worth a question and the same rows as a document for paper, A4 or Letter',
    roles: REVIEWERS,
    rawType: 'application/pdf',
    query: QUERY.extend({ paper: oneOf(['a4', 'letter']).default('a4') }),
    answer: z.object({ rows: z.int(), exceptions: z.int() }),
    handle: async (call) => {
      const work = await readJobs(call, { audit, path: '/audit/report.pdf' });
      if (work !== null) return { data: { rows: 0, exceptions: 0 }, seeOther: pathOfWork(work) };
      const found = await findAudit(call, { audit, most: PAPER_MOST });
      const { now, query } = call;
      const about = {
        size: query.paper,
        printedAtMs: now.getTime(),
        faces: pdfFaces(),
        language: call.language,
      };
      const body = await auditPdf({ ...found, query, anchor: await paperAnchor(call) }, about);
      const fileName = `audit-${now.toISOString().slice(0, 10)}.pdf`;
      return {
        data: { rows: found.count, exceptions: found.exceptionCount },
        raw: { contentType: 'application/pdf', body, fileName },
      };
    },
  });
}

export function auditRoutes(catalogue: Catalogue): readonly Route[] {
  const audit = new SiteAudit(catalogue);
  return [listAudit(audit), exportRows(audit), exportReport(audit)];
}
