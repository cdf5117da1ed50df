import { describe, expect, it } from 'vitest';
import {
  deadBandPercent,
  hysteresisAlonePercent,
  ratedTravelDeviation,
  resolution,
} from '../../../procedures/calculations/performance-terms.ts';
import { expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

describe('the dead band', () => {
  const good = { lastMovementUp: 9.062, firstMovementDown: 8.998, inputSpan: 12 };

  it('is percent of the input span, whichever way the reversal goes', () => {
    expect(deadBandPercent(good)).toBeCloseTo(0.53333, 4);
    expectClose(
      deadBandPercent({ ...good, lastMovementUp: 8.998, firstMovementDown: 9.062 }),
      deadBandPercent(good),
    );
  });

  it('taken off the hysteretic error leaves the hysteresis, never less than none', () => {
    expect(hysteresisAlonePercent({ hystereticErrorPercent: 1, deadBandPercent: 0.4, slope: 2 })).toBeCloseTo(
      0.2,
      12,
    );
    expect(hysteresisAlonePercent({ hystereticErrorPercent: 0.1, deadBandPercent: 0.4 })).toBe(0);
  });

  it('of impossible figures is refused by name', () => {
    refusesEachNonNumber(deadBandPercent, good);
    refusesOrAnswers(deadBandPercent, good);
    const both = { hystereticErrorPercent: 1, deadBandPercent: 0.4, slope: 1 };
    refusesEachNonNumber(hysteresisAlonePercent, both);
    refusesOrAnswers(hysteresisAlonePercent, both);
  });
});

describe('the resolution', () => {
  it('lies between the smallest step that moved and the largest that did not', () => {
    const steps = [0.01, 0.02, 0.05, 0.1].map((step) => ({ step, moved: step > 0.03 }));
    expect(resolution({ steps, inputSpan: 10 })).toEqual({
      smallestMovedPercent: 0.5,
      largestUnmovedPercent: 0.2,
    });
  });

  it('is not said of steps that were not tried', () => {
    expect(resolution({ steps: [], inputSpan: 10 })).toEqual({
      smallestMovedPercent: null,
      largestUnmovedPercent: null,
    });
    expectRefused(() => resolution({ steps: [{ step: 0, moved: true }], inputSpan: 10 }), {
      code: 'CALC-002',
      name: 'step',
    });
    expectRefused(() => resolution({ steps: [], inputSpan: 0 }), { code: 'CALC-002', name: 'inputSpan' });
  });
});

describe('a stroke against the rated one', () => {
  const good = { ratedTravelM: 0.038, actualTravelM: 0.0387 };

  it('reaches it or falls short of it', () => {
    expect(ratedTravelDeviation(good).reachesRated).toBe(true);
    expect(ratedTravelDeviation({ ...good, actualTravelM: 0.0379 })).toMatchObject({ reachesRated: false });
    expect(ratedTravelDeviation({ ...good, actualTravelM: 0.038 })).toEqual({
      percent: 0,
      reachesRated: true,
    });
  });

  it('of impossible figures is refused by name', () => {
    refusesEachNonNumber(ratedTravelDeviation, good);
    refusesOrAnswers(ratedTravelDeviation, good);
  });
});
