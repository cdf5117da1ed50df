import { describe, expect, test } from 'vitest';
import { straightWay } from '../../../procedures/commissioning/straight-way.ts';
import { strokeCheck } from '../../../procedures/commissioning/stroke-check.ts';
import type { Facts } from '../../../procedures/facts.ts';
import type { Definition } from '../../../procedures/vocabulary.ts';
import { targetUnder, waysOf } from '../../../procedures/ways.ts';

const definition: Definition = strokeCheck;

/** Where answering or signing a step may lead; stopping and sending back are no way on. */
function leadsTo(step: string, facts: Facts): readonly string[] {
  const from = definition.steps[step];
  if (from === undefined) throw new Error(`there is no step ${step}`);
  return waysOf(from)
    .filter(({ event }) => event === 'ANSWER' || event === 'SIGN')
    .map(({ way }) => targetUnder(way.to, facts));
}

describe('the straight way through a stroke check', () => {
  for (const place of ['bench', 'line'] as const) {
    const facts: Facts = {
      place,
      bypassLine: 'fitted',
      stemMayTurn: 'yes',
      springHeldBy: 'adjuster',
      secondFeed: 'none',
    };
    const way = straightWay(definition, place);

    test(`${place}: goes from the start to the end on which the work is done, one answer at a time`, () => {
      expect(way[0]).toBe(definition.start);
      for (const [at, step] of way.slice(0, -1).entries()) {
        expect(leadsTo(step, facts), step).toContain(way[at + 1]);
      }
      const ends = leadsTo(way.at(-1) ?? '', facts).map((id) => definition.steps[id]);
      expect(ends).toContainEqual(expect.objectContaining({ kind: 'end', closes: 'done' }));
    });

    test(`${place}: passes no step twice, and every hold that must be signed on it`, () => {
      expect(new Set(way).size).toBe(way.length);
      const holds = way.filter((id) => definition.steps[id]?.kind === 'hold');
      expect(holds).toEqual(place === 'bench' ? ['holdWork', 'signBench'] : ['holdWork', 'signReturn']);
    });
  }

  test('leaves out what an older revision does not have', () => {
    const { airOff: _, ...steps } = definition.steps;
    expect(straightWay({ ...definition, steps } as Definition, 'bench')).not.toContain('airOff');
  });

  test('of a procedure that names none is all its steps', () => {
    expect(straightWay({ ...definition, id: 'another' }, 'bench')).toEqual(Object.keys(definition.steps));
  });
});
