import { type AnyState, CONDITION_IDS, CONDITIONS, type ConditionId, worstState } from './conditions.ts';
import type { ProofEdge, ProofGraph } from './proof-graph.ts';

interface Place {
  readonly word: number;
  readonly shift: number;
}

const WORD_BITS = 30;

/** Where the states of each condition stand as bits: all of a condition in one word, as many conditions to a word as fit. */
const PLACES = packed();
const WORDS = 1 + Math.max(...[...PLACES.values()].map(({ word }) => word));

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

/** For each step of a graph, the states in which each condition can be on arrival. */
export class Reach {
  /** By step: the sets of all conditions as words of bits. */
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
    return new Map(CONDITION_IDS.map((id) => [id, new Set(statesIn(id, sets))]));
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
    const sets = this.#sets.get(step);
    if (sets === undefined) return [];
    return statesIn(condition, sets).filter((state) => !allowed.includes(state));
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
  const first = new Int32Array(WORDS);
  for (const id of CONDITION_IDS)
    add(first, { condition: id, states: [graph.known?.[id] ?? worstState(id)] });
  const sets = new Map([[graph.start, first]]);
  const open = new Set([graph.start]);
  for (const { at, standing } of graph.takesOver ?? []) {
    spread(first, { to: at, ...changesOf(standing) }, sets);
    open.add(at);
  }
  for (const step of open) {
    open.delete(step);
    const here = sets.get(step) ?? first;
    for (const way of ways.get(step) ?? []) if (spread(here, way, sets)) open.add(way.to);
  }
  return new Reach(sets);
}

/** What a way does to the words: the conditions that it does not name keep their states. */
interface Changes {
  readonly keeps: Int32Array;
  readonly sets: Int32Array;
}

interface BitWay extends Changes {
  readonly to: string;
}

function waysFrom(edges: readonly ProofEdge[]): ReadonlyMap<string, readonly BitWay[]> {
  const from = new Map<string, BitWay[]>();
  for (const edge of edges) {
    const way = { to: edge.to, ...changesOf(edge.sets) };
    const ways = from.get(edge.from);
    if (ways === undefined) from.set(edge.from, [way]);
    else ways.push(way);
  }
  return from;
}

const NOTHING: Changes = { keeps: new Int32Array(WORDS).fill(-1), sets: new Int32Array(WORDS) };

/** Graphs of one procedure share their edges, under every standing of its facts. */
const CHANGES = new WeakMap<ProofEdge['sets'], Changes>();

function changesOf(states: ProofEdge['sets']): Changes {
  const known = CHANGES.get(states) ?? packedChanges(states);
  CHANGES.set(states, known);
  return known;
}

function packedChanges(states: ProofEdge['sets']): Changes {
  const named = Object.entries(states) as [ConditionId, readonly AnyState[]][];
  if (named.length === 0) return NOTHING;
  const changes = { keeps: NOTHING.keeps.slice(), sets: NOTHING.sets.slice() };
  for (const [condition, to] of named) {
    const { word, shift } = placeOf(condition);
    const all = (1 << CONDITIONS[condition].states.length) - 1;
    changes.keeps[word] = (changes.keeps[word] ?? 0) & ~(all << shift);
    add(changes.sets, { condition, states: to });
  }
  return changes;
}

/** Carries what can be met here along one way; true where something new is met there. */
function spread(here: Int32Array, { to, keeps, sets: set }: BitWay, sets: Map<string, Int32Array>): boolean {
  let there = sets.get(to);
  let isNew = there === undefined;
  if (there === undefined) {
    there = new Int32Array(WORDS);
    sets.set(to, there);
  }
  for (let at = 0; at < WORDS; at += 1) {
    const before = there[at] ?? 0;
    const after = before | ((here[at] ?? 0) & (keeps[at] ?? 0)) | (set[at] ?? 0);
    if (after === before) continue;
    there[at] = after;
    isNew = true;
  }
  return isNew;
}

function add(
  words: Int32Array,
  { condition, states }: { readonly condition: ConditionId; readonly states: readonly AnyState[] },
): void {
  const { word, shift } = placeOf(condition);
  const known: readonly AnyState[] = CONDITIONS[condition].states;
  // A state that the condition does not have adds nothing.
  for (const state of states)
    if (known.includes(state)) words[word] = (words[word] ?? 0) | (1 << (shift + known.indexOf(state)));
}

function statesIn(condition: ConditionId, words: Int32Array): readonly AnyState[] {
  const { word, shift } = placeOf(condition);
  const bits = words[word] ?? 0;
  return (CONDITIONS[condition].states as readonly AnyState[]).filter(
    (_, at) => (bits & (1 << (shift + at))) !== 0,
  );
}
