/** The safety officer's pages: what was signed and isolated, by whom, shown how; what is worth a question; jobs looked over. */
import { z } from 'zod';
import { CONDITIONS, ENERGY_IDS, LOCK_IDS } from '../../safety/conditions.ts';
import { SiteAudit } from '../audit/audit-site.ts';
import { csvOf } from '../audit/csv.ts';
import { siteExceptions } from '../audit/exceptions/find-exceptions.ts';
import { type AuditRow, ROW_KINDS } from '../audit/job-rows.ts';
import { exceptionsIn, rowsWanted, ruleWords } from '../audit/search.ts';
import { oneOf, optionalText } from '../http/fields.ts';
import { type Call, type Route, route } from '../http/route.ts';
import { type Names, nameOf } from '../jobs/view/words.ts';
import type { Person } from '../people/person.ts';
import { REVIEWERS } from '../people/review.ts';
import { shownTime } from '../shown-time.ts';

const ROWS_A_PAGE = 50;
const EXCEPTIONS_A_PAGE = 50;
/** Without dates, the last quarter. */
const DAYS = 92;
const DAY_MS = 24 * 3_600_000;

const day = (called: string) =>
  optionalText({ called, max: 10 })
    .refine((value) => value === '' || /^\d{4}-\d{2}-\d{2}$/.test(value), 'Write the day as 2026-11-25.')
    .default('');

const QUERY = z.object({
  person: optionalText({ called: 'the person' }).default(''),
  energy: optionalText({ called: 'the energy' }).default(''),
  valve: optionalText({ called: 'the valve' }).default(''),
  procedure: optionalText({ called: 'the procedure' }).default(''),
  kind: oneOf(['', ...ROW_KINDS]).default(''),
  from: day('the first day'),
  to: day('the last day'),
  page: optionalText({ called: 'the page', max: 6 })
    .refine((value) => /^\d*$/.test(value), 'Write the number of a page.')
    .default(''),
});

type Query = z.output<typeof QUERY>;
type Asked = Call<unknown, Query, Person>;

const rowSchema = z.object({
  kind: z.enum(ROW_KINDS),
  job: z.string(),
  line: z.int(),
  at: z.string(),
  person: z.string(),
  name: z.string(),
  screen: z.string(),
  tag: z.string(),
  procedure: z.string(),
  about: z.string(),
  what: z.string(),
  proof: z.string(),
});

const exceptionSchema = z.object({
  rule: z.string(),
  says: z.string(),
  job: z.string(),
  tag: z.string(),
  at: z.string(),
  lines: z.array(z.int()),
  what: z.string(),
  jobs: z.int(),
  of: z.int(),
});

const ANSWER = z.object({
  from: z.string(),
  to: z.string(),
  jobs: z.int(),
  count: z.int(),
  page: z.int(),
  rows: z.array(rowSchema),
  /** In all; the list holds the rarest. */
  exceptionCount: z.int(),
  exceptions: z.array(exceptionSchema),
  siteExceptions: z.array(z.object({ says: z.string(), at: z.string(), what: z.string() })),
});

function periodOf({ query, now }: Pick<Asked, 'query' | 'now'>) {
  const from = query.from || new Date(now.getTime() - DAYS * DAY_MS).toISOString().slice(0, 10);
  return { from, to: query.to };
}

async function namesOf({ services }: Pick<Asked, 'services'>): Promise<Names> {
  return new Map((await services.people.list()).map(({ id, name }) => [id, name]));
}

function rowOf(row: AuditRow, names: Names): z.output<typeof rowSchema> {
  const { condition, ...rest } = row;
  return {
    ...rest,
    name: nameOf(row.person, names),
    about: condition === null ? '' : CONDITIONS[condition].name,
  };
}

async function auditOf(call: Asked, audit: SiteAudit) {
  const { services, now } = call;
  const period = periodOf(call);
  const audits = await audit.jobs(services.log, { period, now: now.toISOString() });
  const site = siteExceptions(await services.log.entriesOf('site')).filter(
    ({ at }) => at.slice(0, 10) >= period.from && (period.to === '' || at.slice(0, 10) <= period.to),
  );
  return { period, audits, site, rows: rowsWanted(audits, call.query), found: exceptionsIn(audits) };
}

async function dataOf(call: Asked, audit: SiteAudit): Promise<z.output<typeof ANSWER>> {
  const { period, audits, site, rows, found } = await auditOf(call, audit);
  const names = await namesOf(call);
  const page = Math.max(1, Number(call.query.page || '1'));
  return {
    ...period,
    jobs: audits.length,
    count: rows.length,
    page,
    rows: rows.slice((page - 1) * ROWS_A_PAGE, page * ROWS_A_PAGE).map((row) => rowOf(row, names)),
    exceptionCount: found.length,
    exceptions: found
      .slice(0, EXCEPTIONS_A_PAGE)
      .map((one) => ({ ...one, lines: [...one.lines], says: ruleWords(one.rule) })),
    siteExceptions: site.map(({ rule, at, what }) => ({ says: ruleWords(rule), at, what })),
  };
}

function pageParams(data: z.output<typeof ANSWER>, { query }: Asked) {
  const link = (page: number): string =>
    `/audit?${new URLSearchParams({ ...query, page: String(page) })}#rows`;
  const options = (values: readonly (readonly [string, string])[], chosen: string) =>
    [['', 'any'] as const, ...values].map(([value, label]) => ({ value, label, selected: value === chosen }));
  const pages = Math.max(1, Math.ceil(data.count / ROWS_A_PAGE));
  return {
    ...data,
    rows: data.rows.map((row) => ({ ...row, at: shownTime(row.at) })),
    exceptions: data.exceptions.map((one) => ({
      ...one,
      at: shownTime(one.at),
      lines: one.lines.slice(0, 6).join(', '),
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
    pages,
    earlier: data.page < pages ? link(data.page + 1) : '',
    later: data.page > 1 ? link(data.page - 1) : '',
    csv: `/audit/rows.csv?${new URLSearchParams({ ...query, page: '' })}`,
  };
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
      const data = await dataOf(call, audit);
      return { data, page: { title: 'Audit', template: 'pages/audit.njk', params: pageParams(data, call) } };
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
      const { rows } = await auditOf(call, audit);
      const names = await namesOf(call);
      const cells = rows
        .map((row) => rowOf(row, names))
        .map((row) => [
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

export function auditRoutes(audit = new SiteAudit()): readonly Route[] {
  return [listAudit(audit), exportRows(audit)];
}
