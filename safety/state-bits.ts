/** Sets of states of all conditions as words of bits, so that a proof joins and compares them without looking into them. */
import { type AnyState, CONDITION_IDS, CONDITIONS, type ConditionId } from './conditions.ts';

interface Place {
  readonly word: number;
  readonly shift: number;
}

const WORD_BITS = 30;

/** Where the states of each condition stand: all of a condition in one word, as many conditions to a word as fit. */
const PLACES = packed();

/** How many words the states of all conditions take. */
export const WORDS = 1 + Math.max(...[...PLACES.values()].map(({ word }) => word));

function packed(): ReadonlyMap<ConditionId, Place> {
  let [word, shift] = [0, 0];
  return new Map(
    CONDITION_IDS.map((id) => {
      const { length } = CONDITIONS[id].states;
      if (shift + length > WORD_BITS) [word, shift] = [word + 1, 0];
      const place = { word, shift };
      shift += length;
      return [id, place];
    }),
  );
}

function placeOf(condition: ConditionId): Place {
  const place = PLACES.get(condition);
  if (place === undefined) throw new Error(`there is no condition ${condition}`);
  return place;
}

/** A place among words: those of step 3 begin at 3 times WORDS. */
export interface Among {
  readonly words: Int32Array;
  readonly at: number;
}

interface States {
  readonly condition: ConditionId;
  readonly states: readonly AnyState[];
}

/** Adds states of a condition; one that the condition does not have adds nothing. */
export function addStates({ words, at }: Among, { condition, states }: States): void {
  const { word, shift } = placeOf(condition);
  const known: readonly AnyState[] = CONDITIONS[condition].states;
  for (const state of states)
    if (known.includes(state))
      words[at + word] = (words[at + word] ?? 0) | (1 << (shift + known.indexOf(state)));
}

/** Takes every state of a condition away. */
export function clearStates({ words, at }: Among, condition: ConditionId): void {
  const { word, shift } = placeOf(condition);
  const all = (1 << CONDITIONS[condition].states.length) - 1;
  words[at + word] = (words[at + word] ?? 0) & ~(all << shift);
}

/** Those states of a condition that are there. */
export function statesAmong({ words, at }: Among, condition: ConditionId): readonly AnyState[] {
  const { word, shift } = placeOf(condition);
  const bits = words[at + word] ?? 0;
  return (CONDITIONS[condition].states as readonly AnyState[]).filter(
    (_, state) => (bits & (1 << (shift + state))) !== 0,
  );
}
