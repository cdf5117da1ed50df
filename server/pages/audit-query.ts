/** What the safety officer asks the audit for, and what is found, in the words that page, table and paper share. */
import { z } from 'zod';
import { CONDITIONS } from '../../safety/conditions.ts';
import type { SiteAudit } from '../audit/audit-site.ts';
import { RULES } from '../audit/exceptions/exception.ts';
import { type AuditRow, type JobAudit, ROW_KINDS } from '../audit/job-rows.ts';
import { exceptionsIn, rowsWanted, rulesIn } from '../audit/search.ts';
import { derived } from '../derived.ts';
import { oneOf, optionalText } from '../http/fields.ts';
import type { BareCall } from '../http/route.ts';
import { type Names, nameOf } from '../jobs/view/words.ts';
import type { Tell } from '../long/long-work.ts';
import { turns } from '../long/turns.ts';

/** Without dates, the last quarter. */
const DAYS = 92;
const DAY_MS = 24 * 3_600_000;

const day = (called: string) =>
  optionalText({ called, max: 10 })
    .refine((value) => value === '' || /^\d{4}-\d{2}-\d{2}$/.test(value), 'Write the day as 2026-11-25.')
    .default('');

export const QUERY = z.object({
  person: optionalText({ called: 'the person' }).default(''),
  energy: optionalText({ called: 'the energy' }).default(''),
  valve: optionalText({ called: 'the valve' }).default(''),
  procedure: optionalText({ called: 'the procedure' }).default(''),
  kind: oneOf(['', ...ROW_KINDS]).default(''),
  rule: oneOf(['', ...Object.keys(RULES)]).default(''),
  from: day('the first day'),
  to: day('the last day'),
  page: optionalText({ called: 'the page', max: 6 })
    .refine((value) => /^\d*$/.test(value), 'Write the number of a page.')
    .default(''),
});

export type Query = z.output<typeof QUERY>;
export type Asked = Pick<BareCall, 'services' | 'now'> & { readonly query: Query };

export const rowSchema = z.object({
  kind: z.enum(ROW_KINDS),
  job: z.string(),
  line: z.int(),
  at: z.string(),
  person: z.string(),
  name: z.string(),
  screen: z.string(),
  tag: z.string(),
  procedure: z.string(),
  title: z.string(),
  about: z.string(),
  what: z.string(),
  proof: z.string(),
});

export const exceptionSchema = z.object({
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

export const ruleSchema = z.object({
  rule: z.string(),
  says: z.string(),
  entries: z.int(),
  jobs: z.int(),
  of: z.int(),
});

export type ShownRow = z.output<typeof rowSchema>;
export type ShownException = z.output<typeof exceptionSchema>;
export type ShownRule = z.output<typeof ruleSchema>;

export interface AuditFound {
  readonly from: string;
  readonly to: string;
  readonly jobs: number;
  /** The latest of those that fit, as many as were asked for. */
  readonly rows: readonly ShownRow[];
  /** How many fit. */
  readonly count: number;
  readonly rules: readonly ShownRule[];
  /** The rarest, as many as were asked for: of the rule that is named, without one of all. */
  readonly exceptions: readonly ShownException[];
  readonly exceptionCount: number;
  readonly site: readonly { readonly says: string; readonly at: string; readonly what: string }[];
  /** Procedures of the jobs of these days, by id. */
  readonly procedures: ReadonlyMap<string, string>;
}

/** So much of what fits is shown; the whole is counted. */
export interface Most {
  readonly rows: number;
  readonly exceptions: number;
}

export async function findAudit(
  call: Asked,
  { audit, most }: { readonly audit: SiteAudit; readonly most: Most },
): Promise<AuditFound> {
  const { services, now, query } = call;
  const names: Names = new Map((await services.people.list()).map(({ id, name }) => [id, name]));
  const period = periodOf(call);
  const audits = await audit.jobs(services, { period, now: now.toISOString(), tell: letOthers() });
  const person = idOf(query.person, names);
  const { rows, count } = rowsWanted(audits, { ...query, person, most: most.rows });
  const rules = rulesIn(audits);
  const asked = rules.filter(({ rule }) => query.rule === '' || rule === query.rule);
  const exceptions = exceptionsIn(audits, { rules: asked, most: most.exceptions });
  const site = (await audit.ofSite(services.log)).filter(
    ({ at }) => at.slice(0, 10) >= period.from && (period.to === '' || at.slice(0, 10) <= period.to),
  );
  return {
    ...period,
    jobs: audits.length,
    count,
    rows: rows.map((row) => shownRow(row, names)),
    rules: rules.map((one) => ({ ...one, says: RULES[one.rule].says })),
    exceptionCount: asked.reduce((sum, { entries }) => sum + entries, 0),
    exceptions: exceptions.map((one) => ({
      ...one,
      lines: [...one.lines],
      says: RULES[one.rule].says,
    })),
    site: site.map(({ rule, at, what }) => ({ says: RULES[rule].says, at, what })),
    procedures: proceduresOf(audits),
  };
}

const proceduresOf = derived(
  (audits: readonly JobAudit[]): ReadonlyMap<string, string> =>
    new Map(audits.map(({ procedure, title }) => [procedure, title])),
);

/** For what is waited for: nobody is told, but others are served meanwhile. */
function letOthers(): Tell {
  const turn = turns();
  return async () => void (await turn());
}

export function periodOf({ query, now }: Asked) {
  const from = query.from || new Date(now.getTime() - DAYS * DAY_MS).toISOString().slice(0, 10);
  return { from, to: query.to };
}

/** People are asked for by name or by id. */
function idOf(asked: string, names: Names): string {
  const wanted = asked.trim().toLowerCase();
  return [...names].find(([, name]) => name.toLowerCase() === wanted)?.[0] ?? wanted;
}

function shownRow(row: AuditRow, names: Names): ShownRow {
  const { condition, ...rest } = row;
  return {
    ...rest,
    name: nameOf(row.person, names),
    about: condition === null ? '' : CONDITIONS[condition].name,
  };
}
