import type { AnyStateMachine } from 'xstate';
import type { AnyState, ConditionId } from '../safety/conditions.ts';
import type { ProofEdge, ProofGraph, ProofStep } from '../safety/proof-graph.ts';
import { type Facts, knownAtOpening } from './facts.ts';
import { standingUnder } from './standing.ts';
import type { Definition, Sets } from './vocabulary.ts';
import type { WayMeta } from './ways.ts';

/**
 * Reads the graph for the proof off the compiled machine, not off the definition: what is proved is what
 * runs. Guards on facts are resolved, because facts are pinned for a job; every other guard is possible.
 *
 * @throws Error for a machine with parallel or nested states or eventless ways, which the proof does not cover
 */
export function proofGraph(
  machine: AnyStateMachine,
  { definition, facts }: { readonly definition: Definition; readonly facts: Facts },
): ProofGraph {
  const edges: ProofEdge[] = [];
  const steps: Record<string, ProofStep> = {};
  for (const [id, node] of Object.entries(machine.root.states)) {
    if (node.type !== 'atomic' && node.type !== 'final')
      throw new Error(`${id} is a ${node.type} state; steps are plain`);
    if ((node.always ?? []).length > 0)
      throw new Error(`${id} has an eventless way; the proof does not see those`);
    steps[id] = proofStep(id, definition);
    for (const [event, transitions] of node.transitions) {
      for (const way of transitions) {
        const edge = edgeOf({ id, event, way, facts });
        if (edge !== null) edges.push(edge);
      }
    }
  }
  const { start, takesOver = {} } = definition;
  const begins = Object.values(takesOver).map((one) => ({ at: one.at, standing: standingUnder(one, facts) }));
  return { start, known: knownAtOpening(facts), takesOver: begins, steps, edges };
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

function edgeOf({
  id,
  event,
  way,
  facts,
}: {
  readonly id: string;
  readonly event: string;
  readonly way: Transition;
  readonly facts: Facts;
}): ProofEdge | null {
  const meta = (way.meta ?? { sets: {}, outcome: null, by: null }) as WayMeta;
  if (meta.by !== null && facts[meta.by.fact as keyof Facts] !== meta.by.is) return null;
  const to = way.target?.[0]?.key;
  if (to === undefined) throw new Error(`${id}: the way by ${event} leads nowhere`);
  // A hold's signature is a guard in all but name: it may never come. A stop is free.
  const guarded = event !== 'STOP' || meta.outcome !== null;
  return {
    from: id,
    to,
    sets: possible(meta.sets),
    guarded,
    by: meta.outcome === null ? event : `${event} ${meta.outcome}`,
  };
}

function possible(sets: Sets): ProofEdge['sets'] {
  const pairs = Object.entries(sets).map(([condition, set]) => [
    condition,
    typeof set === 'object' ? set.among : [set],
  ]);
  return Object.fromEntries(pairs) as { readonly [C in ConditionId]?: readonly AnyState[] };
}
