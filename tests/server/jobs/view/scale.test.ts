import { describe, expect, test } from 'vitest';
import { compile } from '../../../../procedures/compile.ts';
import { OVERHAUL } from '../../../../procedures/overhaul/procedures.ts';
import { straightWay } from '../../../../procedures/straight-way.ts';
import { scaleView } from '../../../../server/jobs/view/scale.ts';
import { jobOn } from '../../../builders/answers.ts';

const TAKING_OVER = OVERHAUL.flatMap(({ definition }) =>
  Object.values(definition.takesOver ?? {}).map(({ at }) => ({
    definition,
    at,
    title: `${definition.id}, ${at}`,
  })),
);

describe('A job that goes on with another', () => {
  test.each(TAKING_OVER)('never stands at step 0 of its scale: $title', ({ definition, at }) => {
    const { job, compiled } = jobOn({ definition }, { place: 'line' });
    const began = { ...job, step: at, answers: [] };
    expect(scaleView(began, compiled).at).toBeGreaterThan(0);
  });

  test('has behind it what the job before did, and ahead of it the card that it comes to next', () => {
    const definition = OVERHAUL.find((one) => one.definition.id === 'diaphragm-renewal')?.definition;
    if (definition === undefined) throw new Error('no such procedure');
    const { job } = jobOn({ definition }, { place: 'line' });
    const { at, ticks } = scaleView({ ...job, step: 'takenOver', answers: [] }, compile(definition));
    const way = straightWay(definition, job.facts);
    expect(way[at]).toBe('markCase');
    expect(ticks.map(({ state }) => state).slice(at - 2, at + 1)).toEqual(['done', 'current', 'next']);
  });
});
