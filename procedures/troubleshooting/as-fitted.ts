import type { ValveSheet } from '../valve-sheet/sheet.ts';
import type { Definition, Field, OpenStep, ReadingStep, Step } from '../vocabulary.ts';
import { causesFor } from './causes.ts';
import { HUBS } from './check.ts';
import { CHECK_IDS, checksFor, isCheckId } from './checks.ts';
import { REPAIR_IDS, type RepairId, repairFor } from './repairs.ts';
import { onAirStepId } from './steps/between-hubs.ts';
import { checkStepId } from './steps/check-cards.ts';
import { mendStepId } from './steps/hub-cards.ts';
import { ON_TEST_AIR, readChoice } from './steps/hub-choices.ts';
import { valveFactsOf } from './valve-facts.ts';

/**
 * The search for a fault with the checks and repairs that this valve can have, for paper: on the screen each hub offers
 * no others. Any other definition is given back as it is.
 */
export function asFitted(definition: Definition, sheet: ValveSheet): Definition {
  if (definition.id !== 'find-the-fault') return definition;
  const facts = valveFactsOf(sheet);
  const checks = checksFor(facts);
  const cured = causesFor(facts).map(repairFor);
  const repairs = REPAIR_IDS.filter((id) => cured.includes(id));
  const gone = new Set([
    ...CHECK_IDS.filter((id) => !checks.includes(id)).flatMap((id) => [
      ...HUBS.map((hub) => checkStepId(id, hub)),
      ...(ON_TEST_AIR.includes(id) ? [onAirStepId(id)] : []),
    ]),
    ...REPAIR_IDS.filter((id) => !repairs.includes(id)).flatMap((id) =>
      HUBS.map((hub) => mendStepId(id, hub)),
    ),
  ]);
  const has = (choice: string) => {
    const chosen = readChoice(choice);
    if (chosen.kind === 'check') return checks.includes(chosen.check);
    return chosen.kind !== 'mend' || repairs.includes(chosen.repair);
  };
  const steps = Object.entries(definition.steps)
    .filter(([id]) => !gone.has(id))
    .map(([id, step]): [string, Step] => [id, step.kind === 'end' ? step : fitted(step, { has, repairs })]);
  return { ...definition, steps: Object.fromEntries(steps) };
}

interface Fits {
  readonly has: (choice: string) => boolean;
  readonly repairs: readonly RepairId[];
}

function fitted(step: OpenStep, { has, repairs }: Fits): OpenStep {
  if (step.kind === 'question') {
    const kept = Object.entries(step.choices).filter(([choice]) => !isCheckId(choice) || has(choice));
    return { ...step, choices: Object.fromEntries(kept) };
  }
  if (step.kind !== 'reading') return step;
  const asks = step.asks.map((field) => {
    if (field.name === 'hubChoice') return only(field, has);
    return field.name === 'repairToDo' ? only(field, (value) => isIn(repairs, value)) : field;
  });
  return { ...step, asks, ways: waysOfHub(step, has) };
}

function waysOfHub({ asks, ways }: ReadingStep<string>, has: Fits['has']): ReadingStep<string>['ways'] {
  if (!asks.some(({ name }) => name === 'hubChoice')) return ways;
  return Object.fromEntries(Object.entries(ways).filter(([choice]) => has(choice)));
}

function only(field: Field, keep: (value: string) => boolean): Field {
  return field.type === 'choice'
    ? { ...field, choices: field.choices.filter(({ value }) => keep(value)) }
    : field;
}

function isIn(repairs: readonly string[], value: string): boolean {
  return repairs.includes(value);
}
