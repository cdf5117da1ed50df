import { checkInterval } from '../../procedures/calculations/check-interval.ts';
import { type DatedValue, driftLine, noSurerThanGauges } from '../../procedures/calculations/drift.ts';
import { fromSi, unitFor } from '../../procedures/calculations/units.ts';
import type { HistoryPoint, Series } from './series.ts';

const YEAR_S = 365.25 * 24 * 3600;
const MONTH_S = YEAR_S / 12;

/** What a history says of the time to come. Times as dates; numbers in the unit of the series. */
export interface Trend {
  readonly counted: number;
  readonly driftPerYear: number | null;
  /** Covers the drift at about 95 %. */
  readonly driftGivePerYear: number | null;
  readonly isDrifting: boolean;
  readonly leaves: {
    readonly limit: number;
    readonly expected: string | null;
    readonly earliest: string | null;
    readonly latest: string | null;
  } | null;
  /** Whole months; null where none is proposed. */
  readonly intervalMonths: number | null;
  /** The same in words, a sentence each. */
  readonly says: readonly string[];
  /** The line over the time that was read, for the picture. */
  readonly line: readonly { readonly timeMs: number; readonly value: number }[];
}

export const METHOD =
  'control chart method: the interval ends at the early end of the date of leaving (95 %), and is never longer than the history';

const TREND_POINTS_MIN = 3;

/** Readings of one day tell of the gauge, not of a drift. */
const DAY_S = 86_400;

/** @example unitWordsOf(friction) // 'lbf' */
export function unitWordsOf({ unit, counts }: Pick<Series, 'unit' | 'counts'>): string {
  return counts ?? unitFor(unit).label;
}

export function trendOf(series: Series): Trend {
  const points = series.points.filter(({ isCounted }) => isCounted).map(dated);
  const counted = points.length;
  const none = {
    counted,
    driftPerYear: null,
    driftGivePerYear: null,
    isDrifting: false,
    leaves: null,
    intervalMonths: null,
    line: [],
  };
  if (series.noTrend !== undefined) return { ...none, says: [series.noTrend] };
  if (counted < TREND_POINTS_MIN)
    return { ...none, says: [`${countWords(counted)} since it was last set: too few for a trend.`] };
  if (spanS(points) < DAY_S)
    return { ...none, says: [`${countWords(counted)} within one day: too close together for a trend.`] };
  const line = noSurerThanGauges({ line: driftLine(points), points });
  const inUnit = (valueSi: number) => fromSi({ valueSi, unit: series.unit });
  const driftPerYear = inUnit(line.driftSi * YEAR_S);
  const driftGivePerYear = inUnit(line.coverageFactor * line.driftUncertaintySi * YEAR_S);
  const ahead = aheadOf(series, points);
  const at = (timeS: number) => ({
    timeMs: timeS * 1000,
    value: inUnit(line.middleSi + line.driftSi * (timeS - line.middleTimeS)),
  });
  const label = unitWordsOf(series);
  const told = line.isDrifting ? 'It drifts' : 'No drift can be told';
  return {
    ...none,
    driftPerYear,
    driftGivePerYear,
    isDrifting: line.isDrifting,
    ...ahead,
    line: [at(line.firstTimeS), at(line.lastTimeS)],
    says: [
      `${told}: ${signed(driftPerYear)} ${label} a year, give or take ${short(driftGivePerYear)} (95 %), from ${countWords(counted)}.`,
      ...ahead.says,
    ],
  };
}

type Ahead = Pick<Trend, 'leaves' | 'intervalMonths' | 'says'>;

function aheadOf(series: Series, points: readonly DatedValue[]): Ahead {
  const { limitLowSi, limitHighSi, unit } = series;
  const none = { leaves: null, intervalMonths: null };
  if (limitLowSi === null && limitHighSi === null)
    return { ...none, says: ['Its sheet has no limit for it.'] };
  const found = checkInterval({ points, limitLowSi, limitHighSi });
  if (found === null) return { ...none, says: [tooShort(points)] };
  const { leaving, intervalS, line, isCapped } = found;
  const limit = fromSi({ valueSi: leaving.limitSi, unit });
  const leaves = {
    limit,
    expected: dayOf(leaving.expectedTimeS),
    earliest: dayOf(leaving.earliestTimeS),
    latest: dayOf(leaving.latestTimeS),
  };
  const intervalMonths = Math.floor(intervalS / MONTH_S);
  const until = dayOf(line.lastTimeS + intervalMonths * MONTH_S);
  const limitWords = `its limit of ${signed(limit)} ${unitWordsOf(series)}`;
  return {
    leaves,
    intervalMonths,
    says: [
      leaves.expected === null
        ? 'It is not expected to leave its limits.'
        : `It is expected to leave ${limitWords} on ${leaves.expected}, at the earliest ${leaves.earliest ?? 'never'}, at the latest ${leaves.latest ?? 'not to be told'} (95 %).`,
      intervalMonths === 0
        ? `The next check is due now: ${limitWords} lies within what the line may be.`
        : `Proposed: the next check within ${months(intervalMonths)} of the last, by ${until}${isCapped ? '; the history is no longer than that' : ''}.`,
    ],
  };
}

function tooShort(points: readonly DatedValue[]): string {
  const over = months(Math.floor(spanS(points) / MONTH_S));
  return `No interval is proposed: that wants five readings over more than a year; there are ${points.length} over ${over}.`;
}

function dated({ at, valueSi, uncertaintySi }: HistoryPoint): DatedValue {
  return { timeS: Date.parse(at) / 1000, valueSi, uncertaintySi };
}

function spanS(points: readonly DatedValue[]): number {
  const times = points.map(({ timeS }) => timeS);
  return Math.max(...times) - Math.min(...times);
}

/** A day beyond any plant's life is not told. */
const FAR_S = 8e10;

function dayOf(timeS: number | null): string | null {
  if (timeS === null || Math.abs(timeS) > FAR_S) return null;
  return new Date(timeS * 1000).toISOString().slice(0, 10);
}

function countWords(count: number): string {
  return count === 1 ? '1 reading' : `${count} readings`;
}

function months(count: number): string {
  return count === 1 ? '1 month' : `${count} months`;
}

/** Two figures: an uncertainty has no more. */
function short(value: number): string {
  return value === 0 ? '0' : String(Number(value.toPrecision(2)));
}

function signed(value: number): string {
  const text = short(Math.abs(value));
  if (text === '0') return text;
  return value < 0 ? `\u2212${text}` : `+${text}`;
}
