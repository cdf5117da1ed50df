import { expect, it } from 'vitest';
import { loopCurrentState } from '../../../procedures/calculations/loop-current.ts';
import { expectRefused } from './support.ts';

// Levels from memory: 3.6, 3.8, 20.5 and 21 mA.
it.each([
  [0, 'failed low'],
  [0.0036, 'failed low'],
  [0.0037, 'saturated low'],
  [0.0038, 'normal'],
  [0.012, 'normal'],
  [0.0205, 'normal'],
  [0.0208, 'saturated high'],
  [0.021, 'failed high'],
] as const)('a current of %d A is %s', (currentA, state) => {
  expect(loopCurrentState(currentA)).toBe(state);
});

it('a current that is no number is refused', () => {
  expectRefused(() => loopCurrentState(Number.NaN), { code: 'CALC-001', name: 'currentA' });
});
