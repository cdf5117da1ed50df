import type { Facts } from './facts.ts';
import type { Definition } from './vocabulary.ts';
import { targetUnder, waysOf } from './ways.ts';

/**
 * The steps that a job of such a valve can come to, from its opening and from where other procedures hand on to it.
 * @example reachedSteps(strokeCheck, { ...facts, place: 'bench' }).has('shutInlet') // false
 */
export function reachedSteps(
  { start, takesOver = {}, steps }: Definition,
  facts: Facts,
): ReadonlySet<string> {
  const reached = new Set([start, ...Object.values(takesOver).map(({ at }) => at)]);
  for (const id of reached) {
    const step = steps[id];
    if (step === undefined) continue;
    for (const { way } of waysOf(step)) reached.add(targetUnder(way.to, facts));
  }
  return reached;
}
