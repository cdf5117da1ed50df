/** What an act on a job does to the points of the site and to the people on it. */
import type { JobDraft } from '../../procedures/evolve.ts';
import type { Job } from '../../procedures/job.ts';
import { type ConditionId, LOCK_IDS } from '../../safety/conditions.ts';
import { type Lock, mayNotHang } from '../../safety/isolation-points.ts';
import type { SitePoint } from '../jobs/point-stream.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Role } from '../people/person.ts';
import { personKind } from '../people/person-stream.ts';
import { crewKind } from './crew-stream.ts';
import { crewRefusal, notAuthorised, notHung } from './refusals.ts';

/** Who may hang a lock. */
const LOCKERS = ['technician', 'supervisor', 'engineer'] as const satisfies readonly Role[];

export type SitePoints = { readonly [C in ConditionId]?: SitePoint };

const bare = { outcome: {}, effects: {} };

/** @throws Refusal PNT-005 for somebody who is retired, or whose role hangs no locks */
export function checkAuthorised(read: Read, id: string): void {
  const { role, retired } = read.state(personKind, id);
  if (retired || role === null || !(LOCKERS as readonly Role[]).includes(role))
    throw notAuthorised(id.toUpperCase());
}

/**
 * The entry that hangs a lock. Where a tag hangs alone, it carries the reason that a supervisor gave for it.
 * @throws Refusal PNT-004
 */
export function hungEntry(
  point: SitePoint,
  { lock, field }: { readonly lock: Lock; readonly field: string },
): EntryDraft {
  const allowed = point.tagsAllowed.findLast(({ job }) => job === lock.job);
  const hung: Lock = allowed === undefined ? lock : { ...lock, because: allowed.because };
  const why = mayNotHang(point, { lock: hung, lockable: point.lockable });
  if (why !== null) throw notHung(why, { tag: point.tag, field });
  const inputs = { ...hung };
  return { stream: streamOf('point', point.tag), kind: 'lock-hung', inputs, ...bare };
}

/** The entry that takes one person's lock off and leaves the point as it stands. */
export function offEntry(point: SitePoint, of: { readonly job: string; readonly owner: string }): EntryDraft {
  const inputs = { ...of, restores: false };
  return { stream: streamOf('point', point.tag), kind: 'lock-taken-off', inputs, ...bare };
}

interface Deciding {
  readonly read: Read;
  readonly draft: JobDraft;
  readonly points: SitePoints;
  readonly person: string;
}

/**
 * Entries of points and people for a decided act. The decision has asked the points already whether they may be put
 * back; here the numbers are looked at, and that nobody is left on a job that closes.
 *
 * @throws Refusal PNT-004, PNT-005, CRW-004
 */
export function pointEntries(job: Job, deciding: Deciding): readonly EntryDraft[] {
  const { read, draft, points, person } = deciding;
  if (draft.effects.status === 'closed') checkNobodyLeft(job, read);
  // What a supervisor takes off for somebody away is written with its reasons, see `removal-acts.ts`.
  if (draft.kind === 'locks-removed') return [];
  const changes = LOCK_IDS.flatMap((id): EntryDraft[] => {
    const [change, point] = [draft.effects.locks?.[id], points[id]];
    if (change === undefined || point === undefined) return [];
    if (change === null) return restored(point, { job: job.id, owner: person });
    const lock = { lock: change.lock, owner: change.owner, job: job.id };
    const outgoing = job.locks[id]?.owner ?? change.owner;
    if (job.locks[id]?.owner !== change.owner) checkAuthorised(read, change.owner);
    const swapped = outgoing === change.owner ? [] : [offEntry(point, { job: job.id, owner: outgoing })];
    // The new lock hangs before the old one comes off.
    return [hungEntry(point, { lock, field: `${id}Number` }), ...swapped];
  });
  return [...changes, ...handedOver(job, deciding)];
}

function restored(point: SitePoint, of: { readonly job: string; readonly owner: string }): EntryDraft[] {
  if (point.locks.length === 0 && point.position === 'open') return [];
  const inputs = { ...of, restores: true };
  return [{ stream: streamOf('point', point.tag), kind: 'lock-taken-off', inputs, ...bare }];
}

function handedOver(job: Job, { draft, person }: Deciding): readonly EntryDraft[] {
  if (draft.kind !== 'handed-over') return [];
  const inputs = { from: person, to: draft.inputs.words?.incoming ?? '' };
  return [{ stream: streamOf('crew', job.id), kind: 'handed-over', inputs, ...bare }];
}

function checkNobodyLeft(job: Job, read: Read): void {
  const { members } = read.state(crewKind, job.id);
  if (members.length === 0) return;
  const who = members.map(({ person }) => person.toUpperCase()).join(', ');
  throw crewRefusal('CRW-004', `${who} is still on this job.`, 'Each takes their locks off and leaves it.');
}
