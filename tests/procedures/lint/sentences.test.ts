import { describe, expect, test } from 'vitest';
import { sentenceFaults } from '../../../procedures/lint/sentences.ts';
import type { OpenStep } from '../../../procedures/vocabulary.ts';
import { COMPILED } from '../../builders/jobs.ts';
import { openSteps } from '../../builders/mutants.ts';

const { definition } = COMPILED;

function lines(...line: readonly string[]): readonly string[] {
  return sentenceFaults('needs', { ...definition.steps.needs, do: line } as OpenStep);
}

describe('A line of a card is not served', () => {
  test('with two acts in it (HP-22)', () => {
    expect(lines('Shut the cock and vent the line.')).toHaveLength(1);
    expect(lines('Shut the cock; hang your lock.')).toHaveLength(1);
    expect(lines('Shut the cock and then wait.')).toHaveLength(1);
    expect(lines('Bring a gauge and a spanner.', 'Take gauge and indicator off.')).toEqual([]);
  });

  test('with its condition behind its act, or with "and" and "or" in one (HP-28)', () => {
    expect(lines('Shut the cock if the line is live.')).toEqual([
      'needs: the condition stands behind its act in "Shut the cock if the line is live."',
    ]);
    expect(lines('Bring a gauge and a spanner or a wrench.')).toHaveLength(1);
  });

  test('that tells an act inside a warning (HP-25, HP-27)', () => {
    const caution = {
      word: 'warning',
      hazard: 'Vent the case first.',
      consequence: 'It bursts.',
      avoid: 'Stand aside.',
    } as const;
    expect(sentenceFaults('needs', { ...definition.steps.needs, caution } as OpenStep)).toEqual([
      'needs: an act inside a warning: "Vent the case first."',
    ]);
    // A note about damage hides none either, wherever it stands in it.
    const notice = { ...caution, word: 'notice', hazard: 'It is soft.', consequence: 'Tighten it again.' };
    expect(sentenceFaults('needs', { ...definition.steps.needs, caution: notice } as OpenStep)).toEqual([
      'needs: an act inside a notice: "Tighten it again."',
    ]);
  });

  test('that works a point of the site without its tag (HP-30)', () => {
    const step = {
      ...definition.steps.shutSupply,
      title: 'Shut the supply',
      how: '',
      do: [],
      asks: [],
    } as OpenStep;
    expect(sentenceFaults('shutSupply', step)).toEqual([
      'shutSupply: the point that is worked is not named as on its label',
    ]);
    expect(sentenceFaults('shutSupply', { ...step, title: 'Shut {supplyPoint}' } as OpenStep)).toEqual([]);
  });
});

test('Every line of the stroke check is written so (UI-41)', () => {
  expect(openSteps(definition).flatMap(([id, step]) => sentenceFaults(id, step))).toEqual([]);
});
