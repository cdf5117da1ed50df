import { expect, test } from 'vitest';
import { CYCLE_POINTS, pointField } from '../../../../procedures/rules/own-stroke.ts';
import { procedureNamed } from '../../../../procedures/served.ts';
import { ownResults } from '../../../../server/jobs/record/own-results.ts';
import { jobOn, play } from '../../../builders/answers.ts';
import { POSITIONER_SHEET } from '../../../builders/own-air-valve.ts';

const strokes = (off: number) =>
  Object.fromEntries(
    CYCLE_POINTS.map((point) => [
      pointField(point, 'travel'),
      `${Math.min(100, Math.max(0, point.percent + off))} %`,
    ]),
  );

test('The record of a calibration shows zero before and after, and what was left of band, step and times', () => {
  const served = procedureNamed('positioner-calibration');
  if (served === undefined) throw new Error('positioner-calibration is not served');
  const { job } = play(jobOn(served, { sheet: POSITIONER_SHEET, place: 'line' }), {
    overrides: {
      supplyRead: { supplyReadPa: '20 psi' },
      strokeFound: strokes(8),
      strokeLeft: strokes(-1),
      // By hand: 0.24 of 12 psi.
      deadBand: [{ turnedAtPa: '9 psi', movedDownAtPa: '8.76 psi', movedUpAtPa: '8.9 psi' }],
      deadBandWide: { choice: 'goOn', reason: 'packing is next month' },
      stepIt: {
        stepFromM: '45 %',
        stepFurthestM: '56 %',
        stepRestM: '55 %',
        stepT63S: '0.8 s',
        stepT86S: '1.4 s',
      },
    },
  });
  const rows = Object.fromEntries(ownResults(job).map((row) => [row.label, row]));
  expect(rows['zero, % of travel']).toMatchObject({ asFound: '+8.0', asLeft: '\u22121.0' });
  expect(rows['dead band, % of the signal']).toMatchObject({ asLeft: '2.00', limit: '1', leftOutside: true });
  expect(rows['overshoot, % of a step of a tenth']).toMatchObject({ asLeft: '10.0', leftOutside: false });
  expect([rows['T63 of a tenth, s']?.asLeft, rows['T86 of a tenth, s']?.asLeft]).toEqual(['0.80', '1.40']);
});

test('A job that measured none of it has no such rows', () => {
  const served = procedureNamed('fail-action');
  if (served === undefined) throw new Error('fail-action is not served');
  expect(ownResults(jobOn(served, { place: 'line' }).job)).toEqual([]);
});
