/** What is planned, as the shift list and the list of plans show it. */
import { z } from 'zod';
import { procedureNamed } from '../../procedures/served.ts';
import { derived } from '../derived.ts';
import type { Services } from '../services.ts';
import { valveKind } from '../valves/valve-stream.ts';
import type { SavedPlan } from './plan-stream.ts';

/** Work that is due within so many days is told beforehand. */
const SOON_DAYS = 7;

const DAY_MS = 24 * 3600 * 1000;

export const plannedSchema = z.object({
  number: z.string(),
  href: z.string(),
  tag: z.string(),
  place: z.string(),
  procedure: z.string(),
  dueOn: z.string(),
  daysLate: z.int().describe('0 on the day itself, below 0 before'),
  due: z.string().describe('The same, in words'),
  role: z.string(),
  isMine: z.boolean().describe('For whoever looks, by role'),
  note: z.string(),
  opens: z
    .string()
    .nullable()
    .describe('Where the job is opened from it; null while another job has the valve'),
  openJob: z.string().nullable(),
});

export type Planned = z.infer<typeof plannedSchema>;

export interface PlannedNow {
  /** Due today or before, the longest late first. */
  readonly now: readonly Planned[];
  /** Of those, how many there are in all. */
  readonly due: number;
  /** Due within the next days; these are only counted on the shift list. */
  readonly soon: number;
}

type PlansOf = Pick<Services, 'log' | 'lists'>;

interface Looking {
  readonly role: string;
  readonly nowMs: number;
}

/** The plans that are still to do, the earliest date first. */
export async function openPlans(
  of: PlansOf,
  looking: Looking & { readonly listedMax: number },
): Promise<{ readonly plans: readonly Planned[]; readonly found: number }> {
  const all = await stillToDo(of);
  const listed = all.slice(0, looking.listedMax);
  const plans = await Promise.all(listed.map((saved) => plannedRow(of, { saved, looking })));
  return { plans, found: all.length };
}

export async function plannedNow(
  of: PlansOf,
  { listedMax, ...looking }: Looking & { readonly listedMax: number },
): Promise<PlannedNow> {
  const all = await stillToDo(of);
  const days = all.map((saved) => daysLate(saved.plan.dueOn, looking.nowMs));
  const due = all.filter((_, at) => (days[at] ?? -1) >= 0);
  return {
    now: await Promise.all(due.slice(0, listedMax).map((saved) => plannedRow(of, { saved, looking }))),
    due: due.length,
    soon: days.filter((late) => late < 0 && late >= -SOON_DAYS).length,
  };
}

/** Plans of one valve that are still to do. */
export async function plansOf(of: PlansOf, tag: string): Promise<readonly SavedPlan[]> {
  return (await stillToDo(of)).filter(({ plan }) => plan.tag === tag);
}

/** Every plan that is neither opened nor withdrawn, the earliest date first. */
export async function stillToDo({ lists }: Pick<Services, 'lists'>): Promise<readonly SavedPlan[]> {
  return inOrderOfDays(await lists.plans.inOrder());
}

const inOrderOfDays = derived((all: readonly SavedPlan[]) =>
  all.toSorted(({ plan: one }, { plan: other }) =>
    one.dueOn === other.dueOn ? 0 : one.dueOn < other.dueOn ? -1 : 1,
  ),
);

async function plannedRow(
  { log }: PlansOf,
  { saved: { plan }, looking }: { readonly saved: SavedPlan; readonly looking: Looking },
): Promise<Planned> {
  const { sheet, openJob } = await log.state(valveKind, plan.tag);
  const { number, tag, procedure, place, dueOn, role, note } = plan;
  const late = daysLate(dueOn, looking.nowMs);
  return {
    number,
    href: pathOfPlan(number),
    tag,
    place: [sheet?.location ?? '', sheet?.service ?? ''].filter((text) => text !== '').join(', '),
    procedure: `${procedureNamed(procedure)?.definition.title ?? procedure}, ${placeWord(place)}`,
    dueOn,
    daysLate: late,
    due: dueWords(late),
    role,
    isMine: role === looking.role,
    note,
    opens:
      openJob === null ? `/jobs/new?${new URLSearchParams({ tag, procedure, place, plan: number })}` : null,
    openJob,
  };
}

export const pathOfPlan = (number: string): string => `/plans/${encodeURIComponent(number)}`;

export function placeWord(place: 'bench' | 'line'): string {
  return place === 'bench' ? 'on the bench' : 'in the line';
}

/** Days of the calendar, in UTC as every date of a record. @example daysLate('2026-03-04', Date.UTC(2026, 2, 5, 8)) // 1 */
export function daysLate(dueOn: string, nowMs: number): number {
  return Math.floor(nowMs / DAY_MS) - Math.floor(Date.parse(`${dueOn}T00:00:00Z`) / DAY_MS);
}

/** @example dueWords(-3) // 'in 3 days' */
export function dueWords(late: number): string {
  if (late === 0) return 'today';
  const days = `${Math.abs(late)} day${Math.abs(late) === 1 ? '' : 's'}`;
  return late > 0 ? `${days} late` : `in ${days}`;
}
