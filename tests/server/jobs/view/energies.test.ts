import { describe, expect, test } from 'vitest';
import { energyView } from '../../../../server/jobs/view/energies.ts';
import { openJob, playTo } from '../../../builders/jobs.ts';

const run = playTo(openJob(), 'holdWork');
const state = (condition: Parameters<typeof energyView>[0]) =>
  energyView(condition, { job: run.job, nowMs: run.nowMs }).state;

describe('an energy on the screen', () => {
  test('is called by its own state: a cooled body is safe and a drained one cleared, not contained', () => {
    expect(state('temperature')).toBe('safe');
    expect(state('residue')).toBe('cleared');
    expect(state('spring')).toBe('contained');
  });

  test('is capped where its line is off, and safe where it was only blocked: commands of a controller have no cap', () => {
    expect([state('signalAir'), state('supplyAir'), state('commands')]).toEqual(['capped', 'locked', 'safe']);
  });

  test('stands at its worst in a job that has shown nothing yet', () => {
    const fresh = openJob();
    const view = energyView('temperature', { job: fresh.job, nowMs: fresh.nowMs });
    expect(view).toMatchObject({ state: 'hot', proof: 'not shown safe' });
  });
});
