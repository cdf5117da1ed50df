import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  conformanceProbability,
  guardedVerdict,
  limitsOf,
} from '../../../procedures/calculations/verdict.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

describe('a verdict', () => {
  it.each([
    [0.88, 'inside'],
    [0.89, 'too close'],
    [1, 'too close'],
    [1.12, 'too close'],
    [1.13, 'outside'],
    [-0.88, 'inside'],
    [-1.13, 'outside'],
  ] as const)('on %d against 1 with 0.12 of uncertainty is %s', (value, verdict) => {
    expect(guardedVerdict({ value, limit: 1, uncertainty: 0.12 }).verdict).toBe(verdict);
  });

  it('takes the guard off once: value plus uncertainty just at the limit is inside', () => {
    expect(guardedVerdict({ value: 0.7, limit: 1, uncertainty: 0.3 }).verdict).toBe('inside');
  });

  it('without uncertainty is a plain comparison', () => {
    expect(guardedVerdict({ value: 1, limit: 1, uncertainty: 0 })).toMatchObject({
      verdict: 'inside',
      wrongAcceptChance: 0,
    });
    expect(guardedVerdict({ value: 1.01, limit: 1, uncertainty: 0 })).toMatchObject({
      verdict: 'outside',
      wrongAcceptChance: 1,
    });
  });

  it('of a gauge coarser than the limit can never be inside', () => {
    fc.assert(
      fc.property(between(-10, 10), between(1.01, 5), (value, uncertainty) => {
        const judged = guardedVerdict({ value, limit: 1, uncertainty });
        expect(judged.verdict).not.toBe('inside');
        expect(judged.acceptanceLimit).toBeLessThan(0);
      }),
    );
  });

  it('accepts with at most the chance that the guard allows: 2.3 % at the acceptance limit', () => {
    expect(guardedVerdict({ value: 0.8, limit: 1, uncertainty: 0.2 }).wrongAcceptChance).toBeCloseTo(
      0.02275,
      4,
    );
    expect(guardedVerdict({ value: 1, limit: 1, uncertainty: 0.2 }).wrongAcceptChance).toBeCloseTo(0.5, 4);
    expectMonotone({
      of: (value) => guardedVerdict({ value, limit: 1, uncertainty: 0.2 }).wrongAcceptChance,
      from: 0,
      to: 3,
      rises: true,
    });
  });

  it('does not depend on the unit that all three are in', () => {
    const anyFigure = (min: number, max: number) =>
      between(min, max).map((value) => Math.round(value * 1e4) / 1e4);
    fc.assert(
      fc.property(
        anyFigure(-3, 3),
        anyFigure(0, 2),
        anyFigure(0, 1),
        between(1e-3, 1e3),
        (value, limit, u, scale) => {
          const one = guardedVerdict({ value, limit, uncertainty: u });
          const other = guardedVerdict({
            value: value * scale,
            limit: limit * scale,
            uncertainty: u * scale,
          });
          expect(other.verdict).toBe(one.verdict);
          expectClose(other.wrongAcceptChance + 1, one.wrongAcceptChance + 1, 1e-6);
        },
      ),
    );
  });

  it('on impossible figures is refused by name', () => {
    const good = { value: 0.5, limit: 1, uncertainty: 0.1 };
    expectRefused(() => guardedVerdict({ ...good, limit: -1 }), { code: 'CALC-002', name: 'limit' });
    expectRefused(() => guardedVerdict({ ...good, uncertainty: -1 }), {
      code: 'CALC-002',
      name: 'uncertainty',
    });
    refusesEachNonNumber(guardedVerdict, good);
    refusesOrAnswers(guardedVerdict, good);
  });
});

describe('the probability to conform', () => {
  const good = { estimate: 13.6, standardUncertainty: 1.8, lowerLimit: 12.5, upperLimit: 16.3 };

  it('of both sides adds up: inside, below and above are all there is', () => {
    fc.assert(
      fc.property(between(0, 30), (estimate) => {
        const { lowerLimit, upperLimit, standardUncertainty } = good;
        const inside = conformanceProbability({ ...good, estimate });
        const below = conformanceProbability({ estimate, standardUncertainty, upperLimit: lowerLimit });
        const above = conformanceProbability({ estimate, standardUncertainty, lowerLimit: upperLimit });
        expectClose(inside + below + above, 1, 1e-12);
      }),
    );
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => conformanceProbability({ ...good, standardUncertainty: 0 }), {
      code: 'CALC-002',
      name: 'standardUncertainty',
    });
    refusesEachNonNumber(conformanceProbability, good);
    refusesOrAnswers(conformanceProbability, good);
  });
});

describe('limits', () => {
  it('may be one or two, but not none, and must rise', () => {
    expect(limitsOf({ lowerLimit: 1 })).toEqual({ lower: 1, upper: Number.POSITIVE_INFINITY });
    expectRefused(() => limitsOf({}), { code: 'CALC-003', name: 'upperLimit' });
    expectRefused(() => limitsOf({ lowerLimit: 2, upperLimit: 2 }), { code: 'CALC-003', name: 'upperLimit' });
  });
});
