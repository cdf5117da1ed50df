import { expect, test } from 'vitest';
import { doneText } from '../../../server/jobs/view/energies.ts';
import { shownReadings } from '../../../server/points/shown-readings.ts';
import { jobAt } from '../../builders/jobs.ts';

test('Whoever joins is shown each energy by its own reading, and none by that of another on the same card', () => {
  const { job } = jobAt('holdWork');
  const shown = Object.fromEntries(shownReadings(job).map((row) => [row.energy, row.shown]));
  expect(shown.Temperature).toBe('38 °C');
  expect([shown.Weight, shown.Electrical, shown['Safety function']]).toEqual(
    Array(3).fill('looked for, recorded absent'),
  );
  expect(shown.Residue).toBe(job.words.residueHow);
  expect(shown.Spring).toBe('Case shut, every bolt in and tight');
  expect(shown['Commands from outside']).toContain('Loop in manual and tagged');
  expect(shown['Process, inlet side']).toBe('0 psi');
});

test('A spring that was backed off is never said to be held by its case', () => {
  const { job } = jobAt('holdWork');
  const of = (spring: 'released' | 'loaded', springHolder: 'adjuster' | 'case') => ({
    ...job,
    situation: { ...job.situation, states: { ...job.situation.states, spring, springHolder } },
  });
  const said = (one: typeof job) => doneText({ condition: 'spring' }, one);
  expect(said(of('released', 'adjuster'))).toBe('Adjuster backed off, it turns freely by hand');
  expect(said(of('released', 'case'))).toBe('Let off evenly by the long bolts');
  expect(said(of('loaded', 'case'))).toBe('Not looked at yet');
});
