import { describe, expect, it } from 'vitest';
import { GAS_FORMS, N } from '../../../procedures/calculations/flow-constants.ts';
import { GAS_CONSTANT_J_PER_MOL_K } from '../../../procedures/calculations/gas-states.ts';
import { UNITS } from '../../../procedures/calculations/unit-table.ts';

/** Water at 15 °C. */
const WATER_KG_PER_M3 = 999.1033;

/**
 * N9 from the definitions: one Kv passes 1 m³/h of water of 15 °C at 1 bar, and the same jet of gas of density
 * p M/(R T) is counted as moles, then as volume at the state of the form.
 */
function n9(form: keyof typeof GAS_FORMS, waterKgPerM3 = WATER_KG_PER_M3): number {
  const { coefficient, pressure, temperature, flow } = GAS_FORMS[form];
  const pressurePa = UNITS[pressure].factor;
  const temperatureK = UNITS[temperature].factor;
  const molarMass = 1e-3;
  const areaM2 = UNITS[coefficient].factor / 3600 / Math.sqrt(1e5 / waterKgPerM3);
  const density = (pressurePa * molarMass) / (GAS_CONSTANT_J_PER_MOL_K * temperatureK);
  const molPerS = (areaM2 * Math.sqrt(pressurePa * density)) / molarMass;
  return molPerS / UNITS[flow].factor;
}

describe('the constants of the valve equations', () => {
  it.each(['iec-normal', 'iec-standard', 'isa-scfh'] as const)(
    'N9 of %s is the rounded value of its definition',
    (form) => {
      expect(Math.abs(n9(form) / GAS_FORMS[form].n9 - 1)).toBeLessThan(0.0035);
    },
  );

  it('N9 carries its state: 0 °C and 15 °C are 5.5 % apart', () => {
    expect(n9('iec-standard') / n9('iec-normal')).toBeCloseTo(288.15 / 273.15, 9);
  });

  it('full digits of N9 are 24.570 at 0 °C and 7338 in US units', () => {
    expect(n9('iec-normal')).toBeCloseTo(24.57, 2);
    expect(n9('isa-scfh')).toBeCloseTo(7338, -1);
  });

  it('full digits of N9 hang on the water that Kv is defined with: 1000 kg/m³ in place of 15 °C makes it 24.581', () => {
    expect(n9('iec-normal', 1000)).toBeCloseTo(24.581, 3);
    expect(n9('iec-normal', 1000) / n9('iec-normal')).toBeCloseTo(Math.sqrt(1000 / WATER_KG_PER_M3), 9);
  });

  it('N1 is the definition of Kv itself', () => {
    expect(N.n1 * Math.sqrt(100)).toBe(1);
  });
});
