import { z } from 'zod';

/** Wrong tries on one account, in a row, through all doors. */
export const throttleSchema = z.object({
  failures: z.int(),
  lastAt: z.iso.datetime(),
  /** Up to which failure the site's log has them. */
  told: z.int(),
});

export type Throttle = z.output<typeof throttleSchema>;

/** Mistyping is free so often; people mistype. */
const FREE_TRIES = 4;
/** From here on only another person opens the account before a day is over; NIST SP 800-63B's number for a short secret. */
export const TRIES_MAX = 10;

const FIRST_WAIT_S = 30;
const DAY_S = 24 * 3600;

/** How long nothing is tried after so many failures in a row: 30 s after the fifth, doubling, a day from the tenth on. */
export function waitS(failures: number): number {
  if (failures <= FREE_TRIES) return 0;
  if (failures >= TRIES_MAX) return DAY_S;
  return FIRST_WAIT_S * 2 ** (failures - FREE_TRIES - 1);
}

/** @returns seconds until the next try is looked at; 0 for at once */
export function heldForS(throttle: Throttle | undefined, now: Date): number {
  if (throttle === undefined) return 0;
  const untilMs = Date.parse(throttle.lastAt) + waitS(throttle.failures) * 1000;
  return Math.max(0, Math.ceil((untilMs - now.getTime()) / 1000));
}

export function afterFailure(throttle: Throttle | undefined, now: Date): Throttle {
  return {
    failures: (throttle?.failures ?? 0) + 1,
    lastAt: now.toISOString(),
    told: throttle?.told ?? 0,
  };
}

/** Which failures go into the site's log: the first, the one that starts the waiting, and all from the ceiling on. */
export function isTold({ failures }: Throttle): boolean {
  return failures === 1 || failures === FREE_TRIES + 1 || failures >= TRIES_MAX;
}
