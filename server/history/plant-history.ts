import { z } from 'zod';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { JobLine } from '../jobs/job-stream.ts';
import { day } from '../jobs/view/words.ts';
import { turns } from '../long/turns.ts';
import { commonestCauses } from './noted.ts';
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
  readonly sheets: readonly ValveSheet[];
  readonly lines: readonly JobLine[];
  /** Where no interval is proposed from a history. */
  readonly usualMonths: number;
  readonly nowMs: number;
}

/** The valves of the plant by how they stood last, by what is due, and by what was found. Others are let in between valves. */
export async function plantHistory({ sheets, lines, usualMonths, nowMs }: PlantInput): Promise<PlantHistory> {
  const byTag = grouped(lines, ({ tag }) => tag);
  const turn = turns();
  const valves: ReadValve[] = [];
  for (const sheet of sheets) {
    valves.push(readValve({ sheet, jobs: closedJobs(byTag.get(sheet.tag) ?? []) }));
    await turn();
  }
  const worst = valves
    .flatMap(({ stands }) => stands)
    .toSorted((one, other) => other.ofLimitPercent - one.ofLimitPercent);
  const overdue = valves.flatMap((valve) => overdueOf(valve, { usualMonths, nowMs }));
  return {
    worst: worst.slice(0, LIST_MAX),
    overdue: overdue
      .toSorted((one, other) => (other.lateDays ?? Infinity) - (one.lateDays ?? Infinity))
      .slice(0, LIST_MAX),
    proposed: valves
      .flatMap(proposedOf)
      .toSorted((one, other) => (one.dueOn < other.dueOn ? -1 : 1))
      .slice(0, LIST_MAX),
    method: METHOD,
    findings: findingsOf(lines),
    causes: commonestCauses(lines)
      .slice(0, LIST_MAX)
      .map((one) => ({ ...one })),
    usualMonths,
    valves: sheets.length,
    checked: valves.filter(({ lastAt }) => lastAt !== null).length,
  };
}

interface ValveJobs {
  readonly sheet: ValveSheet;
  readonly jobs: readonly JobLine[];
}

function isCheck({ measured }: JobLine): boolean {
  return measured !== null && (measured.asFound !== null || measured.asLeft !== null);
}

/** What the jobs of a valve say, read once for all lists of the plant. */
interface ReadValve {
  readonly tag: string;
  /** When it was last checked. */
  readonly lastAt: string | null;
  readonly stands: PlantHistory['worst'];
  /** The shortest interval that its quantities propose, each with its readings. */
  readonly interval: {
    readonly intervalMonths: number;
    readonly by: string;
    readonly readings: number;
  } | null;
}

function readValve({ sheet, jobs }: ValveJobs): ReadValve {
  const all = seriesOf(jobs, sheet);
  const intervals = all.flatMap((series) => {
    const { intervalMonths, counted } = trendOf(series);
    return intervalMonths === null ? [] : [{ intervalMonths, by: series.title, readings: counted }];
  });
  const [interval = null] = intervals.toSorted((one, other) => one.intervalMonths - other.intervalMonths);
  const lastAt = jobs.findLast(isCheck)?.closedAt ?? null;
  return { tag: sheet.tag, lastAt, stands: standsOf({ sheet, jobs }, all), interval };
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

function overdueOf(
  { tag, lastAt, interval }: ReadValve,
  { usualMonths, nowMs }: Pick<PlantInput, 'usualMonths' | 'nowMs'>,
): PlantHistory['overdue'] {
  if (lastAt === null)
    return [{ tag, lastOn: null, intervalMonths: usualMonths, proposed: false, dueOn: null, lateDays: null }];
  const intervalMonths = interval?.intervalMonths ?? usualMonths;
  const dueMs = Date.parse(lastAt) + intervalMonths * MONTH_MS;
  if (dueMs > nowMs) return [];
  const dueOn = day(new Date(dueMs).toISOString());
  const lateDays = Math.floor((nowMs - dueMs) / DAY_MS);
  return [{ tag, lastOn: day(lastAt), intervalMonths, proposed: interval !== null, dueOn, lateDays }];
}

/** The shortest interval that the history of a valve gives; none where it has too few readings. */
function proposedOf({ tag, lastAt, interval }: ReadValve): PlantHistory['proposed'] {
  if (lastAt === null || interval === null) return [];
  const dueMs = Date.parse(lastAt) + interval.intervalMonths * MONTH_MS;
  return [{ tag, ...interval, dueOn: day(new Date(dueMs).toISOString()) }];
}

/** What was outside its limit as found, by how often. */
function findingsOf(lines: readonly JobLine[]): PlantHistory['findings'] {
  const found = lines.flatMap(({ tag, measured }) =>
    (measured?.asFound?.outside ?? []).map((finding) => ({ finding, tag })),
  );
  return [...grouped(found, ({ finding }) => finding)]
    .map(([finding, all]) => ({ finding, jobs: all.length, valves: new Set(all.map(({ tag }) => tag)).size }))
    .toSorted((one, other) => other.jobs - one.jobs);
}

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const group = groups.get(keyOf(one));
    if (group === undefined) groups.set(keyOf(one), [one]);
    else group.push(one);
  }
  return groups;
}
