import { expect, it } from 'vitest';
import { DIRECTION, TERMS, terms } from '../../../../procedures/calculations/entries/cycle-parts.ts';

it('every term of a table stands beside the others, and a linearity that too few rows do not give is left open', () => {
  const bare = { errorMaxPercent: 1, linearity: null };
  expect(terms(bare)).toEqual({
    errorMaxPercent: 1,
    independentPercent: null,
    terminalPercent: null,
    zeroBasedPercent: null,
  });
  const linearity = { independentPercent: 0.5, terminalPercent: 0.7, zeroBasedPercent: 0.6 };
  const whole = terms({ errorMaxPercent: 1, linearity });
  expect(whole).toEqual({ errorMaxPercent: 1, ...linearity });
  expect(Object.keys(TERMS)).toEqual(expect.arrayContaining(Object.keys(whole)));
  expect(Object.keys(DIRECTION)).toEqual(['direction', 'cycle']);
});
