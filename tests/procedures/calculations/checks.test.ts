import { describe, expect, it } from 'vitest';
import {
  oneOf,
  rangeText,
  refuseCount,
  refuseOutside,
  refuseUnlessRising,
  unitOfName,
} from '../../../procedures/calculations/checks.ts';
import { expectRefused, refusal } from './support.ts';

describe('the unit of a quantity', () => {
  it.each([
    ['signalPa', 'Pa'],
    ['inletPaAbs', 'Pa absolute'],
    ['benchSetLowPa', 'Pa'],
    ['pressurePaMax', 'Pa'],
    ['springRateNPerM', 'N/m'],
    ['travelM', 'm'],
    ['effectiveAreaM2', 'm²'],
    ['leakMolPerS', 'mol/s'],
    ['flowM3PerS', 'm³/s'],
    ['frictionN', 'N'],
    ['torqueNm', 'N·m'],
    ['liftLostPercent', '%'],
    ['turns', ''],
    ['relativeDensity', ''],
    ['Pa', ''],
  ])('is read off its name: %s', (name, unit) => {
    expect(unitOfName(name)).toBe(unit);
  });
});

describe('a range', () => {
  it.each([
    [{ above: 0 }, 'above 0'],
    [{ atLeast: 0, atMost: 100 }, 'from 0 to 100'],
    [{ above: 0, atMost: 1 }, 'above 0 and at most 1'],
    [{ atLeast: 0, below: 5 }, 'at least 0 and below 5'],
    [{}, 'any number'],
    [{ atLeast: 1, atMost: 16, whole: true as const }, 'from 1 to 16, whole'],
    [{ above: 0, whole: true as const }, 'above 0, whole'],
  ])('is said in words: %j', (range, words) => {
    expect(rangeText(range)).toBe(words);
  });

  it('lets its own edges in where it says so, and keeps them out where it says so', () => {
    refuseOutside({ a: 0, b: 100 }, { atLeast: 0, atMost: 100 });
    expectRefused(() => refuseOutside({ a: 0 }, { above: 0 }), { code: 'CALC-002', name: 'a' });
    expectRefused(() => refuseOutside({ a: 5 }, { below: 5 }), { code: 'CALC-002', name: 'a' });
    expectRefused(() => refuseOutside({ a: 100.1 }, { atMost: 100 }), { code: 'CALC-002', name: 'a' });
  });

  it('names the first value that is wrong, with what it was', () => {
    expect(refusal(() => refuseOutside({ travelM: 1, portDiameterM: -2 }, { above: 0 }))).toEqual({
      code: 'CALC-002',
      name: 'portDiameterM',
      value: -2,
      range: 'above 0',
      unit: 'm',
    });
  });

  it('keeps out sizes that no valve has, so that no formula overflows', () => {
    expectRefused(() => refuseOutside({ a: 1e16 }, {}), { code: 'CALC-002', name: 'a' });
    expectRefused(() => refuseOutside({ a: -1e16 }, {}), { code: 'CALC-002', name: 'a' });
    expect(refusal(() => refuseOutside({ a: 1e-20 }, { above: 0 })).range).toBe('at least 1e-15');
  });

  it('calls what is no number by its value, and what is not there missing', () => {
    const untyped = refuseOutside as (values: Record<string, unknown>, range: object) => void;
    expect(refusal(() => untyped({ a: Number.NaN }, {}))).toMatchObject({ code: 'CALC-001', value: 'NaN' });
    expect(refusal(() => untyped({ a: '12' }, {}))).toMatchObject({ code: 'CALC-001', value: '12' });
    expect(refusal(() => untyped({ a: undefined }, {}))).toMatchObject({ code: 'CALC-001', value: null });
    expect(refusal(() => untyped({ a: {} }, {}))).toMatchObject({ code: 'CALC-001', value: null });
  });
});

describe('a pair that must rise', () => {
  it('is refused where it falls, stands still, or all but stands still', () => {
    refuseUnlessRising({ low: 3, high: 15 });
    for (const high of [3, 2, 3 + 1e-12]) {
      expectRefused(() => refuseUnlessRising({ low: 3, high }), { code: 'CALC-003', name: 'high' });
    }
    expect(refusal(() => refuseUnlessRising({ low: 3, high: 2 })).range).toBe('above low (3)');
  });

  it('is a programming mistake with fewer than two values', () => {
    expect(() => refuseUnlessRising({ low: 3 })).toThrow('wants two values');
  });
});

describe('a choice', () => {
  it('comes back, or is refused with the list', () => {
    expect(oneOf({ name: 'flow', value: 'over', choices: ['under', 'over'] })).toBe('over');
    expect(refusal(() => oneOf({ name: 'flow', value: 'beside', choices: ['under', 'over'] }))).toMatchObject(
      {
        code: 'CALC-005',
        value: 'beside',
        range: 'one of under, over',
      },
    );
  });

  it('that is missing is called missing', () => {
    const input = { name: 'flow', choices: ['under'] } as unknown as Parameters<typeof oneOf>[0];
    expect(refusal(() => oneOf(input)).value).toBeNull();
  });
});

it('too few points are refused with the count', () => {
  expect(refuseCount({ name: 'rows', value: 0, range: 'at least 1 row' }).detail).toMatchObject({
    code: 'CALC-004',
    value: 0,
  });
});
