import { describe, expect, test } from 'vitest';
import type { Job } from '../../../../procedures/job.ts';
import { lineWorking } from '../../../../server/jobs/view/line-working.ts';
import { jobAt } from '../../../builders/jobs.ts';

/** The working of the line that answered a step. */
function working({ job }: { readonly job: Job }, step: string) {
  const answer = job.answers.find((one) => one.step === step);
  if (answer === undefined) throw new Error(`${step} was not answered`);
  return lineWorking(answer, job);
}

describe('Why a folded line has its number', () => {
  const run = jobAt('chooseWork');

  test('an air that was shown safe names the limit that it was held to, in the units of the valve', () => {
    const supply = working(run, 'ventSupply');
    expect(supply?.rows).toEqual([
      { label: 'Limit for safe', value: expect.stringMatching(/^\d+\.\d+ psi$/) },
    ]);
    expect(supply?.how.join(' ')).toContain('with all that the gauge may be wrong by');
    expect(supply?.calculation).toBe('gauge-uncertainty');
  });

  test('a verdict on a stroke tells each figure, how it was got, and which calculation shows all of it', () => {
    const verdict = working(run, 'asFoundVerdict');
    const told = Object.fromEntries((verdict?.rows ?? []).map(({ label, value }) => [label, value]));
    // The script holds 0.3 psi of friction each way on 100 in2: 30 lbf.
    expect(told['Friction each way']).toBe('30 lbf');
    expect(told['Largest error']).toMatch(/ %$/);
    expect(verdict?.how.length).toBeGreaterThanOrEqual(3);
    expect(verdict?.calculation).toBe('stroke-friction');
  });

  test('a line that rests on no number has none', () => {
    expect(lineWorking({ figures: {} }, run.job)).toBe(null);
    expect(lineWorking({ figures: { evidence: 6, found: 'free' } }, run.job)).toBe(null);
  });
});
