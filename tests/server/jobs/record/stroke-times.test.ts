import { expect, test } from 'vitest';
import { procedureNamed } from '../../../../procedures/served.ts';
import { resultsOf } from '../../../../server/jobs/record/results.ts';
import { timeResults } from '../../../../server/jobs/record/stroke-times.ts';
import { jobOn, play } from '../../../builders/answers.ts';
import { aSheet } from '../../../builders/sheets.ts';

function timed(sheet = aSheet()) {
  const served = procedureNamed('fail-action');
  if (served === undefined) throw new Error('fail-action is not served');
  const overrides = { strokeTime: { strokeOpenS: '10.4', strokeShutS: '6', runsEvenly: 'no' } };
  return play(jobOn(served, { sheet, place: 'line' }), { overrides, to: 'strokeUneven' }).job;
}

test('The record of a timed stroke holds each way against the sheet', () => {
  const job = timed();
  const [opens, shuts] = timeResults(job);
  expect(opens).toMatchObject({ asLeft: '10.4', limit: '10', leftOutside: true });
  expect(opens?.verdict).toBe('as left outside; timed by hand');
  expect(shuts).toMatchObject({ asLeft: '6.0', limit: '8', verdict: 'as left inside; timed by hand' });
  expect(resultsOf(job)).toContainEqual(opens);
});

test('Without a limit the time stands alone, and what was not timed has no row', () => {
  const job = timed(aSheet({ strokeOpenMaxS: null }));
  expect(timeResults(job)[0]).toMatchObject({ limit: '', leftOutside: false });
  expect(timeResults({ ...job, readings: {} })).toEqual([]);
});
