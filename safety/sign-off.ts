import type { ActionClass } from './action-classes.ts';

/** What a sign-off allows, and nothing else. */
export interface Envelope {
  readonly hold: string;
  readonly work: readonly ActionClass[];
  readonly testAirPaMax: number;
  /** Server time in milliseconds at which it ends. */
  readonly untilMs: number;
  readonly signedBy: string;
  /** Digest of exactly what the signer was shown. */
  readonly shownDigest: string;
}

export interface Signer {
  readonly id: string;
  readonly role: string;
}

export type MayNotSign = 'role' | 'did the work' | 'acknowledged it';

/**
 * Whether this person may sign this hold: a supervisor who neither did nor acknowledged any of the work since
 * the last hold. Their role is looked up at the moment of signing, never taken from the page.
 *
 * @returns null where the person may sign, else why not
 * @source 10 CFR 50 appendix B, criterion X: the inspector is not the person who did the work
 * @example mayNotSign({ id: 's1', role: 'supervisor' }, { performers: ['t1'] }) // null
 */
export function mayNotSign(
  signer: Signer,
  { performers }: { readonly performers: readonly string[] },
): MayNotSign | null {
  if (performers.includes(signer.id)) return 'did the work';
  if (signer.role !== 'supervisor') return 'role';
  return null;
}

/**
 * Whether a sign-off covers an action now.
 * @example covers(envelope, { action: 'turnPlugStem', nowMs: 0 }) // true while inside its hours and its named work
 */
export function covers(
  envelope: Envelope | null,
  { action, nowMs }: { readonly action: ActionClass; readonly nowMs: number },
): boolean {
  return envelope?.work.includes(action) === true && nowMs < envelope.untilMs;
}
