import { expect, it } from 'vitest';
import { LIVE_ZERO, quantity } from '../../../../procedures/calculations/entries/signal-parts.ts';

it('a signal says its dimension by itself, since its name does not', () => {
  expect(quantity('signal', { title: 'Signal', dimension: 'current' })).toEqual({
    signal: { kind: 'number', title: 'Signal', dimension: 'current' },
  });
  expect(LIVE_ZERO).toContain('3-15 psi is not 20-100 kPa');
});
