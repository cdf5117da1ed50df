import { FACT_NAMES, type FactName } from './facts.ts';
import type { Definition } from './vocabulary.ts';
import { waysOf } from './ways.ts';

/**
 * The facts on which a definition branches, and who holds the spring, which the interlock knows from the opening on.
 * The others cannot change what may happen, so that a proof need not run over them.
 */
export function factsUsed({ steps, takesOver = {} }: Definition): readonly FactName[] {
  const used = new Set<FactName>(['springHeldBy']);
  for (const step of Object.values(steps))
    for (const { way } of waysOf(step)) if (typeof way.to !== 'string') used.add(way.to.by);
  for (const { onlyWhere = {}, where = [] } of Object.values(takesOver))
    for (const facts of [onlyWhere, ...where.map((one) => one.facts)])
      for (const name of Object.keys(facts)) used.add(name as FactName);
  return FACT_NAMES.filter((name) => used.has(name));
}
