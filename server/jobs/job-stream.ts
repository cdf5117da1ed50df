import { evolve, jobOf, NO_JOB } from '../../procedures/evolve.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { type MeasuredJob, measuredOf } from '../history/measured.ts';
import { type NotedJob, notedOf } from '../history/noted.ts';
import { linesAtTop } from '../log/lines-at-top.ts';
import type { SiteLog } from '../log/site-log.ts';
import type { StreamKind } from '../log/stream-kind.ts';
import type { Summary } from '../store/store.ts';

/** A line of the shift list: what is open, where it stands, since when. */
export interface JobLine {
  readonly id: string;
  readonly tag: string;
  readonly location: string;
  readonly service: string;
  readonly procedure: string;
  readonly status: Job['status'];
  readonly closedAs: string | null;
  readonly goesOnAs: string | null;
  readonly step: string;
  readonly since: string;
  readonly openedAt: string;
  readonly closedAt: string | null;
  readonly openedBy: string;
  readonly performers: readonly string[];
  readonly locks: readonly string[];
  /** Numbers of the test gear that was chosen for it. */
  readonly gear: readonly string[];
  /** For the history of its valve, once it is closed. */
  readonly measured: MeasuredJob | null;
  readonly noted: NotedJob | null;
}

/** Jobs that are still worked on, in order of opening. */
export function openJobLines(log: Pick<SiteLog, 'summaries'>, max: number): Promise<readonly JobLine[]> {
  const isWanted = ({ status }: JobLine) => status === 'open' || status === 'parked';
  return linesAtTop(log, 'job', { max, isWanted });
}

/** Open jobs stand before closed ones, each in order of opening. */
const ORDER: Readonly<Record<Job['status'], string>> = { open: '1', parked: '1', closed: '2', none: '3' };

/** Those that are still worked on before closed ones, each the newest first. */
export async function newestJobLines(
  log: Pick<SiteLog, 'summaries'>,
  max: number,
): Promise<readonly JobLine[]> {
  const newest = { order: 'down', limit: max } as const;
  const open = await log.summaries('job', { ...newest, after: { sort: ORDER.closed, id: '' } });
  const all = open.length < max ? await log.summaries('job', newest) : [];
  const lines = (some: readonly Summary[]) => some.map(({ body }) => body as unknown as JobLine);
  const closed = lines(all).filter(({ status }) => status === 'closed');
  return [...lines(open), ...closed].slice(0, max);
}

export const jobKind: StreamKind<Job> = {
  kind: 'job',
  initial: NO_JOB,
  evolve,
  evolveAll: jobOf,
  summarise: (job, id) => {
    const line: JobLine = {
      id,
      tag: job.tag,
      location: job.sheet.location,
      service: job.sheet.service,
      procedure: job.procedure,
      status: job.status,
      closedAs: job.closedAs,
      goesOnAs: job.goesOnAs,
      step: job.step,
      since: job.arrivedAt,
      openedAt: job.openedAt,
      closedAt: job.closedAt,
      openedBy: job.openedBy,
      performers: job.performers,
      // After a job has closed, its locks are off or hang for the one that went on.
      locks: job.status === 'closed' ? [] : Object.values(job.locks).map((lock) => lock.lock),
      gear: Object.values(job.gear).map((item) => item.number),
      measured: measuredOf(job),
      noted: notedOf(job),
    };
    return { sort: `${ORDER[job.status]} ${job.openedAt}`, body: line as unknown as Json };
  },
};
