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

/** @param known  what the sheet says about how the valve is built, pinned when the job opens */
export function situationAtOpening(known: Effects = {}): Situation {
  return { states: { ...everythingLive(), ...known } as States, lapsed: {} };
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
  const named = Object.keys(effects) as ConditionId[];
  if (named.length === 0) return situation;
  const states = { ...situation.states, ...effects } as States;
  // As a rule nothing has lapsed that is shown: then the lapses stay the same object.
  if (named.every((id) => situation.lapsed[id] === undefined)) return { states, lapsed: situation.lapsed };
  const lapsed = { ...situation.lapsed };
  for (const id of named) delete lapsed[id];
  return { states, lapsed };
}

/** Looks and words that are good only while the person who gave them stands there. */
const FLEETING: readonly ConditionId[] = ['plug', 'gasTest', 'clear', 'told'];

/** What a pause or another person lowers: everything that somebody showed safe. Locks hang on, and so do signatures. */
export const LOWERED_BY_PAUSE: readonly ConditionId[] = CONDITION_IDS.filter(
  (id) => CONDITIONS[id].group === 'energy' || FLEETING.includes(id),
);

/** What the end of a shift lowers: the signatures as well, for they were given for that shift. */
const LOWERED: readonly ConditionId[] = CONDITION_IDS.filter(
  (id) => LOWERED_BY_PAUSE.includes(id) || CONDITIONS[id].group === 'signature',
);

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
