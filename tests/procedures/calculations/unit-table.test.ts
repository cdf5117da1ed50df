import { describe, expect, it } from 'vitest';
import { DIMENSIONS, UNITS, type UnitId } from '../../../procedures/calculations/unit-table.ts';
import { expectClose } from './support.ts';

/** Printed factors of NIST SP 811, appendix B, as many digits as are printed there. */
const PRINTED: readonly (readonly [UnitId, number])[] = [
  ['psi', 6.894757e3],
  ['bar', 1e5],
  ['kgf/cm2', 9.80665e4],
  ['atm', 1.01325e5],
  ['inH2O', 2.490889e2],
  ['inH2O 4C', 2.49082e2],
  ['inH2O 60F', 2.4884e2],
  ['mmHg', 1.333224e2],
  ['torr', 1.333224e2],
  ['inHg', 3.386389e3],
  ['mmH2O', 9.80665],
  ['lbf', 4.448222],
  ['kgf', 9.80665],
  ['lb', 4.535924e-1],
  ['in', 2.54e-2],
  ['gal', 3.785412e-3],
  ['gpm', 6.30902e-5],
  ['ft3/min', 4.719474e-4],
  ['ft.lbf', 1.355818],
  ['lbf.in', 1.129848e-1],
];

/** Full digits, derived from the exact definitions of inch, pound and standard gravity. */
const FULL: readonly (readonly [UnitId, number])[] = [
  ['psi', 6894.757293168361],
  ['torr', 133.32236842105263],
  ['mmHg', 133.322387415],
  ['inHg', 3386.388640341],
  ['lbf', 4.4482216152605],
  ['gal', 0.003785411784],
  ['gpm', 6.30901964e-5],
  ['ft3/min', 4.719474432e-4],
  ['ft.lbf', 1.3558179483314],
  ['lbf.in', 0.1129848290276],
  ['lbf/in', 175.1268352],
  ['Cv', 0.8649776554],
];

describe('the unit table', () => {
  it.each(PRINTED)('agrees with the printed factor of %s', (unit, factor) => {
    expectClose(UNITS[unit].factor, factor, 5e-7);
  });

  it.each(FULL)('has the full digits of %s', (unit, factor) => {
    expectClose(UNITS[unit].factor, factor, 5e-10);
  });

  it('prefers units that belong to the dimension', () => {
    for (const [dimension, { si, us }] of Object.entries(DIMENSIONS)) {
      expect([UNITS[si].dimension, UNITS[us].dimension]).toEqual([dimension, dimension]);
    }
  });

  it('gives no two units of a dimension one label', () => {
    for (const dimension of Object.keys(DIMENSIONS)) {
      const labels = Object.values(UNITS)
        .filter((unit) => unit.dimension === dimension)
        .map(({ label }) => label);
      expect(new Set(labels).size).toBe(labels.length);
    }
  });

  it('keeps mmHg and Torr apart at the seventh digit', () => {
    const parts = UNITS.mmHg.factor / UNITS.torr.factor - 1;
    expect(parts).toBeGreaterThan(1e-8);
    expect(parts).toBeLessThan(2e-7);
  });
});
