import { describe, expect, test } from 'vitest';
import {
  type CycleFigures,
  cycleFigures,
  cycleVerdict,
  FULL_CYCLE,
  guarded,
  plannedPa,
  strokeInput,
} from '../../procedures/cycle-verdict.ts';
import type { Job } from '../../procedures/job.ts';
import { PSI_PA } from '../builders/gear.ts';
import { answer, jobAt } from '../builders/jobs.ts';

/** 1 lbf in N, NIST SP 811. */
const LBF_N = 4.4482216152605;

describe('A value against its limit', () => {
  // JCGM 106:2012, 8.3: guarded acceptance takes the uncertainty off the limit.
  test('is inside where value and uncertainty together are', () => {
    expect(guarded({ value: 4, limit: 5, uncertainty: 1 })).toBe('inside');
    expect(guarded({ value: -4, limit: 5, uncertainty: 1 })).toBe('inside');
  });
  test('is outside where it is so by more than the uncertainty', () => {
    expect(guarded({ value: 6.1, limit: 5, uncertainty: 1 })).toBe('outside');
    expect(guarded({ value: -6.1, limit: 5, uncertainty: 1 })).toBe('outside');
  });
  test('is too close for the gauge between the two', () => {
    expect(guarded({ value: 4.1, limit: 5, uncertainty: 1 })).toBe('too close');
    expect(guarded({ value: 6, limit: 5, uncertainty: 1 })).toBe('too close');
  });
});

/** A cycle read as the given travels, in percent. */
function figuresOf(percents: readonly number[]): CycleFigures | null {
  const run = jobAt('asFoundCycle');
  for (const percent of percents) answer(run, { travelM: `${percent} %` });
  return cycleFigures(run.job, { cycle: 'asFoundCycle', strokes: 'asFoundStrokes' });
}

/** The same job after the plug was set so far that 6 psi no longer lifts it. */
function withPlugSet(job: Job): Job {
  return { ...job, figures: { ...job.figures, contactLeft: { contactPa: 6.5 * PSI_PA } } };
}

describe('What lay on the seat', () => {
  const { job } = jobAt('asFoundVerdict');
  const asFound = { cycle: 'asFoundCycle', strokes: 'asFoundStrokes' };

  test('as found is told by the contact as found, however the plug was set since', () => {
    expect(job.figures.contactFound?.contactPa).toBeTypeOf('number');
    expect(cycleFigures(withPlugSet(job), asFound)).toEqual(cycleFigures(job, asFound));
  });

  test('as left is told by the contact found again', () => {
    const later = { ...job, tables: { asLeftCycle: job.tables.asFoundCycle ?? [] } };
    const asLeft = { cycle: 'asLeftCycle', strokes: '' };
    expect(strokeInput(withPlugSet(later), 'asLeftCycle').contactPa).toBeCloseTo(6.5 * PSI_PA, 6);
    expect(cycleFigures(withPlugSet(later), asLeft)).not.toEqual(cycleFigures(later, asLeft));
  });
});

describe('One table of readings', () => {
  test('asks five points up and four down, the same signals both ways', () => {
    expect(FULL_CYCLE.map(({ percent }) => percent)).toEqual([0, 25, 50, 75, 100, 75, 50, 25, 0]);
    const sheet = { benchSetLowPa: 3 * PSI_PA, benchSetHighPa: 15 * PSI_PA };
    expect(plannedPa(sheet, { percent: 50 }) / PSI_PA).toBeCloseTo(9, 9);
  });

  test('says nothing while it holds fewer than three', () => {
    expect(figuresOf([0, 25])).toBeNull();
    expect(figuresOf([0, 25, 50])).not.toBeNull();
  });

  // By hand: up and down 5 % apart are 0.6 psi of 12 psi; half of it on 100 in2 is 30 lbf each way.
  test('gives friction from the gap between up and down', () => {
    const figures = figuresOf([0, 22.5, 47.5, 72.5, 97.5, 77.5, 52.5, 27.5, 2.5]);
    expect(Number(figures?.hysteresisPercent)).toBeCloseTo(5, 6);
    expect(Number(figures?.frictionN) / LBF_N).toBeCloseTo(30, 1);
    expect(Math.abs(Number(figures?.benchSetShiftPa)) / PSI_PA).toBeLessThan(0.02);
  });

  // By hand: every travel 5 % low is 0.6 psi more signal for the same travel.
  test('gives the shift of the bench set from the middle between up and down', () => {
    const figures = figuresOf([0, 20, 45, 70, 95, 70, 45, 20, 0]);
    expect(Number(figures?.benchSetShiftPa) / PSI_PA).toBeCloseTo(0.6, 1);
    expect(Number(figures?.errorWorstPercent)).toBeCloseTo(-5, 2);
  });

  test('leaves friction out where only one way was read', () => {
    const figures = figuresOf([0, 25, 50, 75, 100]);
    expect(figures).toMatchObject({ frictionN: null, benchSetShiftPa: null });
  });
});

describe('One word for the cycle', () => {
  const figures = {
    errorVerdict: 'inside',
    hysteresisVerdict: 'inside',
    repeatabilityVerdict: 'inside',
  } as CycleFigures;
  test('puts what does not repeat before everything', () => {
    expect(cycleVerdict({ ...figures, errorVerdict: 'outside', repeatabilityVerdict: 'outside' })).toBe(
      'does not repeat',
    );
  });
  test('is the worst of the three', () => {
    expect(cycleVerdict(figures)).toBe('inside');
    expect(cycleVerdict({ ...figures, hysteresisVerdict: 'too close' })).toBe('too close');
    expect(cycleVerdict({ ...figures, hysteresisVerdict: 'too close', errorVerdict: 'outside' })).toBe(
      'outside',
    );
  });
});
