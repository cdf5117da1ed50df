import { describe, expect, test } from 'vitest';
import { stateThatCounts } from '../../../safety/situation.ts';
import { act, answer, type JobRun, jobAt, playTo, sign } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

function placeOf(run: JobRun, step: string, row: number | null = null): number {
  const found = run.job.answers.findLast((one) => one.step === step && !one.superseded && one.row === row);
  if (found === undefined) throw new Error(`${step} was not answered`);
  return found.place;
}

function correct(
  run: JobRun,
  of: { readonly step: string; readonly row?: number; readonly given: Readonly<Record<string, string>> },
) {
  const corrects = placeOf(run, of.step, of.row ?? null);
  return act(run, { kind: 'correct', corrects, given: of.given, reason: 'misread' });
}

describe('A correction', () => {
  test('with the same outcome leaves the work where it is; the old line stays, struck out', () => {
    const run = jobAt('rigHold');
    const place = placeOf(run, 'rigGauges');
    correct(run, { step: 'rigGauges', given: { rigGaugePa: '9.02', rigCheckPa: '9.05' } });
    expect(run.job.step).toBe('rigHold');
    expect(run.job.readings.rigGaugePa?.typed).toBe('9.02');
    const lines = run.job.answers.filter((one) => one.step === 'rigGauges');
    expect(lines).toMatchObject([
      { place, superseded: true, corrected: true },
      { act: 'corrected', superseded: false },
    ]);
  });

  test('wants its reason (SA-23)', () => {
    const run = jobAt('rigHold');
    const corrects = placeOf(run, 'rigGauges');
    const given = { rigGaugePa: '9', rigCheckPa: '9' };
    expect(refusalOf(() => act(run, { kind: 'correct', corrects, given, reason: ' ' })).code).toBe('COR-001');
  });

  test('names what cannot be read beside the reason that is missing', () => {
    const run = jobAt('rigHold');
    const corrects = placeOf(run, 'rigGauges');
    const given = { rigGaugePa: 'nine', rigCheckPa: '9' };
    const { fields } = refusalOf(() => act(run, { kind: 'correct', corrects, given, reason: '' }));
    expect(Object.keys(fields ?? {}).toSorted()).toEqual(['reason', 'rigGaugePa']);
  });

  test('with another outcome goes back to that card', () => {
    const run = jobAt('rigBleed');
    correct(run, { step: 'rigGauges', given: { rigGaugePa: '9.00', rigCheckPa: '9.60' } });
    expect(run.job.step).toBe('rigGauges');
    expect(run.job.answers.filter((one) => one.step === 'rigHold' && !one.superseded)).toEqual([]);
  });

  test('of what is no line, or was corrected already, is refused', () => {
    const run = jobAt('rigHold');
    const given = { rigGaugePa: '9', rigCheckPa: '9' };
    const corrects = placeOf(run, 'rigGauges');
    correct(run, { step: 'rigGauges', given });
    for (const place of [corrects, 0, 999])
      expect(refusalOf(() => act(run, { kind: 'correct', corrects: place, given, reason: 'x' })).code).toBe(
        'JOB-004',
      );
  });

  test('of a reading that a later judgement rests on goes back to that judgement', () => {
    const run = jobAt('chooseWork');
    correct(run, { step: 'asFoundCycle', row: 1, given: { signalPa: '6 psi', travelM: '40 %' } });
    expect(run.job.step).toBe('asFoundVerdict');
    answer(run);
    expect(run.job.answers.at(-1)?.outcome).toBe('outside');
  });

  test('of a row keeps its place in the table', () => {
    const run = jobAt('chooseWork');
    correct(run, { step: 'asFoundCycle', row: 1, given: { signalPa: '6 psi', travelM: '23 %' } });
    expect(run.job.step).toBe('chooseWork');
    expect(run.job.tables.asFoundCycle).toHaveLength(9);
    expect(run.job.tables.asFoundCycle?.[1]?.travel.typed).toBe('23 %');
  });

  test('of a row of an earlier reading of the table is refused: that table stands no more', () => {
    const run = jobAt('asFoundStrokes');
    // The first row stands anew by then, in the place of the earlier one; the fifth does not stand at all.
    const early = [0, 4].map((row) => placeOf(run, 'asFoundCycle', row));
    act(run, { kind: 'make-safe', reason: '' });
    answer(run, { airZeroPa: '0', method: 'gauge' });
    answer(run, { choice: 'goOn' });
    answer(run, { peopleClear: 'yes' });
    answer(run, { choice: 'cycle' });
    answer(run, { travelM: '0 %' });
    const given = { signalPa: '15 psi', travelM: '99 %' };
    for (const corrects of early) {
      const refused = refusalOf(() => act(run, { kind: 'correct', corrects, given, reason: 'misread' }));
      expect(refused.what).toBe('That row belongs to an earlier reading of this table.');
    }
    expect(run.job.tables.asFoundCycle).toHaveLength(1);
  });

  test('[SAF-08] to more air than the case may have stops the work, even noticed late', () => {
    const run = jobAt('chooseWork');
    correct(run, { step: 'asFoundCycle', row: 4, given: { signalPa: '21 psi', travelM: '100 %' } });
    expect(run.job.step).toBe('ventNow');
    expect(run.job.answers.at(-1)?.readings[0]?.typed).toBe('21 psi');
  });
});

describe('[SAF-11] A corrected proof', () => {
  test('counts no more, though it would show the same; the hold cannot be signed over it', () => {
    const run = jobAt('holdWork');
    correct(run, { step: 'ventSupply', given: { supplyAfterPa: '0.5 psi', method: 'gauge' } });
    expect(run.job.step).toBe('holdWork');
    expect(run.job.situation.states.supplyAir).toBe('isolated');
    expect(stateThatCounts(run.job.situation, 'supplyAir')).toBe('live');
    expect(refusalOf(() => sign(run)).what).toBe('Not shown safe: Supply air.');
  });

  test('takes the signature over it along', () => {
    const run = jobAt('contactFound');
    correct(run, { step: 'ventSupply', given: { supplyAfterPa: '0.5 psi', method: 'gauge' } });
    const { situation } = run.job;
    expect(stateThatCounts(situation, 'workSignOff')).toBe('none');
    const given = { moves: 'yes', contactLeavesPa: '3.3 psi', contactTouchesPa: '2.7 psi' };
    expect(refusalOf(() => answer(run, given)).what).toContain('because of corrected');
  });

  test('that shows nothing now leads to the way to safe where there is no safe way back', () => {
    const run = jobAt('contactFound');
    correct(run, { step: 'ventSupply', given: { supplyAfterPa: '9 psi', method: 'gauge' } });
    expect(run.job.step).toBe('ventNow');
    expect(stateThatCounts(run.job.situation, 'supplyAir')).toBe('live');
  });

  test('falls with the reading that saw its gauge alive', () => {
    const run = jobAt('holdWork');
    const given = {
      supplyBeforePa: '0 psi',
      signalBeforePa: '7.5 psi',
      supplyTag: 'IA-214-1',
      supplyLockNumber: '43',
    };
    correct(run, { step: 'shutSupply', given });
    expect(stateThatCounts(run.job.situation, 'supplyAir')).toBe('live');
    expect(stateThatCounts(run.job.situation, 'signalAir')).toBe('live');
    expect(stateThatCounts(run.job.situation, 'processInlet')).toBe('isolated');
    // The lock hangs all the same: only what was shown falls, never what stands.
    expect(stateThatCounts(run.job.situation, 'supplyLock')).toBe('on');
    expect(refusalOf(() => sign(run)).code).toBe('HLD-003');
  });

  test('falls with the first zero of a side, which the second one rests on, and with the gauge seen alive', () => {
    for (const of of [
      { step: 'drainInlet', given: { inletAfterPa: '1 psi', method: 'gauge', inletDrained: 'yes' } },
      {
        step: 'shutInlet',
        given: { inletBeforePa: '80 psi', inletTag: 'HV-214A', inletLockNumber: '41' },
      },
    ]) {
      const run = jobAt('holdWork');
      correct(run, of);
      expect(stateThatCounts(run.job.situation, 'processInlet'), of.step).toBe('live');
      expect(refusalOf(() => sign(run)).what).toContain('Process, inlet side');
    }
  });

  test('may be shown again by isolating anew, and then signed', () => {
    const run = jobAt('holdWork');
    correct(run, { step: 'ventSupply', given: { supplyAfterPa: '0.5 psi', method: 'gauge' } });
    act(run, { kind: 'make-safe', reason: 'proof corrected' });
    answer(run, { choice: 'goOn' });
    playTo(run, 'holdWork');
    sign(run);
    expect(run.job.step).toBe('connectAir');
  });
});
