import type { ActionClass } from './action-classes.ts';

/** How a signature came about. Only the first two prove by a PIN that the signer was there. */
export const SIGN_WAYS = ['walk-up', 'own screen', 'second person', 'radio'] as const;
export type SignWay = (typeof SIGN_WAYS)[number];

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
  /** Named by a supervisor as competent to sign where no supervisor can come. */
  readonly competent?: boolean;
}

/** Whom a point lets sign, and who had a hand in what it stands over. */
export interface PointWork {
  /** Who did or recorded work since the last signed hold. */
  readonly performers: readonly string[];
  /** Who took note of it without doing it: took the job up, read a reading again, parked it. */
  readonly acknowledgers: readonly string[];
  /** The people who alone may sign this point, where the site names them. */
  readonly named?: readonly string[];
  readonly way?: SignWay;
}

export type MayNotSign = 'role' | 'not named' | 'not competent' | 'did the work' | 'acknowledged it';

/** Roles that a supervisor may name as competent. The safety officer audits signatures and so gives none. */
const MAY_BE_COMPETENT: readonly string[] = ['engineer', 'technician'];

export function mayBeCompetent(role: string): boolean {
  return MAY_BE_COMPETENT.includes(role);
}

/**
 * Whether this person may sign this hold: a supervisor, or where none can come a person named as competent, who
 * neither did nor acknowledged any of the work since the last hold. Their role is looked up at the moment of
 * signing, never taken from the page.
 *
 * @returns null where the person may sign, else why not
 * @source 10 CFR 50 appendix B, criterion X: the inspector is not the person who did the work
 * @example mayNotSign({ id: 's1', role: 'supervisor' }, { performers: ['t1'], acknowledgers: [] }) // null
 */
export function mayNotSign(
  signer: Signer,
  { performers, acknowledgers, named, way = 'walk-up' }: PointWork,
): MayNotSign | null {
  if (performers.includes(signer.id)) return 'did the work';
  if (acknowledgers.includes(signer.id)) return 'acknowledged it';
  if (named !== undefined && !named.includes(signer.id)) return 'not named';
  if (way === 'second person') {
    return signer.competent === true && mayBeCompetent(signer.role) ? null : 'not competent';
  }
  return signer.role === 'supervisor' ? null : 'role';
}

/**
 * Work that a voice on the radio may allow, since it opens nothing and can be undone. Spring, case and line opening
 * are not in it, nor will a new class be before somebody has thought about it (common practice, no source).
 */
const BY_RADIO: readonly ActionClass[] = [
  'connectTestAir',
  'strokeByTestAir',
  'turnPlugStem',
  'setIndicatorOnTestAir',
  'restoreSupply',
  'restoreSecondSupply',
  'unlockProcess',
  'restoreProcess',
  'shutBypass',
];

/** Work that a signature by radio leaves out: the spring is wound only under the eyes of its signer. */
const LEFT_OUT_BY_RADIO: readonly ActionClass[] = ['windAdjusterOnTestAir'];

/**
 * The work that a signature by radio can allow out of what a hold allows.
 *
 * @returns null where the hold is never signed by radio
 * @example workByRadio(['turnPlugStem', 'windAdjusterOnTestAir']) // ['turnPlugStem']
 * @example workByRadio(['loosenCaseBolts']) // null
 */
export function workByRadio(allows: readonly ActionClass[]): readonly ActionClass[] | null {
  const left = allows.filter((action) => !LEFT_OUT_BY_RADIO.includes(action));
  if (left.some((action) => !BY_RADIO.includes(action))) return null;
  return allows.length > 0 && left.length === 0 ? null : left;
}

/** What becomes of a refused hold. With `leave`, the hold is not signed any more on this job. */
export const DISPOSITIONS = {
  again: 'Shown or done again, then asked for again',
  putRight: 'Put right first, then shown and asked for again',
  leave: 'Left as it is: the job makes safe and ends',
} as const;
export type Disposition = keyof typeof DISPOSITIONS;

export function isDisposition(text: string): text is Disposition {
  return Object.hasOwn(DISPOSITIONS, text);
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
