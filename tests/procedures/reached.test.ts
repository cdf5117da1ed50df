import { expect, test } from 'vitest';
import { strokeCheck } from '../../procedures/commissioning/stroke-check.ts';
import { factsOf } from '../../procedures/facts.ts';
import { reachedSteps } from '../../procedures/reached.ts';
import { aSheet } from '../builders/sheets.ts';

test('A job on the bench comes to no block valve, one in the line to both', () => {
  const at = (place: 'bench' | 'line') => reachedSteps(strokeCheck, factsOf(aSheet(), place));
  expect(at('bench').has('shutInlet')).toBe(false);
  expect([...at('line')]).toEqual(expect.arrayContaining(['shutInlet', 'shutOutlet', 'done']));
});
