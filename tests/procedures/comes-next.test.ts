import { describe, expect, test } from 'vitest';
import { comesNext } from '../../procedures/comes-next.ts';
import { findTheFault } from '../../procedures/troubleshooting/find-the-fault.ts';
import { jobOn, type Overrides, play } from '../builders/answers.ts';
import {
  AIR_AS_IT_SHOULD,
  EMPTY,
  FULL,
  POSITIONER_SHEET,
  repairNamed,
  SWINGS,
} from '../builders/own-air-valve.ts';

function nextAfter(id: string, overrides: Overrides): readonly string[] {
  const { definition } = repairNamed(id);
  const run = play(jobOn(repairNamed(id), { sheet: POSITIONER_SHEET, place: 'line' }), {
    overrides: { ...AIR_AS_IT_SHOULD, ...overrides },
  });
  expect(run.job.closedAs).toBe('done');
  return comesNext(run.job, definition);
}

describe('[SAF-09] The work that comes next', () => {
  test('is the air set where a restriction was plugged by what the air carries', () => {
    const dirty: Overrides = {
      swingFound: EMPTY,
      pressPlunger: SWINGS,
      blowDown: { drainFound: 'dirt' },
      dirtInAir: { choice: 'on', reason: 'rust again and again' },
    };
    expect(nextAfter('relay-restriction', dirty)).toEqual(['air-set']);
  });

  test('is nozzle and flapper where the output is full both ways', () => {
    expect(nextAfter('relay-restriction', { swingFound: FULL })).toEqual(['nozzle-flapper']);
  });

  test('is the stroke check where a coupling has slipped', () => {
    const slipped: Overrides = { couplingSeen: { couplingLooks: 'slipped' } };
    expect(nextAfter('indicator-and-coupling', slipped)).toEqual(['stroke-check']);
  });

  test('is nothing where the repair cured it', () => {
    expect(nextAfter('relay-restriction', { swingFound: EMPTY, pressPlunger: SWINGS })).toEqual([]);
  });

  test('is not what an answer named that was taken back', () => {
    const { definition } = repairNamed('relay-restriction');
    const { job } = play(
      jobOn(repairNamed('relay-restriction'), { sheet: POSITIONER_SHEET, place: 'line' }),
      {
        overrides: { ...AIR_AS_IT_SHOULD, swingFound: FULL },
      },
    );
    const answers = job.answers.map((one) => ({ ...one, superseded: true }));
    expect(comesNext({ answers }, definition)).toEqual([]);
  });

  test('is the procedure that makes the repair which was named last, where a fault was looked for', () => {
    const { job } = play(jobOn({ definition: findTheFault }, { place: 'line' }), {
      overrides: {
        inService: { hubChoice: 'name' },
        nameCauseInService: [{ repairToDo: 'tightenSignalTube' }, { repairToDo: 'tightenCase' }],
        afterReturn: [{ choice: 'goOn' }, { choice: 'close' }],
      },
    });
    expect(job.closedAs).toBe('done');
    expect(comesNext(job, findTheFault)).toEqual(['case-nuts']);
  });
});
