import { describe, expect, test } from 'vitest';
import { findTheFault } from '../../../../../procedures/troubleshooting/find-the-fault.ts';
import { adviceFor } from '../../../../../procedures/troubleshooting/job/advice.ts';
import { faultCard } from '../../../../../server/jobs/view/cards/fault-card.ts';
import { NOTHING_TYPED } from '../../../../../server/jobs/view/page.ts';
import { jobOn, type Overrides, play } from '../../../../builders/answers.ts';
import { around } from '../../../../builders/jobs.ts';

const MOVES_PART_WAY: Overrides = {
  complaint: { symptom: 'movesPartWay' },
  fitted: { gaugeAtSource: 'no', gaugeAtSignal: 'no', gaugeAtSupply: 'no', gaugeAtCase: 'no' },
  inService: { hubChoice: 'bypass' },
  onBypass: { hubChoice: 'fitGauge' },
};

function cardAt(to: string, overrides: Overrides) {
  const run = play(jobOn({ definition: findTheFault }, { place: 'line' }), { overrides, to });
  const step = run.compiled.definition.steps[to];
  if (step?.kind !== 'reading') throw new Error(`${to} takes no reading`);
  const card = faultCard(step, {
    job: run.job,
    around: around(run),
    number: 5,
    again: NOTHING_TYPED,
    people: [],
    competent: [],
    nonce: '',
  });
  return { job: run.job, options: card.fields[0]?.options ?? [] };
}

type Shown = { readonly value: string; readonly help?: string; readonly isRest?: boolean };

describe('A card whose order is advice', () => {
  test('names the likeliest repairs in sight, and folds what is unlikely behind one line', () => {
    const options = cardAt('nameCauseInService', {
      ...MOVES_PART_WAY,
      inService: { hubChoice: 'name' },
    }).options as readonly Shown[];
    expect(options.slice(0, 5).every(({ isRest }) => !isRest)).toBe(true);
    expect(options.some(({ isRest }) => isRest)).toBe(true);
    const likely = options.filter(({ help }) => help?.includes('in 10'));
    expect(likely.length).toBeGreaterThan(0);
    expect(likely.every(({ isRest }) => !isRest)).toBe(true);
  });

  test('where a gauge is fitted for a check, says which check wants it, and where', () => {
    const { job, options } = cardAt('fitGauge', MOVES_PART_WAY);
    const { decision, checks } = adviceFor(job, 'bypassed');
    const wanted = [decision.check, ...checks].find((one) => one?.fit.length)?.fit ?? [];
    expect(wanted.length).toBeGreaterThan(0);
    const said = (options as readonly Shown[]).filter(({ help }) => help?.startsWith('wanted for: '));
    expect(said.map(({ value }) => value).sort()).toEqual([...wanted].sort());
    expect(options.length).toBeGreaterThan(3);
  });
});
