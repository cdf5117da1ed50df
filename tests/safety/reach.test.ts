import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type AnyState,
  CONDITION_IDS,
  CONDITIONS,
  type ConditionId,
  worstState,
} from '../../safety/conditions.ts';
import type { ProofEdge, ProofGraph, ProofStep } from '../../safety/proof-graph.ts';
import { reachOf } from '../../safety/reach.ts';

const PLAIN: ProofStep = { action: null, end: false, safe: false };
const STEPS = ['a', 'b', 'c', 'd', 'e', 'f'];

const someSet = fc
  .constantFrom(...CONDITION_IDS)
  .chain((id) =>
    fc
      .subarray(CONDITIONS[id].states as readonly AnyState[] as AnyState[], { minLength: 1 })
      .map((states) => [id, states] as const),
  );

const someEdge: fc.Arbitrary<ProofEdge> = fc.record({
  from: fc.constantFrom(...STEPS),
  to: fc.constantFrom(...STEPS),
  sets: fc.array(someSet, { maxLength: 3 }).map((sets) => Object.fromEntries(sets)),
  guarded: fc.boolean(),
  by: fc.constant('ANSWER'),
});

/** Plays every way by itself, one state after the other: slow and plain. */
function played(graph: ProofGraph, condition: ConditionId): ReadonlyMap<string, ReadonlySet<AnyState>> {
  const met = new Map<string, Set<AnyState>>();
  const open: (readonly [string, AnyState])[] = [[graph.start, worstState(condition)]];
  for (const [step, state] of open) {
    const here = met.get(step) ?? new Set();
    if (here.has(state)) continue;
    met.set(step, here.add(state));
    for (const edge of graph.edges.filter(({ from }) => from === step))
      for (const next of edge.sets[condition] ?? [state]) open.push([edge.to, next]);
  }
  return met;
}

describe('[SAF-03] What can be met where', () => {
  test('is what is met by playing every way of any graph, condition by condition', () => {
    fc.assert(
      fc.property(fc.array(someEdge, { maxLength: 14 }), (edges) => {
        const steps = Object.fromEntries(STEPS.map((id) => [id, PLAIN]));
        const graph: ProofGraph = { start: 'a', steps, edges };
        const reach = reachOf(graph);
        for (const condition of CONDITION_IDS) {
          const met = played(graph, condition);
          expect([...reach.keys()].sort()).toEqual([...met.keys()].sort());
          for (const [step, states] of met) expect(reach.get(step)?.get(condition)).toEqual(states);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('lets nobody go back to where one state of here cannot be', () => {
    const steps = Object.fromEntries(STEPS.map((id) => [id, PLAIN]));
    const way = (from: string, to: string, sets: ProofEdge['sets'] = {}): ProofEdge => ({
      from,
      to,
      sets,
      guarded: true,
      by: 'ANSWER',
    });
    const reach = reachOf({
      start: 'a',
      steps,
      edges: [way('a', 'b', { supplyLock: ['on'] }), way('b', 'c'), way('a', 'c'), way('a', 'd')],
    });
    expect(reach.isWithin({ from: 'b', to: 'c' })).toBe(true);
    expect(reach.isWithin({ from: 'c', to: 'b' })).toBe(false);
    expect(reach.isWithin({ from: 'a', to: 'd' })).toBe(true);
    expect(reach.isWithin({ from: 'a', to: 'e' })).toBe(false);
    expect(reach.beyond('c', { condition: 'supplyLock', allowed: ['off'] })).toEqual(['on']);
    expect(reach.beyond('e', { condition: 'supplyLock', allowed: [] })).toEqual([]);
  });
});
