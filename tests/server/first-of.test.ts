import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { firstOf } from '../../server/first-of.ts';

const isBefore = (one: { rank: number }, other: { rank: number }) => one.rank < other.rank;

describe('The first of many', () => {
  test('are those that stand first in order, and what stands alike keeps its order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 20 })),
        fc.integer({ min: 0, max: 30 }),
        (ranks, most) => {
          const all = ranks.map((rank, at) => ({ rank, at }));
          const inOrder = all.toSorted((one, other) => one.rank - other.rank);
          expect(firstOf(all, { most, isBefore })).toEqual(inOrder.slice(0, most));
        },
      ),
    );
  });
});
