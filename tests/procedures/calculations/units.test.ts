import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DIMENSIONS,
  type Dimension,
  UNITS,
  type UnitId,
} from '../../../procedures/calculations/unit-table.ts';
import {
  convert,
  format,
  fromSi,
  isUnitId,
  preferredUnit,
  toSi,
  unitFor,
  unitsOf,
} from '../../../procedures/calculations/units.ts';
import { between, expectClose, expectRefused } from './support.ts';

const anyUnit = fc.constantFrom(...(Object.keys(UNITS) as UnitId[]));

describe('a conversion', () => {
  it('turns back into what it was', () => {
    fc.assert(
      fc.property(anyUnit, between(-1e6, 1e6), (unit, value) => {
        const back = fromSi({ valueSi: toSi({ value, unit }), unit });
        // A shifted scale keeps the digits of its shift, not of the value.
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value) + 1e-9);
      }),
    );
  });

  it('over two units is the same as straight', () => {
    fc.assert(
      fc.property(between(-1e6, 1e6), (value) => {
        const psi = convert({ value, from: 'bar', to: 'psi' });
        expectClose(convert({ value: psi, from: 'psi', to: 'kPa' }), 100 * value);
      }),
    );
  });

  it('keeps order: more in one unit is more in another', () => {
    fc.assert(
      fc.property(anyUnit, between(0, 1e6), between(1e-3, 1e6), (unit, value, more) => {
        expect(toSi({ value: value + more, unit })).toBeGreaterThan(toSi({ value, unit }));
      }),
    );
  });

  it.each([
    [100, 'degC', 'degF', 212],
    [-40, 'degF', 'degC', -40],
    [0, 'K', 'degC', -273.15],
    [491.67, 'degR', 'degC', 0],
  ] as const)('of temperatures counts from their zero: %d %s', (value, from, to, wanted) => {
    expect(convert({ value, from, to })).toBeCloseTo(wanted, 9);
  });

  it('of a difference of temperature has no zero to count from', () => {
    expect(convert({ value: 9, from: 'degF diff', to: 'K diff' })).toBeCloseTo(5, 12);
  });

  it('between things that are not the same is refused', () => {
    expectRefused(() => convert({ value: 1, from: 'psi', to: 'mm' }), { code: 'CALC-005', name: 'to' });
  });

  it('of something that is no number, or no unit, is refused', () => {
    expectRefused(() => toSi({ value: Number.NaN, unit: 'psi' }), { code: 'CALC-001', name: 'value' });
    expectRefused(() => fromSi({ valueSi: Number.NaN, unit: 'psi' }), { code: 'CALC-001', name: 'valueSi' });
    expectRefused(() => toSi({ value: 1, unit: 'stone' as UnitId }), { code: 'CALC-005', name: 'unit' });
    expectRefused(() => unitFor('toString' as UnitId), { code: 'CALC-005', name: 'unit' });
  });
});

describe('a printed value', () => {
  it.each([
    [62052.8156, 'psi', undefined, '9.00 psi'],
    [98066.5, 'kgf/cm2', undefined, '1.000 kgf/cm²'],
    [0.25, '1', 2, '0.25'],
    [-0.00001, 'mm', 1, '0.0 mm'],
    [293.15, 'degC', undefined, '20.0 °C'],
    [-1234.5, 'N', 0, '-1235 N'],
  ] as const)('%d in %s with %s decimals is %s', (valueSi, unit, decimals, text) => {
    expect(format({ valueSi, unit, decimals })).toBe(text);
  });

  it('with an impossible number of decimals is refused', () => {
    expectRefused(() => format({ valueSi: 1, unit: 'm', decimals: 16 }), {
      code: 'CALC-002',
      name: 'decimals',
    });
    expectRefused(() => format({ valueSi: 1, unit: 'm', decimals: 1.5 }), {
      code: 'CALC-002',
      name: 'decimals',
    });
  });
});

describe('the units of a dimension', () => {
  it('are those that the plant reads: psi or kPa, inches or millimetres', () => {
    expect([preferredUnit('pressure', 'us'), preferredUnit('pressure', 'si')]).toEqual(['psi', 'kPa']);
    expect([preferredUnit('length', 'us'), preferredUnit('length', 'si')]).toEqual(['in', 'mm']);
  });

  it('all belong to it, the preferred ones among them', () => {
    for (const dimension of Object.keys(DIMENSIONS) as Dimension[]) {
      const ids = unitsOf(dimension).map(({ id }) => id);
      expect(ids.every((id) => UNITS[id].dimension === dimension)).toBe(true);
      expect(ids).toContain(preferredUnit(dimension, 'us'));
      expect(ids).toContain(preferredUnit(dimension, 'si'));
    }
  });

  it('of a dimension that is not known are refused', () => {
    expectRefused(() => preferredUnit('luck' as Dimension, 'si'), { code: 'CALC-005', name: 'dimension' });
  });

  it('are told from other texts, also from names that every object has', () => {
    expect(isUnitId('kgf/cm2')).toBe(true);
    expect(isUnitId('toString')).toBe(false);
    expect(isUnitId('PSI')).toBe(false);
  });
});
