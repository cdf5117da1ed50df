import fc from 'fast-check';
import { expect, test } from 'vitest';
import { UNITS, type UnitId } from '../../../procedures/calculations/unit-table.ts';
import { toSi } from '../../../procedures/calculations/units.ts';
import { figure } from '../../../server/calculations/figure.ts';

test.each([
  [62052.8156, 'psi', '9.000 psi'],
  [-0.0095, 'mm', '−9.500 mm'],
  [2.5e-9, 'm3/h', '0.1500 ml/min'],
  [0, 'psi', '0.00 psi'],
  [12, '1', '12'],
  [1.4, '1', '1.4'],
  [24.817, 'mm', '24.82 m'],
  [24.817, 'in', '81.42 ft'],
  [-0.99999999, '%', '−1.000 %'],
  [1e-8, 'dm3/(s.bar)', '1.0000 dm³/(s·bar)'],
  [103421.36, 'kPa', '103.4 kPa'],
] as const)('%d is said in %s as %s', (valueSi, unit, words) => {
  expect(figure({ valueSi, unit })).toBe(words);
});

test('a figure keeps four digits, whatever its size and unit', () => {
  const size = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
  const unit = fc.constantFrom(...(Object.keys(UNITS) as UnitId[]).filter((id) => !('shift' in UNITS[id])));
  fc.assert(
    fc.property(size, unit, (value, id) => {
      const words = figure({ valueSi: toSi({ value, unit: id }), unit: id });
      const behind = UNITS[id].label === '' ? '' : ` ${UNITS[id].label}`;
      // A small flow is said in a smaller unit; another test holds that.
      if (!words.endsWith(behind)) return;
      const number = Number(words.slice(0, words.length - behind.length));
      expect(Math.abs(number - value)).toBeLessThanOrEqual(0.0006 * value);
    }),
  );
});
