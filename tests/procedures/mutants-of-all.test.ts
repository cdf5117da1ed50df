/**
 * Every served procedure made wrong in one place by machine: a state left out, a stop or an answer led to an action. What
 * the gate lets pass must harm nobody, by a second opinion that knows neither machine nor proof.
 */
import { afterAll, expect, test } from 'vitest';
import { type Compiled, compile } from '../../procedures/compile.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import type { Definition } from '../../procedures/vocabulary.ts';
import { waysOf } from '../../procedures/ways.ts';
import {
  exposing,
  isFound,
  isHarmful,
  type Mutant,
  openSteps,
  withStep,
  withWay,
} from '../builders/mutants.ts';

/** Of each kind so many on each procedure; the ordinary run takes one of each on a few of them. */
const MANY = Number(process.env.YOKESIDE_MUTANTS_EACH ?? 1);
const EVERY_PROCEDURE = process.env.YOKESIDE_MUTANTS_EACH !== undefined;
const IN_AN_ORDINARY_RUN: readonly string[] = ['diaphragm-renewal', 'tubing', 'loop-check'];
const TRIED = PROCEDURES.filter(
  ({ definition: { id } }) => EVERY_PROCEDURE || IN_AN_ORDINARY_RUN.includes(id),
);

/** So many numbers below a bound, spread over it and the same in every run. */
function spread(below: number): readonly number[] {
  const step = Math.max(1, Math.floor(below / MANY));
  const first = below % 7;
  return Array.from({ length: Math.min(MANY, below) }, (_, at) => (first + at * step) % below);
}

/** A state that a way sets, left out. */
function statesLeftOut(of: Definition): readonly Mutant[] {
  const sets = openSteps(of).flatMap(([id, step]) =>
    waysOf(step).flatMap((named) =>
      Object.keys(named.way.sets ?? {}).map((condition) => ({ id, step, named, condition })),
    ),
  );
  return spread(sets.length).flatMap((at) => {
    const one = sets[at];
    if (one === undefined) return [];
    const { id, step, named, condition } = one;
    const kept = Object.entries(named.way.sets ?? {}).filter(([name]) => name !== condition);
    const way = { ...named.way, sets: Object.fromEntries(kept) };
    return [{ name: `${id} without ${condition}`, definition: withStep(of, id, withWay(step, named, way)) }];
  });
}

/** A stop, or an answer, that leads to a card whose action can hurt. */
function ledAstray(of: Definition, kind: 'stop' | 'answer'): readonly Mutant[] {
  const to = exposing(of);
  const ways = openSteps(of).flatMap(([id, step]) =>
    waysOf(step)
      .filter(({ event }) => (event === 'STOP') === (kind === 'stop'))
      .map((named) => ({ id, step, named })),
  );
  return spread(ways.length * to.length).flatMap((at) => {
    const one = ways[Math.floor(at / to.length)];
    const target = to[at % to.length];
    if (one === undefined || target === undefined || one.named.way.to === target) return [];
    const { id, step, named } = one;
    const way = { ...named.way, to: target };
    return [
      {
        name: `${id} ${named.outcome ?? named.event} to ${target}`,
        definition: withStep(of, id, withWay(step, named, way)),
      },
    ];
  });
}

function tried(compiled: Compiled): {
  readonly count: number;
  readonly found: number;
  readonly survivors: readonly string[];
} {
  const { definition } = compiled;
  const mutants = [
    ...statesLeftOut(definition),
    ...ledAstray(definition, 'stop'),
    ...ledAstray(definition, 'answer'),
  ];
  const missed = mutants.filter((mutant) => !isFound(mutant, compiled));
  return {
    count: mutants.length,
    found: mutants.length - missed.length,
    survivors: missed.filter((mutant) => isHarmful(mutant.definition)).map(({ name }) => name),
  };
}

let foundInAll = 0;
afterAll(() => {
  // The gate is seen to work.
  expect(foundInAll).toBeGreaterThan(0);
});

test.each(TRIED.map(({ definition }) => [definition.id, definition] as const))(
  '[SAF-03] [SAF-10] %s made wrong in one place harms nobody or is not served',
  { timeout: 600_000 },
  (id, definition) => {
    const { count, found, survivors } = tried(compile(definition));
    foundInAll += found;
    if (EVERY_PROCEDURE)
      console.log(`${id}: ${count} mutants, found ${found}, harmless ${count - found - survivors.length}`);
    expect(survivors).toEqual([]);
    expect(count).toBeGreaterThan(0);
  },
);
