import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  firstOrderTimes,
  overshootPercent,
  type Sample,
  stepResponse,
  strokingTime,
} from '../../../procedures/calculations/step-response.ts';
import { between, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

/** A first-order lag behind a dead time, finely sampled; the step comes at 1 s. */
function lag(of: {
  deadTimeS: number;
  timeConstantS: number;
  fromPercent: number;
  toPercent: number;
}): Sample[] {
  const { deadTimeS, timeConstantS, fromPercent, toPercent } = of;
  const endS = 1 + deadTimeS + 20 * timeConstantS;
  return Array.from({ length: 2001 }, (_, at) => {
    const timeS = (endS * at) / 2000;
    const sinceS = Math.max(0, timeS - 1 - deadTimeS);
    return {
      timeS,
      travelPercent: toPercent + (fromPercent - toPercent) * Math.exp(-sinceS / timeConstantS),
    };
  });
}

describe('a recorded step', () => {
  it('of a lag behind a dead time gives back both, up and down', () => {
    fc.assert(
      fc.property(
        between(0, 2),
        between(0.2, 3),
        fc.constantFrom(40, 60),
        (deadTimeS, timeConstantS, toPercent) => {
          const samples = lag({ deadTimeS, timeConstantS, fromPercent: 50, toPercent });
          const found = stepResponse({ samples, stepTimeS: 1, noisePercent: 0.01 });
          const wanted = firstOrderTimes({ deadTimeS, timeConstantS });
          const sampleS = (samples[1]?.timeS ?? 0) * 1.1;
          expect(Math.abs(found.t63S - wanted.t63S)).toBeLessThan(sampleS);
          expect(Math.abs(found.t86S - wanted.t86S)).toBeLessThan(sampleS);
          expect(Math.abs(found.deadTimeS - deadTimeS)).toBeLessThan(sampleS);
          expect(found.overshootPercent).toBe(0);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('counts its times from the input step, the dead time with them', () => {
    const late = lag({ deadTimeS: 1, timeConstantS: 0.5, fromPercent: 0, toPercent: 10 });
    expect(stepResponse({ samples: late, stepTimeS: 1, noisePercent: 0.01 }).t63S).toBeCloseTo(1.5, 1);
  });

  it('takes noise below its threshold for standing still', () => {
    const samples: Sample[] = [
      { timeS: 0, travelPercent: 50 },
      { timeS: 1, travelPercent: 50.05 },
      { timeS: 2, travelPercent: 50 },
      { timeS: 3, travelPercent: 55 },
      { timeS: 4, travelPercent: 60 },
    ];
    expect(stepResponse({ samples, stepTimeS: 0, noisePercent: 0.1 }).deadTimeS).toBeGreaterThan(2);
  });

  it('that shoots over says by how much of the step', () => {
    const samples = [50, 50, 62, 60].map((travelPercent, timeS) => ({ timeS, travelPercent }));
    expect(stepResponse({ samples, stepTimeS: 0, noisePercent: 0 })).toMatchObject({
      peakPercent: 62,
      overshootPercent: 20,
    });
  });

  it('is never earlier than the step itself', () => {
    const samples = [50, 55, 60, 60].map((travelPercent, timeS) => ({ timeS, travelPercent }));
    const early = stepResponse({ samples, stepTimeS: 2.5, noisePercent: 0 });
    expect([early.deadTimeS, early.t63S, early.t86S]).toEqual([0, 0, 0]);
  });

  it('is refused where there is nothing to read from it', () => {
    const flat = [50, 50, 50].map((travelPercent, timeS) => ({ timeS, travelPercent }));
    const step = { stepTimeS: 0, noisePercent: 0 };
    expectRefused(() => stepResponse({ samples: flat, ...step }), { code: 'CALC-006', name: 'samples' });
    expectRefused(() => stepResponse({ samples: flat.slice(1), ...step }), {
      code: 'CALC-004',
      name: 'samples',
    });
    const rising = [50, 55, 60].map((travelPercent, timeS) => ({ timeS, travelPercent }));
    expectRefused(() => stepResponse({ samples: rising.toReversed(), ...step }), {
      code: 'CALC-004',
      name: 'samples',
    });
    expectRefused(() => stepResponse({ samples: rising, ...step, stepTimeS: 2 }), {
      code: 'CALC-002',
      name: 'stepTimeS',
    });
    expectRefused(() => stepResponse({ samples: rising, ...step, stepTimeS: -1 }), {
      code: 'CALC-002',
      name: 'stepTimeS',
    });
    expectRefused(() => stepResponse({ samples: rising, ...step, noisePercent: 9 }), {
      code: 'CALC-002',
      name: 'noisePercent',
    });
    const holed = rising.map((sample, at) => (at === 1 ? { ...sample, travelPercent: Number.NaN } : sample));
    expectRefused(() => stepResponse({ samples: holed, ...step }), {
      code: 'CALC-001',
      name: 'travelPercent',
    });
  });
});

describe('overshoot', () => {
  it('is none where the peak stays short of the end', () => {
    expect(overshootPercent({ initialPercent: 40, finalPercent: 50, peakPercent: 49 })).toBe(0);
  });

  it('of no step is refused', () => {
    expectRefused(() => overshootPercent({ initialPercent: 50, finalPercent: 50, peakPercent: 51 }), {
      code: 'CALC-006',
      name: 'finalPercent',
    });
    refusesOrAnswers(overshootPercent, { initialPercent: 40, finalPercent: 50, peakPercent: 52 });
  });
});

describe('the stroking time', () => {
  it('is held against its limit, where there is one', () => {
    expect(strokingTime({ travelM: 0.05, strokeS: 6, strokeSMax: 5 }).withinLimit).toBe(false);
    expect(strokingTime({ travelM: 0.05, strokeS: 5, strokeSMax: 5 }).withinLimit).toBe(true);
    expect(strokingTime({ travelM: 0.05, strokeS: 5 }).withinLimit).toBeNull();
  });

  it('of impossible figures is refused by name', () => {
    const good = { travelM: 0.05, strokeS: 4, strokeSMax: 5 };
    refusesEachNonNumber(strokingTime, good);
    refusesOrAnswers(strokingTime, good);
    refusesEachNonNumber(firstOrderTimes, { deadTimeS: 0.2, timeConstantS: 0.5 });
    refusesOrAnswers(firstOrderTimes, { deadTimeS: 0.2, timeConstantS: 0.5 });
  });
});
