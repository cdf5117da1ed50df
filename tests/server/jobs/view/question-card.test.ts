import { describe, expect, test } from 'vitest';
import { diaphragmRenewal } from '../../../../procedures/overhaul/diaphragm-renewal.ts';
import { seatAndPlug } from '../../../../procedures/overhaul/seat-and-plug.ts';
import { buildCard } from '../../../../server/jobs/view/cards/build-card.ts';
import type { CardInput } from '../../../../server/jobs/view/cards/card.ts';
import type { QuestionCard } from '../../../../server/jobs/view/cards/plain-cards.ts';
import { jobOn, play } from '../../../builders/answers.ts';
import { answer, around, type JobRun, jobAt } from '../../../builders/jobs.ts';

function cardOf(run: JobRun, kind: 'question' | 'judgement' = 'question'): QuestionCard {
  const step = run.compiled.definition.steps[run.job.step];
  if (step?.kind !== kind) throw new Error(`${run.job.step} is no ${kind}`);
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

describe('A judgement that is no stroke', () => {
  test('says where the bench set stands, as pressure, and what it is held against', () => {
    const run = play(jobOn({ definition: diaphragmRenewal }, { place: 'bench' }), { to: 'benchSetLeft' });
    const { how, findings } = cardOf(run, 'judgement');
    expect(how).toBe(
      '3.00 psi to 15.00 psi by the sheet, each end within 0.25 psi. It is that of the sheet, with the gauge counted in.',
    );
    expect(findings).toEqual([
      expect.objectContaining({ label: 'spring, from the middle', value: '0.00 psi' }),
    ]);
  });

  test('says the load on the seat beside the one that is wanted', () => {
    const overrides = {
      benchFound: {
        benchLowUpPa: '3 psi',
        benchHighUpPa: '15 psi',
        benchHighDownPa: '15 psi',
        benchLowDownPa: '3 psi',
        benchTravelM: '0.75 in',
      },
      seatContact: { contactLeavesPa: '4.9 psi', contactTouchesPa: '4.3 psi' },
      trimLook: { runOutM: '0.02 mm', guideBoreM: '12.1 mm', guidePlugM: '12 mm' },
      bonnetOn: { bonnetTorqueNm: '60 N.m' },
      bonnetTorque: { bonnetTorqueLeftNm: '60 N.m' },
    };
    const run = play(jobOn({ definition: seatAndPlug }, { place: 'bench' }), { overrides, to: 'seatLoad' });
    const { how, findings } = cardOf(run, 'judgement');
    expect(how).toMatch(/^Wanted: .+ Enough\.$/);
    expect(findings).toEqual([
      { label: 'load on the seat', value: '160 lbf', text: expect.stringMatching(/^wanted: \d+ lbf$/) },
    ]);
  });
});
