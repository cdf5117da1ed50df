import type { UnitId } from '../../procedures/calculations/unit-table.ts';
import { preferredUnit } from '../../procedures/calculations/units.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import type { JobLine } from '../jobs/job-stream.ts';
import type { MeasuredCycle } from './measured.ts';

/** One reading of a history. */
export interface HistoryPoint {
  readonly job: string;
  readonly at: string;
  readonly when: 'as found' | 'as left';
  readonly valueSi: number;
  readonly uncertaintySi: number;
  /** Read since the valve was last set: a trend runs from there. */
  readonly isCounted: boolean;
}

export interface Series {
  readonly id:
    | 'error'
    | 'hysteresis'
    | 'friction'
    | 'bench-set-shift'
    | 'seat-leak'
    | 'seat-bubbles'
    | 'stroke-open'
    | 'stroke-shut';
  readonly title: string;
  /** Values and limits are in its SI; percent stays percent. */
  readonly unit: UnitId;
  /** What is counted, where that has no unit. */
  readonly counts?: string;
  /** Why no trend runs over it, where none can. */
  readonly noTrend?: string;
  readonly limitLowSi: number | null;
  readonly limitHighSi: number | null;
  /** What the sheet expects of it. It is shown, and no date of leaving is told by it: it is no limit. */
  readonly expected: { readonly valueSi: number; readonly from: string } | null;
  readonly points: readonly HistoryPoint[];
}

interface Kind extends Pick<Series, 'id' | 'title'> {
  unit(sheet: ValveSheet): UnitId;
  limits(sheet: ValveSheet): readonly [number | null, number | null];
  expected?(sheet: ValveSheet): Series['expected'];
  of(cycle: MeasuredCycle): readonly [valueSi: number | null, uncertaintySi: number | null];
}

const KINDS: readonly Kind[] = [
  {
    id: 'error',
    title: 'Largest error, of travel',
    unit: () => '%',
    limits: ({ errorTolerancePercent: limit }) => [-limit, limit],
    of: ({ errorPercent, uncertaintyPercent }) => [errorPercent, uncertaintyPercent],
  },
  {
    id: 'hysteresis',
    title: 'Hysteresis and dead band',
    unit: () => '%',
    limits: ({ hysteresisTolerancePercent }) => [null, hysteresisTolerancePercent],
    of: ({ hysteresisPercent, uncertaintyPercent }) => [hysteresisPercent, uncertaintyPercent],
  },
  {
    id: 'friction',
    title: 'Friction each way',
    unit: ({ units }) => preferredUnit('force', units),
    limits: ({ frictionMaxN }) => [null, frictionMaxN],
    expected: ({ packingFrictionN: valueSi, packingFrictionSource }) =>
      valueSi === null ? null : { valueSi, from: packingFrictionSource ?? 'the sheet, without a source' },
    of: ({ frictionN, frictionUncertaintyN }) => [frictionN, frictionUncertaintyN],
  },
  {
    id: 'bench-set-shift',
    title: 'Spring against bench set',
    unit: ({ units }) => preferredUnit('pressure', units),
    limits: ({ benchSetTolerancePa: limit }) => [-limit, limit],
    of: ({ benchSetShiftPa, benchSetShiftUncertaintyPa }) => [benchSetShiftPa, benchSetShiftUncertaintyPa],
  },
];

const OVERHAULS = PROCEDURES.filter(({ folder }) => folder === 'overhaul').map(
  ({ definition }) => definition.id,
);

/** Did the job set or take apart what drifts? What was read before it says nothing of what drifts since. */
function isSetAnew({ measured, procedure, closedAs }: JobLine): boolean {
  const hasLeft = measured !== null && measured.asLeft !== null;
  return hasLeft || (closedAs !== 'stopped' && isOverhaul(procedure));
}

/** Closed jobs of one valve, the oldest first. */
export function closedJobs(lines: readonly JobLine[]): readonly JobLine[] {
  return lines
    .filter(({ status, closedAt }) => status === 'closed' && closedAt !== null)
    .toSorted((one, other) => ((one.closedAt ?? '') < (other.closedAt ?? '') ? -1 : 1));
}

/** The histories of a valve, against the limits of its sheet of today. */
export function seriesOf(lines: readonly JobLine[], sheet: ValveSheet): readonly Series[] {
  const jobs = closedJobs(lines);
  const lastSet = jobs.findLastIndex(isSetAnew);
  const cycles = KINDS.map((kind) => {
    const [limitLowSi, limitHighSi] = kind.limits(sheet);
    const points = jobs.flatMap((job, at) => pointsOf({ job, kind, at, lastSet }));
    const { id, title } = kind;
    const expected = kind.expected?.(sheet) ?? null;
    return { id, title, unit: kind.unit(sheet), limitLowSi, limitHighSi, expected, points };
  });
  const others = [leakSeries(jobs), bubbleSeries(jobs), ...strokeSeries(jobs, sheet)];
  return [...cycles, ...others.filter((one) => one !== null)];
}

const LEAK_UNIT: UnitId = 'ml/min';

/** Only where it was ever measured. Its limit is that of the last test: another class or pressure, another limit. */
function leakSeries(jobs: readonly JobLine[]): Series | null {
  const lastTaken = jobs.findLastIndex(
    ({ procedure, closedAs }) => isOverhaul(procedure) && closedAs !== 'stopped',
  );
  const points = jobs.flatMap(({ id, closedAt, measured }, at): readonly HistoryPoint[] => {
    const leak = measured?.seatLeak ?? null;
    if (leak === null || closedAt === null) return [];
    const { leakM3PerS: valueSi, uncertaintyM3PerS: uncertaintySi } = leak;
    // Nothing that came has no uncertainty to weigh it by: it is shown, and no trend runs over it.
    const isCounted = at >= lastTaken && uncertaintySi > 0;
    return [{ job: id, at: closedAt, when: 'as found', valueSi, uncertaintySi, isCounted }];
  });
  const limitHighSi = jobs.findLast(({ measured }) => (measured?.seatLeak ?? null) !== null)?.measured
    ?.seatLeak?.allowedM3PerS;
  if (limitHighSi === undefined) return null;
  const title = 'Seat leakage';
  return { id: 'seat-leak', title, unit: LEAK_UNIT, limitLowSi: null, limitHighSi, expected: null, points };
}

/** Only where they were ever counted; an overhaul begins them anew, as it does the flow. */
function bubbleSeries(jobs: readonly JobLine[]): Series | null {
  const lastTaken = jobs.findLastIndex(
    ({ procedure, closedAs }) => isOverhaul(procedure) && closedAs !== 'stopped',
  );
  const points = jobs.flatMap(({ id, closedAt, measured }, at): readonly HistoryPoint[] => {
    const counted = measured?.seatBubbles ?? null;
    if (counted === null || closedAt === null) return [];
    const { perMin: valueSi, givePerMin: uncertaintySi } = counted;
    return [{ job: id, at: closedAt, when: 'as found', valueSi, uncertaintySi, isCounted: at >= lastTaken }];
  });
  const limitHighSi = jobs.findLast(({ measured }) => (measured?.seatBubbles ?? null) !== null)?.measured
    ?.seatBubbles?.allowedPerMin;
  if (limitHighSi === undefined) return null;
  const title = 'Seat leakage, bubbles a minute';
  const counted = { unit: '1', counts: 'a minute' } as const;
  return { id: 'seat-bubbles', title, ...counted, limitLowSi: null, limitHighSi, expected: null, points };
}

const TIMED_BY_HAND = 'Timed by hand, give or take not known: it is shown, and no trend runs over it.';

interface Timed extends Pick<Series, 'title' | 'limitHighSi'> {
  readonly id: 'stroke-open' | 'stroke-shut';
  readonly of: 'strokeOpenS' | 'strokeShutS';
}

/** Only where it was ever timed. */
function strokeSeries(jobs: readonly JobLine[], sheet: ValveSheet): readonly (Series | null)[] {
  const timed = ({ id, title, of, limitHighSi }: Timed): Series | null => {
    const points = jobs.flatMap(({ id: job, closedAt, measured }): readonly HistoryPoint[] => {
      const valueSi = measured?.[of] ?? null;
      if (valueSi === null || closedAt === null) return [];
      return [{ job, at: closedAt, when: 'as left', valueSi, uncertaintySi: 0, isCounted: false }];
    });
    const limits = { limitLowSi: null, limitHighSi, expected: null };
    return points.length === 0 ? null : { id, title, unit: 's', ...limits, noTrend: TIMED_BY_HAND, points };
  };
  const { strokeOpenMaxS, strokeShutMaxS } = sheet;
  return [
    timed({ id: 'stroke-open', title: 'Time to open', of: 'strokeOpenS', limitHighSi: strokeOpenMaxS }),
    timed({ id: 'stroke-shut', title: 'Time to shut', of: 'strokeShutS', limitHighSi: strokeShutMaxS }),
  ];
}

/** When it was last taken apart; blank where it never was. What was read before says nothing of how it stands. */
export function lastTakenApart(jobs: readonly JobLine[]): string {
  const job = jobs.findLast(({ procedure, closedAs }) => isOverhaul(procedure) && closedAs !== 'stopped');
  return job?.closedAt ?? '';
}

function isOverhaul(procedure: string): boolean {
  return OVERHAULS.includes(procedure);
}

function pointsOf(of: {
  readonly job: JobLine;
  readonly kind: Kind;
  readonly at: number;
  readonly lastSet: number;
}): readonly HistoryPoint[] {
  const { job, kind, at, lastSet } = of;
  const { measured, closedAt, id } = job;
  if (measured === null || closedAt === null) return [];
  return (['as found', 'as left'] as const).flatMap((when) => {
    const cycle = when === 'as found' ? measured.asFound : measured.asLeft;
    const [valueSi, uncertaintySi] = cycle === null ? [null, null] : kind.of(cycle);
    if (valueSi === null || uncertaintySi === null || uncertaintySi <= 0) return [];
    const isCounted = at > lastSet || (at === lastSet && when === 'as left');
    return [{ job: id, at: closedAt, when, valueSi, uncertaintySi, isCounted }];
  });
}
