import { ACTION_CLASSES, type ActionClass, needsOf } from './action-classes.ts';
import { type AnyState, CONDITION_IDS, CONDITIONS, type ConditionId } from './conditions.ts';
import type { PointState } from './isolation-points.ts';
import { covers, type Envelope } from './sign-off.ts';
import { type LapseReason, type Situation, stateThatCounts } from './situation.ts';

/** What the interlock looks at: the log's situation and the site's isolation points, never the machine. */
export interface Standing {
  readonly job: string;
  readonly situation: Situation;
  readonly envelope: Envelope | null;
  /** The points that this job relies on, by the lock condition that stands for each. */
  readonly points: { readonly [C in ConditionId]?: PointState };
  readonly nowMs: number;
}

export interface Lack {
  readonly condition: ConditionId;
  readonly state: AnyState;
  readonly allowed: readonly AnyState[];
  readonly lapsed: LapseReason | null;
}

/**
 * What stands against an action now. Asked on the way into a step and again when it is answered, from the
 * situation, table D and the site's points alone: with the machine forced into any state it still refuses.
 *
 * @returns an empty list where the action may go ahead
 * @example lacks('turnPlugStem', standing).map((lack) => lack.condition) // ['signalAir'] where the air is not held
 */
export function lacks(action: ActionClass, standing: Standing): readonly Lack[] {
  const needs = needsOf(action) as { readonly [C in ConditionId]?: readonly AnyState[] };
  return CONDITION_IDS.flatMap((condition) => {
    const allowed = needs[condition];
    if (allowed === undefined) return [];
    const state = stateNow(condition, { action, standing });
    const lapsed = standing.situation.lapsed[condition] ?? null;
    return allowed.includes(state) ? [] : [{ condition, state, allowed, lapsed }];
  });
}

function stateNow(
  condition: ConditionId,
  { action, standing }: { readonly action: ActionClass; readonly standing: Standing },
): AnyState {
  const signature = condition === 'workSignOff' || condition === 'returnSignOff';
  if (signature && !covers(standing.envelope, { action, nowMs: standing.nowMs })) return 'none';
  const lock = LOCK_BEHIND[condition];
  const point = lock === undefined ? undefined : standing.points[lock];
  const claimed = standing.situation.states[condition] === 'isolated';
  if (lock !== undefined && claimed && (point === undefined || !holds(point, standing.job))) return 'live';
  return stateThatCounts(standing.situation, condition);
}

/** The energies that a lock keeps safe: without the lock at the site, the job's own word does not count. */
export const LOCK_BEHIND: { readonly [C in ConditionId]?: ConditionId } = {
  supplyAir: 'supplyLock',
  secondSupply: 'secondSupplyLock',
  processInlet: 'inletLock',
  processOutlet: 'outletLock',
};

function holds(point: PointState, job: string): boolean {
  return point.position === 'shut' && point.locks.some((lock) => lock.job === job);
}

/** One sentence a lack, for the person who was stopped. */
export function sayLack(lack: Lack, action: ActionClass): string {
  const { name } = CONDITIONS[lack.condition];
  const why = lack.lapsed === null ? '' : `, because of ${lack.lapsed}`;
  return `${name} counts as ${lack.state}${why}; to ${ACTION_CLASSES[action].name} it must be ${lack.allowed.join(' or ')}.`;
}
