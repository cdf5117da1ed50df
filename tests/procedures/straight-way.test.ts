import { describe, expect, test } from 'vitest';
import { everyFacts } from '../../procedures/facts.ts';
import { factsUsed } from '../../procedures/facts-used.ts';
import { PROCEDURES } from '../../procedures/served.ts';
import { straightWay } from '../../procedures/straight-way.ts';
import type { Definition } from '../../procedures/vocabulary.ts';
import { targetUnder, waysOf } from '../../procedures/ways.ts';

describe.each(PROCEDURES.map(({ definition }) => definition))('the straight way of $title', (of) => {
  const definition: Definition = of;
  const standings = everyFacts(factsUsed(definition));

  test('goes from the start to an end on which the work is done, under any facts', () => {
    for (const facts of standings) {
      const way = straightWay(definition, facts);
      expect(way[0]).toBe(definition.start);
      const last = definition.steps[way.at(-1) ?? ''];
      const ends = (last === undefined ? [] : waysOf(last)).map(
        (named) => definition.steps[targetUnder(named.way.to, facts)],
      );
      expect(ends, JSON.stringify(facts)).toContainEqual(
        expect.objectContaining({ kind: 'end', closes: 'done' }),
      );
    }
  });

  test('passes no step twice', () => {
    for (const facts of standings) {
      const way = straightWay(definition, facts);
      expect(new Set(way).size).toBe(way.length);
    }
  });
});

test('The straight way of a stroke check passes each hold that must be signed on it', () => {
  const definition = PROCEDURES.find((one) => one.definition.id === 'stroke-check')?.definition;
  if (definition === undefined) throw new Error('no stroke check is served');
  for (const facts of everyFacts(factsUsed(definition))) {
    const holds = straightWay(definition, facts).filter((id) => definition.steps[id]?.kind === 'hold');
    expect(holds).toEqual(['holdWork', facts.place === 'bench' ? 'signBench' : 'signReturn']);
  }
});
