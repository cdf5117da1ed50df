import { needsOf } from './action-classes.ts';
import { type AnyState, CONDITIONS, type ConditionId, LOCK_IDS, worstState } from './conditions.ts';
import { type NumberedGraph, numbered, type WholeGraph } from './numbered-graph.ts';
import type { ProofEdge, ProofGraph, ProofStep } from './proof-graph.ts';
import { type Reach, reachUnder, type Standing } from './reach.ts';
import { addStates, WORDS } from './state-bits.ts';

export interface Finding {
  readonly rule:
    | 'exposed'
    | 'end with a lock on'
    | 'end with a bypass open'
    | 'end with test air'
    | 'no way to safe'
    | 'unreachable'
    | 'dead end';
  readonly step: string;
  readonly condition: ConditionId | null;
  readonly state: string | null;
  /** The shortest way on which it happens, as `step (by)` items. */
  readonly path: readonly string[];
}

export interface Proof {
  readonly findings: readonly Finding[];
  /** For each step, the states in which each condition can be on arrival. */
  readonly reach: Reach;
}

/**
 * Proves that no way through a procedure reaches an action in a state that the action does not allow. What can be met
 * where is worked out first (`reachOf`); a state that is not allowed is then looked for along the shortest way.
 *
 * @example prove({ start: 'a', steps: {...}, edges: [...] }).findings // [] where the procedure is safe
 */
export function prove(graph: ProofGraph): Proof {
  return prover(graph)({ ...graph, shut: new Uint8Array(graph.edges.length) });
}

/** The same for a graph that is proved under many standings of the facts: what they share is worked out once. */
export function prover(whole: WholeGraph): (standing: Standing) => Proof {
  const graph = numbered(whole);
  const forbidden = forbiddenIn(graph);
  const shape = shapeOf(graph);
  return (standing) => {
    const reach = reachUnder(graph, standing);
    const bad = reach.meeting(forbidden);
    const findings =
      bad.length === 0 ? [] : exposures(new Set(bad), { reach, graph: openGraph(whole, standing) });
    return { findings: [...findings, ...shape({ reach, standing })], reach };
  };
}

/** What stays of a graph under one standing of the facts. */
function openGraph({ start, steps, edges }: WholeGraph, { known, takesOver, shut }: Standing): ProofGraph {
  return {
    start,
    steps,
    edges: edges.filter((_, way) => shut[way] !== 1),
    ...(known === undefined ? {} : { known }),
    ...(takesOver === undefined ? {} : { takesOver }),
  };
}

/** Each state that is not allowed at a step where it can be, with the shortest way on which it comes there. */
function exposures(
  bad: ReadonlySet<string>,
  { reach, graph }: { readonly reach: Reach; readonly graph: ProofGraph },
): readonly Finding[] {
  const waysFrom = groupByFrom(graph.edges);
  return Object.entries(graph.steps)
    .filter(([id]) => bad.has(id))
    .flatMap(([id, step]) =>
      allowancesOf(step).flatMap(({ rule, condition, allowed }) =>
        reach.beyond(id, { condition, allowed }).map((state) => ({
          rule,
          step: id,
          condition,
          state,
          path: shortestWay({ condition, step: id, state }, graph, waysFrom),
        })),
      ),
    );
}

/** By step, the states that it does not allow. */
function forbiddenIn({ whole, ids }: NumberedGraph): Int32Array {
  const words = new Int32Array(ids.length * WORDS);
  for (const [number, step] of Object.values(whole.steps).entries())
    for (const { condition, allowed } of allowancesOf(step)) {
      const states = (CONDITIONS[condition].states as readonly AnyState[]).filter(
        (state) => !allowed.includes(state),
      );
      addStates({ words, at: number * WORDS }, { condition, states });
    }
  return words;
}

interface Allowance {
  readonly rule: Finding['rule'];
  readonly condition: ConditionId;
  readonly allowed: readonly AnyState[];
}

const END_ALLOWANCES: readonly Allowance[] = [
  ...LOCK_IDS.map((condition): Allowance => ({ rule: 'end with a lock on', condition, allowed: ['off'] })),
  { rule: 'end with a bypass open', condition: 'bypass', allowed: ['shut', 'absent'] },
  { rule: 'end with test air', condition: 'testAir', allowed: ['off'] },
];

/** The states that a step allows, condition by condition; those not named may stand as they like. */
function allowancesOf({ action, end, handsOver }: ProofStep): readonly Allowance[] {
  const needs = action === null ? [] : Object.entries(needsOf(action));
  return [
    ...needs.map(
      ([condition, allowed]): Allowance => ({
        rule: 'exposed',
        condition: condition as ConditionId,
        allowed,
      }),
    ),
    ...(end && !handsOver ? END_ALLOWANCES : []),
  ];
}

interface Bad {
  readonly condition: ConditionId;
  readonly step: string;
  readonly state: AnyState;
}

interface Visit {
  readonly step: string;
  readonly state: AnyState;
  readonly by: string;
  readonly before: Visit | null;
}

/** The shortest way on which a condition comes to a step in a state, breadth first over both. */
function shortestWay(
  bad: Bad,
  { start, known, takesOver = [] }: ProofGraph,
  waysFrom: ReadonlyMap<string, readonly ProofEdge[]>,
): readonly string[] {
  const { condition } = bad;
  const first = known?.[condition] ?? worstState(condition);
  const visits: Visit[] = [{ step: start, state: first, by: 'opened', before: null }];
  for (const { at, standing } of takesOver)
    for (const state of standing[condition] ?? [first])
      visits.push({ step: at, state, by: 'taken over', before: null });
  const seen = new Set(visits.map(({ step, state }) => `${step} ${state}`));
  for (const at of visits) {
    if (at.step === bad.step && at.state === bad.state) return pathTo(at);
    for (const edge of waysFrom.get(at.step) ?? []) {
      for (const state of edge.sets[condition] ?? [at.state]) {
        if (seen.has(`${edge.to} ${state}`)) continue;
        seen.add(`${edge.to} ${state}`);
        visits.push({ step: edge.to, state, by: edge.by, before: at });
      }
    }
  }
  throw new Error(`${bad.step} is met with ${condition} ${bad.state}, but no way leads to it`);
}

interface Shaped {
  readonly reach: Reach;
  readonly standing: Standing;
}

/** Steps that are not met, that lead nowhere, or from which no way is free to a safe one. */
function shapeOf(graph: NumberedGraph): (shaped: Shaped) => readonly Finding[] {
  const steps = Object.entries(graph.whole.steps);
  const safe = leadingToSafe(graph);
  const bare = (rule: Finding['rule'], step: string): Finding => ({
    rule,
    step,
    condition: null,
    state: null,
    path: [],
  });
  return ({ reach, standing: { shut } }) => {
    const isSafe = safe(shut);
    return [
      ...reach
        .unmet()
        .filter((id) => graph.whole.steps[id] !== undefined)
        .map((id) => bare('unreachable', id)),
      ...steps
        .filter(([, step], number) => !step.end && !leadsOn(graph, { number, shut }))
        .map(([id]) => bare('dead end', id)),
      ...steps.filter((_, number) => isSafe[number] !== 1).map(([id]) => bare('no way to safe', id)),
    ];
  };
}

function leadsOn(
  { firstWay, ways }: NumberedGraph,
  { number, shut }: { readonly number: number; readonly shut: Uint8Array },
): boolean {
  for (let at = firstWay[number] ?? 0; at < (firstWay[number + 1] ?? 0); at += 1)
    if (shut[ways[at] ?? 0] !== 1) return true;
  return false;
}

/** By step, 1 where unguarded ways lead to a safe step or an end. */
function leadingToSafe({ whole: { steps, edges }, ids, numberOf, to }: NumberedGraph) {
  const first = new Uint8Array(ids.length);
  for (const [number, step] of Object.values(steps).entries()) first[number] = step.safe || step.end ? 1 : 0;
  const free = edges.flatMap(({ from, guarded }, way) =>
    guarded ? [] : [{ way, from: numberOf(from) ?? 0, to: to[way] ?? 0 }],
  );
  return (shut: Uint8Array): Uint8Array => {
    const safe = first.slice();
    // Most lead there at once: a round more for each way in between.
    for (let isNew = true; isNew; ) {
      isNew = false;
      for (const { way, from, to: next } of free) {
        if (safe[from] === 1 || safe[next] !== 1 || shut[way] === 1) continue;
        safe[from] = 1;
        isNew = true;
      }
    }
    return safe;
  };
}

function groupByFrom(edges: readonly ProofEdge[]): ReadonlyMap<string, readonly ProofEdge[]> {
  const groups = new Map<string, ProofEdge[]>();
  for (const edge of edges) getOrMake(groups, edge.from, () => []).push(edge);
  return groups;
}

function pathTo(visit: Visit): readonly string[] {
  const path: string[] = [];
  for (let at: Visit | null = visit; at !== null; at = at.before) path.unshift(`${at.step} (${at.by})`);
  return path;
}

function getOrMake<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const found = map.get(key) ?? make();
  map.set(key, found);
  return found;
}

/** One line a finding, for a person. */
export function sayFinding(finding: Finding): string {
  const what =
    finding.condition === null ? '' : `: ${CONDITIONS[finding.condition].name} can be ${finding.state}`;
  const way = finding.path.length === 0 ? '' : ` by way of ${finding.path.join(', ')}`;
  return `${finding.rule} at ${finding.step}${what}${way}`;
}
