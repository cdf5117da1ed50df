/** What is locked and bypassed on the site now: by whom, for which job, since when. */

import { z } from 'zod';
import type { Job } from '../../procedures/job.ts';
import { isTagAlone } from '../../safety/isolation-points.ts';
import { jobKind, openJobLines } from '../jobs/job-stream.ts';
import type { SitePoint } from '../jobs/point-stream.ts';
import { clock, day, type Names, nameOf } from '../jobs/view/words.ts';
import type { Services } from '../services.ts';
import { shownTime } from '../shown-time.ts';
import type { Absences } from './absence-stream.ts';
import { removalWords, removalWordsSchema } from './removal-words.ts';

/** As many as one screen can be asked to show; the page says when there are more. */
const POINTS_MAX = 500;
const JOBS_MAX = 200;

const lockSchema = z.object({
  lock: z.string(),
  owner: z.string(),
  ownerName: z.string(),
  job: z.string(),
  valve: z.string(),
  since: z.string(),
  hours: z.number().nullable(),
  /** Why a tag hangs alone; blank for a lock. */
  tagBecause: z.string(),
});

const pointSchema = z.object({
  tag: z.string(),
  kind: z.string(),
  place: z.string(),
  lockable: z.boolean(),
  /** Free: no job holds it, and how it stands is the plant's. */
  stands: z.enum(['free', 'shut']),
  locks: z.array(lockSchema),
});

const bypassSchema = z.object({
  point: z.string(),
  job: z.string(),
  valve: z.string(),
  openedBy: z.string(),
  watchedBy: z.string(),
  since: z.string(),
  hours: z.number(),
});

const removalSchema = removalWordsSchema.extend({ owner: z.string(), known: z.string() });

export const siteViewSchema = z.object({
  asOf: z.string(),
  locked: z.array(pointSchema),
  bypasses: z.array(bypassSchema),
  free: z.array(pointSchema),
  removals: z.array(removalSchema),
  more: z.boolean(),
});

export type SiteView = z.infer<typeof siteViewSchema>;
export type PointRow = z.infer<typeof pointSchema>;

export interface SeenBy {
  readonly names: Names;
  readonly nowMs: number;
}

export async function siteView({ log }: Pick<Services, 'log'>, seen: SeenBy): Promise<SiteView> {
  const listed = (await log.summaries('point', { limit: POINTS_MAX + 1 })).map(
    ({ body }) => body as unknown as SitePoint,
  );
  const jobs = await openJobs({ log });
  const rows = listed.slice(0, POINTS_MAX).map((point) => pointRow(point, { seen, jobs }));
  const isHeld = (row: PointRow): boolean => row.locks.length > 0 || row.stands === 'shut';
  const absences = await log.summaries('absence', { limit: JOBS_MAX });
  return {
    asOf: shownTime(new Date(seen.nowMs).toISOString()),
    locked: rows.filter(isHeld),
    bypasses: jobs.flatMap((job) => bypassRow(job, seen)),
    free: rows.filter((row) => !isHeld(row)),
    removals: absences
      .flatMap(({ body }) => removalRows(body as unknown as Absences & { readonly owner: string }, seen))
      .toSorted((one, other) => (one.at < other.at ? 1 : -1)),
    more: listed.length > POINTS_MAX,
  };
}

async function openJobs({ log }: Pick<Services, 'log'>): Promise<readonly Job[]> {
  const open = await openJobLines(log, JOBS_MAX);
  return await Promise.all(open.map(({ id }) => log.state(jobKind, id)));
}

const HOUR_MS = 3_600_000;

/** Whole hours and one digit of them. @example hoursSince('2024-01-15T08:00:00.000Z', Date.UTC(2024, 0, 15, 9, 30)) // 1.5 */
function hoursSince(at: string, nowMs: number): number {
  return Math.round(((nowMs - Date.parse(at)) / HOUR_MS) * 10) / 10;
}

export function pointRow(
  point: SitePoint,
  { seen, jobs }: { readonly seen: SeenBy; readonly jobs: readonly Job[] },
): PointRow {
  return {
    tag: point.tag,
    kind: point.kind ?? '',
    place: point.place,
    lockable: point.lockable,
    stands: point.position === 'open' ? 'free' : 'shut',
    locks: point.locks.map(({ lock, owner, job, since, because = '' }) => ({
      lock,
      owner,
      ownerName: nameOf(owner, seen.names),
      job,
      valve: jobs.find(({ id }) => id === job)?.tag ?? '',
      since: since === undefined ? '' : `${day(since)} ${clock(since)}`,
      hours: since === undefined ? null : hoursSince(since, seen.nowMs),
      tagBecause: isTagAlone(lock) ? because : '',
    })),
  };
}

/** A bypass is watched by the operator who gave the valve; the job names them by role. */
function bypassRow(job: Job, { names, nowMs }: SeenBy): SiteView['bypasses'] {
  const note = job.evidence.bypass;
  if (job.situation.states.bypass !== 'open' || note === undefined) return [];
  return [
    {
      point: job.sheet.bypassPoint ?? '',
      job: job.id,
      valve: job.tag,
      openedBy: nameOf(note.person, names),
      watchedBy: job.words.bypassWatchedBy ?? job.words.operator ?? '',
      since: `${day(note.at)} ${clock(note.at)}`,
      hours: hoursSince(note.at, nowMs),
    },
  ];
}

function removalRows(
  { owner, removals }: Absences & { readonly owner: string },
  { names }: SeenBy,
): SiteView['removals'] {
  return removals.map((removal) => ({
    ...removalWords(removal, names),
    at: `${day(removal.at)} ${clock(removal.at)}`,
    owner: nameOf(owner, names),
    known: removal.knownAt === null ? 'not yet' : `${day(removal.knownAt)} ${clock(removal.knownAt)}`,
  }));
}
