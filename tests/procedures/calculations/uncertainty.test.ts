import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coverageFactorFor,
  DIVISORS,
  type Distribution,
  standardUncertainty,
  uncertaintyBudget,
} from '../../../procedures/calculations/uncertainty.ts';
import { between, expectClose, expectMonotone, expectRefused } from './support.ts';

const part = (size: number, distribution: Distribution = 'rectangular') => ({
  name: 'part',
  size,
  distribution,
});

describe('a standard uncertainty', () => {
  it('follows from the half width by the distribution', () => {
    for (const distribution of Object.keys(DIVISORS) as Distribution[]) {
      expectClose(standardUncertainty({ size: 3, distribution }) * DIVISORS[distribution], 3);
    }
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => standardUncertainty({ size: -1, distribution: 'rectangular' }), {
      code: 'CALC-002',
      name: 'size',
    });
    expectRefused(() => standardUncertainty({ size: Number.NaN, distribution: 'rectangular' }), {
      code: 'CALC-001',
      name: 'size',
    });
    expectRefused(() => standardUncertainty({ size: 1, distribution: 'square' as Distribution }), {
      code: 'CALC-005',
      name: 'distribution',
    });
  });
});

describe('an uncertainty budget', () => {
  it('adds in squares, and its shares add up to the whole', () => {
    fc.assert(
      fc.property(fc.array(between(0.01, 10), { minLength: 1, maxLength: 6 }), (sizes) => {
        const budget = uncertaintyBudget({ influences: sizes.map((size) => part(size, 'normal, k = 1')) });
        expectClose(budget.combined, Math.hypot(...sizes));
        expectClose(
          budget.parts.reduce((sum, { sharePercent }) => sum + sharePercent, 0),
          100,
        );
        expectClose(budget.expanded, 2 * budget.combined);
      }),
    );
  });

  it('weighs an influence by its sensitivity, whatever its sign', () => {
    const weighed = uncertaintyBudget({ influences: [{ ...part(1, 'normal, k = 1'), sensitivity: -3 }] });
    expect(weighed.combined).toBe(3);
  });

  it('of nothing but exact figures is nothing', () => {
    expect(uncertaintyBudget({ influences: [part(0)] })).toMatchObject({
      combined: 0,
      expanded: 0,
      degreesOfFreedom: null,
    });
  });

  it('takes a wider factor where a part that counts rests on few readings', () => {
    const few = uncertaintyBudget({ influences: [{ ...part(1, 'normal, k = 1'), degreesOfFreedom: 4 }] });
    expectClose(few.degreesOfFreedom ?? 0, 4);
    expect(few.coverageFactor).toBeCloseTo(2.87, 2);
    const small = uncertaintyBudget({
      influences: [part(10), { ...part(0.001, 'normal, k = 1'), degreesOfFreedom: 4 }],
    });
    expect(small.coverageFactor).toBe(2);
  });

  it('keeps the factor that it is given', () => {
    expect(uncertaintyBudget({ influences: [part(1)], coverageFactor: 3 }).coverageFactor).toBe(3);
  });

  it('of impossible figures is refused by name', () => {
    expectRefused(() => uncertaintyBudget({ influences: [] }), { code: 'CALC-004', name: 'influences' });
    expectRefused(() => uncertaintyBudget({ influences: [part(1)], coverageFactor: 0 }), {
      code: 'CALC-002',
      name: 'coverageFactor',
    });
    const bad = { ...part(1), sensitivity: Number.NaN };
    expectRefused(() => uncertaintyBudget({ influences: [bad] }), { code: 'CALC-001', name: 'sensitivity' });
    const none = { ...part(1), degreesOfFreedom: 0 };
    expectRefused(() => uncertaintyBudget({ influences: [none] }), {
      code: 'CALC-002',
      name: 'degreesOfFreedom',
    });
  });
});

describe('the coverage factor for 95.45 %', () => {
  // Table G.2 of JCGM 100:2008, from memory.
  it.each([
    [1, 13.97],
    [2, 4.53],
    [3, 3.31],
    [5, 2.65],
    [10, 2.28],
    [50, 2.05],
    [100, 2.025],
  ])('with %d degrees of freedom is %d', (degreesOfFreedom, factor) => {
    expect(Math.abs(coverageFactorFor({ degreesOfFreedom }) - factor)).toBeLessThan(0.006);
  });

  it('falls towards two as readings grow', () => {
    expectMonotone({
      of: (degreesOfFreedom) => coverageFactorFor({ degreesOfFreedom }),
      from: 1,
      to: 1000,
      rises: false,
    });
    expect(coverageFactorFor({ degreesOfFreedom: 1e6 })).toBe(2);
    expectRefused(() => coverageFactorFor({ degreesOfFreedom: 0 }), {
      code: 'CALC-002',
      name: 'degreesOfFreedom',
    });
  });
});
