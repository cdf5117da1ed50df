import type { CheckId } from '../checks.ts';
import { isCheckId } from '../checks.ts';
import type { RepairId } from '../repairs.ts';

/** A check that was answered in words or in a number on its axis. */
export interface Answer {
  readonly kind: 'answer';
  readonly check: CheckId;
  /** One of the words of the check. */
  readonly outcome?: string;
  /** A number on the axis of a measured check, and its standard uncertainty there. */
  readonly value?: number;
  readonly readSigma?: number;
  /** The gauge or the eye that gave it: the same one again is not a second witness. */
  readonly gauge?: string;
  /** The gauge has been seen to move; a nothing on it then means nothing. */
  readonly gaugeAlive?: boolean;
  /** Share by which this answer is less sure than the check usually is: a record, hearsay, an opening word. */
  readonly doubt?: number;
}

/** Looked, and cannot say; or not now. Neither is evidence. */
export interface NoAnswer {
  readonly kind: 'cannot tell' | 'skip';
  readonly check: CheckId;
}

/** A repair was made, and the check that proves it said whether it helped. */
export interface Repaired {
  readonly kind: 'repaired';
  readonly repair: RepairId;
  readonly cured: boolean;
  /** What told so; without it, something that shows every fault. */
  readonly proof?: Proof;
}

export interface Proof {
  readonly check: CheckId;
  /** How it had read before the repair was made; null where nobody had looked. */
  readonly soundBefore: boolean | null;
}

/** A repair that an earlier job made, and the trouble is back: it speaks against its cause, weakly. */
export interface SeenBefore {
  readonly kind: 'seen before';
  readonly repair: RepairId;
  /** Share by which it says less than a repair of this job that did not cure. */
  readonly doubt: number;
  readonly job: string;
  readonly on: string;
}

export type Evidence = Answer | NoAnswer | Repaired | SeenBefore;

/** How it stood when an answer was given: how many repairs had been made before it. */
export interface Counted {
  readonly item: Answer | Repaired | SeenBefore;
  /** Every look through this gauge between the same repairs; `item` is the last of them. None for a repair. */
  readonly looks: readonly Answer[];
  /** Repairs made before it, with what they did. */
  readonly after: readonly Repaired[];
  /** The same check on the same gauge before the last repairs: where nothing changed, it only says it again. */
  readonly earlier: { readonly item: Answer; readonly after: readonly Repaired[] } | null;
}

/**
 * What counts. Looks at one thing through the same gauge between the same repairs are one reading, told together; an
 * opening word about a thing gives way to the check of that thing.
 */
export function counted(evidence: readonly Evidence[]): readonly Counted[] {
  const kept = new Map<string, Counted>();
  const latest = new Map<string, { readonly item: Answer; readonly after: readonly Repaired[] }>();
  const repairs: Repaired[] = [];
  for (const item of evidence) {
    if (item.kind === 'repaired') {
      kept.set(`repair ${repairs.length}`, { item, looks: [], after: [...repairs], earlier: null });
      repairs.push(item);
    } else if (item.kind === 'seen before') {
      // Whatever is read now was read after it: it takes nothing away of what may be there today.
      kept.set(`before ${item.job}`, { item, looks: [], after: [], earlier: null });
    } else if (item.kind === 'answer' && isCheckId(item.check) && saysSomething(item)) {
      const stem = `${item.check} ${repairs.length}`;
      if (item.gauge !== HEARSAY) kept.delete(`${stem} ${HEARSAY}`);
      const key = `${stem} ${item.gauge ?? ''}`;
      const told = item.gauge === HEARSAY && [...kept.keys()].some((one) => one.startsWith(`${stem} `));
      const known = kept.get(key);
      kept.delete(key);
      if (told) continue;
      // What is only said again is said once.
      const looks = item.gauge === HEARSAY ? [item] : [...(known?.looks ?? []), item];
      const earlier = latest.get(`${item.check} ${item.gauge ?? ''}`);
      const before = earlier === undefined || earlier.after.length === repairs.length ? null : earlier;
      const now = { item, after: [...repairs] };
      kept.set(key, { ...now, looks, earlier: before ?? known?.earlier ?? null });
      if (before !== null || earlier === undefined) latest.set(`${item.check} ${item.gauge ?? ''}`, now);
    }
  }
  return [...kept.values()];
}

/** What somebody said before anybody looked. */
export const HEARSAY = 'hearsay';

/** An unreadable number and a missing word say nothing. */
function saysSomething(item: Answer): boolean {
  return item.value === undefined ? item.outcome !== undefined : Number.isFinite(item.value);
}

/**
 * Checks that have been settled, so that they are not asked for again. A repair opens those again whose reading it
 * may have changed.
 */
export function settled(
  evidence: readonly Evidence[],
  reopens: (repair: RepairId, check: CheckId) => boolean,
): ReadonlySet<CheckId> {
  const done = new Set<CheckId>();
  for (const item of evidence) {
    if (item.kind === 'repaired') {
      for (const check of [...done]) if (reopens(item.repair, check)) done.delete(check);
    } else if (item.kind === 'seen before') {
      // It looked at nothing of today.
    } else if (item.kind !== 'answer' || (item.gauge !== HEARSAY && saysSomething(item)))
      done.add(item.check);
  }
  return done;
}
