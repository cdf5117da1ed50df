import {
  type AnyState,
  CONDITION_IDS,
  CONDITIONS,
  type ConditionId,
  everythingLive,
  type States,
  worstState,
} from './conditions.ts';

/** Why something that was shown counts no more until it is shown again. */
export type LapseReason =
  | 'parked'
  | 'handover'
  | 'shift change'
  | 'age'
  | 'corrected'
  | 'air changed'
  | 'lock removed';

/**
 * What a job knows about its valve: one state for each condition, and which of them have lapsed. The raw
 * state is kept beside the lapse, because the lock that hangs is still hanging when its proof has aged.
 */
export interface Situation {
  readonly states: States;
  readonly lapsed: { readonly [C in ConditionId]?: LapseReason };
}

/** A change of some conditions, as an entry stores it. */
export type Effects = { readonly [C in ConditionId]?: AnyState };

export function situationAtOpening(): Situation {
  return { states: everythingLive(), lapsed: {} };
}

/**
 * The state that counts for a decision: the worst one where the proof has lapsed.
 * @example stateThatCounts({ states: { ...everythingLive(), supplyAir: 'isolated' }, lapsed: { supplyAir: 'parked' } }, 'supplyAir') // 'live'
 */
export function stateThatCounts(situation: Situation, condition: ConditionId): AnyState {
  return situation.lapsed[condition] === undefined ? situation.states[condition] : worstState(condition);
}

/** Sets the named conditions, each shown afresh by the entry that carries the effects. */
export function applyEffects(situation: Situation, effects: Effects): Situation {
  const named = new Set(Object.keys(effects));
  return {
    states: { ...situation.states, ...effects } as States,
    lapsed: Object.fromEntries(Object.entries(situation.lapsed).filter(([id]) => !named.has(id))),
  };
}

/** What a pause, a handover or age lowers: everything shown safe by a person, and the signatures over it. Locks hang on. */
const LOWERED: readonly ConditionId[] = CONDITION_IDS.filter((id) => {
  const group = CONDITIONS[id].group;
  return group === 'energy' || group === 'signature' || id === 'plug';
});

/**
 * Lowers what counts as proven, for the given reason. Conditions already at their worst, and those recorded
 * absent, stay as they are: nothing can build up where nothing is.
 */
export function lapse(situation: Situation, reason: LapseReason): Situation {
  return lapseOnly(situation, { conditions: LOWERED, reason });
}

/** Lowers the named conditions only. */
export function lapseOnly(
  situation: Situation,
  { conditions, reason }: { readonly conditions: readonly ConditionId[]; readonly reason: LapseReason },
): Situation {
  const lapsed = { ...situation.lapsed };
  for (const id of conditions) {
    const state = situation.states[id];
    if (state !== worstState(id) && state !== 'absent') lapsed[id] = reason;
  }
  return { states: situation.states, lapsed };
}
