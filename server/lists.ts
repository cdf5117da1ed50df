/** What pages look for among all valves and all jobs, in memory: a plant may have twenty thousand of the one and as many of the other. */
import type { JobLine } from './jobs/job-stream.ts';
import { KeptList } from './log/kept-list.ts';
import type { SiteLog } from './log/site-log.ts';
import type { SavedValve } from './pages/valve-parts.ts';

export interface ValveLine {
  readonly tag: string;
  readonly service: string;
  readonly location: string;
  readonly airAction: string;
  readonly failPosition: string;
  readonly revision: number;
  readonly retired: boolean;
  readonly openJob: string | null;
  /** Tag, service and place in small letters, for who looks for a word. */
  readonly words: string;
}

export interface JobOfValve {
  readonly id: string;
  readonly tag: string;
}

export interface Lists {
  readonly valves: KeptList<ValveLine>;
  readonly jobs: KeptList<JobOfValve>;
}

export function makeLists(log: SiteLog): Lists {
  return {
    valves: new KeptList({
      log,
      kind: 'valve',
      slim: ({ body }) => valveLine(body as unknown as SavedValve),
    }),
    jobs: new KeptList({
      log,
      kind: 'job',
      slim: ({ id, body }) => ({ id, tag: (body as unknown as JobLine).tag }),
    }),
  };
}

function valveLine({ sheet, revision, retired, openJob }: SavedValve): ValveLine {
  const { tag, service, location, airAction, failPosition } = sheet;
  const words = `${tag} ${service} ${location}`.toLowerCase();
  return { tag, service, location, airAction, failPosition, revision, retired, openJob, words };
}

/** The lines of the jobs of one valve, as the list of jobs has them and in its order. */
export async function jobsOfValve(
  { log, lists }: { readonly log: SiteLog; readonly lists: Lists },
  tag: string,
): Promise<readonly JobLine[]> {
  const ids = [...(await lists.jobs.byId()).values()].filter((job) => job.tag === tag).map(({ id }) => id);
  const lines = await Promise.all(ids.map((id) => log.summary('job', id)));
  return lines
    .flatMap((line) => (line === undefined ? [] : [line]))
    .sort((one, other) => (one.sort === other.sort ? order(one.id, other.id) : order(one.sort, other.sort)))
    .map(({ body }) => body as unknown as JobLine);
}

const order = (one: string, other: string): number => (one < other ? -1 : 1);
