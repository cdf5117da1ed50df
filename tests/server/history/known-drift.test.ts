/** What the history of a valve says, of jobs whose drift is known because they were made with it. */
import { describe, expect, test } from 'vitest';
import type { MeasuredCycle } from '../../../server/history/measured.ts';
import { seriesOf } from '../../../server/history/series.ts';
import { type Trend, trendOf } from '../../../server/history/trend.ts';
import { valveHistory } from '../../../server/history/valve-history.ts';
import type { JobLine } from '../../../server/jobs/job-stream.ts';
import { normalChance } from '../../builders/normal-chance.ts';
import { aSheet } from '../../builders/sheets.ts';

const DAY_MS = 24 * 3600 * 1000;
const YEAR_DAYS = 365.25;
const START_MS = Date.parse('2016-01-10T08:00:00.000Z');
const SHEET = aSheet({ errorTolerancePercent: 5 });
const isLong = process.env.YOKESIDE_LONG === '1';
/** Each as many times as there are series; 10,000 in the long run. */
const SERIES = isLong ? 10_000 : 500;
/** Expanded uncertainties of ten jobs: some are read with better gauges than others. */
const GIVE_PERCENT = [0.9, 0.6, 1.2, 0.7, 0.9, 1, 0.6, 0.8, 1.1, 0.7];
/** Days between two jobs, about half a year. */
const DAYS = [0, 170, 360, 530, 745, 900, 1110, 1290, 1450, 1660];

interface Known {
  readonly startPercent: number;
  readonly driftPerYear: number;
}

function cycle(errorPercent: number, uncertaintyPercent: number): MeasuredCycle {
  return {
    errorPercent,
    hysteresisPercent: null,
    uncertaintyPercent,
    frictionN: null,
    frictionUncertaintyN: null,
    benchSetShiftPa: null,
    benchSetShiftUncertaintyPa: null,
    outside: [],
  };
}

/** Ten closed jobs on one valve, each read with chance as large as its gauges allow; none set the valve. */
function tenJobs({ startPercent, driftPerYear }: Known, normal: () => number): readonly JobLine[] {
  return DAYS.map((days, at) => {
    const give = GIVE_PERCENT[at] ?? 1;
    const closedAt = new Date(START_MS + days * DAY_MS).toISOString();
    const found = startPercent + (driftPerYear * days) / YEAR_DAYS + (give / 2) * normal();
    return {
      ...BLANK,
      id: String(at + 1),
      since: closedAt,
      openedAt: closedAt,
      closedAt,
      measured: {
        seatLeak: null,
        seatBubbles: null,
        asFound: cycle(found, give),
        asLeft: null,
        strokeOpenS: null,
        strokeShutS: null,
      },
    };
  });
}

const BLANK: Omit<JobLine, 'id' | 'since' | 'openedAt' | 'closedAt' | 'measured'> = {
  tag: SHEET.tag,
  location: '',
  service: '',
  procedure: 'stroke-check',
  status: 'closed',
  closedAs: 'done',
  goesOnAs: null,
  step: 'done',
  openedBy: 't1',
  performers: [],
  locks: [],
  gear: [],
  noted: null,
};

function errorTrend(lines: readonly JobLine[]): Trend {
  const series = seriesOf(lines, SHEET).find(({ id }) => id === 'error');
  if (series === undefined) throw new Error('no error');
  return trendOf(series);
}

const coversDrift = (trend: Trend, { driftPerYear }: Known): boolean =>
  Math.abs((trend.driftPerYear ?? Number.NaN) - driftPerYear) <= (trend.driftGivePerYear ?? 0);

/** Told by the day, so the day itself counts. */
function coversDate({ leaves }: Trend, { startPercent, driftPerYear }: Known): boolean {
  const years = (SHEET.errorTolerancePercent - startPercent) / driftPerYear;
  const trueDay = new Date(START_MS + years * YEAR_DAYS * DAY_MS).toISOString().slice(0, 10);
  const { earliest = null, latest = null } = leaves ?? {};
  return earliest !== null && trueDay >= earliest && (latest === null || trueDay <= latest);
}

/** Four standard deviations of a count at the stated rate. */
const SLACK = 4 * Math.sqrt(0.0455 * 0.9545 * SERIES);

describe('a history of ten jobs with a known drift', () => {
  test('tells the drift and the date of leaving within what it states, on the page of the valve', () => {
    const known = { startPercent: 0.4, driftPerYear: 0.7 };
    const lines = tenJobs(known, normalChance(7));
    const trend = errorTrend(lines);
    const { quantities } = valveHistory(lines, SHEET).history;
    expect(quantities.find(({ id }) => id === 'error')).toMatchObject({
      driftPerYear: trend.driftPerYear,
      driftGivePerYear: trend.driftGivePerYear,
      isDrifting: true,
      leaves: trend.leaves,
    });
    expect([coversDrift(trend, known), coversDate(trend, known)]).toEqual([true, true]);
    expect(trend.leaves?.expected).not.toBeNull();
  });

  test(`covers drift and date at least as often as it states, over ${SERIES} such histories`, () => {
    const normal = normalChance(20_261_126);
    const known = { startPercent: 0.4, driftPerYear: 0.7 };
    let [drifts, dates, told, givePerYear] = [0, 0, 0, 0];
    for (let run = 0; run < SERIES; run += 1) {
      const trend = errorTrend(tenJobs(known, normal));
      if (coversDrift(trend, known)) drifts += 1;
      if (coversDate(trend, known)) dates += 1;
      if (trend.isDrifting) told += 1;
      givePerYear += (trend.driftGivePerYear ?? 0) / SERIES;
    }
    if (isLong)
      console.log(
        `${SERIES} histories of ten jobs drifting ${known.driftPerYear} % a year: drift told of ${told}; true drift covered ${drifts}, true date covered ${dates}; stated give or take ${givePerYear.toFixed(2)} % a year on average`,
      );
    for (const covered of [drifts, dates]) expect(covered).toBeGreaterThan(0.9545 * SERIES - SLACK);
    // Nothing is covered by being stated without end.
    expect(told).toBeGreaterThan(0.9 * SERIES);
    expect(givePerYear).toBeLessThan(0.5);
  });

  test(`calls none of them drifting more often than it states where there is no drift, over ${SERIES}`, () => {
    const normal = normalChance(1_126_2026);
    let alarms = 0;
    for (let run = 0; run < SERIES; run += 1)
      if (errorTrend(tenJobs({ startPercent: 1, driftPerYear: 0 }, normal)).isDrifting) alarms += 1;
    if (isLong)
      console.log(
        `${SERIES} histories of ten jobs without drift: ${alarms} called drifting; stated: at most 4.55 %`,
      );
    expect(alarms).toBeLessThan(0.0455 * SERIES + SLACK);
    // It can tell a drift at all: chance alone looks like one now and then.
    expect(alarms).toBeGreaterThan(0);
  });
});
