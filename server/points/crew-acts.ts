/** People on a job: who joins it with their own locks, who leaves, and how it is handed over. */
import { lockOwner, locksOf } from '../../procedures/actions/lock-owners.ts';
import type { Job } from '../../procedures/job.ts';
import type { ConditionId } from '../../safety/conditions.ts';
import { Refusal } from '../../safety/refusal.ts';
import { actOnJob, type JobCall, noSuchJob, pointTags } from '../jobs/acts.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { pointKind, type SitePoint } from '../jobs/point-stream.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person } from '../people/person.ts';
import { crewKind, type Verified } from './crew-stream.ts';
import { checkAuthorised, hungEntry, offEntry } from './job-points.ts';
import { crewRefusal, wrongTag } from './refusals.ts';
import { type ShownReading, shownReadings } from './shown-readings.ts';
import { wrongTagTyped } from './wrong-tag.ts';

/** Numbers of locks and labels of points, as scanned or written: `inletLockNumber`, `inletLockTag`. */
export type LockTexts = Readonly<Record<string, string | undefined>>;

/** The person has proven themselves by PIN at this screen. */
export type CrewCall = Omit<JobCall, 'action' | 'signatory'>;

const bare = { outcome: {}, effects: {} };

/**
 * Somebody joins a job: their own lock on every point that it relies on, and whether they tried it themselves or rest on
 * the readings that they were shown.
 *
 * @throws Refusal CRW-001, CRW-002, PNT-004 to PNT-006
 */
export async function joinJob(
  call: CrewCall,
  { verified, texts }: { readonly verified: Verified; readonly texts: LockTexts },
): Promise<void> {
  await crewAct(call, {
    texts,
    asks: { join: call.job, verified, texts: textsOf(texts) },
    decide: (read, job) => {
      checkAuthorised(read, call.person.id);
      const points = reliedOn(read, job);
      if (points.length === 0)
        throw crewRefusal('CRW-001', 'This job has no lock on a point yet.', 'Join once it is locked.');
      if (isOnJob(read, { job, person: call.person.id }))
        throw crewRefusal('CRW-002', 'You are on this job.', 'Go on with its open card.');
      const hung = points.map(([id, point]) => {
        checkTag(point, { field: `${id}Tag`, typed: texts[`${id}Tag`] });
        const lock = { lock: (texts[`${id}Number`] ?? '').trim(), owner: call.person.id, job: job.id };
        return hungEntry(point, { lock, field: `${id}Number` });
      });
      const shown = shownReadings(job) as readonly (ShownReading & Record<string, string>)[];
      const inputs = { person: call.person.id, verified, shown: [...shown] };
      // Their locks hang before they count as being on the job.
      return [...hung, { stream: streamOf('crew', job.id), kind: 'joined', inputs, ...bare }];
    },
  });
}

/** A member takes their own locks off and leaves. @throws Refusal CRW-003 for the person whose locks the job stands on */
export async function leaveJob(call: CrewCall): Promise<void> {
  const owner = call.person.id;
  await crewAct(call, {
    asks: { leave: call.job },
    decide: (read, job) => {
      if (lockOwner(job) === owner)
        throw crewRefusal(
          'CRW-003',
          'The job stands on your locks.',
          'Hand it over, or give the valve back: then they come off.',
        );
      if (!read.state(crewKind, job.id).members.some(({ person }) => person === owner))
        throw crewRefusal('CRW-005', 'You are not on this job.', 'Look at who is on it.');
      const left: EntryDraft = {
        stream: streamOf('crew', job.id),
        kind: 'left',
        inputs: { person: owner },
        ...bare,
      };
      const mine = reliedOn(read, job).filter(([, { locks }]) =>
        locks.some((lock) => lock.job === job.id && lock.owner === owner),
      );
      return [left, ...mine.map(([, point]) => offEntry(point, { job: job.id, owner }))];
    },
  });
}

/**
 * One act with both people at one screen: the outgoing person signed in, the incoming one by name and PIN.
 * @throws Refusal CRW-006, PNT-004 to PNT-006, and whatever the job refuses
 */
export async function handOverJob(
  call: CrewCall,
  { incoming, texts }: { readonly incoming: Person; readonly texts: LockTexts },
): Promise<void> {
  const { services, job: id } = call;
  const job = await services.log.state(jobKind, id);
  if (job.status === 'none') throw noSuchJob(id);
  if (job.status !== 'open')
    throw crewRefusal('CRW-006', `This job is ${job.status}.`, 'Take it up first, then hand it over.');
  const relied = await Promise.all(
    locksOf(job).map(
      async ([lock, { point }]) => [lock, await services.log.state(pointKind, point)] as const,
    ),
  );
  const locks: Partial<Record<ConditionId, string>> = {};
  for (const [lock, point] of relied) {
    if (point.locks.some((held) => held.job === id && held.owner === incoming.id)) continue;
    const field = `${lock}Tag`;
    await logged(call, { texts, work: () => checkTag(point, { field, typed: texts[field] }) });
    locks[lock] = (texts[`${lock}Number`] ?? '').trim();
  }
  await actOnJob({
    ...call,
    action: { kind: 'hand-over', place: job.place, incoming: incoming.id, locks },
  });
}

interface CrewAct {
  readonly texts?: LockTexts;
  readonly asks: Parameters<typeof fingerprintOf>[0];
  decide(read: Read, job: Job): readonly EntryDraft[];
}

async function crewAct(call: CrewCall, { asks, texts = {}, decide }: CrewAct): Promise<void> {
  const { services, job: id, person } = call;
  const before = await services.log.state(jobKind, id);
  if (before.status === 'none') throw noSuchJob(id);
  const work = () =>
    services.log.act({
      requestId: call.requestId,
      fingerprint: fingerprintOf(asks),
      person: person.id,
      screen: call.screen,
      streams: crewStreams(before, person.id),
      decide: (read) => {
        const job = read.state(jobKind, id);
        if (job.status === 'closed')
          throw crewRefusal('CRW-007', 'This job is closed.', 'Open the one that stands at the valve.');
        return { entries: decide(read, job), answer: { job: id } };
      },
    });
  await logged(call, { texts, work });
}

/** Streams of a job's people and points. */
export function crewStreams(job: Job, person: string): readonly string[] {
  const points = new Set(pointTags(job).map(([, tag]) => streamOf('point', tag)));
  return [streamOf('job', job.id), streamOf('crew', job.id), streamOf('person', person), ...points];
}

/** Points that a job has its locks on, each with the condition that the lock stands for. */
function reliedOn(read: Read, job: Job): readonly (readonly [ConditionId, SitePoint])[] {
  const tags = new Map(pointTags(job));
  return locksOf(job).flatMap(([id]) => {
    const tag = tags.get(id);
    return tag === undefined ? [] : [[id, { ...read.state(pointKind, tag), tag }] as const];
  });
}

function isOnJob(read: Read, { job, person }: { readonly job: Job; readonly person: string }): boolean {
  const { members } = read.state(crewKind, job.id);
  return lockOwner(job) === person || members.some((member) => member.person === person);
}

/** The right component, confirmed by its label before the lock goes on it. @throws Refusal PNT-006 */
function checkTag(
  point: SitePoint,
  { field, typed = '' }: { readonly field: string; readonly typed: string | undefined },
): void {
  if (typed.trim().toUpperCase() !== point.tag.toUpperCase()) throw wrongTag(point.tag, field);
}

/** Whatever `work` refuses because of a wrong label is written down as tried. */
async function logged(
  call: CrewCall,
  { texts, work }: { readonly texts: LockTexts; readonly work: () => unknown },
): Promise<void> {
  try {
    await work();
  } catch (error) {
    if (error instanceof Refusal && error.text.code === 'PNT-006') {
      const [field = ''] = Object.keys(error.text.fields ?? {});
      await wrongTagTyped(call, { field, typed: texts[field] ?? '' });
    }
    throw error;
  }
}

function textsOf(texts: LockTexts): Record<string, string> {
  return Object.fromEntries(
    Object.entries(texts).filter((pair): pair is [string, string] => pair[1] !== undefined),
  );
}
