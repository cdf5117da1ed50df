import type { ValveSheet } from '../valve-sheet/sheet.ts';
import type { Definition, Field, OpenStep, Step } from '../vocabulary.ts';
import { causesFor } from './causes.ts';
import { HUBS } from './check.ts';
import { CHECK_IDS, checksFor, isCheckId } from './checks.ts';
import { repairProcedure } from './repair-procedures.ts';
import { REPAIR_IDS, type RepairId, repairFor } from './repairs.ts';
import { onAirStepId } from './steps/between-hubs.ts';
import { checkStepId } from './steps/check-cards.ts';
import { EVERY_GOES_ON, goesOnStepId } from './steps/goes-on.ts';
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
  const neverOnAs: readonly string[] = EVERY_GOES_ON.filter(
    (id) => !repairs.some((repair) => repairProcedure(repair, facts.actuator) === id),
  );
  const gone = new Set([
    ...EVERY_GOES_ON.filter((id) => neverOnAs.includes(id)).map(goesOnStepId),
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
    .map(([id, step]): [string, Step] => [
      id,
      step.kind === 'end' ? step : fitted(step, { has, repairs, neverOnAs }),
    ]);
  return { ...definition, steps: Object.fromEntries(steps) };
}

interface Fits {
  readonly has: (choice: string) => boolean;
  readonly repairs: readonly RepairId[];
  /** Procedures of repairs that this valve cannot want. */
  readonly neverOnAs: readonly string[];
}

function fitted(step: OpenStep, { has, repairs, neverOnAs }: Fits): OpenStep {
  if (step.kind === 'question') {
    const kept = Object.entries(step.choices).filter(([choice]) => !isCheckId(choice) || has(choice));
    return { ...step, choices: Object.fromEntries(kept) };
  }
  if (step.kind !== 'reading') return step;
  const asks = step.asks.map((field) => {
    if (field.name === 'hubChoice') return only(field, has);
    return field.name === 'repairToDo' ? only(field, (value) => isIn(repairs, value)) : field;
  });
  const isHub = asks.some(({ name }) => name === 'hubChoice');
  const ways = Object.entries(step.ways).filter(([way]) => !neverOnAs.includes(way) && (!isHub || has(way)));
  return { ...step, asks, ways: Object.fromEntries(ways) };
}

function only(field: Field, keep: (value: string) => boolean): Field {
  return field.type === 'choice'
    ? { ...field, choices: field.choices.filter(({ value }) => keep(value)) }
    : field;
}

function isIn(repairs: readonly string[], value: string): boolean {
  return repairs.includes(value);
}
