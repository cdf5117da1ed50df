import { type ActionClass, needsOf } from '../../safety/action-classes.ts';
import { type ConditionId, LOCK_IDS } from '../../safety/conditions.ts';
import { LOCK_BEHIND } from '../../safety/interlock.ts';
import {
  lockedOnFor,
  mayNotRestore,
  type PointState,
  withoutOwnLock,
} from '../../safety/isolation-points.ts';
import { Refusal } from '../../safety/refusal.ts';
import type { JobEffects } from '../evolve.ts';
import type { Job } from '../job.ts';
import type { Surroundings } from './action.ts';

const KEPT = 'Nothing was written; what you typed is still there.';

/** The points of the site that this job's locks stand for, as the site has them now. */
function pointsOf({ points }: Surroundings): readonly PointState[] {
  return LOCK_IDS.flatMap((id) => points[id] ?? []);
}

/** Whether an action counts on a lock at the site. */
function standsOnLocks(action: ActionClass): boolean {
  const needs = needsOf(action) as { readonly [C in ConditionId]?: readonly string[] };
  return (Object.keys(LOCK_BEHIND) as ConditionId[]).some((id) => needs[id]?.includes('isolated') === true);
}

/** Points where this person has no lock of their own, while the action stands on locks. */
export function unlockedFor(
  job: Job,
  { action, around }: { readonly action: ActionClass | null; readonly around: Surroundings },
): readonly string[] {
  if (action === null || !standsOnLocks(action)) return [];
  return withoutOwnLock(pointsOf(around), { job: job.id, person: around.person.id });
}

/** In words, for the card and the refusal. @example sayUnlocked(['HV-1']) // 'You have no lock of your own on HV-1.' */
export function sayUnlocked(tags: readonly string[]): string {
  return `You have no lock of your own on ${tags.join(', ')}.`;
}

/** @throws Refusal PNT-002 */
export function checkOwnLocks(job: Job, of: Parameters<typeof unlockedFor>[1]): void {
  const tags = unlockedFor(job, of);
  if (tags.length === 0) return;
  throw new Refusal({
    kind: 'unsafe',
    code: 'PNT-002',
    what: sayUnlocked(tags),
    kept: KEPT,
    next: 'Hang your locks and join the job first, or have it handed over to you.',
  });
}

/**
 * Asks the site's points before a way that hangs locks or takes them off, wherever the machine stands.
 * @throws Refusal PNT-001 where a point may not be restored, PNT-003 where somebody would be left without a lock
 */
export function checkPoints(
  job: Job,
  { locks, around }: { readonly locks: JobEffects['locks'] | undefined; readonly around: Surroundings },
): void {
  const person = around.person.id;
  for (const id of LOCK_IDS) {
    const [change, point] = [locks?.[id], around.points[id]];
    if (change === undefined || point === undefined) continue;
    if (change === null) refuseRestoring(point, { job: job.id, person });
    else refuseHanging(point, { job: job.id, person, around });
  }
}

function refuseRestoring(point: PointState, asking: { readonly job: string; readonly person: string }): void {
  const why = mayNotRestore(point, asking);
  if (why === null) return;
  const others = point.locks.filter(({ job, owner }) => job !== asking.job || owner !== asking.person);
  const whose = others.map(({ lock, owner, job }) => `${lock} of ${owner.toUpperCase()}, job ${job}`);
  throw new Refusal({
    kind: 'unsafe',
    code: 'PNT-001',
    what: `${point.tag} is not restored: ${why} (${whose.join('; ')}).`,
    kept: 'Nothing was written.',
    next: 'The owner of each lock takes it off. Where the owner is away, a supervisor can.',
  });
}

/** One person hangs the locks that the job stands on; nobody on the job is left without one on a further point. */
function refuseHanging(
  point: PointState,
  { job, person, around }: { readonly job: string; readonly person: string; readonly around: Surroundings },
): void {
  const others = lockedOnFor(job, pointsOf(around)).filter((one) => one !== person);
  const bare = others.filter((one) => !point.locks.some((lock) => lock.job === job && lock.owner === one));
  if (bare.length === 0) return;
  throw new Refusal({
    kind: 'unsafe',
    code: 'PNT-003',
    what: `${bare.map((one) => one.toUpperCase()).join(', ')} would have no lock on ${point.tag}.`,
    kept: KEPT,
    next: 'They take their locks off and leave the job, or have it handed over; they join again once it is locked.',
  });
}
