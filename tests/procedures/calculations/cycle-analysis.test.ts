import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  analyseCycle,
  analyseStroke,
  type CyclePoint,
} from '../../../procedures/calculations/cycle-analysis.ts';
import type { AirAction } from '../../../procedures/calculations/signal-travel.ts';
import { strokeOf } from './simulated-stroke.ts';
import { between, expectClose, expectRefused, notFinite } from './support.ts';

const point = (
  inputPercent: number,
  outputPercent: number,
  direction: 'up' | 'down' = 'up',
  cycle = 1,
): CyclePoint => ({
  inputPercent,
  outputPercent,
  direction,
  cycle,
});

describe('an up and down table', () => {
  it('without error has none', () => {
    const points = [0, 50, 100].flatMap((at) => [point(at, at), point(at, at, 'down')]);
    expect(analyseCycle({ points })).toMatchObject({
      errorMaxPercent: 0,
      errorMinPercent: 0,
      hysteresisPercent: 0,
    });
  });

  it('names where the widest gap between up and down stands', () => {
    const points = [point(25, 25), point(25, 25.5, 'down'), point(75, 75), point(75, 77, 'down')];
    expect(analyseCycle({ points })).toMatchObject({ hysteresisPercent: 2, hysteresisAtPercent: 75 });
  });

  it('takes hysteresis within a cycle, and keeps that of the averages beside it', () => {
    const points = [point(50, 49), point(50, 50, 'down'), point(50, 51, 'up', 2), point(50, 51.2, 'down', 2)];
    const found = analyseCycle({ points });
    expect(found.hysteresisPercent).toBeCloseTo(1, 12);
    expect(found.hysteresisOfAveragesPercent).toBeCloseTo(0.6, 12);
    expect(found.repeatabilityPercent).toBeCloseTo(2, 12);
  });

  it('does not count an input a little off its mark as hysteresis', () => {
    const points = [point(50, 50), point(50.4, 50.4, 'down')];
    expect(analyseCycle({ points }).hysteresisPercent).toBeCloseTo(0, 12);
  });

  it('says nothing of what it does not hold', () => {
    expect(analyseCycle({ points: [point(0, 0), point(50, 50)] })).toMatchObject({
      hysteresisPercent: null,
      hysteresisAtPercent: null,
      hysteresisOfAveragesPercent: null,
      repeatabilityPercent: null,
      linearity: null,
    });
  });

  it('of a reversed output is the mirror image of a forward one', () => {
    const anyPoints = fc.array(
      fc.record({
        inputPercent: fc.constantFrom(0, 25, 50, 75, 100),
        error: between(-3, 3),
        direction: fc.constantFrom<'up' | 'down'>('up', 'down'),
        cycle: fc.constantFrom(1, 2),
      }),
      { minLength: 1, maxLength: 30 },
    );
    fc.assert(
      fc.property(anyPoints, (drawn) => {
        const forward = analyseCycle({
          points: drawn.map(({ error, ...p }) => ({ ...p, outputPercent: p.inputPercent + error })),
        });
        const reverse = analyseCycle({
          points: drawn.map(({ error, ...p }) => ({ ...p, outputPercent: 100 - p.inputPercent + error })),
          reverse: true,
        });
        expectClose(reverse.errorMaxPercent, forward.errorMaxPercent);
        expectClose(reverse.measuredErrorMinPercent, forward.measuredErrorMinPercent);
        expectClose(reverse.hysteresisPercent ?? -1, forward.hysteresisPercent ?? -1);
        expectClose(reverse.repeatabilityPercent ?? -1, forward.repeatabilityPercent ?? -1);
        expect(notFinite(forward)).toEqual([]);
        expect(forward.measuredErrorMaxPercent).toBeLessThanOrEqual(forward.errorMaxPercent + 1e-9);
      }),
    );
  });

  it('with no point, too many, or one that is no number, is refused', () => {
    expectRefused(() => analyseCycle({ points: [] }), { code: 'CALC-004', name: 'points' });
    const many = Array.from({ length: 2001 }, () => point(50, 50));
    expectRefused(() => analyseCycle({ points: many }), { code: 'CALC-004', name: 'points' });
    expectRefused(() => analyseCycle({ points: [point(Number.NaN, 0)] }), {
      code: 'CALC-001',
      name: 'inputPercent',
    });
    expectRefused(() => analyseCycle({ points: [point(0, Number.NaN)] }), {
      code: 'CALC-001',
      name: 'outputPercent',
    });
    expectRefused(() => analyseCycle({ points: [point(0, 0, 'up', Number.NaN)] }), {
      code: 'CALC-001',
      name: 'cycle',
    });
  });
});

describe('a stroke table', () => {
  const range = { rangeLowPa: 20000, rangeHighPa: 100000, ratedTravelM: 0.02 };

  it.each<AirAction>(['air-to-open', 'air-to-close'])(
    'of a valve with friction shows it as hysteresis, %s',
    (airAction) => {
      const rows = strokeOf({
        airAction,
        benchSetLowPa: 20000,
        benchSetHighPa: 100000,
        travelM: 0.02,
        frictionPa: 800,
        percents: [0, 25, 50, 75, 100],
      });
      const found = analyseStroke({ ...range, airAction, rows });
      // 800 Pa each way on a span of 80 kPa: 1 % each way.
      expect(found.hysteresisPercent).toBeCloseTo(2, 9);
      expect([found.errorMaxPercent, found.errorMinPercent].map(Math.abs)).toEqual([
        expect.closeTo(1, 9),
        expect.closeTo(1, 9),
      ]);
    },
  );

  it('points to the rows of its largest errors', () => {
    const rows = [
      { signalPa: 60000, travelPercent: 51, direction: 'up' as const, cycle: 1 },
      { signalPa: 60000, travelPercent: 48, direction: 'down' as const, cycle: 1 },
      { signalPa: 40000, travelPercent: 25.2, direction: 'down' as const, cycle: 1 },
    ];
    expect(analyseStroke({ ...range, airAction: 'air-to-open', rows })).toMatchObject({
      errorMaxRow: 0,
      errorMinRow: 1,
      judgedRows: 3,
    });
  });

  it('judges nothing beyond seat contact', () => {
    const rows = strokeOf({
      airAction: 'air-to-open',
      benchSetLowPa: 20000,
      benchSetHighPa: 100000,
      travelM: 0.02,
      frictionPa: 0,
      percents: [0, 25, 50, 75, 100],
    }).map((row) => ({ ...row, travelM: Math.max(row.travelM ?? 0, 0.0027) }));
    const whole = analyseStroke({ ...range, airAction: 'air-to-open', rows });
    const judged = analyseStroke({ ...range, airAction: 'air-to-open', rows, contactPa: 31000 });
    expect(whole.errorMaxPercent).toBeCloseTo(13.5, 9);
    expect(judged.errorMaxPercent).toBeCloseTo(0, 9);
    expect(judged.rows).toHaveLength(9);
    expect(judged.judgedRows).toBe(7);
  });

  it('with every row on the seat is refused', () => {
    const rows = [{ signalPa: 20000, travelPercent: 0, direction: 'up' as const, cycle: 1 }];
    expectRefused(() => analyseStroke({ ...range, airAction: 'air-to-open', rows, contactPa: 30000 }), {
      code: 'CALC-004',
      name: 'rows',
    });
  });

  it('is the same in psi and inches as in kPa and millimetres', () => {
    fc.assert(
      fc.property(
        between(0, 3000),
        between(0.1, 10),
        between(0.1, 10),
        (frictionPa, pressureScale, lengthScale) => {
          const rows = strokeOf({
            airAction: 'air-to-open',
            benchSetLowPa: 20000,
            benchSetHighPa: 100000,
            travelM: 0.02,
            frictionPa,
            percents: [0, 20, 40, 60, 80, 100],
          });
          const one = analyseStroke({ ...range, airAction: 'air-to-open', rows });
          const other = analyseStroke({
            rangeLowPa: 20000 * pressureScale,
            rangeHighPa: 100000 * pressureScale,
            ratedTravelM: 0.02 * lengthScale,
            airAction: 'air-to-open',
            rows: rows.map((row) => ({
              ...row,
              signalPa: row.signalPa * pressureScale,
              travelM: (row.travelM ?? 0) * lengthScale,
            })),
          });
          expectClose((other.hysteresisPercent ?? -1) + 1, (one.hysteresisPercent ?? -1) + 1);
          expectClose(other.errorMaxPercent + 1, one.errorMaxPercent + 1);
        },
      ),
    );
  });
});
