import { describe, expect, test } from 'vitest';
import { buildCard } from '../../../../server/jobs/view/cards/build-card.ts';
import type { CardInput } from '../../../../server/jobs/view/cards/card.ts';
import type { QuestionCard } from '../../../../server/jobs/view/cards/plain-cards.ts';
import { answer, around, type JobRun, jobAt } from '../../../builders/jobs.ts';

function cardOf(run: JobRun): QuestionCard {
  const step = run.compiled.definition.steps[run.job.step];
  if (step?.kind !== 'question') throw new Error(`${run.job.step} asks no question`);
  const input = {
    job: run.job,
    around: around(run),
    number: 1,
    people: [],
    competent: [],
    nonce: '',
    again: { typed: {}, wrong: {} },
  };
  // A question asks for nothing of what only a hold wants.
  return buildCard(step, input as unknown as CardInput) as QuestionCard;
}

describe('A question', () => {
  test('after a verdict shows what the verdict found: it is chosen by that', () => {
    const run = jobAt('chooseWork');
    expect(cardOf(run).findings).toEqual([
      expect.objectContaining({ label: 'friction, from the gap', value: '30 lbf' }),
      expect.objectContaining({ label: 'spring, from the middle', value: '0.00 psi' }),
      expect.objectContaining({ label: 'largest error', mark: 'inside' }),
      expect.objectContaining({ label: 'hysteresis and dead band', value: '5.0 %' }),
      expect.objectContaining({ label: 'repeatability at mid-range', value: '0.0 %' }),
    ]);
  });

  test('after something else shows none', () => {
    const run = jobAt('chooseWork');
    answer(run, { choice: 'setPlug' });
    expect(run.job.step).toBe('threadLook');
    expect(cardOf(run).findings).toEqual([]);
  });
});
