import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkedValues } from '../../../procedures/calculations/checked-values.ts';
import { CALCULATIONS, calculationOf } from '../../../procedures/calculations/registry.ts';
import type { Picture } from '../../../server/calculations/pictures/picture.ts';
import { pictureOf } from '../../../server/calculations/pictures.ts';

function pictured(
  id: string,
  change: Readonly<Record<string, unknown>> = {},
  units: 'us' | 'si' = 'si',
): Picture | null {
  const calculation = calculationOf(id);
  const given = { ...calculation.example, ...change };
  const values = checkedValues({ inputs: calculation.inputs, values: given });
  return pictureOf({ calculation, values, result: calculation.run(given), units });
}

const DRAWN = CALCULATIONS.filter(({ id }) => pictured(id) !== null).map(({ id }) => id);

function numbersIn(value: unknown): readonly number[] {
  if (typeof value === 'number') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

describe('the pictures', () => {
  test('stand where they help', () => {
    const wanted = [
      'stroke-table',
      'forces-at-lift',
      'inherent-characteristic',
      'step-response',
      'cross-pattern',
    ];
    wanted.push('pressure-decay', 'choked-discharge', 'nozzle-back-pressure', 'verdict', 'installed-range');
    expect(DRAWN).toEqual(expect.arrayContaining(wanted));
    expect(pictured('convert-units')).toBeNull();
  });

  test.each(DRAWN)(
    'hold numbers alone, in a plot with a sentence and figures or in a circle of bolts: %s',
    (id) => {
      for (const units of ['us', 'si'] as const) {
        const picture = pictured(id, {}, units);
        expect(numbersIn(picture).filter((number) => !Number.isFinite(number))).toEqual([]);
        expect(picture?.plot?.sentence ?? picture?.bolts?.sentence).toMatch(/\.$/);
        if (picture?.plot) {
          expect(picture.plot.lines.flatMap(({ points }) => points).length).toBeGreaterThan(1);
          expect(picture.table?.rows.length).toBeGreaterThan(1);
        }
      }
    },
  );

  test('of a sweep pass through the result', () => {
    const { plot } = pictured('nozzle-back-pressure', { gapM: 0.00002 }) ?? {};
    const [mark] = plot?.marks ?? [];
    const near = plot?.lines[0]?.points.toSorted(
      (a, b) => Math.abs(a.x - (mark?.x ?? 0)) - Math.abs(b.x - (mark?.x ?? 0)),
    )[0];
    expect(mark?.x).toBeCloseTo(0.02, 9);
    expect(Math.abs((near?.y ?? 0) - (mark?.y ?? 0))).toBeLessThan(6);
  });

  test('of the characteristic rise from 1/R to 1', () => {
    const points = pictured('inherent-characteristic')?.plot?.lines[0]?.points ?? [];
    expect(points.at(0)?.y).toBeCloseTo(1 / 50, 9);
    expect(points.at(-1)?.y).toBeCloseTo(1, 9);
  });

  test('of the forces sum up: air, spring and plug make the net', () => {
    const lines = pictured('forces-at-lift')?.plot?.lines ?? [];
    const [air, spring, process, net] = lines.map(({ points }) => points);
    for (const [at, point] of (net ?? []).entries()) {
      const sum = (air?.[at]?.y ?? 0) + (spring?.[at]?.y ?? 0) + (process?.[at]?.y ?? 0);
      expect(point.y).toBeCloseTo(sum, 6);
    }
  });

  test('of a decay part by the leak', () => {
    const lines = pictured('pressure-decay', { startK: 293.15, endK: 292.15 })?.plot?.lines ?? [];
    const [read, tight] = lines.map(({ points }) => points.at(-1)?.y ?? 0);
    const result = calculationOf('pressure-decay').run({
      ...calculationOf('pressure-decay').example,
      startK: 293.15,
      endK: 292.15,
    });
    expect((tight ?? 0) - (read ?? 0)).toBeCloseTo(Number(result.fallByLeakPa) / 1000, 9);
  });

  test('are drawn whatever the inputs that the calculation takes', () => {
    const factor = fc.double({ min: 0, max: 3, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...DRAWN),
        fc.array(factor, { minLength: 12, maxLength: 12 }),
        (id, factors) => {
          const { example } = calculationOf(id);
          const change = Object.fromEntries(
            Object.entries(example).flatMap(([name, value], at) =>
              typeof value === 'number' && name !== 'bolts' ? [[name, value * (factors[at % 12] ?? 1)]] : [],
            ),
          );
          let picture: Picture | null;
          try {
            picture = pictured(id, change);
          } catch (error) {
            if ((error as Error).name !== 'CalcError') throw error;
            return;
          }
          expect(numbersIn(picture).filter((number) => !Number.isFinite(number))).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  });
});
