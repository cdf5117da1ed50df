import { expect, it } from 'vitest';
import { least, mean, most } from '../../../procedures/calculations/numbers.ts';

it('the largest, the smallest and the mean of a list are found, however long it is', () => {
  const long = Array.from({ length: 300_000 }, (_, at) => at);
  expect(most(long)).toBe(299_999);
  expect(least(long)).toBe(0);
  expect(mean([1, 2, 6])).toBe(3);
});
