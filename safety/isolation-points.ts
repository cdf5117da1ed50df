/** A lock on an isolation point. The point belongs to the site; a job only relies on it. */
export interface Lock {
  readonly lock: string;
  readonly owner: string;
  readonly job: string;
}

/** One cock, block valve or breaker of the site, by its tag. */
export interface PointState {
  readonly tag: string;
  readonly position: 'open' | 'shut';
  readonly locks: readonly Lock[];
}

export type MayNotRestore = 'another job relies on it' | "another person's lock";

/**
 * Whether a job may take its lock off and put a point back: never while another job relies on the point, and
 * never over another person's lock.
 *
 * @source 29 CFR 1910.147(e)(3): who applied a device removes it
 * @example mayNotRestore({ tag: 'HV-1', position: 'shut', locks: [{ lock: '15', owner: 't1', job: '7' }] }, { job: '7', person: 't1' }) // null
 */
export function mayNotRestore(
  point: PointState,
  { job, person }: { readonly job: string; readonly person: string },
): MayNotRestore | null {
  if (point.locks.some((lock) => lock.job !== job)) return 'another job relies on it';
  if (point.locks.some((lock) => lock.owner !== person)) return "another person's lock";
  return null;
}

/** @example hang({ tag: 'HV-1', position: 'open', locks: [] }, { lock: '15', owner: 't1', job: '7' }).position // 'shut' */
export function hang(point: PointState, lock: Lock): PointState {
  const others = point.locks.filter((held) => held.lock !== lock.lock || held.job !== lock.job);
  return { tag: point.tag, position: 'shut', locks: [...others, lock] };
}

/** Takes a job's locks off; the point opens only when no lock is left on it. */
export function takeOff(point: PointState, job: string): PointState {
  const locks = point.locks.filter((held) => held.job !== job);
  return { tag: point.tag, position: locks.length === 0 ? 'open' : 'shut', locks };
}
