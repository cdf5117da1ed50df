/** Date, time and zone, as every page and record prints them. @example shownTime('2026-03-04T08:22:10.000Z') // '2026-03-04 08:22 UTC' */
export function shownTime(at: string): string {
  return `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
}
