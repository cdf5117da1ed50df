import { FACT_NAMES, type Facts } from './facts.ts';
import type { Standing, TakesOver } from './vocabulary.ts';

/** How a valve that is taken over may stand, where the facts are so. */
export function standingUnder({ standing, where = [] }: TakesOver<string>, facts: Facts): Standing {
  const fitting = where.filter((one) =>
    FACT_NAMES.every((name) => one.facts[name] === undefined || one.facts[name] === facts[name]),
  );
  return Object.assign({}, standing, ...fitting.map((one) => one.standing)) as Standing;
}
