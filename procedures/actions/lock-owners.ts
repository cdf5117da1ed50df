import { CONDITION_IDS, CONDITIONS, type ConditionId, LOCK_IDS } from '../../safety/conditions.ts';
import type { Effects, LapseReason } from '../../safety/situation.ts';
import type { JobDraft, JobEffects } from '../evolve.ts';
import type { Job, JobLock } from '../job.ts';
import type { ActionOf, Surroundings } from './action.ts';
import { openStepOf } from './move.ts';
import { noWay } from './refusals.ts';

type Locks = { readonly [C in ConditionId]?: JobLock | null };

/** Locks of the job by the condition that each stands for, with an owner. */
export function locksOf(job: Job): readonly (readonly [ConditionId, JobLock])[] {
  return LOCK_IDS.flatMap((id) => {
    const lock = job.locks[id];
    return lock === undefined ? [] : [[id, lock] as const];
  });
}

/** Whoever hung the locks that the job stands on: one person, until the job is handed over. */
export function lockOwner(job: Job): string | null {
  return locksOf(job)[0]?.[1].owner ?? null;
}

/**
 * Passes the job on in one act: the incoming person's locks are on before the outgoing person's come off. What was
 * shown safe, and the signatures over it, are shown again before hands go in.
 */
export function handOver(job: Job, action: ActionOf<'hand-over'>, around: Surroundings): JobDraft {
  openStepOf(job, around);
  const { incoming } = action;
  const owner = lockOwner(job);
  if (owner !== null && owner !== around.person.id)
    throw noWay('The locks of this job are not yours.', 'Their owner hands the job over.');
  if (incoming === around.person.id)
    throw noWay('A job is not handed over to oneself.', 'Name the incoming person.');
  const locks = locksOf(job).map(([id, { point }]): [string, JobLock] => {
    const own = around.points[id]?.locks.find((lock) => lock.job === job.id && lock.owner === incoming);
    return [id, { lock: action.locks[id] ?? own?.lock ?? '', point, owner: incoming }];
  });
  if (locks.some(([, { lock }]) => lock === ''))
    throw noWay('The incoming person has no lock on each point.', 'Hang the lock, then write its number.');
  return {
    kind: 'handed-over',
    inputs: { step: job.step, words: { incoming } },
    outcome: { name: 'handed over', figures: {} },
    effects: { ...lapses(job, 'handover'), locks: Object.fromEntries(locks) as Locks },
  };
}

/**
 * Takes the locks of somebody who is away off the job. Where somebody else has a lock on each of its points, the job
 * stands on theirs; where nobody has, nothing is locked and nothing counts as shown.
 */
export function removeLocks(job: Job, action: ActionOf<'remove-locks'>, around: Surroundings): JobDraft {
  openStepOf(job, around);
  const { owner, heir } = action;
  const gone = locksOf(job).filter(([, lock]) => lock.owner === owner);
  if (gone.length === 0) throw noWay('The job stands on no lock of theirs.', 'Look at who is on the job.');
  const left = gone.map(([id, lock]): [ConditionId, JobLock | null] => {
    const theirs = around.points[id]?.locks.find((held) => held.job === job.id && held.owner === heir);
    return [id, theirs === undefined || heir === null ? null : { ...lock, lock: theirs.lock, owner: heir }];
  });
  const off = left.filter(([, lock]) => lock === null).map(([id]) => [id, 'off'] as const);
  return {
    kind: 'locks-removed',
    inputs: { step: job.step, words: { owner, heir: heir ?? '' }, reason: action.reason },
    outcome: { name: 'locks removed', figures: {} },
    effects: {
      ...lapses(job, 'lock removed'),
      ...(off.length === 0 ? {} : { sets: Object.fromEntries(off) as Effects }),
      locks: Object.fromEntries(left) as Locks,
    },
  };
}

/** Everything that a person showed, and the signatures over it. */
function lapses(job: Job, reason: LapseReason): Pick<JobEffects, 'to' | 'lapses'> {
  const conditions = CONDITION_IDS.filter((id) => {
    const { group } = CONDITIONS[id];
    return group === 'energy' || group === 'signature' || id === 'plug';
  });
  return { to: job.step, lapses: { conditions, reason } };
}
