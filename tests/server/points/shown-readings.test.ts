import { expect, test } from 'vitest';
import { shownReadings } from '../../../server/points/shown-readings.ts';
import { jobAt } from '../../builders/jobs.ts';

test('Whoever joins is shown each energy by its own reading, and none by that of another on the same card', () => {
  const { job } = jobAt('holdWork');
  const shown = Object.fromEntries(shownReadings(job).map((row) => [row.energy, row.shown]));
  expect(shown.Temperature).toBe('38 °C');
  expect([shown.Weight, shown.Electrical, shown['Safety function'], shown.Residue]).toEqual([
    'seen',
    'seen',
    'seen',
    'seen',
  ]);
  expect(shown.Spring).toBe('1.2 in');
  expect(shown['Process, inlet side']).toBe('0 psi');
});
