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
