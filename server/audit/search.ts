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

/** Every exception with how rare its rule is here, the rarest first. */
export function exceptionsIn(audits: readonly JobAudit[]): readonly FoundException[] {
  const counts = new Map<RuleId, number>();
  for (const { exceptions } of audits)
    for (const rule of new Set(exceptions.map((one) => one.rule)))
      counts.set(rule, (counts.get(rule) ?? 0) + 1);
  return audits
    .flatMap(({ job, tag, exceptions }) =>
      exceptions.map(({ rule, at, lines, what }) => ({
        rule,
        job,
        tag,
        at,
        lines,
        what,
        jobs: counts.get(rule) ?? 0,
        of: audits.length,
      })),
    )
    .sort((one, other) => one.jobs - other.jobs || (one.at < other.at ? 1 : -1));
}

export function ruleWords(rule: RuleId): string {
  return RULES[rule];
}
