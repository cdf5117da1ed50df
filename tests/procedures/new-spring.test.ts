import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Job, Reading } from '../../procedures/job.ts';
import { isTooMuch, newSpringOf } from '../../procedures/new-spring.ts';
import { benchShiftRule, diaphragmLookRule } from '../../procedures/rules/diaphragm.ts';
import { springFitsRule } from '../../procedures/rules/spring-change.ts';
import { testAirLimit } from '../../safety/limits.ts';
import { INCH_M, PSI_PA } from '../builders/gear.ts';
import { openJob } from '../builders/jobs.ts';
import { aSheet } from '../builders/sheets.ts';
import { validSheets } from '../builders/valid-sheets.ts';

/** 1 lbf in N, NIST SP 811. */
const LBF_N = 4.4482216152605;
const { job: JOB } = openJob();

function reading(field: string, valueSi: number): Reading {
  return { field, valueSi, typed: '', unit: '', gauge: null, uncertaintySi: null, readBy: null };
}

function withSpring(
  lbfPerIn: number,
  of: { readonly job?: Job; readonly lengthIn?: number; readonly roomIn?: number } = {},
) {
  const { job = JOB, lengthIn, roomIn } = of;
  const readings = [
    reading('newRateNPerM', (lbfPerIn * LBF_N) / INCH_M),
    ...(lengthIn === undefined ? [] : [reading('newLengthM', lengthIn * INCH_M)]),
    ...(roomIn === undefined ? [] : [reading('springRoomM', roomIn * INCH_M)]),
  ];
  return { ...job, readings: Object.fromEntries(readings.map((one) => [one.field, one])) };
}

const outcome = (job: Job) =>
  springFitsRule.judge({ job, readings: job.readings, words: {}, step: 's', params: {} }).outcome;

// By hand, FV-214: 100 in2, 0.75 in, air opens, flow under a 1 in port at 100 psi opens with 78.5 lbf, packing 50 lbf.
describe('A spring of 1600 lbf/in set to 3 psi', () => {
  const spring = newSpringOf(withSpring(1600));

  test('gives 3 to 15 psi on the bench', () => {
    expect(Number(spring?.benchLowPa) / PSI_PA).toBeCloseTo(3, 6);
    expect(Number(spring?.benchHighPa) / PSI_PA).toBeCloseTo(15, 6);
  });

  test('strokes from 2.21 psi with the process on, for 78.5 lbf lift the plug', () => {
    expect(Number(spring?.installedLowPa) / PSI_PA).toBeCloseTo(2.215, 3);
    expect(Number(spring?.installedHighPa) / PSI_PA).toBeCloseTo(15, 6);
  });

  test('leaves 171 lbf on the seat: 300 less 78.5 and 50', () => {
    expect(Number(spring?.seatLoadN) / LBF_N).toBeCloseTo(171.46, 2);
  });

  test('fits', () => {
    expect(outcome(withSpring(1600))).toBe('fits');
  });
});

describe('A spring that does not fit', () => {
  const held = { ...JOB, sheet: aSheet({ springHeldBy: 'case', adjusterThreadPitchM: null }) };
  const weak = { ...JOB, sheet: aSheet({ shutOffDropPa: 400 * PSI_PA }) };

  test('is told by what is wrong with it', () => {
    expect(outcome(withSpring(1500))).toBe('wrong span');
    expect(outcome(withSpring(3000))).toBe('too much for the case');
    expect(outcome(withSpring(1600, { job: weak }))).toBe('does not hold shut');
    expect(outcome(JOB)).toBe('not read');
  });

  test('in a case that holds it goes by its length and its room', () => {
    expect(outcome(withSpring(1600, { job: held, lengthIn: 6.1875, roomIn: 6 }))).toBe('fits');
    expect(outcome(withSpring(1600, { job: held, lengthIn: 6.25, roomIn: 6 }))).toBe('wrong low end');
    expect(outcome(withSpring(1600, { job: held }))).toBe('not read');
  });
});

test('No spring is called fit whose stroke ends above what the case may have, whatever the sheet', () => {
  fc.assert(
    fc.property(validSheets, fc.integer({ min: 50, max: 5000 }), (sheet, lbfPerIn) => {
      const job = withSpring(lbfPerIn, { job: { ...JOB, sheet }, lengthIn: 6.2, roomIn: 6 });
      const spring = newSpringOf(job);
      if (spring === null || outcome(job) !== 'fits') return;
      expect(isTooMuch(job, spring)).toBe(false);
      expect(spring.benchHighPa).toBeLessThanOrEqual(testAirLimit(sheet).limitPa);
    }),
  );
});

describe('A bench set as left', () => {
  const shift = (psi: number, uncertaintyPsi = 0.1) =>
    benchShiftRule.judge({
      job: {
        ...JOB,
        figures: {
          v: { benchSetShiftPa: psi * PSI_PA, benchSetShiftUncertaintyPa: uncertaintyPsi * PSI_PA },
        },
      },
      readings: {},
      words: {},
      step: 's',
      params: { verdict: 'v' },
    }).outcome;

  test('is as the sheet within 0.25 psi, the gauge counted in', () => {
    expect(shift(0.1)).toBe('as the sheet');
    expect(shift(-0.2)).toBe('too close');
    expect(shift(0.4)).toBe('shifted');
  });

  test('is not known where no travel was passed both ways', () => {
    const none = { job: JOB, readings: {}, words: {}, step: 's', params: { verdict: 'v' } };
    expect(benchShiftRule.judge(none).outcome).toBe('not known');
  });

  test('every finding on a diaphragm but none is damage', () => {
    const look = (diaphragmFound: string) =>
      diaphragmLookRule.judge({ job: JOB, readings: {}, words: { diaphragmFound }, step: 's', params: {} })
        .outcome;
    expect(look('sound')).toBe('sound');
    expect(['split', 'cracked', 'torn', 'fabric'].map(look)).toEqual(Array(4).fill('damaged'));
  });
});
