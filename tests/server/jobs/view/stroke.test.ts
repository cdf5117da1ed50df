import { describe, expect, test } from 'vitest';
import { strokeView } from '../../../../server/jobs/view/stroke.ts';
import { PSI_PA } from '../../../builders/gear.ts';
import { type JobRun, jobAt } from '../../../builders/jobs.ts';

/** What a table says, row by row. */
function said(run: JobRun, step: string): readonly (readonly string[])[] {
  const { table } = strokeView(run.job, { step, title: 'Stroke' });
  return table.rows.map(({ cells }) => cells.map(({ text }) => text));
}

describe('The stroke on the card', () => {
  test('as found reads the same before the plug is set, after it, and when its verdict is opened again', () => {
    const run = jobAt('chooseWork');
    const before = said(run, 'asFoundCycle');
    run.job = {
      ...run.job,
      figures: { ...run.job.figures, contactLeft: { contactPa: 6.5 * PSI_PA } },
    };
    expect(said(run, 'asFoundCycle')).toEqual(before);
    expect(before[1]?.[2]).not.toBe('seated');
  });

  test('names what lies on the seat, what is off, and how far up and down are apart', () => {
    const rows = said(jobAt('asFoundVerdict'), 'asFoundCycle');
    expect(rows.map(([signal]) => signal)).toEqual(['3.0', '6.0', '9.0', '12.0', '15.0']);
    expect(rows[0]).toContain('seated');
    // 0.3 psi of friction on 12 psi: 2.5 % low going up, 2.5 % high coming down.
    expect(rows[2]).toEqual(['9.0', '47.5', '−2.5', '52.5', '+2.5', '5.0']);
  });
});
