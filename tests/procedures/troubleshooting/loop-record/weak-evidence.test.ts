import { expect, test } from 'vitest';
import { CHECK_IDS, checkOf } from '../../../../procedures/troubleshooting/checks.ts';
import { likelihoods } from '../../../../procedures/troubleshooting/engine/likelihood.ts';
import { modelOf } from '../../../../procedures/troubleshooting/engine/model.ts';
import { VALVES } from '../valves.ts';

/** Odds that one record may turn at most: judgement, kept well below those of a look at the valve. */
const ODDS_MOST = 4;

test('a record of the loop never turns the odds of two causes by more than four to one', () => {
  for (const facts of Object.values(VALVES)) {
    const model = modelOf(facts);
    for (const outcome of ['sticks', 'no sign']) {
      const item = { kind: 'answer', check: 'loopRecord', outcome, gauge: 'loop record' } as const;
      for (const each of likelihoods(model, { item, after: [], earlier: null, looks: [item] })) {
        expect(Math.max(...each) / Math.min(...each)).toBeLessThanOrEqual(ODDS_MOST);
        expect(Math.max(...each) / Math.min(...each)).toBeGreaterThan(1.2);
      }
    }
  }
});

test('what a check is told from another one is named by that check and by itself', () => {
  for (const id of CHECK_IDS) {
    const { seenFrom, outcomes } = checkOf(id);
    if (seenFrom === undefined) continue;
    const there = CHECK_IDS.find((one) => one === seenFrom.check);
    expect(there).toBeDefined();
    for (const [word, as] of Object.entries(seenFrom.words)) {
      expect(Object.keys(there === undefined ? {} : checkOf(there).outcomes)).toContain(word);
      expect(Object.keys(outcomes)).toContain(as);
    }
  }
});
