/** Locks of somebody who is away come off only by a supervisor, with what the rule asks, and the owner is told. */
import { lockOwner } from '../../procedures/actions/lock-owners.ts';
import type { Compiled } from '../../procedures/compile.ts';
import type { Job } from '../../procedures/job.ts';
import { wrongFields } from '../http/fields.ts';
import { decideAct, noSuchJob, pointTags } from '../jobs/acts.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { pointKind } from '../jobs/point-stream.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import { absenceKind } from './absence-stream.ts';
import { type CrewCall, crewStreams } from './crew-acts.ts';
import { crewKind } from './crew-stream.ts';
import { crewRefusal, notAuthorised } from './refusals.ts';

/** What the exception asks for. */
export interface Absence {
  readonly owner: string;
  /** How it was found out that the owner is not on site. */
  readonly foundOut: string;
  readonly attempts: string;
  /** Who tells the owner before the next shift, and how. */
  readonly toldBy: string;
  readonly reason: string;
}

const bare = { outcome: {}, effects: {} };

/**
 * Takes every lock of one person off one job. The job stands on the locks of whoever else is on it; where nobody is,
 * nothing counts as locked. The points stay as they are: nobody opens them by this.
 *
 * @source 29 CFR 1910.147(e)(3) asks for a documented procedure; its parts here are common practice, no source
 * @throws Refusal FRM-002 where a part is missing, CRW-008 where no lock of theirs hangs, PNT-005 but for a supervisor
 */
export async function removeInAbsence(call: CrewCall, absence: Absence): Promise<void> {
  const { services, catalogue, job: id, person } = call;
  const missing = (['foundOut', 'attempts', 'toldBy', 'reason'] as const).filter((name) => !absence[name]);
  if (missing.length > 0)
    throw wrongFields(
      Object.fromEntries(missing.map((name) => [name, 'Write this: the exception needs it.'])),
    );
  if (person.role !== 'supervisor') throw notAuthorised(person.name);
  const before = await services.log.state(jobKind, id);
  if (before.status === 'none') throw noSuchJob(id);
  const compiled = await catalogue.of(before, services.log);
  const { owner } = absence;
  await services.log.act({
    requestId: call.requestId,
    fingerprint: fingerprintOf({ removeLocks: id, ...absence }),
    person: person.id,
    screen: call.screen,
    streams: [
      ...crewStreams(before, person.id),
      streamOf('valve', before.tag),
      streamOf(absenceKind.kind, owner),
    ],
    decide: (read) => ({ entries: removal(read, { call, absence, compiled }), answer: { job: id } }),
  });
}

interface Removing {
  readonly call: CrewCall;
  readonly absence: Absence;
  readonly compiled: Compiled;
}

function removal(read: Read, { call, absence, compiled }: Removing): readonly EntryDraft[] {
  const job = read.state(jobKind, call.job);
  const { owner } = absence;
  if (owner === call.person.id)
    throw crewRefusal('CRW-008', 'These locks are your own.', 'Hand the job over, or leave it.');
  const hung = locksHung(read, { job, owner });
  if (hung.length === 0)
    throw crewRefusal('CRW-008', 'No lock of theirs hangs for this job.', 'Look at who is on the job.');
  const { members } = read.state(crewKind, job.id);
  const isOwner = lockOwner(job) === owner;
  const heir = isOwner ? (members.find((one) => one.person !== owner)?.person ?? null) : null;
  const why = { ...absence };
  return [
    ...(isOwner ? jobEntries(read, { call, absence, compiled, job, heir }) : []),
    { stream: streamOf('crew', job.id), kind: 'locks-removed', inputs: { owner, heir }, ...bare },
    ...hung.map(({ point, lock }) => ({
      stream: streamOf('point', point),
      kind: 'lock-removed-in-absence',
      inputs: { job: job.id, lock, ...why },
      ...bare,
    })),
    {
      stream: streamOf(absenceKind.kind, owner),
      kind: 'locks-removed',
      inputs: { job: job.id, locks: hung, ...why },
      ...bare,
    },
  ];
}

/** The job is told where it stood on those locks; a closed one has nothing left to be told. */
function jobEntries(
  read: Read,
  of: Removing & { readonly job: Job; readonly heir: string | null },
): readonly EntryDraft[] {
  const { call, absence, compiled, job, heir } = of;
  const { owner, reason } = absence;
  const action = { kind: 'remove-locks', place: job.place, owner, heir, reason } as const;
  return decideAct({ ...call, action }, { read, compiled, tags: pointTags(job) }).entries;
}

function locksHung(read: Read, { job, owner }: { readonly job: Job; readonly owner: string }) {
  return pointTags(job).flatMap(([, point]) =>
    read
      .state(pointKind, point)
      .locks.filter((held) => held.job === job.id && held.owner === owner)
      .map(({ lock }) => ({ point, lock })),
  );
}

/** The owner says that they know; until then every page tells them. @throws Refusal CRW-008 */
export async function knowRemoval(
  { log, by }: { readonly log: SiteLog; readonly by: By & { readonly person: string } },
  { place }: { readonly place: number },
): Promise<void> {
  const stream = streamOf(absenceKind.kind, by.person);
  await log.act({
    ...by,
    fingerprint: fingerprintOf({ removalKnown: by.person, place }),
    streams: [stream],
    decide: (read) => {
      const { removals } = read.state(absenceKind, by.person);
      if (!removals.some((one) => one.place === place && one.knownAt === null))
        throw crewRefusal('CRW-008', 'There is nothing of this kind to answer.', 'Go back to the list.');
      const entry = { stream, kind: 'removal-known', inputs: { place }, ...bare };
      return { entries: [entry], answer: { place } };
    },
  });
}
