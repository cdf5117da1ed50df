import { type AnyState, CONDITION_IDS, CONDITIONS, type ConditionId, worstState } from './conditions.ts';
import type { ProofEdge, ProofGraph } from './proof-graph.ts';

/** Place of each state of a condition in its set, which is kept as bits: a condition has a handful of states. */
const BIT: ReadonlyMap<ConditionId, ReadonlyMap<AnyState, number>> = new Map(
  CONDITION_IDS.map((id) => [id, new Map(CONDITIONS[id].states.map((state, at) => [state, 1 << at]))]),
);

/** For each step of a graph, the states in which each condition can be on arrival. */
export class Reach {
  /** By step: one set of states, as bits, for each condition in the order of their ids. */
  readonly #sets: ReadonlyMap<string, Int32Array>;

  constructor(sets: ReadonlyMap<string, Int32Array>) {
    this.#sets = sets;
  }

  has(step: string): boolean {
    return this.#sets.has(step);
  }

  keys(): readonly string[] {
    return [...this.#sets.keys()];
  }

  get(step: string): ReadonlyMap<ConditionId, ReadonlySet<AnyState>> | undefined {
    const sets = this.#sets.get(step);
    if (sets === undefined) return undefined;
    return new Map(CONDITION_IDS.map((id, at) => [id, new Set(statesIn(id, sets[at] ?? 0))]));
  }

  /** True where every state possible at `from` is possible at `to`: only then may a person go back there. */
  isWithin({ from, to }: { readonly from: string; readonly to: string }): boolean {
    const source = this.#sets.get(from);
    const target = this.#sets.get(to);
    if (source === undefined || target === undefined) return false;
    // A plain loop: every pair of steps is asked, under every standing of the facts.
    for (let at = 0; at < source.length; at += 1)
      if (((source[at] ?? 0) & ~(target[at] ?? 0)) !== 0) return false;
    return true;
  }

  /** The states of one condition at a step that are not among those allowed. */
  beyond(
    step: string,
    { condition, allowed }: { readonly condition: ConditionId; readonly allowed: readonly AnyState[] },
  ): readonly AnyState[] {
    const set = this.#sets.get(step)?.[CONDITION_IDS.indexOf(condition)] ?? 0;
    return statesIn(condition, set & ~bitsOf(condition, allowed));
  }
}

/**
 * What can be met where, every guard taken as possible: for each condition the states spread along the ways until
 * nothing new is met; joins take the union. Sound: what is not reached here cannot happen in the machine.
 *
 * @example reachOf({ start: 'a', steps, edges }).get('a')?.get('spring') // Set { 'loaded' }
 */
export function reachOf(graph: ProofGraph): Reach {
  const ways = waysFrom(graph.edges);
  const first = Int32Array.from(CONDITION_IDS, (id) => bitsOf(id, [graph.known?.[id] ?? worstState(id)]));
  const sets = new Map([[graph.start, first]]);
  const open = new Set([graph.start]);
  for (const { at, standing } of graph.takesOver ?? []) {
    spread(first, { to: at, sets: changesOf(standing) }, sets);
    open.add(at);
  }
  for (const step of open) {
    open.delete(step);
    const here = sets.get(step) ?? first;
    for (const way of ways.get(step) ?? []) if (spread(here, way, sets)) open.add(way.to);
  }
  return new Reach(sets);
}

interface BitWay {
  readonly to: string;
  /** Bits that the way sets, by the number of the condition; those not named keep their states. */
  readonly sets: readonly (readonly [at: number, bits: number])[];
}

function waysFrom(edges: readonly ProofEdge[]): ReadonlyMap<string, readonly BitWay[]> {
  const from = new Map<string, BitWay[]>();
  for (const edge of edges) {
    const sets = changesOf(edge.sets);
    const ways = from.get(edge.from);
    if (ways === undefined) from.set(edge.from, [{ to: edge.to, sets }]);
    else ways.push({ to: edge.to, sets });
  }
  return from;
}

function changesOf(states: ProofEdge['sets']): BitWay['sets'] {
  return (Object.entries(states) as [ConditionId, readonly AnyState[]][]).map(([id, named]) => [
    CONDITION_IDS.indexOf(id),
    bitsOf(id, named),
  ]);
}

/** Carries what can be met here along one way; true where something new is met there. */
function spread(here: Int32Array, { to, sets: changes }: BitWay, sets: Map<string, Int32Array>): boolean {
  const arriving = here.slice();
  for (const [at, bits] of changes) arriving[at] = bits;
  const there = sets.get(to);
  if (there === undefined) {
    sets.set(to, arriving);
    return true;
  }
  let isNew = false;
  for (let at = 0; at < arriving.length; at += 1) {
    const before = there[at] ?? 0;
    const after = before | (arriving[at] ?? 0);
    if (after !== before) {
      there[at] = after;
      isNew = true;
    }
  }
  return isNew;
}

function bitsOf(condition: ConditionId, states: readonly AnyState[]): number {
  return states.reduce((bits, state) => bits | (BIT.get(condition)?.get(state) ?? 0), 0);
}

function statesIn(condition: ConditionId, set: number): readonly AnyState[] {
  return (CONDITIONS[condition].states as readonly AnyState[]).filter((_, at) => (set & (1 << at)) !== 0);
}
