/** What an earlier search for a fault of the same valve named and did, pinned when the next one is opened. */
import type { Job } from '../../job.ts';
import { type CauseId, causeOf } from '../causes.ts';
import type { CheckId } from '../checks.ts';
import { checkOf } from '../checks.ts';
import { repairProcedure } from '../repair-procedures.ts';
import { REPAIR_IDS, type RepairId, repairOf } from '../repairs.ts';
import { mendsIn } from './evidence-of-job.ts';

export interface LastTime {
  /** The job that looked for the fault. */
  readonly job: string;
  readonly repair: RepairId;
  /** The likeliest cause that this repair puts right, where one was named. */
  readonly cause: CauseId | null;
  /** The day it was made, or named where no job shows that it was made. */
  readonly on: string;
  /** The job that made it; the same as `job` where it was mended on the spot, null where none shows it. */
  readonly madeBy: string | null;
  /** The check that was to prove it, and whether it was sound; null where its own job proved it or nobody did. */
  readonly proof: { readonly check: CheckId; readonly sound: boolean } | null;
}

type Before = Pick<Job, 'id' | 'procedure' | 'status' | 'closedAs' | 'closedAt' | 'answers' | 'sheet'>;

/**
 * @param jobs  of this valve, newest first
 * @returns null where none of them looked for a fault and named or made a repair
 */
export function lastTimeOf(jobs: readonly Before[]): LastTime | null {
  const closed = jobs.filter(({ status }) => status === 'closed');
  for (const [at, job] of closed.entries()) {
    const found = job.procedure === 'find-the-fault' ? foundIn(job) : null;
    if (found === null) continue;
    return { ...found, job: job.id, ...madeAfter(found, { job, since: closed.slice(0, at) }) };
  }
  return null;
}

type Found = Pick<LastTime, 'repair' | 'cause'> & {
  readonly mend: ReturnType<typeof mendsIn>[number] | null;
};

function foundIn({ answers }: Before): Found | null {
  const named = answers.findLast(({ superseded, step }) => !superseded && step.startsWith('nameCause'));
  const mends = mendsIn(answers);
  const repair = REPAIR_IDS.find((id) => id === named?.figures.repair);
  if (repair !== undefined && repair !== 'leaveAlone') {
    const { cause } = named?.figures ?? {};
    const known = repairOf(repair).cures.find((id) => id === cause) ?? null;
    return { repair, cause: known, mend: mends.findLast((one) => one.repair === repair) ?? null };
  }
  const last = mends.at(-1);
  return last === undefined ? null : { repair: last.repair, cause: null, mend: last };
}

function madeAfter(
  { repair, mend }: Found,
  { job, since }: { readonly job: Before; readonly since: readonly Before[] },
): Pick<LastTime, 'on' | 'madeBy' | 'proof'> {
  const day = (one: Before) => (one.closedAt ?? '').slice(0, 10);
  if (mend !== null) return { on: day(job), madeBy: job.id, proof: mend.proof };
  const own = repairProcedure(repair, job.sheet.actuatorKind);
  const made = since.findLast(({ procedure, closedAs }) => procedure === own && closedAs === 'done');
  return made === undefined
    ? { on: day(job), madeBy: null, proof: null }
    : { on: day(made), madeBy: made.id, proof: null };
}

/** @example sayLastTime(last) // 'Last time, 2026-11-20 (job 12): found packing too tight …' */
export function sayLastTime({ job, repair, cause, on, madeBy, proof }: LastTime): string {
  const found = cause === null ? '' : ` Found: ${causeOf(cause).words}.`;
  const { words } = repairOf(repair);
  if (madeBy === null)
    return `Last time, ${on}, job ${job}.${found} Repair named: ${words}. No job here shows that it was made: ask who knows.`;
  const by = madeBy === job ? 'on the spot' : `as job ${madeBy}`;
  const proved =
    proof === null
      ? madeBy === job
        ? 'No check proved it.'
        : 'Its own job ended as done.'
      : `${checkOf(proof.check).title}: ${proof.sound ? 'sound then' : 'not sound then'}.`;
  return `Last time, ${on}, job ${job}.${found} Repair made ${by}: ${words}. ${proved}`;
}
