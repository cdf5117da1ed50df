import { describe, expect, test } from 'vitest';
import { checkOf } from '../../../procedures/troubleshooting/checks.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import { modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import {
  OPENING_IDS,
  type OpeningId,
  openingEvidence,
} from '../../../procedures/troubleshooting/openings.ts';
import { BARE_DIAPHRAGM, VALVES } from './valves.ts';

const model = modelOf(BARE_DIAPHRAGM);

function likeliest(opening: OpeningId): readonly string[] {
  return causeRanking(model, believe(model, openingEvidence(BARE_DIAPHRAGM, opening)))
    .slice(0, 3)
    .map(({ id }) => id);
}

describe('what the operator says at the opening', () => {
  test('is a word that its check knows, on every valve', () => {
    for (const facts of Object.values(VALVES))
      for (const id of OPENING_IDS)
        for (const { check, outcome, doubt } of openingEvidence(facts, id)) {
          expect(Object.keys(checkOf(check).outcomes)).toContain(outcome);
          expect(doubt).toBeGreaterThan(0);
        }
  });

  test('moves what is thought likely before anybody has looked', () => {
    expect(likeliest('sticksThenJumps')[0]).toBe('packingTight');
    expect(likeliest('leaksAtPacking')[0]).toBe('packingLeaks');
    expect(likeliest('passesWhenShut')).toContain('seatWorn');
    expect(likeliest('slow')).toContain('supplyStarves');
    expect(likeliest('hunts')).toContain('tunedTooTight');
  });
});
