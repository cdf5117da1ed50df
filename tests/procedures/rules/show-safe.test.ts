import { describe, expect, test } from 'vitest';
import type { Job, Reading, Words } from '../../../procedures/job.ts';
import { showSafeRule } from '../../../procedures/rules/show-safe.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { act, answer, jobAt } from '../../builders/jobs.ts';

function reading(field: string, psi: number, gauge = 'G-103', uncertaintyPsi = 0.7): Reading {
  return {
    field,
    valueSi: psi * PSI_PA,
    typed: `${psi} psi`,
    unit: 'psi',
    gauge,
    uncertaintySi: uncertaintyPsi * PSI_PA,
    readBy: null,
  };
}

const { job } = jobAt('ventSupply');
const PARAMS = { energy: 'supplyAir', before: 'supplyBeforePa', after: 'supplyAfterPa' };

function outcome(of: {
  readonly readings?: readonly Reading[];
  readonly words?: Words;
  readonly job?: Job;
  readonly params?: object;
}): string {
  const readings = Object.fromEntries((of.readings ?? []).map((one) => [one.field, one]));
  const input = { job: of.job ?? job, readings, words: of.words ?? { method: 'gauge' }, step: 'ventSupply' };
  return showSafeRule.judge({ ...input, params: { ...PARAMS, ...of.params } }).outcome;
}

describe('[SAF-02] A zero', () => {
  test('counts on the gauge that this job saw alive there', () => {
    expect(outcome({ readings: [reading('supplyAfterPa', 0)] })).toBe('shown');
  });

  test('on another gauge proves nothing', () => {
    expect(outcome({ readings: [reading('supplyAfterPa', 0, 'G-101')] })).toBe('not shown');
  });

  test('that was not read proves nothing', () => {
    expect(outcome({})).toBe('not shown');
  });

  test('counts with the worse of the two uncertainties', () => {
    const before = reading('supplyBeforePa', 19, 'G-103', 3.1);
    expect(outcome({ readings: [before, reading('supplyAfterPa', 0)] })).toBe('gauge too coarse');
  });

  test('on a gauge that was dead before proves nothing', () => {
    const before = reading('supplyBeforePa', 0);
    expect(outcome({ readings: [before, reading('supplyAfterPa', 0)] })).toBe('gauge not seen alive');
  });

  test('at the vent counts where it was watched twice; a look left out counts as flow', () => {
    const words = { method: 'vent', flowFirst: 'no flow', flowAgain: 'no flow' };
    expect(outcome({ words })).toBe('shown');
    expect(outcome({ words: { method: 'vent', flowFirst: 'no flow' } })).toBe('not shown');
    expect(outcome({ words: { ...words, flowFirst: 'flow' } })).toBe('not shown');
  });

  test('on a line that is not capped is no isolation, whatever the gauge says', () => {
    const readings = [reading('supplyAfterPa', 0)];
    const params = { also: 'lineCapped' };
    expect(outcome({ readings, params, words: { method: 'gauge', lineCapped: 'no' } })).toBe('not shown');
    expect(outcome({ readings, params })).toBe('not shown');
    expect(outcome({ readings, params, words: { method: 'gauge', lineCapped: 'yes' } })).toBe('shown');
  });
});

describe('[SAF-02] Test air bled to zero', () => {
  test('needs no reading before where this round has one already', () => {
    const run = jobAt('airOff');
    answer(run, { airZeroPa: '0', method: 'gauge' });
    expect(run.job.step).toBe('disconnectAir');
  });

  test('needs one afresh in a new round: an older round says nothing about this gauge (EI-13)', () => {
    const run = jobAt('contactFound');
    act(run, { kind: 'make-safe', reason: '' });
    answer(run, { lastAirPa: '6 psi', airZeroPa: '0', method: 'gauge' });
    answer(run, { choice: 'goOn' });
    act(run, { kind: 'make-safe', reason: '' });
    answer(run, { airZeroPa: '0', method: 'gauge' });
    expect(run.job.answers.at(-1)?.outcome).toBe('not shown');
    answer(run, { lastAirPa: '5 psi', airZeroPa: '0', method: 'gauge' });
    expect(run.job.step).toBe('haltAir');
  });
});
