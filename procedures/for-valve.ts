import type { ActionClass } from '../safety/action-classes.ts';
import type { Compiled } from './compile.ts';
import { FACT_NAMES, type Facts, standsSo, type WhenFact } from './facts.ts';
import { withWords } from './phases/reword.ts';
import { reachedSteps } from './reached.ts';
import type { Definition, OpenStep, Step } from './vocabulary.ts';

const KNOWN = new WeakMap<Definition, Map<string, Definition>>();

/**
 * A definition as one valve has it: cards in the words of its actuator, fields and questions without the choices that it
 * cannot have, and holds that allow no work to which no job of this valve comes, such as an adjuster where its case holds the spring.
 * Steps, ways, rules and hash stay what they were, so that machine and proof of the definition hold for it.
 *
 * @example forValve(findTheFault, { ...facts, actuator: 'piston' }).steps.airStays // says cylinder, not case
 */
export function forValve(definition: Definition, facts: Facts): Definition {
  const key = FACT_NAMES.map((name) => facts[name]).join('|');
  const known = KNOWN.get(definition) ?? new Map<string, Definition>();
  KNOWN.set(definition, known);
  const before = known.get(key);
  if (before !== undefined) return before;
  const doneHere = actionsOf(definition, facts);
  const steps = Object.entries(definition.steps).map(
    ([id, step]) => [id, stepFor(step, { facts, doneHere })] as const,
  );
  const same = steps.every(([id, step]) => step === definition.steps[id]);
  const own = same ? definition : { ...definition, steps: Object.fromEntries(steps) };
  known.set(key, own);
  return own;
}

/** The same for what was compiled; machine and proofs are those of the definition. */
export function compiledForValve(compiled: Compiled, facts: Facts): Compiled {
  const definition = forValve(compiled.definition, facts);
  if (definition === compiled.definition) return compiled;
  return {
    definition,
    facts: compiled.facts,
    proofs: compiled.proofs,
    // Its ways back are worked out when a job first asks.
    get machine() {
      return compiled.machine;
    },
  };
}

/** Every action that some job of such a valve can come to: what a signature may allow it, and no more. */
function actionsOf(definition: Definition, facts: Facts): ReadonlySet<ActionClass> {
  const actions = [...reachedSteps(definition, facts)].flatMap((id) => {
    const step = definition.steps[id];
    return step === undefined || step.kind === 'end' || step.action === undefined ? [] : [step.action];
  });
  return new Set(actions);
}

function stepFor(
  step: Step,
  { facts, doneHere }: { readonly facts: Facts; readonly doneHere: ReadonlySet<ActionClass> },
): Step {
  if (step.kind === 'end') return step;
  const own = withChoicesOf(facts.actuator === 'piston' ? inCylinderWords(step) : step, facts);
  if (own.kind !== 'hold' || own.allows.every((action) => doneHere.has(action))) return own;
  return { ...own, allows: own.allows.filter((action) => doneHere.has(action)) };
}

function inCylinderWords(step: OpenStep): OpenStep {
  // The same step, not a copy: whoever has read it once need not read it again.
  if (step.onCylinder === undefined) return step;
  const { onCylinder, ...plain } = step;
  return withWords(plain, { id: plain.title, other: onCylinder });
}

function withChoicesOf(step: OpenStep, facts: Facts): OpenStep {
  const isOffered = ({ when }: { readonly when?: WhenFact }) => standsSo(when, facts);
  if (step.kind === 'question') {
    const choices = Object.entries(step.choices);
    const offered = choices.filter(([, choice]) => isOffered(choice));
    return offered.length === choices.length ? step : { ...step, choices: Object.fromEntries(offered) };
  }
  if (step.kind !== 'reading') return step;
  const asks = step.asks.map((field) =>
    field.type !== 'choice' || field.choices.every(isOffered)
      ? field
      : { ...field, choices: field.choices.filter(isOffered) },
  );
  return asks.every((field, at) => field === step.asks[at]) ? step : { ...step, asks };
}
