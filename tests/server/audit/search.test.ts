import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RULES, type RuleId } from '../../../server/audit/exceptions/exception.ts';
import type { AuditRow, JobAudit } from '../../../server/audit/job-rows.ts';
import { exceptionsIn, rowsWanted, rulesIn } from '../../../server/audit/search.ts';

const ANY = { person: '', energy: '', valve: '', procedure: '', kind: '' } as const;
const RULE_IDS = (Object.keys(RULES) as RuleId[]).slice(0, 4);

const at = (minute: number): string => new Date(Date.UTC(2024, 0, 1) + minute * 60_000).toISOString();

interface Drawn {
  readonly rows: readonly { readonly minute: number; readonly person: string }[];
  readonly exceptions: readonly { readonly minute: number; readonly rule: RuleId }[];
}

function auditOf({ rows, exceptions }: Drawn, job: number): JobAudit {
  const [tag, procedure] = [`FV-${job % 3}`, 'stroke-check'];
  const shown = rows.map(
    ({ minute, person }, line): AuditRow => ({
      ...{ kind: 'lock', job: String(job), line, at: at(minute), person, screen: 'bench 2', tag, procedure },
      ...{ title: '', condition: null, what: 'off', proof: '' },
    }),
  );
  const byRule = new Map<RuleId, number>();
  for (const { rule } of exceptions) byRule.set(rule, (byRule.get(rule) ?? 0) + 1);
  return {
    ...{ job: String(job), tag, procedure, title: '', openedAt: '', lines: rows.length, people: new Set() },
    rows: shown,
    latestAt:
      shown
        .map((row) => row.at)
        .sort()
        .at(-1) ?? '',
    exceptions: exceptions.map(({ minute, rule }) => ({ rule, at: at(minute), lines: [1], what: '' })),
    byRule,
  };
}

const minute = fc.integer({ min: 0, max: 5000 });
const jobs = fc
  .array(
    fc.record({
      rows: fc.array(fc.record({ minute, person: fc.constantFrom('t1', 't2') }), { maxLength: 300 }),
      exceptions: fc.array(fc.record({ minute, rule: fc.constantFrom(...RULE_IDS) }), { maxLength: 6 }),
    }),
    { maxLength: 20 },
  )
  .map((all) => all.map(auditOf));

describe('A search in the audit, which looks only at what it shows,', () => {
  test('counts every row that fits and finds the latest of them', () => {
    fc.assert(
      fc.property(
        jobs,
        fc.constantFrom('', 't1'),
        fc.constantFrom(1, 25, 400, Number.POSITIVE_INFINITY),
        (audits, person, most) => {
          const found = rowsWanted(audits, { ...ANY, person, most });
          const all = audits
            .flatMap(({ rows }) => rows)
            .filter((row) => person === '' || row.person === person);
          const latest = all
            .map((row) => row.at)
            .sort()
            .toReversed();
          expect(found.count).toBe(all.length);
          expect(found.rows.map((row) => row.at)).toEqual(latest.slice(0, most));
          expect(new Set(found.rows).size).toBe(found.rows.length);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('finds the exceptions whose rule is rarest, of those the latest', () => {
    fc.assert(
      fc.property(jobs, fc.integer({ min: 0, max: 30 }), (audits, most) => {
        const rules = rulesIn(audits);
        const rarity = (rule: RuleId): number => audits.filter(({ byRule }) => byRule.has(rule)).length;
        const all = audits
          .flatMap(({ exceptions }) => exceptions)
          .map((one) => ({ jobs: rarity(one.rule), at: one.at }))
          .toSorted((one, other) => one.jobs - other.jobs || (one.at > other.at ? -1 : 1));
        const found = exceptionsIn(audits, { rules, most });
        expect(found.map((one) => ({ jobs: one.jobs, at: one.at }))).toEqual(all.slice(0, most));
        expect(rules.reduce((sum, one) => sum + one.entries, 0)).toBe(all.length);
      }),
      { numRuns: 60 },
    );
  });
});
