/** What an earlier search for a fault of a valve named and did, for the next search and for the job that made its repair. */
import type { Job } from '../../procedures/job.ts';
import { findTheFault } from '../../procedures/troubleshooting/find-the-fault.ts';
import { type LastTime, lastTimeOf } from '../../procedures/troubleshooting/job/last-time.ts';
import type { Services } from '../services.ts';
import { jobKind } from './job-stream.ts';
import { complaintOf } from './record/search.ts';

/** Jobs of a valve that are looked through for what was done last time. */
const LOOKED_THROUGH = 20;

/** By the closed jobs of the valve, whose lines never change any more; null where none looked for a fault and named a repair. */
export async function earlierSearch(
  { lists, log }: Pick<Services, 'lists' | 'log'>,
  tag: string,
): Promise<LastTime | null> {
  const { jobs, jobsByTag } = lists;
  const own = [...(await jobsByTag()).of(tag)];
  const all = await jobs.byId();
  const closed = own.flatMap((id) => all.get(id) ?? []).filter(({ isClosed }) => isClosed);
  const newest = closed.toSorted((one, other) => ((one.closedAt ?? '') < (other.closedAt ?? '') ? 1 : -1));
  const ids = newest.slice(0, LOOKED_THROUGH).map(({ id }) => id);
  return lastTimeOf(await Promise.all(ids.map((id) => log.state(jobKind, id))));
}

/** The search that named the repair which a closed job made: only the operator knows whether its complaint is gone. */
export interface AskAfter {
  readonly job: string;
  /** What was complained of; blank where numbers alone were told. */
  readonly complaint: string;
  /** Where it is looked for again. */
  readonly href: string;
}

/** Null for a job that made no repair which a search had named, and while it is open. */
export async function askAfter(
  job: Pick<Job, 'id' | 'tag' | 'procedure' | 'status' | 'closedAs'>,
  services: Pick<Services, 'lists' | 'log'>,
): Promise<AskAfter | null> {
  if (job.status !== 'closed' || job.closedAs !== 'done' || job.procedure === findTheFault.id) return null;
  const last = await earlierSearch(services, job.tag);
  if (last === null || last.madeBy !== job.id) return null;
  const query = new URLSearchParams({ tag: job.tag, procedure: findTheFault.id, place: 'line' });
  const complaint = complaintOf(await services.log.state(jobKind, last.job));
  return { job: last.job, complaint, href: `/jobs/new?${query.toString()}` };
}
