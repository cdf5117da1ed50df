import { RULES, type RuleId } from './exceptions/exception.ts';
import type { AuditRow, JobAudit } from './job-rows.ts';

export interface Wanted {
  readonly person: string;
  readonly energy: string;
  readonly valve: string;
  readonly procedure: string;
  readonly kind: string;
}

/** The rows that are asked for, the latest first. A blank asks for all. */
export function rowsWanted(audits: readonly JobAudit[], wanted: Wanted): readonly AuditRow[] {
  const fits = (row: AuditRow): boolean =>
    is(wanted.person, row.person) &&
    is(wanted.energy, row.condition ?? '') &&
    is(wanted.valve, row.tag) &&
    is(wanted.procedure, row.procedure) &&
    is(wanted.kind, row.kind);
  return audits.flatMap(({ rows }) => rows.filter(fits)).sort((one, other) => (one.at < other.at ? 1 : -1));
}

function is(wanted: string, met: string): boolean {
  return wanted === '' || wanted.toLowerCase() === met.toLowerCase();
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
export function rulesIn(audits: readonly JobAudit[]): readonly FoundRule[] {
  const counts = new Map<RuleId, { readonly entries: number; readonly jobs: number }>();
  for (const { exceptions } of audits) {
    for (const rule of new Set(exceptions.map((one) => one.rule))) {
      const { entries, jobs } = counts.get(rule) ?? { entries: 0, jobs: 0 };
      const here = exceptions.filter((one) => one.rule === rule).length;
      counts.set(rule, { entries: entries + here, jobs: jobs + 1 });
    }
  }
  return [...counts]
    .map(([rule, count]) => ({ rule, ...count, of: audits.length }))
    .sort((one, other) => one.jobs - other.jobs || (RULES[one.rule].says < RULES[other.rule].says ? -1 : 1));
}

/** Every exception with how rare its rule is here, the rarest first. */
export function exceptionsIn(audits: readonly JobAudit[]): readonly FoundException[] {
  const rarity = new Map(rulesIn(audits).map((one) => [one.rule, one.jobs]));
  return audits
    .flatMap(({ job, tag, exceptions }) =>
      exceptions.map((one) => ({
        ...one,
        job,
        tag,
        jobs: rarity.get(one.rule) ?? 0,
        of: audits.length,
      })),
    )
    .sort((one, other) => one.jobs - other.jobs || (one.at < other.at ? 1 : -1));
}
