import type { AnyState, ConditionId } from './conditions.ts';
import type { ProofEdge, ProofGraph } from './proof-graph.ts';
import { addStates, clearStates, WORDS } from './state-bits.ts';

/** A graph without what differs from one standing of the facts to the next. */
export type WholeGraph = Pick<ProofGraph, 'start' | 'steps' | 'edges'>;

/**
 * A graph with its steps and ways numbered and their effects as bits: read once, and then proved under every standing of
 * the facts, under which some of its ways are shut.
 */
export interface NumberedGraph {
  readonly whole: WholeGraph;
  /** Every step by its number: first those of the graph in their order, then any that only a way names. */
  readonly ids: readonly string[];
  numberOf(step: string): number | undefined;
  /** For step `s` the ways out of it, by number: `ways[i]` from `i = firstWay[s]` to before `firstWay[s + 1]`. */
  readonly firstWay: Int32Array;
  readonly ways: Int32Array;
  /** By way: the step that it leads to. */
  readonly to: Int32Array;
  /** By way, WORDS each: the states that stay as they are, and those that it sets. */
  readonly keeps: Int32Array;
  readonly sets: Int32Array;
}

/** @example numbered({ start: 'a', steps: { a, b }, edges: [] }).ids // ['a', 'b'] */
export function numbered(whole: WholeGraph): NumberedGraph {
  const { start, steps, edges } = whole;
  const ids = [...new Set([...Object.keys(steps), start, ...edges.flatMap(({ from, to }) => [from, to])])];
  const numbers = new Map(ids.map((id, number) => [id, number]));
  const numberOf = (id: string) => numbers.get(id) ?? 0;
  const { keeps, sets } = effectsOf(edges);
  return {
    whole,
    ids,
    numberOf: (step) => numbers.get(step),
    ...byStep(
      edges.map(({ from }) => numberOf(from)),
      ids.length,
    ),
    to: Int32Array.from(edges, ({ to }) => numberOf(to)),
    keeps,
    sets,
  };
}

/** Ways in the order of the steps that they leave, and among those of one step as they came. */
function byStep(froms: readonly number[], steps: number): Pick<NumberedGraph, 'firstWay' | 'ways'> {
  const firstWay = new Int32Array(steps + 1);
  for (const from of froms) firstWay[from + 1] = (firstWay[from + 1] ?? 0) + 1;
  for (let step = 0; step < steps; step += 1)
    firstWay[step + 1] = (firstWay[step + 1] ?? 0) + (firstWay[step] ?? 0);
  const next = firstWay.slice();
  const ways = new Int32Array(froms.length);
  for (const [way, from] of froms.entries()) {
    const at = next[from] ?? 0;
    ways[at] = way;
    next[from] = at + 1;
  }
  return { firstWay, ways };
}

function effectsOf(edges: readonly ProofEdge[]): Pick<NumberedGraph, 'keeps' | 'sets'> {
  const keeps = new Int32Array(edges.length * WORDS).fill(-1);
  const sets = new Int32Array(edges.length * WORDS);
  for (const [way, edge] of edges.entries()) {
    const at = way * WORDS;
    for (const [condition, states] of Object.entries(edge.sets) as [ConditionId, readonly AnyState[]][]) {
      clearStates({ words: keeps, at }, condition);
      addStates({ words: sets, at }, { condition, states });
    }
  }
  return { keeps, sets };
}
