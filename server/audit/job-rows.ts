/** What a safety officer looks for in the log of a job: sign-offs, isolations, locks, each with what it rests on. */
import type { JobEffects, JobInputs } from '../../procedures/evolve.ts';
import type { Reading } from '../../procedures/job.ts';
import { type AnyState, CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import type { LogEntry } from '../store/store.ts';
import { type AuditedJob, auditedJob, type Exception } from './exceptions/exception.ts';
import { exceptionsOf } from './exceptions/find-exceptions.ts';

export const ROW_KINDS = ['sign-off', 'isolation', 'lock'] as const;
export type RowKind = (typeof ROW_KINDS)[number];

export interface AuditRow {
  readonly kind: RowKind;
  readonly job: string;
  readonly line: number;
  readonly at: string;
  readonly person: string;
  readonly screen: string;
  readonly tag: string;
  readonly procedure: string;
  /** The energy or lock; null for a sign-off. */
  readonly condition: ConditionId | null;
  readonly what: string;
  readonly proof: string;
}

export interface JobAudit {
  readonly job: string;
  readonly tag: string;
  readonly procedure: string;
  readonly openedAt: string;
  readonly lines: number;
  readonly rows: readonly AuditRow[];
  readonly exceptions: readonly Exception[];
  /** Everybody who had a hand in it. */
  readonly people: ReadonlySet<string>;
}

const SAFE: readonly AnyState[] = [
  'isolated',
  'absent',
  'contained',
  'released',
  'safe',
  'hung',
  'cleared',
  'overridden',
];

/** @throws TypeError for a job without lines */
export function auditJobLines(
  id: string,
  { entries, now }: { readonly entries: readonly LogEntry[]; readonly now: string },
): JobAudit {
  const job = auditedJob(entries);
  const { tag, procedure } = job.opened;
  return {
    job: id,
    tag,
    procedure,
    openedAt: entries[0]?.at ?? '',
    lines: entries.length,
    rows: rowsOf(job, id),
    exceptions: exceptionsOf(job, now),
    people: peopleOf(entries),
  };
}

function rowsOf({ opened, lines }: AuditedJob, id: string): readonly AuditRow[] {
  return lines.flatMap((line) => {
    const { place, at, person, screen, inputs, effects } = line;
    const of = { job: id, line: place, at, screen, tag: opened.tag, procedure: opened.procedure };
    const proof = proofOf(inputs);
    const { signature } = inputs;
    const signed: AuditRow[] =
      signature === undefined
        ? []
        : [
            {
              ...of,
              kind: 'sign-off',
              person: signature.person,
              condition: null,
              what: `${signature.meaning}, ${signature.way}`,
              proof: inputs.reason ?? signature.why,
            },
          ];
    return [...signed, ...isolations(effects).map((row) => ({ ...of, ...row, person: person ?? '', proof }))];
  });
}

function isolations({
  sets = {},
  locks = {},
}: JobEffects): readonly Pick<AuditRow, 'kind' | 'condition' | 'what'>[] {
  const states = Object.entries(sets) as [ConditionId, AnyState][];
  const hung = Object.entries(locks) as [
    ConditionId,
    { readonly lock: string; readonly point: string } | null,
  ][];
  return [
    ...states
      .filter(([id, state]) => CONDITIONS[id].group === 'energy' && SAFE.includes(state))
      .map(([condition, what]) => ({ kind: 'isolation' as const, condition, what })),
    ...hung.map(([condition, lock]) => ({
      kind: 'lock' as const,
      condition,
      what: lock === null ? 'off' : `on: ${lock.lock} at ${lock.point}`,
    })),
  ];
}

/** Each number with its gauge, and the words. @example proofOf({ step, readings: [zero] }) // '0 psi on G-07' */
export function proofOf({ readings = [], words = {} }: JobInputs): string {
  const numbers = readings.map(sayReading);
  return [...numbers, ...Object.values(words)].join('; ');
}

function sayReading({ typed, unit, gauge, readBy }: Reading): string {
  const value = /[^\d.,\s-]/.test(typed) ? typed : `${typed} ${unit}`;
  return `${value}${gauge === null ? '' : ` on ${gauge}`}${readBy === null ? '' : `, read by ${readBy}`}`;
}

function peopleOf(entries: readonly LogEntry[]): ReadonlySet<string> {
  return new Set(
    entries.flatMap(({ person, inputs }) => {
      const { signature, readings = [] } = inputs as unknown as JobInputs;
      return [
        person,
        signature?.person,
        signature?.radio?.heardBy,
        ...readings.map(({ readBy }) => readBy),
      ].filter((one): one is string => typeof one === 'string');
    }),
  );
}
