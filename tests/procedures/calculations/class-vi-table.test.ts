import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CLASS_VI_ROWS,
  type ClassViSizes,
  classViFigure,
} from '../../../procedures/calculations/class-vi-table.ts';
import { between, expectMonotone, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const SIZES: readonly ClassViSizes[] = ['inch', 'millimetre'];

describe('the class VI table', () => {
  it.each(SIZES)('gives each of its rows back, by %s', (sizes) => {
    for (const row of CLASS_VI_ROWS) {
      const portDiameterM = sizes === 'inch' ? row.portIn * 0.0254 : row.portMm / 1000;
      expect(classViFigure({ portDiameterM, sizes })).toMatchObject({
        mlPerMin: row.mlPerMin,
        bubblesPerMin: row.bubblesPerMin,
      });
    }
  });

  it('takes the row within 2 mm of a seat, and interpolates beyond', () => {
    const at = (millimetres: number) =>
      classViFigure({ portDiameterM: millimetres / 1000, sizes: 'millimetre' });
    expect([at(98).mlPerMin, at(102).mlPerMin]).toEqual([1.7, 1.7]);
    expect(at(97.9).rowsM).toEqual([0.08, 0.1]);
    // Hand: (90² − 80²)/(100² − 80²) of the way from 0.90 to 1.70.
    expect(at(90).mlPerMin).toBeCloseTo(0.9 + (1700 / 3600) * 0.8, 12);
  });

  it('lists bubbles as the standard does, not as millilitres over 0.15', () => {
    expect(classViFigure({ portDiameterM: 0.1016, sizes: 'inch' })).toMatchObject({
      mlPerMin: 1.7,
      bubblesPerMin: 11,
    });
    expect(classViFigure({ portDiameterM: 0.09, sizes: 'millimetre' }).bubblesPerMin).toBeNull();
  });

  it('gives the smallest row to every smaller seat', () => {
    expect(classViFigure({ portDiameterM: 0.006, sizes: 'millimetre' }).mlPerMin).toBe(0.15);
  });

  it('never asks less of a larger seat', () => {
    const of = (portDiameterM: number) => classViFigure({ portDiameterM, sizes: 'millimetre' }).flowM3PerS;
    expectMonotone({ of, from: 0.001, to: 0.4, rises: true });
  });

  it('is within the rows around it', () => {
    fc.assert(
      fc.property(between(0.025, 0.4), (portDiameterM) => {
        const { mlPerMin } = classViFigure({ portDiameterM, sizes: 'inch' });
        expect(mlPerMin).toBeGreaterThanOrEqual(0.15);
        expect(mlPerMin).toBeLessThanOrEqual(28.4);
      }),
    );
  });

  it('says nothing of a seat beyond its last row', () => {
    expectRefused(() => classViFigure({ portDiameterM: 0.41, sizes: 'millimetre' }), {
      code: 'CALC-002',
      name: 'portDiameterM',
    });
    expectRefused(() => classViFigure({ portDiameterM: 0.1, sizes: 'cubit' as ClassViSizes }), {
      code: 'CALC-005',
      name: 'sizes',
    });
    refusesEachNonNumber(classViFigure, { portDiameterM: 0.1, sizes: 'inch' as const });
    refusesOrAnswers(classViFigure, { portDiameterM: 0.1, sizes: 'inch' as const });
  });
});
