/** What a safety officer looks for in the log of a job: sign-offs, isolations, locks, each with what it rests on. */
import { type JobEffects, type JobInputs, jobOf } from '../../procedures/evolve.ts';
import type { Definition } from '../../procedures/vocabulary.ts';
import { type AnyState, CONDITIONS, type ConditionId } from '../../safety/conditions.ts';
import type { LogEntry } from '../store/store.ts';
import {
  type AuditedJob,
  auditedJob,
  type Exception,
  type JobLine,
  type RuleId,
} from './exceptions/exception.ts';
import { exceptionsOf } from './exceptions/find-exceptions.ts';
import { type LineWords, sayGiven, sayStep } from './say-line.ts';

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
  readonly title: string;
  /** The energy or lock; null for a sign-off. */
  readonly condition: ConditionId | null;
  readonly what: string;
  readonly proof: string;
}

export interface JobAudit {
  readonly job: string;
  readonly tag: string;
  readonly procedure: string;
  /** Of the procedure, as its definition says it. */
  readonly title: string;
  readonly openedAt: string;
  readonly lines: number;
  readonly rows: readonly AuditRow[];
  /** When the latest of its rows was written; blank without any. */
  readonly latestAt: string;
  readonly exceptions: readonly Exception[];
  /** How many of its exceptions each rule has. */
  readonly byRule: ReadonlyMap<RuleId, number>;
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

/**
 * @param of the definition that the job was opened on; null where the log does not have it
 * @throws TypeError for a job without lines
 */
export function auditJobLines(
  id: string,
  of: {
    readonly entries: readonly LogEntry[];
    readonly definition: Definition | null;
    readonly now: string;
  },
): JobAudit {
  const { entries, definition, now } = of;
  const audited = auditedJob(entries);
  const { tag, procedure } = audited.opened;
  const words = wordsFor(entries, definition);
  const rows = rowsOf(audited, { id, words });
  const exceptions = exceptionsOf(audited, now);
  return {
    job: id,
    tag,
    procedure,
    title: definition?.title ?? procedure,
    openedAt: entries[0]?.at ?? '',
    lines: entries.length,
    rows,
    latestAt:
      rows
        .map(({ at }) => at)
        .sort()
        .at(-1) ?? '',
    exceptions,
    byRule: countedByRule(exceptions),
    people: peopleOf(entries),
  };
}

function countedByRule(exceptions: readonly Exception[]): ReadonlyMap<RuleId, number> {
  const counts = new Map<RuleId, number>();
  for (const { rule } of exceptions) counts.set(rule, (counts.get(rule) ?? 0) + 1);
  return counts;
}

/** What the lines of a job are read by. */
export function wordsFor(entries: readonly LogEntry[], definition: Definition | null): LineWords {
  const job = jobOf(entries);
  return { definition, job };
}

function rowsOf(
  { opened: { tag, procedure }, lines }: AuditedJob,
  { id, words }: { readonly id: string; readonly words: LineWords },
): readonly AuditRow[] {
  const title = words.definition?.title ?? procedure;
  return lines.flatMap((line) => {
    const { place, at, person, screen, effects } = line;
    const of = { job: id, line: place, at, screen, tag, procedure, title };
    const rows = isolations(effects).map((row) => ({
      ...of,
      ...row,
      person: person ?? '',
      proof: proofOf(line.inputs, { condition: row.condition, words }),
    }));
    return [...signOff(line, words).map((row) => ({ ...of, ...row })), ...rows];
  });
}

const WAYS: Readonly<Record<string, string>> = {
  'own screen': 'at a screen of their own',
  'walk-up': 'at the screen of the work',
  'second person': 'by a second person, no supervisor there',
  radio: 'by radio',
};

type SignOff = Pick<AuditRow, 'kind' | 'person' | 'condition' | 'what' | 'proof'>;

function signOff({ inputs }: JobLine, words: LineWords): readonly SignOff[] {
  const { signature, step, reason = '' } = inputs;
  if (signature === undefined) return [];
  const { meaning, way, why, radio } = signature;
  const heard = radio === null ? '' : `heard by ${radio.heardBy}`;
  return [
    {
      kind: 'sign-off',
      person: signature.person,
      condition: null,
      what: `${sayStep(step, words)}: ${meaning}, ${WAYS[way] ?? way}`,
      proof: [reason, why, heard].filter((one) => one !== '').join('; '),
    },
  ];
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

/** What was given for one energy; of a lock, and where no field of the card is of that energy alone, all of the card. */
function proofOf(
  inputs: JobInputs,
  { condition, words }: { readonly condition: ConditionId | null; readonly words: LineWords },
): string {
  if (condition === null || CONDITIONS[condition].group !== 'energy') return sayGiven(inputs, words);
  const own = (field: string): boolean => field.toLowerCase().includes(condition.toLowerCase());
  return sayGiven(inputs, words, own) || sayGiven(inputs, words);
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
