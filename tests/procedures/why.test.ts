import { describe, expect, test } from 'vitest';
import { PROCEDURES } from '../../procedures/served.ts';
import { straightWay } from '../../procedures/straight-way.ts';
import type { OpenStep } from '../../procedures/vocabulary.ts';
import { whyOf } from '../../procedures/why.ts';
import { jobOn, play } from '../builders/answers.ts';
import { type JobRun, openJob } from '../builders/jobs.ts';
import { tellingFacts } from '../builders/mutants.ts';

function why({ job, compiled }: JobRun): string {
  const step = compiled.definition.steps[job.step];
  if (step === undefined || step.kind === 'end') throw new Error(`no card at ${job.step}`);
  return whyOf(step, { job, definition: compiled.definition });
}

function on(id: string): JobRun {
  const served = PROCEDURES.find(({ definition }) => definition.id === id);
  if (served === undefined) throw new Error(`no procedure ${id}`);
  return jobOn(served);
}

describe('Why a card stands open', () => {
  test('is its own reason where it has one', () => {
    expect(why(on('stroke-check'))).toMatch(/plug force/);
  });

  test('is what led there, where an answer led off the straight way', () => {
    const run = play(on('stroke-check'), {
      to: 'rigDiffers',
      overrides: { rigGauges: { rigGaugePa: '9 psi', rigCheckPa: '11 psi' } },
    });
    expect(why(run)).toMatch(/^Line \d+, “[^”]+”, says: /);
  });

  test('is at a hold what a hold is for', () => {
    expect(why(play(on('stroke-check'), { to: 'holdWork' }))).toMatch(/cannot be undone/);
  });

  test('is what can hurt, where hands go in', () => {
    expect(why(play(on('stroke-check'), { to: 'shutSupply' }))).toMatch(/^What can hurt: .*fail position/);
  });

  test('is the reason of the work that it belongs to, else', () => {
    expect(why(play(on('stroke-check'), { to: 'rigHold' }))).toMatch(/^It belongs to “/);
  });
});

test.each(PROCEDURES.map(({ definition }) => [definition.id, definition] as const))(
  'Each card of %s has a reason of the trade, and none the words that stand where nothing else is said',
  (_, definition) => {
    const { job } = openJob();
    for (const facts of tellingFacts(definition))
      for (const id of straightWay(definition, facts)) {
        const step = definition.steps[id] as OpenStep;
        const at = { ...job, facts, step: id };
        expect(whyOf(step, { job: at, definition }), id).not.toMatch(/stands in the record/);
      }
  },
);
