import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromSi, toSi } from '../../procedures/calculations/units.ts';
import { FIGURES } from '../../procedures/quantities.ts';
import { atRoomM3PerS, noSeatTest, seatTestOf } from '../../procedures/seat-test.ts';
import { PSI_PA } from '../builders/gear.ts';
import { openJob } from '../builders/jobs.ts';
import { aSheet } from '../builders/sheets.ts';
import { validSheets } from '../builders/valid-sheets.ts';
import { ROOT } from '../root.ts';

interface Case {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | string>>;
  readonly expected: Readonly<Record<string, number>>;
}

const { cases } = JSON.parse(
  readFileSync(join(ROOT, 'tests/outside/fixtures/seat-leakage.json'), 'utf8'),
) as { readonly cases: readonly Case[] };

function published(id: string): Case {
  const found = cases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
}

const mlPerMin = (valueSi: number) => fromSi({ valueSi, unit: 'ml/min' });

describe('What a seat may leak', () => {
  // Class fraction with the gas equation of the standard; source in the fixture.
  test('of class IV in psi is the share of the capacity at 50 psi of air', () => {
    const { inputs, expected } = published('seat-r08');
    const found = seatTestOf({
      units: 'us',
      leakageClass: 'IV',
      ratedKv: toSi({ value: Number(inputs.rated_Cv), unit: 'Cv' }),
      pressureDropRatioXt: Number(inputs.xT_at_rated_travel),
      portDiameterM: 0.05,
      shutOffDropPa: 200 * PSI_PA,
    });
    expect([found.standard, found.medium, found.pressurePa / PSI_PA]).toEqual(['ANSI/FCI 70-2', 'air', 50]);
    const scfh = toSi({ value: Number(expected['allowable_leak_scfh_60F_14.696psia']), unit: 'scfh' });
    // The case gives its own tolerance, 0.3 %.
    expect(Math.abs(found.allowedM3PerS / atRoomM3PerS(scfh) - 1)).toBeLessThan(0.003);
  });

  test('of class IV in kPa is the share of the capacity at 350 kPa of air', () => {
    const { inputs, expected } = published('seat-r06');
    const found = seatTestOf({
      units: 'si',
      leakageClass: 'IV',
      ratedKv: Number(inputs.rated_Kv),
      pressureDropRatioXt: Number(inputs.xT_at_rated_travel),
      portDiameterM: 0.05,
      shutOffDropPa: 2e6,
    });
    expect(found.pressurePa).toBe(350e3);
    const normal = toSi({
      value: Number(expected['allowable_leak_normal_l_per_min_0C_101.325kPa']),
      unit: 'Nl/min',
    });
    expect(Math.abs(found.allowedM3PerS / atRoomM3PerS(normal) - 1)).toBeLessThan(0.002);
  });

  const V = { leakageClass: 'V', ratedKv: 10, pressureDropRatioXt: null } as const;

  test('of class V is water at the shut-off drop, by the constant of its own standard', () => {
    const us = seatTestOf({ ...V, units: 'us', portDiameterM: 0.0508, shutOffDropPa: 600 * PSI_PA });
    expect(mlPerMin(us.allowedM3PerS)).toBeCloseTo(
      Number(published('seat-r09').expected.allowable_leak_ml_per_min),
      5,
    );
    const si = seatTestOf({ ...V, units: 'si', portDiameterM: 0.05, shutOffDropPa: 4e6 });
    expect(mlPerMin(si.allowedM3PerS)).toBeCloseTo(
      Number(published('seat-r10').expected.allowable_leak_ml_per_min),
      5,
    );
    expect([us.medium, us.bubblesPerMin]).toEqual(['water', null]);
  });

  const VI = { leakageClass: 'VI', ratedKv: 10, pressureDropRatioXt: null } as const;

  test('of class VI is the table, with its bubbles in psi and with the drop in kPa', () => {
    const us = seatTestOf({ ...VI, units: 'us', portDiameterM: 0.1016, shutOffDropPa: 100 * PSI_PA });
    const { expected } = published('seat-r12');
    expect(mlPerMin(us.allowedM3PerS)).toBeCloseTo(Number(expected.allowable_leak_ml_per_min), 6);
    expect(us.bubblesPerMin).toBe(expected.allowable_bubbles_per_min);
    const si = seatTestOf({ ...VI, units: 'si', portDiameterM: 0.1, shutOffDropPa: 2e6 });
    expect(mlPerMin(si.allowedM3PerS)).toBeCloseTo(
      Number(published('seat-r15').expected.allowable_leak_ml_per_min),
      6,
    );
    expect(si.bubblesPerMin).toBeNull();
  });

  test.each([
    [{ leakageClass: 'I' }, 'Class I'],
    [{ shutOffDropPa: 0 }, 'no shut-off drop'],
    [{ leakageClass: 'V', shutOffDropPa: 90 * PSI_PA }, 'larger drop'],
    [{ leakageClass: 'VI', portDiameterM: 0.5 }, 'wider than the table'],
    [{ pressureDropRatioXt: null }, 'no xT'],
  ] as const)('is not made up where it cannot be worked out: %j', (of, why) => {
    const sheet = aSheet(of);
    expect(noSeatTest(sheet)).toContain(why);
    expect(() => seatTestOf(sheet)).toThrow(why);
    expect(FIGURES.allowedLeak.of(openJob({ sheet }).job)).toBeNull();
  });
});

test('No valve is ever told to be tested above its shut-off drop or the most of its standard', () => {
  fc.assert(
    fc.property(
      validSheets,
      fc.constantFrom('II', 'III', 'IV', 'V', 'VI'),
      fc.integer({ min: 1, max: 900 }),
      (drawn, leakageClass, dropPsi) => {
        const sheet = { ...drawn, leakageClass, shutOffDropPa: dropPsi * PSI_PA } as const;
        if (noSeatTest(sheet) !== null) return;
        const { pressurePa, mostPa, medium, allowedM3PerS } = seatTestOf(sheet);
        expect(pressurePa).toBeLessThanOrEqual(mostPa);
        expect(mostPa).toBeLessThanOrEqual(sheet.shutOffDropPa);
        if (medium === 'air') expect(mostPa).toBeLessThanOrEqual(60 * PSI_PA + 1);
        expect(allowedM3PerS).toBeGreaterThan(0);
      },
    ),
  );
});
