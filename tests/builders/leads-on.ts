/** Answers of a procedure from which nothing leads on but stopping. */
import type { Definition, Step, Target } from '../../procedures/vocabulary.ts';

/** A halt, where work stands still, or an end that closes a job as stopped. */
function isStop({ steps, safe }: Definition, to: string): boolean {
  const step = steps[to];
  return step?.kind === 'end' ? step.closes === 'stopped' : safe.includes(to) && step?.kind === 'question';
}

function targets(to: Target<string>): readonly string[] {
  return typeof to === 'string' ? [to] : Object.values(to.ways);
}

function stopsOnly(definition: Definition, to: Target<string>): boolean {
  return targets(to).every((one) => isStop(definition, one));
}

function ofStep(
  definition: Definition,
  { id, step }: { readonly id: string; readonly step: Step },
): readonly string[] {
  if (step.kind === 'reading' || step.kind === 'table' || step.kind === 'judgement')
    return Object.entries(step.ways).flatMap(([outcome, { to }]) =>
      stopsOnly(definition, to) ? [`${id} ${outcome}`] : [],
    );
  if (step.kind !== 'question') return [];
  const choices = Object.values(step.choices);
  const on = choices.filter(({ to }) => !stopsOnly(definition, to) && !targets(to).includes(id));
  // A halt leads on to the work, whatever else it offers; what only leads back to the reading says how it is put right.
  if (on.length === 0) return [`${id}: every choice stops`];
  return on.length === 1 && !definition.safe.includes(id) && step.how === undefined
    ? [`${id}: nothing says how it is put right`]
    : [];
}

/** Readings, and answers to questions, that lead nowhere but to a stop. */
export function stoppingOnly(definition: Definition): readonly string[] {
  return Object.entries(definition.steps).flatMap(([id, step]) => ofStep(definition, { id, step }));
}
