import { describe, expect, test } from 'vitest';
import { toSi } from '../../procedures/calculations/units.ts';
import { energiesMissing, energiesOf, sayEnergy } from '../../procedures/energies.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { type ConditionId, ENERGY_IDS } from '../../safety/conditions.ts';
import { PSI_PA } from '../builders/gear.ts';
import { aSheet } from '../builders/sheets.ts';

function sizeOf(condition: ConditionId, on: Partial<ValveSheet> = {}) {
  const found = energiesOf(aSheet(on)).find((one) => one.condition === condition);
  if (found === undefined) throw new Error(`no ${condition}`);
  return found;
}

const si = (value: number, unit: Parameters<typeof toSi>[0]['unit']) => toSi({ value, unit });

describe('What can hurt on a valve', () => {
  test('is every energy that there is, in one list', () => {
    expect(
      energiesOf(aSheet())
        .map(({ condition }) => condition)
        .sort(),
    ).toEqual([...ENERGY_IDS].sort());
  });

  test('has its size from the sheet: pressures, weight, temperature, each with its unit', () => {
    expect(sizeOf('supplyAir').sizes).toEqual([
      { valueSi: expect.closeTo(20 * PSI_PA), dimension: 'pressure' },
    ]);
    expect(sizeOf('processInlet').sizes[0]?.valueSi).toBeCloseTo(88 * PSI_PA);
    expect(sizeOf('weight').sizes[0]?.valueSi).toBeCloseTo(si(70, 'lb'));
    // 190 °F is 87.8 °C.
    expect(sizeOf('temperature').sizes[0]?.valueSi).toBeCloseTo(273.15 + 87.78, 1);
  });

  // Worked by hand: 100 in2 at 3 psi is 300 lbf; over 1600 lbf/in that is 0.1875 in, so 28.1 in.lbf.
  test('has the force that the shut case holds, and what the spring sets free from there', () => {
    const [force, energy] = sizeOf('spring').sizes;
    expect(force?.valueSi).toBeCloseTo(si(300, 'lbf'), 3);
    expect(energy?.valueSi).toBeCloseTo(si(28.125, 'in.lbf'), 4);
  });

  // Worked by hand: 100 in2 over 0.75 in is 75 in3, 1.229 l, at 15 psi over one atmosphere; k = 1.4 sets 114.5 J free.
  test('has the energy of the air that is kept on the case and in a tank', () => {
    const pAbs = 15 * PSI_PA + 101_325;
    const byHand = ((pAbs * si(75, 'in3')) / 0.4) * (1 - (101_325 / pAbs) ** (0.4 / 1.4));
    expect(byHand).toBeCloseTo(114.5, 1);
    expect(sizeOf('signalAir').sizes[1]?.valueSi).toBeCloseTo(byHand, 6);
    const tank = sizeOf('trappedAir', { volumeTank: true, tankVolumeM3: 0.01 });
    expect(tank.sizes.map(({ dimension }) => dimension)).toEqual(['volume', 'pressure', 'energy']);
  });

  test('names its isolation points by tag, each instance its own (EI-05)', () => {
    const two = { secondSupplyPoint: 'IA-214-2', secondSupplyHighPa: 137_895 };
    expect(sizeOf('supplyAir', two).points).toEqual(['IA-214-1']);
    expect(sizeOf('secondSupply', two).points).toEqual(['IA-214-2']);
    expect(sizeOf('processInlet').points).toEqual(['HV-214A']);
    expect(sizeOf('secondSupply').onSheet).toBe(false);
  });

  test('whose size is not on the sheet is named (EI-03)', () => {
    expect(energiesMissing({ sheet: aSheet() })).toEqual([]);
    expect(
      energiesMissing({ sheet: aSheet({ actuatorMassKg: null, supplyHighPa: null, volumeTank: true }) }),
    ).toEqual(['supplyAir', 'trappedAir', 'weight']);
  });

  test('is said with size, hazard, control and how it is shown; what is not on the sheet is looked for', () => {
    expect(sayEnergy('spring', { sheet: aSheet() })).toBe(
      '300 lbf, 2.3 ft·lbf. Throws the cover that is loosened over it. Control: left shut in under its cover, or backed off with the adjuster before a bolt of it is touched. Shown by: actuator shut and every bolt in and tight, or the adjuster turning freely by hand.',
    );
    // Nothing is isolated while this is read: where it is done is told as what is still to be done.
    expect(sayEnergy('processInlet', { sheet: aSheet() })).toContain(', to be isolated at HV-214A. ');
    const inCase = sayEnergy('spring', { sheet: aSheet({ springHeldBy: 'case', adjusterThread: null }) });
    expect(inCase).toContain('evenly by its long bolts');
    expect(inCase).not.toContain('adjuster');
    expect(sayEnergy('spring', { sheet: aSheet({ actuatorKind: 'piston' }) })).toContain('manual alone');
    expect(sayEnergy('lockUpAir', { sheet: aSheet() })).toBe(
      'None on the sheet. Look for it all the same: the relay keeps it on the actuator by design.',
    );
  });
});
