/** Definitions that are wrong in one place each, made by machine: what a proof must not let pass. */

import { faultsOf } from '../../procedures/check.ts';
import { type Compiled, factsKey, forwardMachine } from '../../procedures/compile.ts';
import type { Facts } from '../../procedures/facts.ts';
import { everyFacts } from '../../procedures/facts.ts';
import { factsUsed } from '../../procedures/facts-used.ts';
import { proverOf } from '../../procedures/proof-graph.ts';
import type { Definition, OpenStep, Step, Way } from '../../procedures/vocabulary.ts';
import { type NamedWay, waysOf } from '../../procedures/ways.ts';
import { needsOf } from '../../safety/action-classes.ts';
import { type AnyState, CONDITION_IDS, type ConditionId, type States } from '../../safety/conditions.ts';
import type { Proof } from '../../safety/proof.ts';
import { standings } from './standings.ts';

export interface Mutant {
  readonly name: string;
  readonly definition: Definition;
}

export function withStep(definition: Definition, id: string, step: Step): Definition {
  return { ...definition, steps: { ...definition.steps, [id]: step } };
}

export function openSteps(definition: Definition): readonly (readonly [string, OpenStep])[] {
  return Object.entries(definition.steps).flatMap(([id, step]) => (step.kind === 'end' ? [] : [[id, step]]));
}

/** The step with one of its ways changed; a stop is changed by itself, as `makeSafe`. */
export function withWay(step: OpenStep, { event, outcome }: NamedWay, way: Way<string>): OpenStep {
  if (event === 'STOP') return { ...step, makeSafe: String(way.to) };
  if (event === 'SIGN' && step.kind === 'hold') return { ...step, signed: way };
  if (event === 'SEND_BACK' && step.kind === 'hold') return { ...step, sentBack: way };
  if (step.kind === 'instruction' || step.kind === 'wait') return { ...step, next: way };
  const key = outcome ?? '';
  if (step.kind === 'question') {
    const label = step.choices[key]?.label ?? '';
    return { ...step, choices: { ...step.choices, [key]: { label, ...way } } };
  }
  if (step.kind === 'hold') throw new Error('a hold has no such way');
  return { ...step, ways: { ...step.ways, [key]: way } } as OpenStep;
}

/** More standings of the facts than this are not all tried: what is missed under some is missed. */
const STANDINGS_MAX = 12;

/**
 * Standings of the facts that between them take every way of a definition: each fact in each of its states beside the
 * first of all others, and beside the last. A test over fewer standings can only be stricter.
 */
export function tellingFacts(definition: Definition): readonly Facts[] {
  const names = factsUsed(definition);
  const all = everyFacts(names);
  if (all.length <= STANDINGS_MAX) return all;
  const ends = [all[0], all.at(-1)].filter((facts) => facts !== undefined);
  const near = (facts: Facts) =>
    ends.some((end) => names.filter((name) => facts[name] !== end[name]).length <= 1);
  return all.filter(near);
}

/** Found as the gate before serving would find it: by the shape, else by the proof under some standing of the facts. */
export function isFound({ definition }: Mutant, original: Compiled, first: readonly Facts[] = []): boolean {
  if (faultsOf({ ...original, definition }).length > 0) return true;
  const machine = forwardMachine(definition);
  const proveUnder = proverOf(machine, definition);
  const proofs = new Map<string, Proof>();
  for (const facts of [...first, ...tellingFacts(original.definition)]) {
    const key = factsKey(facts, original.facts);
    if (proofs.has(key)) continue;
    const proof = proveUnder(facts);
    proofs.set(key, proof);
    if (proof.findings.some((finding) => finding.rule !== 'unreachable')) return true;
  }
  return faultsOf({ definition, machine, facts: original.facts, proofs }).length > 0;
}

type Needs = { readonly [C in ConditionId]?: readonly AnyState[] };

/** True where this standing is one that the step's action, or an end, must never meet. */
export function hurts(step: Step | undefined, states: States): boolean {
  if (step === undefined) return true;
  // Locks go along where the valve is handed on, and what the other takes over is held against them by itself.
  if (step.kind === 'end' && step.closes === 'handed over') return states.testAir === 'connected';
  if (step.kind === 'end')
    return (
      [states.supplyLock, states.inletLock, states.outletLock].includes('on') ||
      states.bypass === 'open' ||
      states.testAir === 'connected'
    );
  const needs: Needs = step.action === undefined ? {} : needsOf(step.action);
  return CONDITION_IDS.some((id) => needs[id]?.includes(states[id]) === false);
}

/** Second opinion, without machine and proof: is there a way to play this definition on which somebody is exposed? */
export function isHarmful(definition: Definition): boolean {
  return tellingFacts(definition).some((some) =>
    [...standings(definition, some)].some(([id, met]) =>
      met.some((states) => hurts(definition.steps[id], states)),
    ),
  );
}

/** Every entry of a way that leads to an action, or that takes off a lock or a bypass, left out once. */
export function droppedSets(definition: Definition): readonly Mutant[] {
  return openSteps(definition).flatMap(([id, step]) =>
    waysOf(step).flatMap((named) =>
      Object.keys(named.way.sets ?? {}).map((condition) => {
        const { [condition as ConditionId]: _, ...sets } = named.way.sets ?? {};
        const changed = withWay(step, named, { ...named.way, sets });
        return {
          name: `${id} ${named.outcome ?? named.event} without ${condition}`,
          definition: withStep(definition, id, changed),
        };
      }),
    ),
  );
}

/** Every stop led to every step whose action can hurt. */
export function brokenStops(definition: Definition): readonly Mutant[] {
  return openSteps(definition).flatMap(([id, step]) =>
    exposing(definition)
      .filter((to) => to !== step.makeSafe)
      .map((to) => ({
        name: `${id} stops at ${to}`,
        definition: withStep(definition, id, { ...step, makeSafe: to }),
      })),
  );
}

export interface Rerouted extends Mutant {
  readonly from: string;
  readonly to: string;
  readonly named: NamedWay;
}

/** Every answer led to every other step whose action can hurt. */
export function reroutes(definition: Definition): readonly Rerouted[] {
  return openSteps(definition).flatMap(([id, step]) =>
    waysOf(step)
      .filter(({ event }) => event !== 'STOP')
      .flatMap((named) =>
        exposing(definition)
          .filter((to) => to !== named.way.to)
          .map((to) => ({
            name: `${id} ${named.outcome ?? named.event} to ${to}`,
            from: id,
            to,
            named,
            definition: withStep(definition, id, withWay(step, named, { ...named.way, to })),
          })),
      ),
  );
}

export function exposing(definition: Definition): readonly string[] {
  return openSteps(definition)
    .filter(([, step]) => step.action !== undefined)
    .map(([id]) => id);
}

/** Every hold with one energy of its evidence left out. */
export function droppedEvidence(
  definition: Definition,
): readonly (Mutant & { readonly condition: ConditionId })[] {
  return openSteps(definition).flatMap(([id, step]) =>
    step.kind !== 'hold'
      ? []
      : step.evidence.map((condition) => ({
          name: `${id} without ${condition}`,
          condition,
          definition: withStep(definition, id, {
            ...step,
            evidence: step.evidence.filter((one) => one !== condition),
          }),
        })),
  );
}
