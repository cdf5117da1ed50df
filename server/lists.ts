/** What pages look for among all valves and all jobs, in memory: a plant may have twenty thousand of the one and as many of the other. */
import { sayCauses } from './history/noted.ts';
import { PlantReadings } from './history/plant-readings.ts';
import type { JobLine } from './jobs/job-stream.ts';
import { linesOfJobs } from './jobs/lines-of-jobs.ts';
import { KeptList } from './log/kept-list.ts';
import { ByKeys } from './log/list-index.ts';
import type { SiteLog } from './log/site-log.ts';
import { WordSearch } from './log/word-search.ts';
import type { SavedValve } from './pages/valve-parts.ts';
import { planKind, type SavedPlan } from './plans/plan-stream.ts';

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
  readonly isClosed: boolean;
  readonly openedAt: string;
  readonly closedAt: string | null;
  /** Numbers of its test gear. */
  readonly gear: readonly string[];
  /** What was outside its limit as found. */
  readonly outside: readonly string[];
  /** What was found on it, once it is closed. */
  readonly causes: readonly string[];
}

export interface Lists {
  readonly valves: KeptList<ValveLine>;
  readonly valvesByWords: WordSearch<ValveLine>;
  readonly jobs: KeptList<JobOfValve>;
  /** By the tag of the valve. */
  readonly jobsByTag: () => Promise<ByKeys<JobOfValve>>;
  /** By the numbers of the test gear. */
  readonly jobsByGear: () => Promise<ByKeys<JobOfValve>>;
  /** Those that are still to do. */
  readonly plans: KeptList<SavedPlan>;
  /** What the jobs of each valve say. */
  readonly readings: PlantReadings;
}

export function makeLists(log: SiteLog): Lists {
  const valves = new KeptList({
    log,
    kind: 'valve',
    slim: ({ body }) => valveLine(body as unknown as SavedValve),
  });
  const jobs = new KeptList({
    log,
    kind: 'job',
    slim: ({ body }) => jobOfValve(body as unknown as JobLine),
  });
  const jobsByTag = jobs.indexed(new ByKeys<JobOfValve>(({ tag }) => [tag]));
  return {
    valves,
    valvesByWords: new WordSearch(valves),
    jobs,
    jobsByTag,
    jobsByGear: jobs.indexed(new ByKeys<JobOfValve>(({ gear }) => gear)),
    readings: new PlantReadings({ log, valves, jobs, jobsByTag }),
    plans: new KeptList({
      log,
      kind: planKind.kind,
      slim: ({ body }) => {
        const saved = body as unknown as SavedPlan;
        return saved.status === 'planned' ? saved : null;
      },
    }),
  };
}

function jobOfValve({ id, tag, status, openedAt, closedAt, gear, measured, noted }: JobLine): JobOfValve {
  const isClosed = status === 'closed';
  const outside = measured?.asFound?.outside ?? [];
  const causes = isClosed && noted !== null ? [...new Set(sayCauses(noted))] : [];
  return { id, tag, isClosed, openedAt, closedAt, gear, outside, causes };
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
  return await linesOfJobs(log, (await lists.jobsByTag()).of(tag));
}
