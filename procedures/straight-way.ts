import { FACT_NAMES, type Facts } from './facts.ts';
import type { Definition, Step } from './vocabulary.ts';
import { targetUnder, waysOf } from './ways.ts';

/**
 * The steps that a job passes where nothing gives trouble, in order: the marks of the job scale. A definition writes the
 * way on first among the ways of a step, so that this follows from it; a row more of a table leads nowhere new.
 *
 * @example straightWay(strokeCheck, factsOf(sheet, 'bench'))[0] // 'needs'
 */
export function straightWay(definition: Definition, facts: Facts): readonly string[] {
  const key = FACT_NAMES.map((name) => facts[name]).join('|');
  const known = KNOWN.get(definition) ?? new Map<string, readonly string[]>();
  KNOWN.set(definition, known);
  const way = known.get(key) ?? walked(definition, facts);
  known.set(key, way);
  return way;
}

/** Every page of a job asks several times. */
const KNOWN = new WeakMap<Definition, Map<string, readonly string[]>>();

/**
 * The mark of the scale that was passed last where a job begins off its straight way, as one does that goes on with
 * another: what comes before the mark at which it joins the way was done there.
 *
 * @returns the place in the straight way, from 0; -1 where it never joins it, or joins it at its first mark
 * @example straight[passedBefore(diaphragmRenewal, { step: 'takenOver', facts }) + 1] // 'markCase'
 */
export function passedBefore(
  definition: Definition,
  { step, facts }: { readonly step: string; readonly facts: Facts },
): number {
  const straight = straightWay(definition, facts);
  const joined = walked({ ...definition, start: step }, facts).find((at) => straight.includes(at));
  return joined === undefined ? -1 : straight.indexOf(joined) - 1;
}

function walked({ start, steps }: Pick<Definition, 'start' | 'steps'>, facts: Facts): readonly string[] {
  const way: string[] = [];
  for (let at: string | undefined = start; at !== undefined; ) {
    const step: Step | undefined = steps[at];
    if (step === undefined || step.kind === 'end') break;
    way.push(at);
    at = waysOf(step)
      .filter(({ event }) => event === 'ANSWER' || event === 'SIGN')
      .map((named) => targetUnder(named.way.to, facts))
      .find((to) => !way.includes(to));
  }
  return way;
}
