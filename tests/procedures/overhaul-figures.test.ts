import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  soapPressurePa,
  springForceLeftN,
  springForceShutN,
  turnsToFree,
} from '../../procedures/overhaul-figures.ts';
import { FIGURES } from '../../procedures/quantities.ts';
import { testAirLimit } from '../../safety/limits.ts';
import { PSI_PA } from '../builders/gear.ts';
import { openJob } from '../builders/jobs.ts';
import { aSheet, aSheetOf } from '../builders/sheets.ts';
import { validSheets } from '../builders/valid-sheets.ts';

/** 1 lbf in N, NIST SP 811. */
const LBF_N = 4.4482216152605;

test('Soap never asks for more air than the case may have, whatever the sheet says', () => {
  fc.assert(
    fc.property(validSheets, (sheet) => {
      expect(soapPressurePa(sheet)).toBeLessThanOrEqual(testAirLimit(sheet).limitPa);
    }),
  );
});

test('Soap is looked at with the highest signal, or with the rating of a weaker case', () => {
  expect(soapPressurePa(aSheet()) / PSI_PA).toBeCloseTo(15, 6);
  expect(soapPressurePa(aSheetOf({ caseRatingPa: '14' })) / PSI_PA).toBeCloseTo(14, 6);
});

// By hand, FV-214: 3 psi on 100 in2 are 300 lbf; 1600 lbf/in on a thread of 18 to the inch let go 88.9 lbf a turn,
// so that the spring can be free after 3.375 turns.
describe('A spring of 1600 lbf/in that starts at 3 psi on 100 in2', () => {
  test('pushes 300 lbf with no air, and needs 3.375 turns to be free', () => {
    expect(Number(springForceShutN(aSheet())) / LBF_N).toBeCloseTo(300, 3);
    expect(turnsToFree(aSheet())).toBeCloseTo(3.375, 6);
  });

  test('still pushes 122 lbf after two turns, and nothing after five', () => {
    const { job } = openJob();
    const leftBy = (turns: number) => {
      const adjusterTurnsOff = {
        field: 'adjusterTurnsOff',
        valueSi: turns,
        typed: '',
        unit: '',
        gauge: null,
        uncertaintySi: null,
        readBy: null,
      };
      return Number(springForceLeftN({ ...job, readings: { adjusterTurnsOff } })) / LBF_N;
    };
    expect(leftBy(2)).toBeCloseTo(122.22, 2);
    expect(leftBy(5)).toBe(0);
    expect(springForceLeftN(job)).toBeNull();
  });

  test('has no turns to count where the case holds it, the thread is not known, or there is none', () => {
    expect(turnsToFree(aSheet({ springHeldBy: 'case' }))).toBeNull();
    expect(turnsToFree(aSheet({ adjusterThreadPitchM: null }))).toBeNull();
    expect(springForceShutN(aSheet({ springHeldBy: 'no spring' }))).toBeNull();
  });
});

describe('The order of case nuts', () => {
  const ordered = (caseBolts: string) => {
    const { job } = openJob();
    return FIGURES.caseNutOrder.of({ ...job, words: { caseBolts } });
  };

  // As shops print it for 8 and 12 bolts (common practice, no source).
  test('goes crosswise where they are counted in pairs', () => {
    expect(ordered('8')).toBe('1, 5, 3, 7, 2, 6, 4, 8');
    expect(ordered('12')).toBe('1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12');
  });

  test('is told in words where they are not', () => {
    expect(ordered('other')).toBe('opposite nuts in turn');
    expect(ordered('')).toBe('opposite nuts in turn');
  });
});

describe('The load of a gland', () => {
  const reading = (field: string, valueSi: number) => ({
    field,
    valueSi,
    typed: '',
    unit: '',
    gauge: null,
    uncertaintySi: null,
    readBy: null,
  });
  const { job } = openJob();
  const graphite = { ...job, sheet: aSheet({ packingKind: 'graphite' }) };
  const measured = { boxBoreM: reading('boxBoreM', 0.0254), glandStudM: reading('glandStudM', 0.009525) };

  // Published one-page method of a packing maker, 1996, by hand: 1 in box, 1/2 in stem, 3800 psi, two studs of 3/8 in:
  // 0.589 in2 x 3800 psi = 2238 lbf; 0.2 x 2238 x 0.375 / 2 = 83.9 lbf in = 7.0 lbf ft.
  test('is the published method’s for graphite, where the box was measured', () => {
    const of = { ...graphite, readings: measured, words: { glandStuds: '2' } };
    expect(FIGURES.glandLoad.of(of)).toBe('7.0 lbf·ft on each nut');
    expect(FIGURES.glandLoadBecause.of(of)).toContain('published gland method');
  });

  test('is the maker’s wherever it is given', () => {
    const glandMakerNm = reading('glandMakerNm', 12);
    const of = { ...graphite, readings: { ...measured, glandMakerNm } };
    expect(FIGURES.glandLoad.of(of)).toContain('8.9 lbf·ft');
    expect(FIGURES.glandLoadBecause.of(of)).toContain('maker');
  });

  test('is by feel, and marked so, for packing that no table fits', () => {
    expect(FIGURES.glandLoad.of({ ...job, readings: measured })).toContain('finger tight');
    expect(FIGURES.glandLoadBecause.of(job)).toContain('no source');
  });
});

// By hand, FV-214: 10 % of 12 psi are 1.2 psi between up and down; half of it on 100 in2 are 60 lbf each way.
test('The friction that the hysteresis allows is half the gap on the area', () => {
  const { job } = openJob();
  expect(Number(FIGURES.frictionGap.of(job)) / PSI_PA).toBeCloseTo(1.2, 6);
  expect(Number(FIGURES.frictionLimit.of(job)) / LBF_N).toBeCloseTo(60, 3);
});
