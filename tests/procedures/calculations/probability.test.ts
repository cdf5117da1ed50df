import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { integrate, logGamma, normalBelow } from '../../../procedures/calculations/probability.ts';
import { between, expectClose, expectMonotone, expectRefused } from './support.ts';

describe('the normal distribution', () => {
  // Tabled values of the standard normal distribution, published in every handbook of statistics.
  it.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [-1.959963984540054, 0.025],
    [-6, 9.865876450377e-10],
  ])('has its tabled value at %d', (z, share) => {
    expect(Math.abs(normalBelow(z) / share - 1)).toBeLessThan(1e-11);
  });

  it('is symmetric, rises, and ends at none and all', () => {
    fc.assert(fc.property(between(-40, 40), (z) => expectClose(normalBelow(z) + normalBelow(-z), 1, 1e-13)));
    expectMonotone({ of: normalBelow, from: -10, to: 10, rises: true });
    expect([normalBelow(-50), normalBelow(50)]).toEqual([0, 1]);
  });

  it('is the same on both sides of the value where the method changes', () => {
    expect(Math.abs(normalBelow(3 - 1e-12) - normalBelow(3))).toBeLessThan(1e-13);
  });

  it('of no number is refused', () => {
    expectRefused(() => normalBelow(Number.NaN), { code: 'CALC-001', name: 'z' });
  });
});

describe('the gamma function', () => {
  it('is the factorial one lower, and the root of pi at one half', () => {
    expectClose(logGamma(1) + 1, 1);
    expectClose(logGamma(11), Math.log(3628800));
    expectClose(logGamma(0.5), Math.log(Math.sqrt(Math.PI)));
  });

  it('of nothing or less is refused', () => {
    expectRefused(() => logGamma(0), { code: 'CALC-002', name: 'x' });
  });
});

describe('the area under a curve', () => {
  it('is that of its formula', () => {
    expectClose(integrate({ of: Math.exp, from: -1, to: 2 }), Math.exp(2) - Math.exp(-1), 1e-12);
    expectClose(integrate({ of: (x) => x ** 9, from: 0, to: 1, parts: 1 }), 0.1, 1e-12);
  });

  it('between no numbers is refused', () => {
    expectRefused(() => integrate({ of: (x) => x, from: Number.NaN, to: 1 }), {
      code: 'CALC-001',
      name: 'from',
    });
  });
});
