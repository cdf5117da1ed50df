import { describe, expect, test } from 'vitest';
import type { MeasuredCycle } from '../../../server/history/measured.ts';
import { sayCauses } from '../../../server/history/noted.ts';
import { type PlantHistory, plantHistory, readValve } from '../../../server/history/plant-history.ts';
import { valveHistory } from '../../../server/history/valve-history.ts';
import type { JobLine } from '../../../server/jobs/job-stream.ts';
import { historyCurve } from '../../../views/pictures/history-curve.ts';
import { aSheet } from '../../builders/sheets.ts';

const DAY_MS = 24 * 3600 * 1000;
const START_MS = Date.parse('2021-01-10T08:00:00.000Z');
const SHEET = aSheet({ errorTolerancePercent: 5, hysteresisTolerancePercent: 5 });

function cycle(errorPercent: number): MeasuredCycle {
  return {
    errorPercent,
    hysteresisPercent: 2,
    uncertaintyPercent: 0.9,
    frictionN: 200,
    frictionUncertaintyN: 20,
    benchSetShiftPa: 0,
    benchSetShiftUncertaintyPa: 500,
    outside: errorPercent > 5.9 ? ['error'] : [],
  };
}

/** The plant, of the sheets and the lines of all jobs. */
function plantOf(
  sheets: readonly ReturnType<typeof aSheet>[],
  { lines, nowMs }: { readonly lines: readonly JobLine[]; readonly nowMs: number },
): PlantHistory {
  const valves = sheets.map((sheet) =>
    readValve(
      sheet,
      lines.filter(({ tag }) => tag === sheet.tag),
    ),
  );
  const jobs = lines.map(({ tag, measured, noted }) => ({
    tag,
    outside: measured?.asFound?.outside ?? [],
    causes: noted === null ? [] : sayCauses(noted),
  }));
  return plantHistory({ valves, jobs, usualMonths: 12, nowMs });
}

interface Made {
  readonly days: number;
  readonly found: number;
  readonly left?: number;
  readonly tag?: string;
  /** Seat leakage in ml/min, of 10 that are allowed. */
  readonly leak?: number;
  /** Bubbles a minute, of 3 that are allowed. */
  readonly bubbles?: number;
  readonly opensS?: number;
  readonly procedure?: string;
}

/** 1 ml/min. */
const ML_PER_MIN = 1e-6 / 60;

function line(
  { days, found, left, tag = SHEET.tag, leak, bubbles, opensS, procedure = 'stroke-check' }: Made,
  at: number,
): JobLine {
  const closedAt = new Date(START_MS + days * DAY_MS).toISOString();
  return {
    id: String(at + 1),
    tag,
    location: '',
    service: '',
    procedure,
    status: 'closed',
    closedAs: 'done',
    goesOnAs: null,
    step: 'done',
    since: closedAt,
    openedAt: closedAt,
    closedAt,
    openedBy: 't1',
    performers: [],
    locks: [],
    gear: [],
    noted: null,
    measured: {
      seatLeak:
        leak === undefined
          ? null
          : {
              leakM3PerS: leak * ML_PER_MIN,
              uncertaintyM3PerS: 0.05 * leak * ML_PER_MIN,
              allowedM3PerS: 10 * ML_PER_MIN,
            },
      seatBubbles: bubbles === undefined ? null : { perMin: bubbles, allowedPerMin: 3, givePerMin: 0.5 },
      asFound: cycle(found),
      asLeft: left === undefined ? null : cycle(left),
      strokeOpenS: opensS ?? null,
      strokeShutS: null,
    },
  };
}

/** A percent a year, read every half year. */
const DRIFTING = [0, 0.55, 0.95, 1.5, 2.05, 2.45].map((found, at) => line({ days: 182 * at, found }, at));

function quantity(lines: readonly JobLine[], id: string) {
  const found = valveHistory(lines, SHEET).history.quantities.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no ${id}`);
  return found;
}

describe('the history of a valve', () => {
  test('says drift, date of leaving with its interval, and proposes a check before the early end', () => {
    const error = quantity(DRIFTING, 'error');
    expect(error.isDrifting).toBe(true);
    expect(Math.abs((error.driftPerYear ?? 0) - 1)).toBeLessThan(error.driftGivePerYear ?? 0);
    const { expected, earliest, latest, limit } = error.leaves ?? {};
    expect(limit).toBe(5);
    expect([earliest, expected, latest].toSorted()).toEqual([earliest, expected, latest]);
    // At one percent a year from 2021 on: five years.
    expect(expected).toMatch(/^202(5-1|6-0)/);
    expect(error.says.join(' ')).toMatch(
      /drifts: \+0\.99 % a year, give or take 0\.43.*expected to leave.*Proposed/,
    );
    expect(error.intervalMonths).toBeGreaterThan(12);
    expect(valveHistory(DRIFTING, SHEET).history.proposedMonths).toBe(error.intervalMonths);
  });

  test('proposes nothing from four readings, or from five within a year, and says what is wanting', () => {
    const four = quantity(DRIFTING.slice(0, 4), 'error');
    expect([four.leaves, four.intervalMonths]).toEqual([null, null]);
    expect(four.says.join(' ')).toContain('five readings over more than a year; there are 4 over 17 months');
    const soon = [0, 1, 2, 1, 2].map((found, at) => line({ days: 60 * at, found }, at));
    expect(quantity(soon, 'error').says.join(' ')).toContain('there are 5 over 7 months');
  });

  test('runs its trend from the last time that the valve was set, and starts with how it was left', () => {
    const set = [
      ...DRIFTING,
      line({ days: 1100, found: 3, left: 0.2 }, 6),
      line({ days: 1300, found: 0.4 }, 7),
    ];
    const { points, says } = quantity(set, 'error');
    const counted = points.filter((one) => one.counted);
    expect(counted.map(({ job, when, value }) => [job, when, value])).toEqual([
      ['7', 'as left', 0.2],
      ['8', 'as found', 0.4],
    ]);
    expect(points).toHaveLength(9);
    expect(says).toEqual(['2 readings since it was last set: too few for a trend.']);
  });

  test.each([0, 1e-6, 0.9])(
    'tells no trend from readings that lie %d days apart in all, and shows its page',
    (days) => {
      const close = [0, 0.5, 1].map((part, at) => line({ days: part * days, found: at }, at));
      const { leaves, intervalMonths, says } = quantity(close, 'error');
      expect([leaves, intervalMonths]).toEqual([null, null]);
      expect(says).toEqual(['3 readings within one day: too close together for a trend.']);
    },
  );

  test('has seat leakage where it was measured, against what was allowed, from the last overhaul on', () => {
    const leaks = [
      line({ days: 0, found: 1, leak: 9 }, 0),
      line({ days: 200, found: 1, procedure: 'valve-overhaul' }, 1),
      line({ days: 210, found: 1, leak: 0 }, 2),
      ...[2, 3, 4, 5, 6].map((leak, at) => line({ days: 400 + 365 * at, found: 1, leak }, 3 + at)),
    ];
    const { unit, limitHigh, points, isDrifting, driftPerYear } = quantity(leaks, 'seat-leak');
    expect([unit, limitHigh]).toEqual(['ml/min', expect.closeTo(10, 9)]);
    expect(points.map(({ counted }) => counted)).toEqual([false, false, true, true, true, true, true]);
    expect([isDrifting, Math.abs((driftPerYear ?? 0) - 1) < 0.01]).toEqual([true, true]);
    expect(valveHistory(DRIFTING, SHEET).history.quantities.map(({ id }) => id)).not.toContain('seat-leak');
  });

  test('says of friction without a limit what its packing should cost, and leaves no limit by it', () => {
    const [friction] = valveHistory(DRIFTING, aSheet({ frictionMaxN: null })).history.quantities.filter(
      ({ id }) => id === 'friction',
    );
    expect([friction?.limitHigh, friction?.leaves]).toEqual([null, null]);
    expect(friction?.expected).toEqual({
      value: expect.closeTo(50, 3),
      from: 'published table for a 1/2 in stem',
    });
    expect(friction?.says.join(' ')).toContain('no limit');
  });

  test('holds friction and stroke times against the limits of the sheet', () => {
    const timed = DRIFTING.map((one, at) => ({
      ...one,
      measured: one.measured === null ? null : { ...one.measured, strokeOpenS: 4 + at },
    }));
    const limits = ['friction', 'stroke-open'].map((id) => {
      const { limitLow, limitHigh, unit } = quantity(timed, id);
      return [limitLow, limitHigh, unit];
    });
    // As the sheet of FV-214 has them.
    expect(limits).toEqual([
      [null, expect.closeTo(60, 6), 'lbf'],
      [null, 10, 's'],
    ]);
  });

  test('says of a valve without jobs that nothing was read', () => {
    expect(quantity([], 'error').says.join(' ')).toContain('0 readings');
    expect(valveHistory([], SHEET).history.proposedMonths).toBeNull();
  });

  test('holds bubbles at the seat test against the table of the standard, and shows stroke times without a trend', () => {
    const counted = [0.5, 0.8, 1.4, 1.7, 2.1].map((bubbles, at) =>
      line({ days: 200 * at, found: 1, bubbles, opensS: 4 + at }, at),
    );
    const bubbles = quantity(counted, 'seat-bubbles');
    expect(bubbles).toMatchObject({ unit: 'a minute', limitHigh: 3, isDrifting: true });
    expect(bubbles.points.map(({ value, uncertainty, counted: isIn }) => [value, uncertainty, isIn])).toEqual(
      [0.5, 0.8, 1.4, 1.7, 2.1].map((value) => [value, 0.5, true]),
    );
    expect(bubbles.says.join(' ')).toMatch(/a minute a year.*its limit of \+3 a minute/);
    const opens = quantity(counted, 'stroke-open');
    expect([opens.unit, opens.points.map(({ value }) => value), opens.driftPerYear]).toEqual([
      's',
      [4, 5, 6, 7, 8],
      null,
    ]);
    expect(opens.says.join()).toContain('Timed by hand');
    const overhauled = [
      ...counted,
      line({ days: 1100, found: 1, bubbles: 0.2, procedure: 'valve-overhaul' }, 9),
    ];
    expect(quantity(overhauled, 'seat-bubbles').points.filter(({ counted: isIn }) => isIn)).toHaveLength(1);
  });

  test('is drawn with every reading, both limits and a sentence', () => {
    const picture = historyCurve({
      title: 'Error',
      axis: '%',
      limits: [
        { value: -5, text: 'limit' },
        { value: 5, text: 'limit' },
      ],
      expected: [{ value: 3, text: 'expected' }],
      line: [],
      sentence: 'Error: <two> readings.',
      points: [1, 2].map((at) => ({
        timeMs: at * 4e10,
        value: at,
        give: 0.5,
        isLeft: at === 2,
        isCounted: true,
      })),
    });
    expect(picture.match(/12 3 3 3/g)).toHaveLength(2);
    expect(picture).toContain('&#60;two&#62;');
    expect(picture).not.toMatch(/NaN|undefined/);
    expect(
      historyCurve({ title: '', axis: '', limits: [], expected: [], line: [], sentence: '', points: [] }),
    ).toBe('');
  });
});

describe('the history of the plant', () => {
  const other = aSheet({ tag: 'FV-9', errorTolerancePercent: 5, hysteresisTolerancePercent: 5 });
  const never = aSheet({ tag: 'FV-10' });
  const lines = [...DRIFTING, line({ days: 910, found: 7, tag: 'FV-9' }, 10)];
  const at = (days: number) => plantOf([SHEET, other, never], { lines, nowMs: START_MS + days * DAY_MS });

  test('lists valves by how they stood last, and findings by how often', () => {
    const { worst, findings, checked, valves } = at(920);
    expect(worst.map(({ tag, ofLimitPercent }) => [tag, ofLimitPercent])).toEqual([
      ['FV-9', 140],
      // Friction of 200 N, of the 60 lbf that its sheet allows.
      [SHEET.tag, 75],
    ]);
    expect(findings).toEqual([{ finding: 'error', jobs: 1, valves: 1 }]);
    expect([checked, valves]).toEqual([2, 3]);
  });

  test('counts friction, leakage and stroke times among what a valve stands by, not what is older than its overhaul', () => {
    const standing = (sheet: ReturnType<typeof aSheet>, made: readonly JobLine[]) =>
      plantOf([sheet], { lines: made, nowMs: START_MS }).worst.map(({ what, when, ofLimitPercent }) => [
        what,
        when,
        ofLimitPercent,
      ]);
    const timed = line({ days: 1, found: 1, opensS: 12 }, 0);
    expect(standing(SHEET, [timed])).toEqual([['time to open', 'as left', 120]]);
    // By hand: 200 N of 100.
    expect(standing(aSheet({ frictionMaxN: 100 }), [timed])).toEqual([['friction', 'as found', 200]]);
    const leaking = line({ days: 1, found: 1, leak: 30 }, 0);
    expect(standing(SHEET, [leaking])).toEqual([['seat leakage', 'as found', 300]]);
    const overhauled = line({ days: 2, found: 1, left: 0.5, procedure: 'valve-overhaul' }, 1);
    expect(standing(SHEET, [leaking, overhauled])[0]?.[0]).toBe('friction');
  });

  test('proposes an interval only where a valve has readings enough, with the quantity that asks for it', () => {
    const { proposed, method } = at(920);
    expect(proposed.map(({ tag, by, readings }) => [tag, by, readings])).toEqual([
      [SHEET.tag, 'Largest error, of travel', 6],
    ]);
    const own = valveHistory(DRIFTING, SHEET).history.proposedMonths;
    expect([proposed[0]?.intervalMonths, method]).toEqual([own, valveHistory([], SHEET).history.method]);
  });

  test('calls a check overdue by the interval of its own history, else by the usual one; never checked comes first', () => {
    const soon = at(920).overdue.map(({ tag }) => tag);
    expect(soon).toEqual(['FV-10']);
    const late = at(910 + 400).overdue;
    expect(late.map(({ tag, lateDays, proposed }) => [tag, lateDays, proposed])).toEqual([
      ['FV-10', null, false],
      ['FV-9', 34, false],
    ]);
    expect(at(910 + 900).overdue.find(({ tag }) => tag === SHEET.tag)?.proposed).toBe(true);
  });
});
