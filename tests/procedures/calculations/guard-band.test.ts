import { describe, expect, it } from 'vitest';
import { type GuardBandMethod, guardBandFactor } from '../../../procedures/calculations/guard-band.ts';
import { expectMonotone, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const METHODS: readonly GuardBandMethod[] = ['root sum of squares', 'one U', 'RP-10', 'managed 2 %'];

describe('a guard band', () => {
  it.each(METHODS)(
    'by %s leaves more of the tolerance to a better instrument, and never more than all',
    (method) => {
      const of = (ratio: number) => guardBandFactor({ method, ratio });
      expectMonotone({ of, from: 1, to: 20, rises: true });
      expect(of(1e6)).toBeLessThanOrEqual(1);
      expect(of(1)).toBeGreaterThanOrEqual(0);
    },
  );

  it('of RP-10 is none at four to one', () => {
    expect(guardBandFactor({ method: 'RP-10', ratio: 4 })).toBe(1);
    expect(guardBandFactor({ method: 'RP-10', ratio: 2 })).toBe(0.75);
  });

  it('of impossible figures is refused by name', () => {
    const good = { method: 'one U' as const, ratio: 2.5 };
    expectRefused(() => guardBandFactor({ ...good, ratio: 0.9 }), { code: 'CALC-002', name: 'ratio' });
    expectRefused(() => guardBandFactor({ ...good, method: 'two U' as GuardBandMethod }), {
      code: 'CALC-005',
      name: 'method',
    });
    refusesEachNonNumber(guardBandFactor, good);
    refusesOrAnswers(guardBandFactor, good);
  });
});
