import { ONE_GO_MAX, soundOf } from '../one-go.ts';
import type { Definition, OpenStep, Way } from '../vocabulary.ts';

/** A card that says of itself that it is entered with others can be, stands beside one that can, and not in a longer row. */
export function oneGoFaults(
  id: string,
  { step, definition }: { readonly step: OpenStep; readonly definition: Definition },
): readonly string[] {
  if (step.kind !== 'reading' || step.oneGo !== true) return [];
  if (soundOf(step) === null)
    return [`${id}: entered in one go with others, though it warns, proves, branches or lets hands in`];
  const before = Object.keys(definition.steps).some((one) => onwards(one, definition).includes(id));
  return [
    ...(before || onwards(id, definition).length > 0 ? [] : [`${id}: nothing beside it is entered with it`]),
    ...(rowFrom(id, definition) > ONE_GO_MAX ? [`${id}: begins a row of more than ${ONE_GO_MAX} cards`] : []),
  ];
}

/** Cards of the same phase that are entered in one go after it. */
function onwards(id: string, { steps }: Definition): readonly string[] {
  const step = steps[id];
  const sound = soundOf(step);
  return sound === null
    ? []
    : targetsOf(sound.way).filter((to) => soundOf(steps[to]) !== null && steps[to]?.phase === step?.phase);
}

function rowFrom(id: string, definition: Definition, seen: readonly string[] = []): number {
  if (seen.includes(id)) return 0;
  return 1 + Math.max(0, ...onwards(id, definition).map((to) => rowFrom(to, definition, [...seen, id])));
}

function targetsOf({ to }: Way<string>): readonly string[] {
  return typeof to === 'string' ? [to] : Object.values(to.ways);
}
