import { describe, expect, test } from 'vitest';
import { nozzleBackPressureSimplePa } from '../../../procedures/calculations/nozzle-flapper.ts';
import { AIR, orificeFlow } from '../../../procedures/calculations/orifice-flow.ts';
import { jetM2, massKg, passKgPerS, pressurePa, tubeLossPaSPerKg } from '../../../procedures/practice/air.ts';
import { backPressure } from '../../../procedures/practice/signal-path.ts';

const ATMOSPHERE_PA_ABS = 101_325;

describe('air in the simulated valve', () => {
  test.each([600e3, 300e3, 150e3, 60e3, 20e3])(
    'passes a hole as the checked orifice says, from %d Pa',
    (fromPa) => {
      const { massFlowKgPerS } = orificeFlow({
        areaM2: Math.PI * 0.25e-6,
        dischargeFactor: 0.7,
        inletPaAbs: fromPa + ATMOSPHERE_PA_ABS,
        outletPaAbs: ATMOSPHERE_PA_ABS,
        inletK: 293.15,
        ...AIR,
      });
      const lean = passKgPerS({ areaM2: jetM2(0.001), fromPa, toPa: 0 });
      expect(lean / massFlowKgPerS).toBeGreaterThan(0.97);
      expect(lean / massFlowKgPerS).toBeLessThan(1.03);
    },
  );

  test('goes from the higher pressure to the lower, and nowhere between equal ones', () => {
    const areaM2 = jetM2(0.001);
    const forth = passKgPerS({ areaM2, fromPa: 1e5, toPa: 4e4 });
    expect(forth).toBeGreaterThan(0);
    expect(passKgPerS({ areaM2, fromPa: 4e4, toPa: 1e5 })).toBe(-forth);
    expect(passKgPerS({ areaM2, fromPa: 4e4, toPa: 4e4 })).toBe(0);
  });

  test('loses in a laminar tube what Hagen and Poiseuille say', () => {
    // 128 mu L / (pi d^4 rho), with rho at the mean pressure: 1.2041 kg/m3 at 101 325 Pa.
    const lossPaSPerKg = tubeLossPaSPerKg({ lengthM: 10, boreM: 0.0043, flowKgPerS: 1e-5, meanPa: 0 });
    const handPaSPerKg = (128 * 1.81e-5 * 10) / (Math.PI * 0.0043 ** 4 * 1.2041);
    expect(lossPaSPerKg / handPaSPerKg).toBeCloseTo(1, 2);
  });

  test('has the back pressure of a nozzle that the checked formula gives', () => {
    const [restrictionDiameterM, nozzleDiameterM, supplyPa] = [0.25e-3, 0.8e-3, 140e3];
    const atBalanceM = restrictionDiameterM ** 2 / (4 * nozzleDiameterM);
    for (const gap of [0.3, 1, 2.5])
      expect(supplyPa * backPressure({ gapFraction: gap, nozzle: 1, restriction: 1 })).toBeCloseTo(
        nozzleBackPressureSimplePa({
          restrictionDiameterM,
          nozzleDiameterM,
          gapM: gap * atBalanceM,
          supplyPa,
        }),
        -2,
      );
  });

  test('keeps its mass when pressure and volume are turned one into the other', () => {
    const volumeM3 = 0.004;
    expect(pressurePa({ massKg: massKg({ pressurePa: 62e3, volumeM3 }), volumeM3 })).toBeCloseTo(62e3, 6);
  });
});
