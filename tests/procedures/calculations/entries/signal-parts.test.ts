import { expect, it } from 'vitest';
import {
  LIVE_ZERO,
  quantity,
  SPLIT_RANGE,
  valvesOn,
} from '../../../../procedures/calculations/entries/signal-parts.ts';

it('a signal says its dimension by itself, since its name does not', () => {
  expect(quantity('signal', { title: 'Signal', dimension: 'current' })).toEqual({
    signal: { kind: 'number', title: 'Signal', dimension: 'current' },
  });
  expect(LIVE_ZERO).toContain('3-15 psi is not 20-100 kPa');
});

it('the valves of a split range say their parts in the unit of the signal, and are worked out alike for each', () => {
  expect(valvesOn('pressure').columns.rangeLow.dimension).toBe('pressure');
  expect(valvesOn('current').columns.rangeHigh.dimension).toBe('current');
  const valves = [{ name: 'A', rangeLow: 0.004, rangeHigh: 0.012, airAction: 'air-to-open' as const }];
  const { valves: worked } = SPLIT_RANGE.run({ signal: 0.008, valves });
  expect(worked[0]?.openPercent).toBeCloseTo(50, 9);
});
