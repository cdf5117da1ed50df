import type { ValveSheet } from './sheet.ts';

/** Fields that a sheet has been asked for since the first sheets were saved: blank where a line of the log knows none. */
const LATER = { frictionMaxN: null, strokeOpenMaxS: null, strokeShutMaxS: null } as const;

/** A sheet as some line of the log holds it, whenever that was written. */
export type LoggedSheet = Omit<ValveSheet, keyof typeof LATER> & Partial<ValveSheet>;

/** @example wholeSheet(loggedBefore).strokeOpenMaxS // null: nobody was asked for it then */
export function wholeSheet(logged: LoggedSheet): ValveSheet {
  return isWhole(logged) ? logged : { ...LATER, ...logged };
}

/** Saved since: a copy of its many fields costs as much as folding fifty lines. */
function isWhole(logged: LoggedSheet): logged is ValveSheet {
  return Object.keys(LATER).every((name) => name in logged);
}
