/** What an isolation point is. A bypass stands in the list because people look for it there; it isolates nothing. */
export const POINT_KINDS = ['cock', 'block valve', 'breaker', 'drain or bleed', 'bypass valve'] as const;

export type PointKind = (typeof POINT_KINDS)[number];

/** A lock on an isolation point. The point belongs to the site; a job only relies on it. */
export interface Lock {
  readonly lock: string;
  readonly owner: string;
  readonly job: string;
  /** When it was hung, ISO 8601. */
  readonly since?: string;
  /** Why a tag hangs alone where a lock could; blank for a lock. */
  readonly because?: string;
}

/** One cock, block valve or breaker of the site, by its tag. */
export interface PointState {
  readonly tag: string;
  readonly position: 'open' | 'shut';
  readonly locks: readonly Lock[];
}

export type MayNotRestore = 'another job relies on it' | "another person's lock";

interface Asking {
  readonly job: string;
  readonly person: string;
}

/**
 * Whether a job may take its lock off and put a point back: never while another job relies on the point, and
 * never over another person's lock.
 *
 * @source 29 CFR 1910.147(e)(3): who applied a device removes it
 * @example mayNotRestore({ tag: 'HV-1', position: 'shut', locks: [{ lock: '15', owner: 't1', job: '7' }] }, { job: '7', person: 't1' }) // null
 */
export function mayNotRestore(point: PointState, { job, person }: Asking): MayNotRestore | null {
  if (point.locks.some((lock) => lock.job !== job)) return 'another job relies on it';
  if (point.locks.some((lock) => lock.owner !== person)) return "another person's lock";
  return null;
}

/**
 * Whether what is hung is a tag alone. @example isTagAlone('tag 10') // true
 * @source common practice, no source: a tag is written as the word and its number
 */
export function isTagAlone(number: string): boolean {
  return /^tag\b/i.test(number.trim());
}

export type MayNotHang = 'no number' | 'number in use' | 'tag alone';

/**
 * Whether a lock may be hung on a point: it has a number of its own, and where the point takes a lock, a tag alone is
 * hung only with a supervisor's reason.
 *
 * @source 29 CFR 1910.147(c)(3)(i): where it can be locked out, it is, unless the tag is shown to protect as well
 */
export function mayNotHang(
  point: PointState,
  { lock, lockable }: { readonly lock: Lock; readonly lockable: boolean },
): MayNotHang | null {
  if (lock.lock.trim() === '') return 'no number';
  if (point.locks.some((held) => held.lock === lock.lock && held.owner !== lock.owner))
    return 'number in use';
  return lockable && isTagAlone(lock.lock) && (lock.because ?? '') === '' ? 'tag alone' : null;
}

/** Whether a lock of the job hangs on the point: then the job relies on it. */
function reliesOn(point: PointState, job: string): boolean {
  return point.locks.some((lock) => lock.job === job);
}

/**
 * Tags of the points that a job relies on and that do not carry this person's own lock: nobody works under the lock of
 * somebody else.
 *
 * @source 29 CFR 1910.147(f)(3)(ii)(D): each authorised employee affixes a personal device
 */
export function withoutOwnLock(points: readonly PointState[], { job, person }: Asking): readonly string[] {
  return points
    .filter((point) => reliesOn(point, job))
    .filter((point) => !point.locks.some((lock) => lock.job === job && lock.owner === person))
    .map(({ tag }) => tag);
}

/** Whoever has a lock on for a job, on any of the points. */
export function lockedOnFor(job: string, points: readonly PointState[]): readonly string[] {
  const owners = points.flatMap(({ locks }) => locks.filter((lock) => lock.job === job));
  return [...new Set(owners.map(({ owner }) => owner))];
}

/**
 * One lock a person, a job and a point: hung again it is the newer number.
 * @example hang({ tag: 'HV-1', position: 'open', locks: [] }, { lock: '15', owner: 't1', job: '7' }).position // 'shut'
 */
export function hang<Point extends PointState>(point: Point, lock: Lock): Point {
  const mine = (held: Lock) => held.owner === lock.owner && held.job === lock.job;
  const before = point.locks.find(mine);
  const since = before?.since ?? lock.since;
  const hung = since === undefined ? lock : { ...lock, since };
  return { ...point, position: 'shut', locks: [...point.locks.filter((held) => !mine(held)), hung] };
}

/**
 * Takes locks of a job off, those of one owner where one is named. Where the act puts the point back, it opens once no
 * lock is left on it; otherwise it stays shut.
 */
export function takeOff<Point extends PointState>(
  point: Point,
  { job, owner, restores }: { readonly job: string; readonly owner?: string; readonly restores: boolean },
): Point {
  const off = (lock: Lock) => lock.job === job && (owner === undefined || lock.owner === owner);
  const locks = point.locks.filter((lock) => !off(lock));
  return { ...point, locks, position: locks.length === 0 && restores ? 'open' : point.position };
}
