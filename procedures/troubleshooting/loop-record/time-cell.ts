/** Units of a time column, in seconds. */
export const TIME_UNITS_S: Readonly<Record<string, number>> = {
  ms: 0.001,
  s: 1,
  sec: 1,
  seconds: 1,
  seg: 1,
  segundos: 1,
  min: 60,
  minutes: 60,
  minutos: 60,
  h: 3600,
  hours: 3600,
  horas: 3600,
};

const YEAR_FIRST = String.raw`(?<year>\d{4})[-/.](?<month>\d\d?)[-/.](?<day>\d\d?)`;
const YEAR_LAST = String.raw`(?<one>\d\d?)(?<sign>[-/.])(?<other>\d\d?)[-/.](?<lastYear>\d{4})`;
const CLOCK = String.raw`(?<hour>\d{1,2}):(?<minute>\d\d)(?::(?<second>\d\d(?:[.,]\d{1,9})?))?(?: ?(?<half>[AaPp])\.? ?[Mm]\.?)?`;
const TIME = new RegExp(`^(?:${YEAR_FIRST}[T ]\\s*|${YEAR_LAST},?\\s+)?${CLOCK}(?:Z| ?[+-]\\d\\d:?\\d\\d)?$`);

/** Which of two small numbers of a date is the day; null where a column does not say it. */
export type DayOrder = 'day first' | 'month first' | null;

/**
 * What a column of times says of its dates: a number above twelve is a day, the number that goes on at midnight is one, dots
 * are written with the day first (common practice, no source), and where all rows are of one date it does not matter.
 * @example dayOrderOf(['11/26/2026 9:40', '11/27/2026 9:40']) // 'month first'
 */
export function dayOrderOf(cells: readonly string[]): DayOrder {
  const dates = cells.flatMap((cell) => {
    const { one, other, sign, lastYear } = cell.trim().match(TIME)?.groups ?? {};
    return lastYear === undefined ? [] : [{ one: Number(one), other: Number(other), sign }];
  });
  const [dayFirst, monthFirst] = [dates.some(({ one }) => one > 12), dates.some(({ other }) => other > 12)];
  if (dayFirst !== monthFirst) return dayFirst ? 'day first' : 'month first';
  if (dayFirst) return null;
  const goesOn = dates.find(({ one, other }) => one !== dates[0]?.one || other !== dates[0]?.other);
  if (goesOn === undefined || dates.every(({ sign }) => sign === '.')) return 'day first';
  const [ones, others] = [goesOn.one - (dates[0]?.one ?? 0), goesOn.other - (dates[0]?.other ?? 0)];
  if (ones === 1 && others === 0) return 'day first';
  return ones === 0 && others === 1 ? 'month first' : null;
}

/**
 * Seconds of a time of day, with or without its date; the zone is the same for all rows and says nothing here.
 * @param order  how a date with its year last is meant
 * @returns null for what is no time, or a date that may mean two days
 * @example readTimeS('09:40:30', 'day first') // 34830
 */
export function readTimeS(text: string, order: DayOrder): number | null {
  const found = text.match(TIME)?.groups;
  if (found === undefined) return null;
  const { hour = '0', minute = '0', second = '0', half } = found;
  const hours = half === undefined ? Number(hour) : halfDayHours(Number(hour), half);
  if (hours === null || hours > 23 || Number(minute) > 59) return null;
  const ofDayS = hours * 3600 + Number(minute) * 60 + Number(second.replace(',', '.'));
  if (found.year === undefined && found.lastYear === undefined) return ofDayS;
  const dayS = daysS(found, order);
  return dayS === null ? null : dayS + ofDayS;
}

function halfDayHours(hours: number, half: string): number | null {
  if (hours < 1 || hours > 12) return null;
  return (hours % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}

function daysS(found: Readonly<Record<string, string | undefined>>, order: DayOrder): number | null {
  const { year, month, day, one, other, lastYear } = found;
  if (year !== undefined) return dateS([Number(year), Number(month), Number(day)]);
  if (order === null) return null;
  const [dayOf, monthOf] = order === 'day first' ? [one, other] : [other, one];
  return dateS([Number(lastYear), Number(monthOf), Number(dayOf)]);
}

/** @returns null for a day that no calendar has */
function dateS([year, month, day]: readonly [number, number, number]): number | null {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day ? date.getTime() / 1000 : null;
}
