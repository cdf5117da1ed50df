import { type AnyStateMachine, createMachine, transition } from 'xstate';
import type { Proof } from '../safety/proof.ts';
import { everyFacts, type FactName, type Facts } from './facts.ts';
import { factsUsed } from './facts-used.ts';
import { proverOf } from './proof-graph.ts';
import type { Definition, Target } from './vocabulary.ts';
import { type NamedWay, type WayMeta, waysOf } from './ways.ts';

/** What the machine is told: which kind of act, with the outcome that the calculation gave, under the job's facts. */
export interface MachineEvent {
  readonly type: string;
  readonly outcome: string;
  readonly facts: Facts;
}

export interface Compiled {
  readonly definition: Definition;
  readonly machine: AnyStateMachine;
  /** The facts on which it branches. */
  readonly facts: readonly FactName[];
  /** One proof for each way in which the facts can stand, by `factsKey`. */
  readonly proofs: ReadonlyMap<string, Proof>;
}

/**
 * Compiles a definition to a plain xstate machine: states are steps, `meta` names the card, what is
 * established and released stands on the transitions, so that leaving another way establishes nothing.
 * Guards read the event's outcome and facts, never the context; there is none.
 *
 * @throws Error where a way names a step that does not exist
 * @example compile(strokeCheck).machine.id // 'stroke-check'
 */
export function compile(definition: Definition): Compiled {
  const forward = forwardMachine(definition);
  const names = factsUsed(definition);
  const proveUnder = proverOf(forward, definition);
  const proofs = new Map(everyFacts(names).map((facts) => [factsKey(facts, names), proveUnder(facts)]));
  let machine: AnyStateMachine | undefined;
  return {
    definition,
    // Its ways back are pairs of steps, thousands of them: worked out when a job first asks, not at the start.
    get machine() {
      machine ??= machineOf(definition, (step) => backWays(step, definition, proofs));
      return machine;
    },
    facts: names,
    proofs,
  };
}

/** The proof for a job whose facts stand so. */
export function proofUnder({ facts: names, proofs }: Pick<Compiled, 'facts' | 'proofs'>, facts: Facts) {
  return proofs.get(factsKey(facts, names));
}

/** The machine without its ways back, which follow from its proof and add nothing to it. */
export function forwardMachine(definition: Definition): AnyStateMachine {
  return machineOf(definition, () => ({}));
}

/** The same for the same facts, in whatever order they come: those of a job come back from the log by name. */
export function factsKey(facts: Facts, names: readonly FactName[]): string {
  return names.map((name) => facts[name]).join('|');
}

/** Where an event leads from a step, or null where the machine takes no notice of it. */
export function nextStep(
  compiled: Compiled,
  { step, event }: { readonly step: string; readonly event: MachineEvent },
): string | null {
  const before = compiled.machine.resolveState({ value: step, context: {} });
  // Asked, not compared: a way back to its own step leaves the same snapshot as silence does.
  if (!before.can(event)) return null;
  const [after] = transition(compiled.machine, before, event);
  return String(after.value);
}

/** True where a person may go back from one step to another under these facts. */
export function backIsSafe(
  compiled: Compiled,
  { from, to, facts }: { readonly from: string; readonly to: string; readonly facts: Facts },
): boolean {
  return proofUnder(compiled, facts)?.reach.isWithin({ from, to }) ?? false;
}

type Transitions = Record<string, unknown>;

function machineOf(definition: Definition, extra: (step: string) => Transitions): AnyStateMachine {
  const names = factsUsed(definition);
  const states = Object.entries(definition.steps).map(([id, step]) => {
    const on: Record<string, unknown[]> = {};
    for (const named of waysOf(step)) {
      const ways = on[named.event] ?? [];
      ways.push(...transitionsOf(named));
      on[named.event] = ways;
    }
    const ending = step.kind === 'end' ? { type: 'final' as const } : { on: { ...on, ...extra(id) } };
    return [id, { meta: { step: id }, ...ending }];
  });
  const config = { id: definition.id, initial: definition.start, states: Object.fromEntries(states) };
  return createMachine(config as Parameters<typeof createMachine>[0], {
    guards: {
      way: ({ event }, params) => fits(event as unknown as MachineEvent, params as unknown as WayMeta),
      back: ({ event }, params) =>
        (params as unknown as { facts: readonly string[] }).facts.includes(
          factsKey((event as unknown as MachineEvent).facts, names),
        ),
    },
  }) as AnyStateMachine;
}

function transitionsOf({ outcome, way }: NamedWay): readonly unknown[] {
  return targetsOf(way.to).map(({ to, by }) => {
    const meta: WayMeta = { sets: way.sets ?? {}, outcome, by };
    const guarded = outcome !== null || by !== null;
    return { target: to, meta, ...(guarded ? { guard: { type: 'way', params: meta } } : {}) };
  });
}

function targetsOf(target: Target<string>): readonly { readonly to: string; readonly by: WayMeta['by'] }[] {
  if (typeof target === 'string') return [{ to: target, by: null }];
  return Object.entries(target.ways).map(([is, to]) => ({ to, by: { fact: target.by, is } }));
}

function fits(event: MachineEvent, { outcome, by }: WayMeta): boolean {
  const factFits = by === null || event.facts[by.fact as keyof Facts] === by.is;
  return factFits && (outcome === null || event.outcome === outcome);
}

/** A way back from this step to each step where everything possible here is possible there. */
function backWays(from: string, definition: Definition, proofs: ReadonlyMap<string, Proof>): Transitions {
  const ways = Object.keys(definition.steps).flatMap((to) => {
    if (to === from || definition.steps[to]?.kind === 'end') return [];
    const facts = [...proofs].filter(([, proof]) => proof.reach.isWithin({ from, to })).map(([key]) => key);
    return facts.length === 0
      ? []
      : [[`BACK.${to}`, { target: to, guard: { type: 'back', params: { facts } } }]];
  });
  return Object.fromEntries(ways);
}
