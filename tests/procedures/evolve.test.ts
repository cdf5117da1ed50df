import { describe, expect, test } from 'vitest';
import { type Compiled, compile } from '../../procedures/compile.ts';
import { evolve, NO_JOB } from '../../procedures/evolve.ts';
import { answer, jobAt, TECHNICIAN } from '../builders/jobs.ts';
import { withStep } from '../builders/mutants.ts';

describe('A job folded from its log', () => {
  const run = jobAt('turnStem');

  test('is the same at every line as it was when the line was written', () => {
    let job = NO_JOB;
    for (const entry of run.entries) {
      job = evolve(job, entry);
      expect(job.place).toBe(entry.place);
    }
    expect(job).toEqual(run.job);
  });

  test('knows for each energy the line that showed it, by whom, with its readings', () => {
    const { evidence } = run.job;
    expect(evidence.supplyAir).toMatchObject({
      step: 'ventSupply',
      person: TECHNICIAN.id,
      readings: [{ typed: '0' }],
    });
    expect(evidence.temperature).toMatchObject({ step: 'otherEnergies', words: { temperature: 'safe' } });
    expect(run.job.locks).toMatchObject({
      supplyLock: { lock: '43', point: 'IA-214-1', owner: TECHNICIAN.id },
      inletLock: { lock: '41', point: 'HV-214A' },
      outletLock: { lock: '42', point: 'HV-214B' },
    });
  });

  test('is not worked out again: a line stands though the procedure would lead elsewhere today', () => {
    const { compiled } = run;
    const changed: Compiled = compile(
      withStep(compiled.definition, 'rigDiffers', {
        ...compiled.definition.steps.rigDiffers,
        title: 'Other',
      } as never),
    );
    expect(changed.machine.id).toBe('stroke-check');
    expect(run.entries.reduce(evolve, NO_JOB)).toEqual(run.job);
  });

  test('closes at the hour of its last line', () => {
    const ended = jobAt('loopBack');
    const at = new Date(ended.nowMs).toISOString();
    answer(ended, { takenBackBy: 'board operator', takenBack: 'yes' });
    expect(ended.job).toMatchObject({ status: 'closed', closedAs: 'done', closedAt: at });
  });
});
