import { z } from 'zod';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { derived } from '../derived.ts';
import { firstOf } from '../first-of.ts';
import type { JobLine } from '../jobs/job-stream.ts';
import { day } from '../jobs/view/words.ts';
import { closedJobs, lastTakenApart, type Series, seriesOf } from './series.ts';
import { METHOD, trendOf } from './trend.ts';

/** So many valves stand in each list. */
const LIST_MAX = 50;
const DAY_MS = 24 * 3600 * 1000;
const MONTH_MS = 30.4375 * DAY_MS;

export const plantHistorySchema = z.object({
  worst: z.array(
    z.object({
      tag: z.string(),
      job: z.string(),
      checkedOn: z.string(),
      when: z.enum(['as found', 'as left']),
      what: z.string(),
      ofLimitPercent: z.int().describe('100: at its limit'),
    }),
  ),
  overdue: z.array(
    z.object({
      tag: z.string(),
      lastOn: z.string().nullable(),
      intervalMonths: z.int(),
      proposed: z.boolean().describe('Proposed from its history, not the usual interval of the plant'),
      dueOn: z.string().nullable(),
      lateDays: z.int().nullable(),
    }),
  ),
  proposed: z.array(
    z.object({
      tag: z.string(),
      intervalMonths: z.int(),
      by: z.string().describe('The quantity that comes to its limit first'),
      readings: z.int().describe('How many the trend runs over'),
      dueOn: z.string(),
    }),
  ),
  method: z.string(),
  findings: z.array(z.object({ finding: z.string(), jobs: z.int(), valves: z.int() })),
  causes: z
    .array(z.object({ cause: z.string(), jobs: z.int(), valves: z.int() }))
    .describe('What people found on closed jobs, and what finding a fault ended with'),
  usualMonths: z.int(),
  valves: z.int(),
  checked: z.int(),
});

export type PlantHistory = z.infer<typeof plantHistorySchema>;

export interface PlantInput {
  /** Those in use. */
  readonly valves: readonly ReadValve[];
  readonly jobs: readonly FoundOnJob[];
  /** Where no interval is proposed from a history. */
  readonly usualMonths: number;
  readonly nowMs: number;
}

/** The valves of the plant by how they stood last, by what is due, and by what was found. */
export function plantHistory({ valves, jobs, usualMonths, nowMs }: PlantInput): PlantHistory {
  return {
    ...ofValves(valves),
    overdue: overdueIn(valves, { usualMonths, nowMs }),
    method: METHOD,
    ...ofJobs(jobs),
    usualMonths,
    valves: valves.length,
  };
}

/** What does not change with the day. */
const ofValves = derived((valves: readonly ReadValve[]) => ({
  worst: firstOf(
    valves.flatMap(({ stands }) => stands),
    { most: LIST_MAX, isBefore: (one, other) => one.ofLimitPercent > other.ofLimitPercent },
  ),
  proposed: firstOf(valves.flatMap(proposedOf), {
    most: LIST_MAX,
    isBefore: (one, other) => one.dueOn < other.dueOn,
  }),
  checked: valves.filter(({ lastAt }) => lastAt !== null).length,
}));

const ofJobs = derived((jobs: readonly FoundOnJob[]) => ({
  findings: counted(jobs, ({ outside }) => outside).map(({ what, ...of }) => ({ finding: what, ...of })),
  causes: counted(jobs, ({ causes }) => causes)
    .slice(0, LIST_MAX)
    .map(({ what, ...of }) => ({ cause: what, ...of })),
}));

/** What a job was found to be, by what the plant counts. */
export interface FoundOnJob {
  readonly tag: string;
  /** Outside its limit as found. */
  readonly outside: readonly string[];
  /** Each once. */
  readonly causes: readonly string[];
}

interface ValveJobs {
  readonly sheet: ValveSheet;
  /** Closed ones, the oldest first. */
  readonly jobs: readonly JobLine[];
}

function isCheck({ measured }: JobLine): boolean {
  return measured !== null && (measured.asFound !== null || measured.asLeft !== null);
}

/** What the jobs of a valve say, read once for all lists of the plant. */
export interface ReadValve {
  readonly tag: string;
  /** When it was last checked. */
  readonly lastAt: string | null;
  readonly lastAtMs: number | null;
  readonly stands: PlantHistory['worst'];
  /** The shortest interval that its quantities propose, each with its readings. */
  readonly interval: {
    readonly intervalMonths: number;
    readonly by: string;
    readonly readings: number;
  } | null;
}

/** @param lines of all its jobs */
export function readValve(sheet: ValveSheet, lines: readonly JobLine[]): ReadValve {
  const jobs = closedJobs(lines);
  const all = seriesOf(jobs, sheet);
  const intervals = all.flatMap((series) => {
    const { intervalMonths, counted } = trendOf(series);
    return intervalMonths === null ? [] : [{ intervalMonths, by: series.title, readings: counted }];
  });
  const [interval = null] = intervals.toSorted((one, other) => one.intervalMonths - other.intervalMonths);
  const lastAt = jobs.findLast(isCheck)?.closedAt ?? null;
  const lastAtMs = lastAt === null ? null : Date.parse(lastAt);
  return { tag: sheet.tag, lastAt, lastAtMs, stands: standsOf({ sheet, jobs }, all), interval };
}

/** How a valve stood when each quantity was last read, but never before it was last taken apart: the worst of them. */
function standsOf({ sheet, jobs }: ValveJobs, all: readonly Series[]): PlantHistory['worst'] {
  const [worst] = all
    .flatMap((series) => shareOf(series, lastTakenApart(jobs)))
    .toSorted((one, other) => other.share - one.share);
  if (worst === undefined) return [];
  const { point, share, what } = worst;
  const { job, at, when } = point;
  return [{ tag: sheet.tag, job, checkedOn: day(at), when, what, ofLimitPercent: Math.round(100 * share) }];
}

/** The newest reading of a quantity as a share of its limit on that side; nothing where it has none. */
function shareOf({ id, points, limitLowSi, limitHighSi }: Series, since: string) {
  const point = points.at(-1);
  if (point === undefined || point.at < since) return [];
  const limitSi = point.valueSi < 0 ? limitLowSi : limitHighSi;
  if (limitSi === null || limitSi === 0) return [];
  return [{ what: CALLED[id], point, share: point.valueSi / limitSi }];
}

const CALLED: Readonly<Record<Series['id'], string>> = {
  error: 'error',
  hysteresis: 'hysteresis and dead band',
  friction: 'friction',
  'bench-set-shift': 'spring against bench set',
  'seat-leak': 'seat leakage',
  'seat-bubbles': 'seat leakage, bubbles',
  'stroke-open': 'time to open',
  'stroke-shut': 'time to shut',
};

interface Due {
  readonly valve: ReadValve;
  /** Without end in the past where it was never checked. */
  readonly dueMs: number;
}

/** Those that are due longest come first. */
function overdueIn(
  valves: readonly ReadValve[],
  { usualMonths, nowMs }: Pick<PlantInput, 'usualMonths' | 'nowMs'>,
): PlantHistory['overdue'] {
  return dueFirst(valves)(usualMonths)
    .filter(({ dueMs }) => dueMs <= nowMs)
    .map((one) => overdueRow(one, { usualMonths, nowMs }));
}

/** The first that fall due, by the usual interval. */
const dueFirst = derived((valves: readonly ReadValve[]) => {
  const known = new Map<number, readonly Due[]>();
  return (usualMonths: number): readonly Due[] => {
    const found = known.get(usualMonths);
    if (found !== undefined) return found;
    const due = valves.map((valve): Due => ({ valve, dueMs: dueMsOf(valve, usualMonths) }));
    const first = firstOf(due, { most: LIST_MAX, isBefore: (one, other) => one.dueMs < other.dueMs });
    known.set(usualMonths, first);
    return first;
  };
});

function dueMsOf({ lastAtMs, interval }: ReadValve, usualMonths: number): number {
  if (lastAtMs === null) return Number.NEGATIVE_INFINITY;
  return lastAtMs + (interval?.intervalMonths ?? usualMonths) * MONTH_MS;
}

function overdueRow(
  { valve: { tag, lastAt, interval }, dueMs }: Due,
  { usualMonths, nowMs }: Pick<PlantInput, 'usualMonths' | 'nowMs'>,
): PlantHistory['overdue'][number] {
  if (lastAt === null)
    return { tag, lastOn: null, intervalMonths: usualMonths, proposed: false, dueOn: null, lateDays: null };
  const intervalMonths = interval?.intervalMonths ?? usualMonths;
  const dueOn = day(new Date(dueMs).toISOString());
  const lateDays = Math.floor((nowMs - dueMs) / DAY_MS);
  return { tag, lastOn: day(lastAt), intervalMonths, proposed: interval !== null, dueOn, lateDays };
}

/** The shortest interval that the history of a valve gives; none where it has too few readings. */
function proposedOf({ tag, lastAt, interval }: ReadValve): PlantHistory['proposed'] {
  if (lastAt === null || interval === null) return [];
  const dueMs = Date.parse(lastAt) + interval.intervalMonths * MONTH_MS;
  return [{ tag, ...interval, dueOn: day(new Date(dueMs).toISOString()) }];
}

/** What was found, by on how many jobs: the most first. */
function counted(
  jobs: readonly FoundOnJob[],
  found: (job: FoundOnJob) => readonly string[],
): readonly { readonly what: string; readonly jobs: number; readonly valves: number }[] {
  const counts = new Map<string, { readonly tags: Set<string>; jobs: number }>();
  for (const job of jobs) {
    for (const what of found(job)) {
      const one = counts.get(what) ?? { tags: new Set<string>(), jobs: 0 };
      one.tags.add(job.tag);
      one.jobs += 1;
      counts.set(what, one);
    }
  }
  return [...counts]
    .map(([what, { tags, jobs: count }]) => ({ what, jobs: count, valves: tags.size }))
    .toSorted((one, other) => other.jobs - one.jobs || one.what.localeCompare(other.what, 'en'));
}
