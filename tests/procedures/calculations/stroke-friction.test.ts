import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AirAction } from '../../../procedures/calculations/signal-travel.ts';
import { strokeFriction } from '../../../procedures/calculations/stroke-friction.ts';
import { strokeOf } from './simulated-stroke.ts';
import { between, expectClose, expectRefused, notFinite } from './support.ts';

const sheet = {
  ratedTravelM: 0.02,
  effectiveAreaM2: 0.05,
  benchSetLowPa: 20000,
  benchSetHighPa: 100000,
  gaugeUncertaintyPa: 300,
  indicatorUncertaintyM: 1e-4,
};

interface Found {
  readonly airAction: AirAction;
  readonly frictionPa: number;
  readonly shiftPa: number;
  readonly percents: readonly number[];
  readonly spanFactor?: number;
  readonly cycles?: number;
}

function measured(found: Found) {
  const { airAction, frictionPa, shiftPa, percents, spanFactor = 1, cycles = 1 } = found;
  const rows = strokeOf({
    airAction,
    benchSetLowPa: 20000 + shiftPa,
    benchSetHighPa: 20000 + shiftPa + 80000 * spanFactor,
    travelM: 0.02,
    frictionPa,
    percents,
    cycles,
  });
  return strokeFriction({ ...sheet, airAction, rows });
}

const TABLES: readonly (readonly number[])[] = [
  [0, 50, 100],
  [0, 25, 50, 75, 100],
  [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100],
  [10, 50, 90],
];

describe('the friction of a stroke', () => {
  it('and the shift of the bench set come out as they were put in, both ways of air, any table', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<AirAction>('air-to-open', 'air-to-close'),
        between(0, 6000),
        between(-3000, 3000),
        fc.constantFrom(...TABLES),
        fc.constantFrom(1, 3),
        (airAction, frictionPa, shiftPa, percents, cycles) => {
          const found = measured({ airAction, frictionPa, shiftPa, percents, cycles });
          // Travels count as equal within a nanometre: some millipascal.
          expect(Math.abs(found.frictionN - 0.05 * frictionPa)).toBeLessThan(1e-3);
          expect(Math.abs(found.benchSetShiftPa - shiftPa)).toBeLessThan(1e-2);
        },
      ),
    );
  });

  it('is the same however the valve stands at its turning points', () => {
    const found = measured({
      airAction: 'air-to-open',
      frictionPa: 4000,
      shiftPa: 0,
      percents: [0, 25, 50, 75, 100],
    });
    expectClose(found.frictionMinN, 200);
    expectClose(found.frictionMaxN, 200);
  });

  it('has a spring found from the middle line: a stiffer one has a wider span', () => {
    const stiff = measured({
      airAction: 'air-to-close',
      frictionPa: 2000,
      shiftPa: 0,
      percents: [0, 25, 50, 75, 100],
      spanFactor: 1.1,
    });
    expectClose(stiff.benchSetFound?.highPa ?? 0, 108000);
    expectClose(stiff.benchSetFound?.lowPa ?? 0, 20000);
    expectClose(stiff.benchSetFound?.springRateNPerM ?? 0, (0.05 * 88000) / 0.02);
  });

  it('carries the uncertainty of gauge and indicator', () => {
    const found = measured({
      airAction: 'air-to-open',
      frictionPa: 4000,
      shiftPa: 0,
      percents: [0, 50, 100],
    });
    // 0.1 mm on 80 kPa over 20 mm is 400 Pa; with 300 Pa of the gauge 500 Pa.
    expectClose(found.benchSetShiftUncertaintyPa, 500);
    expectClose(found.frictionUncertaintyN, (0.05 * 500) / Math.SQRT2);
  });

  it('leaves out rows on the seat and rows at a stop', () => {
    const rows = strokeOf({
      airAction: 'air-to-open',
      benchSetLowPa: 20000,
      benchSetHighPa: 100000,
      travelM: 0.02,
      frictionPa: 4000,
      percents: [0, 25, 50, 75, 100],
    }).map((row) => ({ ...row, travelM: Math.max(row.travelM ?? 0, 0.0055) }));
    const judged = strokeFriction({
      ...sheet,
      airAction: 'air-to-open',
      rows,
      contactPa: 42000,
      contactMarginPa: 4000,
    });
    expectClose(judged.frictionN, 200);
    const stopped = strokeFriction({ ...sheet, airAction: 'air-to-open', rows, excludedRows: [0, 1, 7, 8] });
    expectClose(stopped.frictionN, 200);
  });

  it('has no line through levels at one travel', () => {
    const rows = [
      { signalPa: 40000, travelPercent: 22.5, direction: 'up' as const, cycle: 1 },
      { signalPa: 62000, travelPercent: 50, direction: 'up' as const, cycle: 1 },
      { signalPa: 80000, travelPercent: 50.05, direction: 'up' as const, cycle: 1 },
      { signalPa: 84000, travelPercent: 77.5, direction: 'up' as const, cycle: 1 },
      { signalPa: 58000, travelPercent: 50, direction: 'down' as const, cycle: 1 },
    ];
    const found = strokeFriction({ ...sheet, airAction: 'air-to-open', rows });
    expect(found.benchSetFound).toBeNull();
    expectClose(found.frictionN, 100);
  });

  it('is not taken from rows that friction still holds after the reversal', () => {
    // 5 kPa of friction on 80 kPa: at 90 % on the way back the stem stands where it turned.
    const found = measured({
      airAction: 'air-to-close',
      frictionPa: 5000,
      shiftPa: 0,
      percents: TABLES[2] ?? [],
    });
    expectClose(found.frictionMinN, 250);
    expectClose(found.frictionMaxN, 250);
  });

  it('never comes out as no number, whatever the rows', () => {
    const rows = strokeOf({
      airAction: 'air-to-open',
      benchSetLowPa: 20000,
      benchSetHighPa: 100000,
      travelM: 0.02,
      frictionPa: 2000,
      percents: [0, 25, 50, 75, 100],
    });
    const anySlips = fc.array(fc.oneof(fc.constant(0), between(-0.02, 0.02)), { minLength: 9, maxLength: 9 });
    let answered = 0;
    fc.assert(
      fc.property(anySlips, (slips) => {
        const slipped = rows.map((row, at) => ({ ...row, travelM: (row.travelM ?? 0) + (slips[at] ?? 0) }));
        try {
          const found = strokeFriction({ ...sheet, airAction: 'air-to-open', rows: slipped });
          expect(notFinite(found)).toEqual([]);
          answered++;
        } catch (error) {
          expect(error).toMatchObject({ code: 'CALC-004' });
        }
      }),
    );
    expect(answered).toBeGreaterThan(0);
  });

  it('is refused where the stem was not seen moving both ways, or a figure cannot be', () => {
    const rows = [{ signalPa: 62000, travelPercent: 50, direction: 'up' as const, cycle: 1 }];
    const input = { ...sheet, airAction: 'air-to-open' as const, rows };
    expectRefused(() => strokeFriction(input), { code: 'CALC-004', name: 'rows' });
    expectRefused(() => strokeFriction({ ...input, gaugeUncertaintyPa: -1 }), {
      code: 'CALC-002',
      name: 'gaugeUncertaintyPa',
    });
    expectRefused(() => strokeFriction({ ...input, indicatorUncertaintyM: -1 }), {
      code: 'CALC-002',
      name: 'indicatorUncertaintyM',
    });
    expectRefused(() => strokeFriction({ ...input, effectiveAreaM2: 0 }), {
      code: 'CALC-002',
      name: 'effectiveAreaM2',
    });
  });
});
