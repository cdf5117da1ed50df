import { type ActionClass, needsOf } from './action-classes.ts';
import {
  type AnyState,
  CONDITION_IDS,
  CONDITIONS,
  type ConditionId,
  LOCK_IDS,
  worstState,
} from './conditions.ts';

/** A step as the proof sees it. */
export interface ProofStep {
  readonly action: ActionClass | null;
  /** Steps where a job may close. */
  readonly end: boolean;
  /** Steps from which nothing more must be done to be safe; a stop must lead here unguarded. */
  readonly safe: boolean;
}

/** A way from one step to another. A guard is taken as possible, whatever it says. */
export interface ProofEdge {
  readonly from: string;
  readonly to: string;
  /** The states that each named condition may be in after it; a condition not named keeps its state. */
  readonly sets: { readonly [C in ConditionId]?: readonly AnyState[] };
  /** False only where no guard can block the way and the person can always take it. */
  readonly guarded: boolean;
  /** How a person would name the way: `ANSWER shown`, `STOP`. */
  readonly by: string;
}

export interface ProofGraph {
  readonly start: string;
  /** What is known at opening; everything else begins at its worst. */
  readonly known?: { readonly [C in ConditionId]?: AnyState };
  readonly steps: Readonly<Record<string, ProofStep>>;
  readonly edges: readonly ProofEdge[];
}

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

type Reach = ReadonlyMap<string, ReadonlyMap<ConditionId, ReadonlySet<AnyState>>>;

export interface Proof {
  readonly findings: readonly Finding[];
  /** For each step, the states in which each condition can be on arrival. */
  readonly reach: Reach;
}

interface Visit {
  readonly step: string;
  readonly state: AnyState;
  readonly by: string;
  readonly before: Visit | null;
}

/**
 * Proves that no way through a procedure reaches an action in a state that the action does not allow.
 *
 * Shape: for each condition a breadth-first search over (step, state), every guard taken as possible; joins
 * take the union because a step may be visited once for each state. Sound: what is not reached here cannot
 * happen in the machine. The first visit gives the shortest counterexample.
 *
 * @example prove({ start: 'a', steps: {...}, edges: [...] }).findings // [] where the procedure is safe
 */
export function prove(graph: ProofGraph): Proof {
  const waysFrom = groupByFrom(graph.edges);
  const reach = new Map<string, Map<ConditionId, Set<AnyState>>>();
  const findings: Finding[] = [];
  for (const condition of CONDITION_IDS) {
    for (const visit of visitsOf(condition, graph, waysFrom)) {
      const here = getOrMake(reach, visit.step, () => new Map<ConditionId, Set<AnyState>>());
      getOrMake(here, condition, () => new Set<AnyState>()).add(visit.state);
      findings.push(...findingsAt(condition, visit, graph.steps[visit.step]));
    }
  }
  findings.push(...shapeFindings(graph, reach, waysFrom));
  return { findings, reach };
}

/** True where every state possible at `from` is possible at `to`: only then may a person go back there. */
export function mayGoBack(
  reach: Reach,
  { from, to }: { readonly from: string; readonly to: string },
): boolean {
  const source = reach.get(from);
  const target = reach.get(to);
  if (source === undefined || target === undefined) return false;
  return CONDITION_IDS.every((id) =>
    [...(source.get(id) ?? [])].every((state) => target.get(id)?.has(state)),
  );
}

function visitsOf(
  condition: ConditionId,
  { start, known }: ProofGraph,
  waysFrom: ReadonlyMap<string, readonly ProofEdge[]>,
): readonly Visit[] {
  const first = known?.[condition] ?? worstState(condition);
  const visits: Visit[] = [{ step: start, state: first, by: 'opened', before: null }];
  const seen = new Map([[start, new Set([first])]]);
  for (let next = 0; next < visits.length; next += 1) {
    const at = visits[next];
    if (at === undefined) break;
    for (const edge of waysFrom.get(at.step) ?? []) {
      for (const state of edge.sets[condition] ?? [at.state]) {
        const there = getOrMake(seen, edge.to, () => new Set());
        if (there.has(state)) continue;
        there.add(state);
        visits.push({ step: edge.to, state, by: edge.by, before: at });
      }
    }
  }
  return visits;
}

function findingsAt(condition: ConditionId, visit: Visit, step: ProofStep | undefined): readonly Finding[] {
  if (step === undefined) return [];
  const found: Finding[] = [];
  const report = (rule: Finding['rule']) =>
    found.push({ rule, step: visit.step, condition, state: visit.state, path: pathTo(visit) });
  const allowed: readonly AnyState[] | undefined =
    step.action === null ? undefined : needsOf(step.action)[condition];
  if (allowed !== undefined && !allowed.includes(visit.state)) report('exposed');
  if (step.end && LOCK_IDS.includes(condition) && visit.state === 'on') report('end with a lock on');
  if (step.end && condition === 'bypass' && visit.state === 'open') report('end with a bypass open');
  if (step.end && condition === 'testAir' && visit.state === 'connected') report('end with test air');
  return found;
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
  return [
    ...steps.filter(([id]) => !reach.has(id)).map(([id]) => bare('unreachable', id)),
    ...steps
      .filter(([id, step]) => !step.end && (waysFrom.get(id) ?? []).length === 0)
      .map(([id]) => bare('dead end', id)),
    ...steps.filter(([id]) => !canReachSafe(id, graph, waysFrom)).map(([id]) => bare('no way to safe', id)),
  ];
}

function canReachSafe(
  from: string,
  graph: ProofGraph,
  waysFrom: ReadonlyMap<string, readonly ProofEdge[]>,
): boolean {
  const seen = new Set([from]);
  const open = [from];
  for (let step = open.pop(); step !== undefined; step = open.pop()) {
    if (graph.steps[step]?.safe || graph.steps[step]?.end) return true;
    for (const edge of waysFrom.get(step) ?? []) {
      if (edge.guarded || seen.has(edge.to)) continue;
      seen.add(edge.to);
      open.push(edge.to);
    }
  }
  return false;
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
