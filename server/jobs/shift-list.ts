import { z } from 'zod';
import type { Json } from '../../procedures/json.ts';
import { fill } from '../../procedures/say.ts';
import type { ConditionId } from '../../safety/conditions.ts';
import type { PointState } from '../../safety/isolation-points.ts';
import { linesAtTop } from '../log/lines-at-top.ts';
import { plannedNow, plannedSchema } from '../plans/planned.ts';
import type { Services } from '../services.ts';
import { shownTime } from '../shown-time.ts';
import type { Catalogue } from './catalogue.ts';
import { type JobLine, jobKind, openJobLines } from './job-stream.ts';
import { energyView } from './view/energies.ts';
import {
  energyMarks,
  type Looking,
  markSchema,
  type OpenJob,
  sentBackRow,
  sentBackSchema,
  waitingRow,
  waitingSchema,
} from './view/shift-rows.ts';
import { minutesSince, waitsFor, waitWords } from './view/waits.ts';
import { clock, closedWords, day, nameOf, placeWords } from './view/words.ts';

/** As many as one screen can be asked to show; the page says when there are more. */
const OPEN_MAX = 200;
const CLOSED_MAX = 12;
const PLANNED_MAX = 40;

const openSchema = z.object({
  job: z.string(),
  href: z.string(),
  tag: z.string(),
  place: z.string(),
  where: z.string(),
  procedure: z.string(),
  stands: z.string(),
  status: z.enum(['open', 'parked']),
  since: z.string(),
  waitsMinutes: z.int().describe('Since it came to where it stands'),
  waits: z.string().describe('The same, in words'),
  waitsFor: z.string(),
  by: z.string(),
  locks: z.array(z.string()),
  energies: z.array(markSchema),
});

const lockSchema = z.object({
  lock: z.string(),
  point: z.string(),
  stands: z.string(),
  hungBy: z.string(),
  since: z.string(),
  reliesOn: z.string(),
  href: z.string(),
  shownBy: z.string(),
});

const closedSchema = z.object({
  job: z.string(),
  href: z.string(),
  tag: z.string(),
  place: z.string(),
  closedAs: z.string(),
  closedAt: z.string(),
  openedBy: z.string(),
});

export const shiftListSchema = z.object({
  asOf: z.string(),
  planned: z.array(plannedSchema).describe('Due today or late'),
  plannedDue: z.int().describe('How many those are in all'),
  plannedSoon: z.int().describe('Due within the next seven days'),
  waiting: z.array(waitingSchema),
  open: z.array(openSchema),
  sentBack: z.array(sentBackSchema),
  locked: z.array(lockSchema),
  closed: z.array(closedSchema),
  /** There are more open jobs than are listed. */
  more: z.boolean(),
});

export type ShiftList = z.infer<typeof shiftListSchema>;

/** What waits for whoever looks, what is open, what is locked on the site, and what was closed of late. */
export async function shiftList(
  { services, catalogue }: { readonly services: Services; readonly catalogue: Catalogue },
  looking: Looking,
): Promise<ShiftList> {
  const { log } = services;
  const lines = await linesOf(services);
  const listed = lines.open.slice(0, OPEN_MAX);
  const jobs = await Promise.all(
    listed.map(async ({ id }): Promise<OpenJob> => {
      const job = await log.state(jobKind, id);
      return { job, compiled: await catalogue.of(job, log) };
    }),
  );
  const waiting = rowsOf(jobs, (one) => waitingRow(one, looking));
  const points = await linesAtTop<PointState>(log, 'point', {
    max: OPEN_MAX,
    isWanted: ({ locks }) => locks.length > 0,
  });
  const { role } = looking.person;
  const planned = await plannedNow(services, { role, nowMs: looking.nowMs, listedMax: PLANNED_MAX });
  return {
    asOf: shownTime(new Date(looking.nowMs).toISOString()),
    planned: [...planned.now],
    plannedDue: planned.due,
    plannedSoon: planned.soon,
    waiting: waiting.toSorted((one, other) => other.waitsMinutes - one.waitsMinutes),
    open: jobs.map((one) => openRow(one, looking)),
    sentBack: rowsOf(jobs, (one) => sentBackRow(one, looking)),
    locked: [
      ...points.flatMap((point) => lockRows(point, { jobs, looking })),
      ...jobs.flatMap((one) => bypassRow(one, looking)),
    ],
    closed: lines.closed.map((line) => closedRow(line, looking)),
    more: lines.open.length > OPEN_MAX,
  };
}

/** Open jobs stand first in the list of jobs, so its two ends are all that is read. */
async function linesOf({ log }: Services) {
  const down = await log.summaries('job', { limit: CLOSED_MAX, order: 'down' });
  return {
    open: await openJobLines(log, OPEN_MAX + 1),
    closed: down
      .map(({ body }) => body as unknown as JobLine & Json)
      .filter((line) => line.status === 'closed'),
  };
}

function rowsOf<Row>(jobs: readonly OpenJob[], row: (job: OpenJob) => Row | null): Row[] {
  return jobs.map(row).filter((one) => one !== null);
}

function openRow({ job, compiled }: OpenJob, looking: Looking): ShiftList['open'][number] {
  const step = compiled.definition.steps[job.step];
  const waitsMinutes = minutesSince(job.arrivedAt, looking);
  return {
    job: job.id,
    href: `/jobs/${job.id}`,
    tag: job.tag,
    place: `${job.sheet.location}, ${job.sheet.service}`,
    where: placeWords(job),
    procedure: compiled.definition.title,
    stands: step === undefined ? job.step : fill(step.title, job),
    status: job.status === 'parked' ? 'parked' : 'open',
    since: `${day(job.arrivedAt)} ${clock(job.arrivedAt)}`,
    waitsMinutes,
    waits: waitWords(waitsMinutes),
    waitsFor: waitsFor({ job, compiled }, looking),
    by: nameOf(job.answers.at(-1)?.person ?? job.openedBy, looking.names),
    locks: Object.values(job.locks).map((lock) => lock.lock),
    energies: energyMarks(job, looking.nowMs),
  };
}

const ENERGY_OF: { readonly [C in ConditionId]?: ConditionId } = {
  supplyLock: 'supplyAir',
  inletLock: 'processInlet',
  outletLock: 'processOutlet',
};

function lockRows(
  point: PointState,
  { jobs, looking }: { readonly jobs: readonly OpenJob[]; readonly looking: Looking },
): ShiftList['locked'] {
  return point.locks.map((lock) => {
    const job = jobs.find((one) => one.job.id === lock.job)?.job;
    const hung = Object.entries(job?.locks ?? {}).find(([, one]) => one.lock === lock.lock)?.[0];
    const note = hung === undefined ? undefined : job?.evidence[hung as ConditionId];
    const energy = ENERGY_OF[(hung ?? '') as ConditionId];
    return {
      lock: lock.lock,
      point: point.tag,
      stands: point.position,
      hungBy: nameOf(lock.owner, looking.names),
      since: note === undefined ? '' : `${day(note.at)} ${clock(note.at)}`,
      reliesOn: job === undefined ? `job ${lock.job}` : `job ${lock.job}, ${job.tag}`,
      href: `/jobs/${lock.job}`,
      shownBy: job === undefined || energy === undefined ? '' : shownBy(job, { energy, looking }),
    };
  });
}

function shownBy(
  job: OpenJob['job'],
  { energy, looking }: { readonly energy: ConditionId; readonly looking: Looking },
): string {
  const view = energyView(energy, { job, nowMs: looking.nowMs });
  if (view.state !== 'locked') return 'not shown';
  return [view.is ?? 'vent watched twice', view.gauge, view.when].filter((text) => text !== '').join(', ');
}

function bypassRow({ job }: OpenJob, looking: Looking): ShiftList['locked'] {
  const note = job.evidence.bypass;
  if (job.situation.states.bypass !== 'open' || note === undefined) return [];
  return [
    {
      lock: 'bypass',
      point: job.sheet.bypassPoint ?? '',
      stands: 'open',
      hungBy: nameOf(note.person, looking.names),
      since: `${day(note.at)} ${clock(note.at)}`,
      reliesOn: `nothing: a bypass isolates nothing (job ${job.id}, ${job.tag})`,
      href: `/jobs/${job.id}`,
      shownBy: 'the operator holds the process',
    },
  ];
}

function closedRow(line: JobLine, { names }: Looking): ShiftList['closed'][number] {
  return {
    job: line.id,
    href: `/jobs/${line.id}/record`,
    tag: line.tag,
    place: `${line.location}, ${line.service}`,
    closedAs: closedWords(line),
    closedAt: line.closedAt === null ? '' : `${day(line.closedAt)} ${clock(line.closedAt)}`,
    openedBy: nameOf(line.openedBy, names),
  };
}
