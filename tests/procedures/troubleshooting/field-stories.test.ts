import { describe, expect, test } from 'vitest';
import { checkOf } from '../../../procedures/troubleshooting/checks.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import type { Answer } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { modelOfValve } from '../../../procedures/troubleshooting/engine/model-of-valve.ts';
import { surpriseOf } from '../../../procedures/troubleshooting/engine/surprise.ts';
import { STORIES } from './field-stories.ts';

const GAUGE_SIGMA = 0.5;

describe('what is told at the valve leads to its cause', () => {
  test.each(STORIES)('$told', ({ on, found, first }) => {
    const model = modelOfValve(on);
    const evidence = found.map(([check, one]): Answer => {
      const answer = { kind: 'answer', check, gaugeAlive: true } as const;
      if (typeof one === 'number') return { ...answer, value: one, readSigma: GAUGE_SIGMA };
      expect(Object.keys(checkOf(check).outcomes)).toContain(one);
      return { ...answer, outcome: one };
    });
    for (const { check } of evidence) expect(model.checks).toContain(check);
    const belief = believe(model, evidence);
    const ranking = causeRanking(model, belief);
    const told = ranking.slice(0, 4).map(({ id, probability }) => `${id} ${probability.toFixed(2)}`);
    expect(first, told.join(', ')).toContain(ranking[0]?.id);
    expect(surpriseOf(model, belief).strange).toBe(false);
  });

  test('on every side of the valve and on eight kinds of it', () => {
    expect(STORIES.length).toBeGreaterThanOrEqual(20);
    expect(new Set(STORIES.map(({ on }) => on)).size).toBe(8);
    for (const { because, source } of STORIES) {
      expect(because.length).toBeGreaterThan(20);
      expect(source.length).toBeGreaterThan(10);
    }
  });
});
