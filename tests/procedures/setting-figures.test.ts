import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SETTING_FIGURES, shutEndInLine } from '../../procedures/setting-figures.ts';
import { PSI_PA } from '../builders/gear.ts';
import { openJob } from '../builders/jobs.ts';
import { aSheet, aSheetOf } from '../builders/sheets.ts';
import { validSheets } from '../builders/valid-sheets.ts';

/** 1 lbf in N and 1 lbf/in in N/m, NIST SP 811. */
const LBF_N = 4.4482216152605;
const LBF_PER_IN = LBF_N / 0.0254;

const CLOSES = {
  airMovesStem: 'down',
  airAction: 'air-to-close',
  failPosition: 'open',
  effectiveAreaM2: '70',
  springRateNPerM: '',
  benchSetLowPa: '3',
  benchSetHighPa: '15',
  packingFrictionN: '25',
  seatLoadNPerM: '',
  seatLoadSource: '',
  seatingTurns: '',
  caseRatingPa: '',
  supplyLowPa: '',
  supplyHighPa: '',
} as const;

describe('The shut end in its line', () => {
  // A valve sizing reference guide (2008), table 17: allowable drop by air on 70 in2, 3 to 15 psi, flow up, friction
  // 25 lbf; 10, 30 and 120 lbf for each inch of port in classes II, IV and V.
  test.each([
    [18, '1', 196, 10],
    [27, '1', 558, 120],
    [22, '0.5', 2128, 30],
    [24, '0.375', 4198, 120],
    [18, '0.1875', 6060, 30],
  ])(
    'at %d psi on a port of %s in and the published drop of %d psi keeps the published load',
    (airPsi, portDiameterM, dropPsi, load) => {
      const sheet = {
        ...aSheetOf({ ...CLOSES, portDiameterM: '1' }),
        portDiameterM: Number(portDiameterM) * 0.0254,
        // The table takes the whole port: no stem through it.
        stemDiameterM: 0,
        signalHighPa: airPsi * PSI_PA,
        shutOffDropPa: dropPsi * PSI_PA,
      };
      // The table prints whole psi: one psi on the port, for each inch round it.
      const stepOfTable = Number(portDiameterM) / 4;
      expect(Math.abs(shutEndInLine(sheet).seatLoadNPerM / LBF_PER_IN - load)).toBeLessThanOrEqual(
        stepOfTable,
      );
    },
  );

  const of = (sheet = aSheet()) => openJob({ sheet }).job;

  // By hand, FV-214: 100 psi on 0.7854 in2 open with 78.5 lbf; 50 lbf of friction; 3 psi on 100 in2 hold with 300.
  test('of a valve that air opens is said as lift and load', () => {
    expect(SETTING_FIGURES.shutEndInLine.of(of())).toBe('lifts off its seat at 2.71 psi');
    expect(SETTING_FIGURES.seatHeldInLine.of(of())).toBe('held on it with 171 lbf');
    expect(SETTING_FIGURES.frictionCounted.of(of())).toContain('published table');
  });

  test('that flow pushes open says how much is missing', () => {
    const weak = aSheet({ shutOffDropPa: 500 * PSI_PA, packingFrictionN: null });
    // By hand: 392.7 lbf against 300.
    expect(SETTING_FIGURES.seatHeldInLine.of(of(weak))).toBe('not held shut: 93 lbf are missing');
    expect(SETTING_FIGURES.frictionCounted.of(of(weak))).toContain('without friction');
  });

  test('of a valve that air shuts meets its seat later where flow opens, sooner where it shuts', () => {
    const shuts = aSheetOf({ ...CLOSES, effectiveAreaM2: '100' });
    const over = { ...shuts, flow: 'over' as const };
    expect(SETTING_FIGURES.shutEndInLine.of(of(shuts))).toMatch(/^meets its seat/);
    expect(shutEndInLine(shuts).contactPa).toBeGreaterThan(shuts.benchSetHighPa);
    expect(shutEndInLine(over).contactPa).toBeLessThan(shutEndInLine(shuts).contactPa ?? 0);
  });

  test('can be said of every valve that a sheet describes', () => {
    fc.assert(
      fc.property(validSheets, (sheet) => {
        for (const figure of Object.values(SETTING_FIGURES)) {
          const value = figure.of(of(sheet));
          expect(typeof value === 'number' ? Number.isFinite(value) : true).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});
