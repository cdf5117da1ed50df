import { type AnyState, CONDITION_IDS, type ConditionId, worstState } from './conditions.ts';
import { type NumberedGraph, numbered } from './numbered-graph.ts';
import type { ProofGraph } from './proof-graph.ts';
import { addStates, clearStates, statesAmong, WORDS } from './state-bits.ts';

/** For each step of a graph, the states in which each condition can be on arrival. */
export class Reach {
  readonly #graph: Pick<NumberedGraph, 'ids' | 'numberOf'>;
  /** WORDS for each step. */
  readonly #words: Int32Array;
  readonly #met: Uint8Array;

  constructor(
    graph: Pick<NumberedGraph, 'ids' | 'numberOf'>,
    { words, met }: { readonly words: Int32Array; readonly met: Uint8Array },
  ) {
    this.#graph = graph;
    this.#words = words;
    this.#met = met;
  }

  has(step: string): boolean {
    return this.#at(step) !== undefined;
  }

  keys(): readonly string[] {
    return this.#graph.ids.filter((_, number) => this.#met[number] === 1);
  }

  unmet(): readonly string[] {
    return this.#graph.ids.filter((_, number) => this.#met[number] !== 1);
  }

  get(step: string): ReadonlyMap<ConditionId, ReadonlySet<AnyState>> | undefined {
    const at = this.#at(step);
    if (at === undefined) return undefined;
    const here = { words: this.#words, at };
    return new Map(CONDITION_IDS.map((id) => [id, new Set(statesAmong(here, id))]));
  }

  /** True where every state possible at `from` is possible at `to`: only then may a person go back there. */
  isWithin({ from, to }: { readonly from: string; readonly to: string }): boolean {
    const [source, target] = [this.#at(from), this.#at(to)];
    if (source === undefined || target === undefined) return false;
    // A plain loop: every pair of steps is asked, under every standing of the facts.
    for (let word = 0; word < WORDS; word += 1)
      if (((this.#words[source + word] ?? 0) & ~(this.#words[target + word] ?? 0)) !== 0) return false;
    return true;
  }

  /** The states of one condition at a step that are not among those allowed. */
  beyond(
    step: string,
    { condition, allowed }: { readonly condition: ConditionId; readonly allowed: readonly AnyState[] },
  ): readonly AnyState[] {
    const at = this.#at(step);
    if (at === undefined) return [];
    return statesAmong({ words: this.#words, at }, condition).filter((state) => !allowed.includes(state));
  }

  /** Steps at which some state can be that is among those forbidden there. @param forbidden WORDS for each step */
  meeting(forbidden: Int32Array): readonly string[] {
    // Nearly always none: so that states are looked at by name only where something is wrong.
    return this.#graph.ids.filter((_, number) => {
      for (let at = number * WORDS; at < (number + 1) * WORDS; at += 1)
        if (((this.#words[at] ?? 0) & (forbidden[at] ?? 0)) !== 0) return true;
      return false;
    });
  }

  /** Where the words of a step begin; undefined for one that is not met. */
  #at(step: string): number | undefined {
    const number = this.#graph.numberOf(step);
    return number === undefined || this.#met[number] !== 1 ? undefined : number * WORDS;
  }
}

/** What differs from one standing of the facts to the next: how a job begins, and which ways there are not. */
export interface Standing extends Pick<ProofGraph, 'known' | 'takesOver'> {
  /** By number of the way: 1 for one that does not exist under these facts. */
  readonly shut: Uint8Array;
}

/**
 * What can be met where, every guard taken as possible: for each condition the states spread along the ways until
 * nothing new is met; joins take the union. Sound: what is not reached here cannot happen in the machine.
 *
 * @example reachOf({ start: 'a', steps, edges }).get('a')?.get('spring') // Set { 'loaded' }
 */
export function reachOf(graph: ProofGraph): Reach {
  return reachUnder(numbered(graph), { ...graph, shut: new Uint8Array(graph.edges.length) });
}

/** The same for one standing of the facts, of a graph that was numbered for all. */
export function reachUnder(graph: NumberedGraph, standing: Standing): Reach {
  const { ids, firstWay, ways, to } = graph;
  const words = new Int32Array(ids.length * WORDS);
  const met = new Uint8Array(ids.length);
  const open = beginnings(graph, { standing, words });
  for (const step of open) met[step] = 1;
  const waits = met.slice();
  // Last in, first out; in which order steps are taken changes nothing of what is met in the end.
  for (let step = open.pop(); step !== undefined; step = open.pop()) {
    waits[step] = 0;
    for (let at = firstWay[step] ?? 0; at < (firstWay[step + 1] ?? 0); at += 1) {
      const way = ways[at] ?? 0;
      if (standing.shut[way] === 1) continue;
      const next = to[way] ?? 0;
      const isNew = spread(graph, { way, from: step, to: next, words }) || met[next] === 0;
      met[next] = 1;
      if (!isNew || waits[next] === 1) continue;
      waits[next] = 1;
      open.push(next);
    }
  }
  return new Reach(graph, { words, met });
}

/** Puts down what is known where a job begins. @returns the steps at which it may */
function beginnings(
  { whole, numberOf }: NumberedGraph,
  { standing: { known, takesOver = [] }, words }: { readonly standing: Standing; readonly words: Int32Array },
): number[] {
  const opening = new Int32Array(WORDS);
  for (const condition of CONDITION_IDS)
    addStates(
      { words: opening, at: 0 },
      { condition, states: [known?.[condition] ?? worstState(condition)] },
    );
  const begun = [
    { at: whole.start, words: opening },
    ...takesOver.map(({ at, standing }) => ({ at, words: standingOf(standing, opening) })),
  ];
  return begun.flatMap(({ at, words: begin }) => {
    const number = numberOf(at);
    // A step that the graph does not have is a fault of the definition, which its check names.
    if (number === undefined) return [];
    for (const [word, bits] of begin.entries())
      words[number * WORDS + word] = (words[number * WORDS + word] ?? 0) | bits;
    return [number];
  });
}

function standingOf(states: NonNullable<Standing['takesOver']>[number]['standing'], opening: Int32Array) {
  const words = opening.slice();
  for (const [condition, to] of Object.entries(states) as [ConditionId, readonly AnyState[]][]) {
    clearStates({ words, at: 0 }, condition);
    addStates({ words, at: 0 }, { condition, states: to });
  }
  return words;
}

interface Spreading {
  readonly way: number;
  readonly from: number;
  readonly to: number;
  readonly words: Int32Array;
}

/** Carries what can be met at one step along one way; true where something new is met there. */
function spread({ keeps, sets }: NumberedGraph, { way, from, to, words }: Spreading): boolean {
  let isNew = false;
  for (let word = 0; word < WORDS; word += 1) {
    const [here, there, effect] = [from * WORDS + word, to * WORDS + word, way * WORDS + word];
    const before = words[there] ?? 0;
    const after = before | ((words[here] ?? 0) & (keeps[effect] ?? 0)) | (sets[effect] ?? 0);
    if (after === before) continue;
    words[there] = after;
    isNew = true;
  }
  return isNew;
}
