import { type Compiled, nextStep } from '../../procedures/compile.ts';
import { everyFacts, type Facts } from '../../procedures/facts.ts';
import { straightWay } from '../../procedures/straight-way.ts';
import { waysOf } from '../../procedures/ways.ts';

interface Walked {
  readonly entered: Set<string>;
  readonly taken: Set<string>;
}

/** Goes on in the machine from wherever a job may begin, by every written way, until nothing new is met. */
function walk(compiled: Compiled, { facts, into }: { readonly facts: Facts; readonly into: Walked }): void {
  const { start, takesOver = {}, steps } = compiled.definition;
  const open = new Set([start, ...Object.values(takesOver).map(({ at }) => at)]);
  for (const id of open) {
    into.entered.add(id);
    const step = steps[id];
    for (const { event, outcome } of step === undefined ? [] : waysOf(step)) {
      const next = nextStep(compiled, { step: id, event: { type: event, outcome: outcome ?? '', facts } });
      if (next === null) continue;
      into.taken.add(`${id} ${event} ${outcome}`);
      open.add(next);
    }
  }
}

/** The first and the last differ in every fact: between them they meet nearly everything, and few more are walked. */
function farApartFirst(every: readonly Facts[]): readonly Facts[] {
  return [...every.slice(0, 1), ...every.slice(-1), ...every.slice(1, -1)];
}

export interface Coverage {
  readonly notEntered: readonly string[];
  readonly notTaken: readonly string[];
  /** One line of the table that the tests print. */
  readonly line: string;
}

/** Standings of the facts one after the other, until every state was entered and every branch was taken. */
export function coverageOf(compiled: Compiled): Coverage {
  const { id, steps } = compiled.definition;
  const states = Object.keys(steps);
  const branches = Object.entries(steps).flatMap(([step, written]) =>
    waysOf(written).map(({ event, outcome }) => `${step} ${event} ${outcome}`),
  );
  const into: Walked = { entered: new Set(), taken: new Set() };
  const straight = new Set<string>();
  for (const facts of farApartFirst(everyFacts(compiled.facts))) {
    if (into.entered.size === states.length && into.taken.size === branches.length) break;
    walk(compiled, { facts, into });
    for (const step of straightWay(compiled.definition, facts)) straight.add(step);
  }
  const { entered, taken } = into;
  return {
    notEntered: states.filter((state) => !entered.has(state)),
    notTaken: branches.filter((branch) => !taken.has(branch)),
    line: `${id}: states ${entered.size}/${states.length} (${straight.size} on straight ways), branches ${taken.size}/${branches.length}`,
  };
}
