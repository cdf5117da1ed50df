import { needsOf } from './action-classes.ts';
import { type AnyState, CONDITIONS, type ConditionId, LOCK_IDS, worstState } from './conditions.ts';
import type { ProofEdge, ProofGraph, ProofStep } from './proof-graph.ts';
import { type Reach, reachOf } from './reach.ts';

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
  const reach = reachOf(graph);
  const waysFrom = groupByFrom(graph.edges);
  const findings = Object.entries(graph.steps).flatMap(([id, step]) =>
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
  return { findings: [...findings, ...shapeFindings(graph, reach, waysFrom)], reach };
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

/** Graphs of one procedure share their steps, under every standing of its facts. */
const ALLOWANCES = new WeakMap<ProofStep, readonly Allowance[]>();

function allowancesOf(step: ProofStep): readonly Allowance[] {
  const known = ALLOWANCES.get(step) ?? namedAllowances(step);
  ALLOWANCES.set(step, known);
  return known;
}

/** The states that a step allows, condition by condition; those not named may stand as they like. */
function namedAllowances({ action, end, handsOver }: ProofStep): readonly Allowance[] {
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

function shapeFindings(
  graph: ProofGraph,
  reach: Reach,
  waysFrom: ReadonlyMap<string, readonly ProofEdge[]>,
): readonly Finding[] {
  const bare = (rule: Finding['rule'], step: string): Finding => ({
    rule,
    step,
    condition: null,
    state: null,
    path: [],
  });
  const steps = Object.entries(graph.steps);
  const safe = leadingToSafe(graph);
  return [
    ...steps.filter(([id]) => !reach.has(id)).map(([id]) => bare('unreachable', id)),
    ...steps
      .filter(([id, step]) => !step.end && (waysFrom.get(id) ?? []).length === 0)
      .map(([id]) => bare('dead end', id)),
    ...steps.filter(([id]) => !safe.has(id)).map(([id]) => bare('no way to safe', id)),
  ];
}

/** Every step from which unguarded ways lead to a safe step or an end, found from there backwards. */
function leadingToSafe({ steps, edges }: ProofGraph): ReadonlySet<string> {
  const waysTo = new Map<string, string[]>();
  for (const { from, to, guarded } of edges) if (!guarded) getOrMake(waysTo, to, () => []).push(from);
  const safe = new Set(Object.entries(steps).flatMap(([id, step]) => (step.safe || step.end ? [id] : [])));
  for (const step of safe) for (const from of waysTo.get(step) ?? []) safe.add(from);
  return safe;
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
