import { describe, expect, it } from 'vitest';
import {
  bubbleFlow,
  classReached,
  collectedM3PerS,
  type LeakStandard,
  rotameterFlow,
} from '../../../procedures/calculations/leak-measured.ts';
import { expectClose, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

describe('the class that a leak reaches', () => {
  const reach = (measuredLeak: number, standard: LeakStandard = 'IEC 60534-4') =>
    classReached({ standard, ratedCapacity: 1e6, measuredLeak }).classReached;

  it('is the tightest whose limit it keeps', () => {
    expect([5001, 5000, 1000, 100, 5, 0].map((leak) => reach(leak))).toEqual([
      null,
      'II',
      'III',
      'IV',
      'IV-S1',
      'IV-S1',
    ]);
  });

  it('is never IV-S1 by the standard that does not have it', () => {
    expect(reach(1, 'ANSI/FCI 70-2')).toBe('IV');
  });

  it('with impossible figures is refused by name', () => {
    const good = { standard: 'IEC 60534-4' as const, ratedCapacity: 1e6, measuredLeak: 1 };
    expectRefused(() => classReached({ ...good, ratedCapacity: 0 }), {
      code: 'CALC-002',
      name: 'ratedCapacity',
    });
    expectRefused(() => classReached({ ...good, standard: 'mine' as LeakStandard }), {
      code: 'CALC-005',
      name: 'standard',
    });
    refusesEachNonNumber(classReached, good);
    refusesOrAnswers(classReached, good);
  });
});

describe('a leak as it is measured', () => {
  it('is a volume over its time', () => {
    expect(collectedM3PerS({ volumeM3: 6e-5, elapsedS: 60 })).toBe(1e-6);
    refusesEachNonNumber(collectedM3PerS, { volumeM3: 1e-5, elapsedS: 60 });
    refusesOrAnswers(collectedM3PerS, { volumeM3: 1e-5, elapsedS: 60 });
  });

  it('in bubbles goes with the cube of their size', () => {
    const one = bubbleFlow({ bubbleDiameterM: 0.005, bubblesPerMin: 10 });
    expectClose(bubbleFlow({ bubbleDiameterM: 0.01, bubblesPerMin: 10 }).flowM3PerS, 8 * one.flowM3PerS);
    expect(bubbleFlow({ bubbleDiameterM: 0.005, bubblesPerMin: 0 }).flowM3PerS).toBe(0);
    refusesEachNonNumber(bubbleFlow, { bubbleDiameterM: 0.005, bubblesPerMin: 10 });
    refusesOrAnswers(bubbleFlow, { bubbleDiameterM: 0.005, bubblesPerMin: 10 });
  });

  it('on a variable-area meter is as read at the state of its scale', () => {
    const scale = { scalePressurePaAbs: 101325, scaleTemperatureK: 293.15 };
    const as = { read: 10, pressurePaAbs: 101325, temperatureK: 293.15, ...scale };
    expect(rotameterFlow(as)).toEqual({ factor: 1, flow: 10 });
    expect(rotameterFlow({ ...as, temperatureK: 313.15 }).factor).toBeLessThan(1);
    refusesEachNonNumber(rotameterFlow, as);
    refusesOrAnswers(rotameterFlow, as);
  });
});
