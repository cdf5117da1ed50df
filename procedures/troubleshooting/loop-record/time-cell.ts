/** Units of a time column, in seconds. */
export const TIME_UNITS_S: Readonly<Record<string, number>> = {
  ms: 0.001,
  s: 1,
  sec: 1,
  seconds: 1,
  min: 60,
  minutes: 60,
  h: 3600,
  hours: 3600,
};

const CLOCK =
  /^(?:(\d{4})-(\d\d)-(\d\d)[T ])?(\d{1,2}):(\d\d)(?::(\d\d(?:[.,]\d{1,6})?))?(?:Z|[+-]\d\d:?\d\d)?$/;

/**
 * Seconds of a time of day, with or without its date; the zone is the same for all rows and says nothing here.
 * @returns null for what is no time
 * @example readTimeS('09:40:30') // 34830
 */
export function readTimeS(text: string): number | null {
  const [found, year, month, day, hour = '0', minute = '0', second = '0'] = text.match(CLOCK) ?? [];
  if (found === undefined || Number(hour) > 23 || Number(minute) > 59) return null;
  const ofDayS = Number(hour) * 3600 + Number(minute) * 60 + Number(second.replace(',', '.'));
  if (year === undefined) return ofDayS;
  const dayMs = Date.UTC(Number(year), Number(month) - 1, Number(day));
  const same = new Date(dayMs).toISOString().startsWith(`${year}-${month}-${day}`);
  return same ? dayMs / 1000 + ofDayS : null;
}
