import { FACT_NAMES, type Facts } from './facts.ts';
import type { Standing, TakesOver } from './vocabulary.ts';

/** Whether a valve is taken over at all where the facts are so. */
export function isTakenOverUnder({ onlyWhere = {} }: TakesOver<string>, facts: Facts): boolean {
  return fits(onlyWhere, facts);
}

function fits(named: Partial<Facts>, facts: Facts): boolean {
  return FACT_NAMES.every((name) => named[name] === undefined || named[name] === facts[name]);
}

/** How a valve that is taken over may stand, where the facts are so. */
export function standingUnder({ standing, where = [] }: TakesOver<string>, facts: Facts): Standing {
  const fitting = where.filter((one) => fits(one.facts, facts));
  return Object.assign({}, standing, ...fitting.map((one) => one.standing)) as Standing;
}
