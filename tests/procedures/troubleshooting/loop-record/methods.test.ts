import { describe, expect, test } from 'vitest';
import { curveFitIndex } from '../../../../procedures/troubleshooting/loop-record/curve-fit.ts';
import {
  crossingsOf,
  oscillationOf,
} from '../../../../procedures/troubleshooting/loop-record/half-periods.ts';
import { relayFitIndex } from '../../../../procedures/troubleshooting/loop-record/relay-fit.ts';
import { withoutDrift } from '../../../../procedures/troubleshooting/loop-record/samples.ts';
import { shapeOnPosition } from '../../../../procedures/troubleshooting/loop-record/shape-on-position.ts';

const PERIOD = 200;
const wave = (of: (phase: number) => number): readonly number[] =>
  Array.from({ length: 5 * PERIOD }, (_, at) => of(((at + 0.5) % PERIOD) / PERIOD));
const sine = wave((phase) => Math.sin(2 * Math.PI * phase));
const triangle = wave((phase) => 1 - Math.abs(4 * ((phase + 0.75) % 1) - 2));
const square = wave((phase) => (phase < 0.5 ? 1 : -1));

describe('the curve fit', () => {
  test('is 0 for a sine and 1 for a triangle', () => {
    expect(curveFitIndex(sine)).toBeLessThan(0.001);
    expect(curveFitIndex(triangle)).toBeGreaterThan(0.999);
  });

  test('of a square wave is what the overlap of the shapes gives by hand', () => {
    // A half sine holds 8 / pi^2 of the energy of a rectangle, a triangle on the same base 3 / 4 of it.
    const left = 1 - 8 / Math.PI ** 2;
    expect(curveFitIndex(square)).toBeCloseTo(left / (left + 0.25), 2);
  });

  test('says nothing of what does not cross its mean', () => {
    expect(curveFitIndex([1, 2, 3])).toBeNull();
    expect(relayFitIndex([])).toBeNull();
  });
});

describe('the relay fit', () => {
  test('is near -1 for a sine, near 1 for a triangle, and above its limit for a square wave', () => {
    expect(relayFitIndex(sine)).toBeLessThan(-0.9);
    expect(relayFitIndex(triangle)).toBeGreaterThan(0.9);
    expect(relayFitIndex(square)).toBeGreaterThan(0.21);
  });
});

describe('the shape of output against position', () => {
  test('is 0 where the stem follows, and much where it stands while the output moves', () => {
    const every = 10;
    expect(shapeOnPosition({ output: triangle, position: triangle, every })).toBe(0);
    expect(shapeOnPosition({ output: sine, position: sine, every })).toBe(0);
    expect(shapeOnPosition({ output: sine, position: square, every })).toBeGreaterThan(0.25);
    expect(shapeOnPosition({ output: square.map(() => 1), position: square.map(() => 1), every })).toBeNull();
  });
});

describe('the periods of a swing', () => {
  test('are counted between the crossings of its mean, without ripples', () => {
    const rippled = sine.map((value, at) => value + 0.05 * Math.sin(at));
    expect(oscillationOf(sine)).toMatchObject({ halfPeriods: 8, periodSamples: expect.closeTo(PERIOD, 1) });
    expect(oscillationOf(rippled).halfPeriods).toBe(8);
    expect(crossingsOf([])).toEqual([]);
  });

  test('are regular by their spread: a third of the mean over sigma', () => {
    const jumps = Array.from({ length: 6 }, (_, n) => [
      ...Array(10 + 20 * (n % 2)).fill(1),
      ...Array(10).fill(-1),
    ]).flat();
    // Periods of 20 and 40 samples by turns: mean 30, sigma 10, so r is 1.
    expect(oscillationOf(jumps).regularity).toBeCloseTo(1, 1);
  });

  test('stand out from a slow drift', () => {
    expect(withoutDrift([1, 2, 3, 4])).toEqual([0, 0, 0, 0].map((zero) => expect.closeTo(zero, 12)));
  });
});
