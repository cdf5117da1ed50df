import type { AnyStateMachine } from 'xstate';
import type { AnyState, ConditionId } from '../safety/conditions.ts';
import { type Proof, prover } from '../safety/proof.ts';
import type { ProofEdge, ProofGraph, ProofStep } from '../safety/proof-graph.ts';
import { type Facts, knownAtOpening } from './facts.ts';
import { isTakenOverUnder, standingUnder } from './standing.ts';
import type { Definition, Sets } from './vocabulary.ts';
import type { WayMeta } from './ways.ts';

/**
 * Reads the graph for the proof off the compiled machine, not off the definition: what is proved is what
 * runs. Guards on facts are resolved, because facts are pinned for a job; every other guard is possible.
 *
 * @returns the graph under any standing of the facts; graphs of one machine share their steps and edges
 * @throws Error for a machine with parallel or nested states or eventless ways, which the proof does not cover
 */
export function proofGraphs(machine: AnyStateMachine, definition: Definition): (facts: Facts) => ProofGraph {
  const { start, steps, ways } = wholeOf(machine, definition);
  return (facts) => ({
    start,
    steps,
    ...beginningUnder(definition, facts),
    edges: ways.filter(({ by }) => isOpen(by, facts)).map(({ edge }) => edge),
  });
}

/**
 * The proof under any standing of the facts, of the same graphs: what they share is worked out once.
 * @throws Error as `proofGraphs`
 */
export function proverOf(machine: AnyStateMachine, definition: Definition): (facts: Facts) => Proof {
  const { start, steps, ways } = wholeOf(machine, definition);
  const proveUnder = prover({ start, steps, edges: ways.map(({ edge }) => edge) });
  const byFacts = ways.flatMap(({ by }, way) => (by === null ? [] : [{ by, way }]));
  return (facts) => {
    const shut = new Uint8Array(ways.length);
    for (const { by, way } of byFacts) if (!isOpen(by, facts)) shut[way] = 1;
    return proveUnder({ ...beginningUnder(definition, facts), shut });
  };
}

function isOpen(by: WayMeta['by'], facts: Facts): boolean {
  return by === null || facts[by.fact as keyof Facts] === by.is;
}

function beginningUnder({ takesOver = {} }: Definition, facts: Facts) {
  return {
    known: knownAtOpening(facts),
    takesOver: Object.values(takesOver)
      .filter((one) => isTakenOverUnder(one, facts))
      .map((one) => ({ at: one.at, standing: standingUnder(one, facts) })),
  };
}

/** Every step and every way, whatever the facts. */
interface Whole {
  readonly start: string;
  readonly steps: Readonly<Record<string, ProofStep>>;
  readonly ways: readonly FactWay[];
}

function wholeOf(machine: AnyStateMachine, definition: Definition): Whole {
  const ways: FactWay[] = [];
  const steps: Record<string, ProofStep> = {};
  for (const [id, node] of Object.entries(machine.root.states)) {
    if (node.type !== 'atomic' && node.type !== 'final')
      throw new Error(`${id} is a ${node.type} state; steps are plain`);
    if ((node.always ?? []).length > 0)
      throw new Error(`${id} has an eventless way; the proof does not see those`);
    steps[id] = proofStep(id, definition);
    for (const [event, transitions] of node.transitions)
      for (const way of transitions) ways.push(factWay({ id, event, way }));
  }
  return { start: definition.start, steps, ways };
}

/** An edge with the fact that it stands under, if it does. */
interface FactWay {
  readonly by: WayMeta['by'];
  readonly edge: ProofEdge;
}

function proofStep(id: string, definition: Definition): ProofStep {
  const step = definition.steps[id];
  const action = step === undefined || step.kind === 'end' ? null : (step.action ?? null);
  const handsOver = step?.kind === 'end' && step.handsOver !== undefined;
  return { action, end: step?.kind === 'end', handsOver, safe: definition.safe.includes(id) };
}

interface Transition {
  readonly target: readonly { readonly key: string }[] | undefined;
  readonly meta?: unknown;
  readonly guard?: unknown;
}

function factWay({
  id,
  event,
  way,
}: {
  readonly id: string;
  readonly event: string;
  readonly way: Transition;
}): FactWay {
  const meta = (way.meta ?? { sets: {}, outcome: null, by: null }) as WayMeta;
  const to = way.target?.[0]?.key;
  if (to === undefined) throw new Error(`${id}: the way by ${event} leads nowhere`);
  // A hold's signature is a guard in all but name: it may never come. A stop is free.
  const guarded = event !== 'STOP' || meta.outcome !== null;
  const edge = {
    from: id,
    to,
    sets: possible(meta.sets),
    guarded,
    by: meta.outcome === null ? event : `${event} ${meta.outcome}`,
  };
  return { by: meta.by, edge };
}

/** Most ways set nothing: they share this. */
const NOTHING: ProofEdge['sets'] = {};

function possible(sets: Sets): ProofEdge['sets'] {
  if (Object.keys(sets).length === 0) return NOTHING;
  const pairs = Object.entries(sets).map(([condition, set]) => [
    condition,
    typeof set === 'object' ? set.among : [set],
  ]);
  return Object.fromEntries(pairs) as { readonly [C in ConditionId]?: readonly AnyState[] };
}
