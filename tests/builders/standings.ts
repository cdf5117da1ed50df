/**
 * What a valve may really meet on each step of a definition, found by playing it as data: whole standings, one
 * state for each condition, without the machine, the proof or the interlock. Second opinion on all three.
 */
import { type Facts, knownAtOpening } from '../../procedures/facts.ts';
import { isTakenOverUnder, standingUnder } from '../../procedures/standing.ts';
import type { Definition, Sets } from '../../procedures/vocabulary.ts';
import { targetUnder, waysOf } from '../../procedures/ways.ts';
import { type AnyState, CONDITION_IDS, everythingLive, type States } from '../../safety/conditions.ts';

export type Standings = ReadonlyMap<string, readonly States[]>;

/** No set of a way has more states to choose among. */
const AMONG_MAX = 3;
/** No condition has more states. */
const STANDING_MAX = 5;

/** Of each list the state at this number, or its last: between them every state of every list is met. */
function chosen(standing: Readonly<Record<string, readonly AnyState[] | undefined>>, choice: number): object {
  const pairs = Object.entries(standing).map(([id, states = []]) => [
    id,
    states[Math.min(choice, states.length - 1)],
  ]);
  return Object.fromEntries(pairs);
}

/**
 * Plays every way from every standing. A standing is kept where it shows a state that its step had not met yet;
 * as no way asks in which state a condition is, every state that can be met is met so.
 */
export function standings(definition: Definition, facts: Facts): Standings {
  const met = new Map<string, States[]>();
  const seen = new Map<string, readonly Set<AnyState>[]>();
  const open: { readonly step: string; readonly states: States }[] = [];
  const arrive = (step: string, states: States) => {
    const shown = seen.get(step) ?? CONDITION_IDS.map(() => new Set<AnyState>());
    seen.set(step, shown);
    const before = shown.reduce((sum, set) => sum + set.size, 0);
    CONDITION_IDS.forEach((id, at) => {
      shown[at]?.add(states[id]);
    });
    if (shown.reduce((sum, set) => sum + set.size, 0) === before) return;
    met.set(step, [...(met.get(step) ?? []), states]);
    open.push({ step, states });
  };
  const opened = { ...everythingLive(), ...knownAtOpening(facts) } as States;
  arrive(definition.start, opened);
  const takings = Object.values(definition.takesOver ?? {}).filter((one) => isTakenOverUnder(one, facts));
  for (const taken of takings)
    for (let choice = 0; choice < STANDING_MAX; choice += 1)
      arrive(taken.at, { ...opened, ...chosen(standingUnder(taken, facts), choice) } as States);
  for (let at = open.shift(); at !== undefined; at = open.shift()) {
    const step = definition.steps[at.step];
    if (step === undefined) throw new Error(`there is no step ${at.step}`);
    for (const { way } of waysOf(step)) {
      const sets = way.sets ?? {};
      const choices = Object.values(sets).some((set) => typeof set === 'object') ? AMONG_MAX : 1;
      for (let choice = 0; choice < choices; choice += 1)
        arrive(targetUnder(way.to, facts), after(at.states, { sets, choice }));
    }
  }
  return met;
}

/** The states after a way, where each set that leaves a choice takes the one at this number, or its last. */
export function after(
  states: States,
  { sets, choice }: { readonly sets: Sets; readonly choice: number },
): States {
  const changes = Object.entries(sets).map(([id, set]) => [
    id,
    typeof set === 'object' ? set.among[Math.min(choice, set.among.length - 1)] : set,
  ]);
  return { ...states, ...Object.fromEntries(changes) } as States;
}
