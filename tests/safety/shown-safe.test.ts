import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shownSafe } from '../../safety/shown-safe.ts';

const LIMIT_PA = 3000;
const gauge = (beforePa: number, afterPa: number, uncertaintyPa: number) =>
  shownSafe({ method: 'gauge', beforePa, afterPa, uncertaintyPa }, LIMIT_PA);

describe('[SAF-01] A pressure counts as gone', () => {
  test('where the reading and its uncertainty are exactly at the limit, and not a pascal above', () => {
    expect(gauge(400_000, 2000, 1000)).toBe('shown');
    expect(gauge(400_000, 2001, 1000)).toBe('not shown');
    expect(gauge(400_000, 2000, 1001)).toBe('not shown');
  });

  test('not below zero by more than the limit either: such a gauge is wrong', () => {
    expect(gauge(400_000, -2000, 1000)).toBe('shown');
    expect(gauge(400_000, -2001, 1000)).toBe('not shown');
  });

  test('not on a gauge too coarse to tell the limit from zero, whatever it reads', () => {
    expect(gauge(400_000, 0, 3000)).toBe('shown');
    expect(gauge(400_000, 0, 3001)).toBe('gauge too coarse');
  });

  test('never where a reading is no number', () => {
    expect(gauge(400_000, Number.NaN, 1000)).toBe('not shown');
    expect(gauge(Number.NaN, 0, 1000)).not.toBe('shown');
    expect(gauge(400_000, 0, Number.NaN)).not.toBe('shown');
  });

  test('never with more than the limit left, on any gauge', () => {
    const pascal = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(
        pascal,
        pascal,
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        (before, after, uncertainty) => {
          if (Math.abs(after) + uncertainty > LIMIT_PA)
            expect(gauge(before, after, uncertainty)).not.toBe('shown');
        },
      ),
      { seed: 7 },
    );
  });
});

describe('[SAF-02] A zero counts', () => {
  test('only on a gauge that was seen alive: before must be told from after by both uncertainties', () => {
    expect(gauge(2001, 0, 1000)).toBe('shown');
    expect(gauge(2000, 0, 1000)).toBe('gauge not seen alive');
    expect(gauge(0, 0, 1000)).toBe('gauge not seen alive');
    expect(gauge(-400_000, 0, 1000)).toBe('gauge not seen alive');
  });

  test('at a vent that was watched twice and flowed neither time', () => {
    const vent = (flowFirst: 'no flow' | 'flow', flowAgain: 'no flow' | 'flow') =>
      shownSafe({ method: 'vent', flowFirst, flowAgain }, LIMIT_PA);
    expect(vent('no flow', 'no flow')).toBe('shown');
    expect(vent('flow', 'no flow')).toBe('not shown');
    expect(vent('no flow', 'flow')).toBe('not shown');
    expect(vent('flow', 'flow')).toBe('not shown');
  });
});
