import { derived } from '../derived.ts';
import { firstOf } from '../first-of.ts';
import { RULES, type RuleId } from './exceptions/exception.ts';
import type { AuditRow, JobAudit } from './job-rows.ts';

export interface Wanted {
  readonly person: string;
  readonly energy: string;
  readonly valve: string;
  readonly procedure: string;
  readonly kind: string;
}

export interface RowsFound {
  readonly count: number;
  /** The latest of them, so many at most. */
  readonly rows: readonly AuditRow[];
}

type RowsAsked = Wanted & { readonly most: number };

/** So many answers are kept for one list of jobs. */
const ANSWERS_MAX = 20;

const rowsBefore = derived((_: readonly JobAudit[]) => new Map<string, RowsFound>());

/** The rows that are asked for, the latest first. A blank asks for all. */
export function rowsWanted(audits: readonly JobAudit[], asked: RowsAsked): RowsFound {
  const { person, energy, valve, procedure, kind, most } = asked;
  const key = JSON.stringify([person, energy, valve, procedure, kind, most]);
  const before = rowsBefore(audits);
  const found = before.get(key) ?? findRows(audits, asked);
  if (before.size >= ANSWERS_MAX) before.clear();
  if (found.rows.length <= ROWS_KEPT_MAX) before.set(key, found);
  return found;
}

/** A table of all rows is made anew each time. */
const ROWS_KEPT_MAX = 1000;

function findRows(audits: readonly JobAudit[], wanted: RowsAsked): RowsFound {
  const [valve, procedure] = [meets(wanted.valve), meets(wanted.procedure)];
  const jobs = audits.filter((audit) => valve(audit.tag) && procedure(audit.procedure));
  const fits = rowFits(wanted);
  let [count, since] = [0, ''];
  let pool: AuditRow[] = [];
  for (const { rows, latestAt } of jobs) {
    const own = fits === null ? rows : rows.filter(fits);
    count += own.length;
    // Rows are many, and most jobs have none as late as those that will be shown.
    if (latestAt <= since) continue;
    pool.push(...own);
    if (pool.length <= wanted.most + POOL_ROWS) continue;
    pool = latestRows(pool, wanted.most);
    since = pool.at(-1)?.at ?? '';
  }
  return { count, rows: latestRows(pool, wanted.most) };
}

/** So many rows are gathered before those are dropped that are too old. */
const POOL_ROWS = 500;

function rowFits({ person, energy, kind }: Wanted): ((row: AuditRow) => boolean) | null {
  if (person + energy + kind === '') return null;
  const [by, about, of] = [meets(person), meets(energy), meets(kind)];
  return (row) => by(row.person) && about(row.condition ?? '') && of(row.kind);
}

function meets(wanted: string): (met: string) => boolean {
  if (wanted === '') return () => true;
  const small = wanted.toLowerCase();
  return (met) => met.toLowerCase() === small;
}

function latestRows(rows: readonly AuditRow[], most: number): AuditRow[] {
  return rows.toSorted((one, other) => (one.at === other.at ? 0 : one.at > other.at ? -1 : 1)).slice(0, most);
}

export interface FoundException {
  readonly rule: RuleId;
  readonly job: string;
  readonly tag: string;
  readonly at: string;
  readonly lines: readonly number[];
  readonly what: string;
  /** In how many jobs of the period it shows, of how many. */
  readonly jobs: number;
  readonly of: number;
}

export interface FoundRule {
  readonly rule: RuleId;
  /** How often in all. */
  readonly entries: number;
  /** In how many jobs of the period, of how many. */
  readonly jobs: number;
  readonly of: number;
}

/** Each rule that shows, the rarest first. */
export const rulesIn = derived((audits: readonly JobAudit[]): readonly FoundRule[] => {
  const counts = new Map<RuleId, { entries: number; jobs: number }>();
  for (const { byRule } of audits) {
    for (const [rule, here] of byRule) {
      const count = counts.get(rule) ?? { entries: 0, jobs: 0 };
      count.entries += here;
      count.jobs += 1;
      counts.set(rule, count);
    }
  }
  return [...counts]
    .map(([rule, count]) => ({ rule, ...count, of: audits.length }))
    .sort((one, other) => one.jobs - other.jobs || (RULES[one.rule].says < RULES[other.rule].says ? -1 : 1));
});

interface AskedFor {
  readonly rules: readonly FoundRule[];
  readonly most: number;
}

/** What was asked of a list of jobs before, by the rules that were meant and how many were wanted. */
const foundBefore = derived((_: readonly JobAudit[]) => new Map<string, readonly FoundException[]>());

/** Exceptions with how rare their rule is here: the rarest, of those the latest, so many at most. */
export function exceptionsIn(audits: readonly JobAudit[], asked: AskedFor): readonly FoundException[] {
  const key = [asked.most, ...asked.rules.map(({ rule }) => rule)].join(' ');
  const found = foundBefore(audits).get(key) ?? rarestIn(audits, asked);
  foundBefore(audits).set(key, found);
  return found;
}

function rarestIn(audits: readonly JobAudit[], { rules, most }: AskedFor): readonly FoundException[] {
  const found: FoundException[] = [];
  const rarity = new Map(rules.map(({ rule, jobs }) => [rule, jobs]));
  // From the rarest on, so that what would not be shown is not looked for.
  for (const jobs of [...new Set(rarity.values())].sort((one, other) => one - other)) {
    if (found.length >= most) break;
    const isMeant = (rule: RuleId): boolean => rarity.get(rule) === jobs;
    const here = audits
      .filter(({ byRule }) => [...byRule.keys()].some(isMeant))
      .flatMap(({ job, tag, exceptions }) =>
        exceptions
          .filter(({ rule }) => isMeant(rule))
          .map((one) => ({ ...one, job, tag, jobs, of: audits.length })),
      );
    found.push(...firstOf(here, { most: most - found.length, isBefore: (one, other) => one.at > other.at }));
  }
  return found;
}
