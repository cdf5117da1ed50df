import type { SiteLog } from '../log/site-log.ts';
import type { JobLine } from './job-stream.ts';

/** The lines of these jobs, in the order of the list of jobs. */
export async function linesOfJobs(log: SiteLog, ids: Iterable<string>): Promise<readonly JobLine[]> {
  const lines = await Promise.all(Array.from(ids, (id) => log.summary('job', id)));
  return lines
    .flatMap((line) => (line === undefined ? [] : [line]))
    .sort((one, other) => (one.sort === other.sort ? order(one.id, other.id) : order(one.sort, other.sort)))
    .map(({ body }) => body as unknown as JobLine);
}

const order = (one: string, other: string): number => (one < other ? -1 : 1);
