import { expect, test } from 'vitest';
import { evidenceView } from '../../../../server/jobs/view/cards/hold-evidence.ts';
import { around, jobAt } from '../../../builders/jobs.ts';

test('What is absent stands at a hold under whoever recorded it, line by line, as the record will say it', () => {
  const run = jobAt('holdWork');
  const step = run.compiled.definition.steps[run.job.step];
  if (step?.kind !== 'hold') throw new Error(`${run.job.step} is no hold`);
  const { absent } = evidenceView(step, {
    job: run.job,
    around: around(run),
    number: 1,
    people: [],
    competent: [],
    nonce: '',
    again: { typed: {}, wrong: {} },
  });
  expect(absent).toMatch(/^Recorded absent by \S+ at \d\d:\d\d: second air feed\. Recorded absent by /);
});
