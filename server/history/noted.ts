import { csvCell } from '../../procedures/csv-cell.ts';
import type { Job } from '../../procedures/job.ts';
import { type Finding, standing, type UsedPart } from '../../procedures/notes/note.ts';
import { SOUND, sayFound } from '../../procedures/notes/words.ts';
import { REPAIR_IDS, type RepairId, repairOf } from '../../procedures/troubleshooting/repairs.ts';
import type { JobLine } from '../jobs/job-stream.ts';

/** What a job leaves in the history of its valve beside its readings: what was found, what was put in. */
export interface NotedJob {
  readonly findings: readonly Omit<Finding, 'kind'>[];
  readonly parts: readonly Omit<UsedPart, 'kind'>[];
  /** The repair that finding the fault ended with; null where no fault was looked for. */
  readonly repair: RepairId | null;
}

/** Null where nothing was noted. What was struck counts no more. */
export function notedOf(job: Job): NotedJob | null {
  const findings = standing(job.notes, 'finding').map(({ note: { kind: _, ...finding } }) => finding);
  const parts = standing(job.notes, 'part').map(({ note: { kind: _, ...part } }) => part);
  const repair = repairIn(job);
  return findings.length + parts.length === 0 && repair === null ? null : { findings, parts, repair };
}

function repairIn({ answers }: Job): RepairId | null {
  const line = answers.findLast(({ superseded, step }) => !superseded && step.startsWith('nameCause'));
  return REPAIR_IDS.find((id) => id === line?.figures.repair) ?? null;
}

/** @example sayCauses(noted) // ['Seat ring: eroded or wire-drawn'] */
export function sayCauses({ findings, repair }: NotedJob): readonly string[] {
  return [
    ...findings.filter(({ found }) => found !== SOUND).map(sayFound),
    ...(repair === null ? [] : [repairOf(repair).words]),
  ];
}

/** What was noted on one job, a row each, for a table and for programs. */
export interface NotedRow {
  readonly job: string;
  readonly tag: string;
  readonly closedOn: string;
  readonly kind: 'finding' | 'part' | 'repair';
  readonly what: string;
  readonly words: string;
  readonly number: string;
  readonly batch: string;
  readonly quantity: number | null;
}

/** Oldest job first; of a job first what was found, then what was put in. */
export function notedRows(lines: readonly JobLine[]): readonly NotedRow[] {
  return lines
    .filter(({ status, noted }) => status === 'closed' && noted !== null)
    .toSorted((one, other) => ((one.closedAt ?? '') < (other.closedAt ?? '') ? -1 : 1))
    .flatMap(rowsOf);
}

function rowsOf({ id, tag, closedAt, noted }: JobLine): readonly NotedRow[] {
  const of = { job: id, tag, closedOn: (closedAt ?? '').slice(0, 10) };
  const blank = { words: '', number: '', batch: '', quantity: null };
  const { findings = [], parts = [], repair = null } = noted ?? {};
  return [
    ...findings.map((one) => ({
      ...of,
      ...blank,
      kind: 'finding' as const,
      what: sayFound(one),
      words: one.words,
    })),
    ...(repair === null ? [] : [{ ...of, ...blank, kind: 'repair' as const, what: repairOf(repair).words }]),
    ...parts.map(({ description, ...part }) => ({
      ...of,
      ...part,
      kind: 'part' as const,
      what: description,
      words: '',
    })),
  ];
}

const HEAD = ['valve', 'job', 'closed on', 'kind', 'what', 'words', 'quantity', 'number', 'batch or serial'];

/** The same for table programs; no cell begins like a formula. */
export function notedCsv(rows: readonly NotedRow[]): string {
  const cells = rows.map((row) => [
    ...[row.tag, row.job, row.closedOn, row.kind, row.what, row.words],
    ...[row.quantity === null ? '' : String(row.quantity), row.number, row.batch],
  ]);
  // The mark in front makes table programs read the letters as UTF-8.
  return `\ufeff${[HEAD, ...cells].map((each) => `${each.map(csvCell).join(',')}\r\n`).join('')}`;
}
