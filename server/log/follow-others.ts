import type { SiteLog } from './site-log.ts';

/** Screens at this server hear of what another one wrote within this time and a little. */
const LOOK_MS = 400;

/**
 * Looks now and then at what other servers wrote, so that live screens hear of it though nobody asks. Ends with the log.
 *
 * @param report told of the first look that fails, and of the next one after one that did not
 */
export function followOthers(log: SiteLog, report: (error: unknown) => void): void {
  let isFailing = false;
  const look = async (): Promise<void> => {
    try {
      await log.catchUp();
      isFailing = false;
    } catch (error) {
      if (!isFailing && !log.isClosed) report(error);
      isFailing = true;
    }
    again();
  };
  const again = (): void => {
    if (!log.isClosed) setTimeout(() => void look(), LOOK_MS).unref();
  };
  again();
}
