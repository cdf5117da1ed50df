/** Date, time and zone, as a record prints them. @example withZone('2026-03-04T08:22:10.000Z') // '2026-03-04 08:22 UTC' */
export function withZone(at: string): string {
  return `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;
}
