import { describe, expect, test } from 'vitest';
import { checkOf } from '../../../procedures/troubleshooting/checks.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import type { Answer } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { modelOfValve } from '../../../procedures/troubleshooting/engine/model-of-valve.ts';
import { surpriseOf } from '../../../procedures/troubleshooting/engine/surprise.ts';
import { OPENING_IDS, openingEvidence } from '../../../procedures/troubleshooting/openings.ts';
import { STORIES, type Story } from './field-stories.ts';
import { STORIES_OF_LOOP_AND_LINE } from './field-stories-loop-and-line.ts';
import { STORIES_SECOND } from './field-stories-second.ts';
import { STORIES_OF_STEM_AND_AIR } from './field-stories-stem-and-air.ts';
import { STORIES_THIRD } from './field-stories-third.ts';
import { VALVES } from './valves.ts';

const GAUGE_SIGMA = 0.5;

const ALL: readonly Story[] = [
  ...STORIES,
  ...STORIES_SECOND,
  ...STORIES_THIRD,
  ...STORIES_OF_LOOP_AND_LINE,
  ...STORIES_OF_STEM_AND_AIR,
];

// A model is worked out for each valve: in the ordinary run those that other tests have as well, and the plug that shuts up.
const LONG = process.env.YOKESIDE_LONG === '1';
const TRIED = ALL.filter(({ on }) => LONG || Object.values(VALVES).includes(on) || on.plugCloses === 'up');

function evidenceOf({ on, complaint, found }: Story): readonly Answer[] {
  const read = found.map(([check, one]): Answer => {
    const answer = { kind: 'answer', check, gaugeAlive: true } as const;
    if (typeof one === 'number') return { ...answer, value: one, readSigma: GAUGE_SIGMA };
    expect(Object.keys(checkOf(check).outcomes)).toContain(one);
    return { ...answer, outcome: one };
  });
  return [...(complaint === undefined ? [] : openingEvidence(on, complaint)), ...read];
}

describe('what is told at the valve leads to its cause', () => {
  test.each(TRIED)('$told', (story) => {
    const model = modelOfValve(story.on);
    const evidence = evidenceOf(story);
    for (const { check } of evidence) expect(model.checks).toContain(check);
    const belief = believe(model, evidence);
    const ranking = causeRanking(model, belief);
    const told = ranking.slice(0, 4).map(({ id, probability }) => `${id} ${probability.toFixed(2)}`);
    expect(story.first, told.join(', ')).toContain(ranking[0]?.id);
    expect(surpriseOf(model, belief).strange).toBe(false);
  });

  test('on every side of the valve, on eight kinds of it and more, and with every complaint', () => {
    expect(ALL.length).toBeGreaterThanOrEqual(135);
    expect(new Set(STORIES.map(({ on }) => on)).size).toBe(8);
    const complaints = new Set(ALL.flatMap(({ complaint }) => complaint ?? []));
    expect([...complaints].sort()).toEqual([...OPENING_IDS].sort());
    for (const { because, source } of ALL) {
      expect(because.length).toBeGreaterThan(20);
      expect(source.length).toBeGreaterThan(10);
    }
  });
});
