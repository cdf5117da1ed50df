import type { Role } from './person.ts';

/** Who looks over the accounts and into wrong PINs. */
export const REVIEWERS = ['safety-officer', 'supervisor', 'engineer'] as const satisfies readonly Role[];

export function isReviewer(role: Role): boolean {
  return REVIEWERS.some((one) => one === role);
}

/** One account, as somebody looks it over. */
export interface AccountReview {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  readonly lastSignedInAt: string | null;
  readonly pinSetAt: string | null;
  /** A one-time code waits to be used until then. */
  readonly codeUntil: string | null;
  /** Names of the screens where they are signed in now. */
  readonly signedInAt: readonly string[];
}
