import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { OVERHAUL } from '../../../procedures/overhaul/procedures.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { sign } from '../../builders/jobs.ts';
import { aSheetOf } from '../../builders/sheets.ts';

const served = OVERHAUL.find(({ definition }) => definition.id === 'case-nuts');
if (served === undefined) throw new Error('it is not served');
const caseNuts = served;

const LEAKS = { caseJointAir: 'yes' } as const;
const CURED: Overrides = { soapFound: LEAKS, countBolts: { caseBolts: '12' } };

describe('[SAF-09] A leaking case joint', () => {
  test.each(['line', 'bench'] as const)('is cured with its nuts, %s, and the job is whole', (place) => {
    const run = play(jobOn(caseNuts, { place }), { overrides: CURED });
    expect(run.job.closedAs).toBe('done');
    expect(outcomesOf(run.job, 'soapFound')).toEqual(['case joint']);
    expect(outcomesOf(run.job, 'soapLeft')).toEqual(['tight']);
    expect(run.job.situation.states).toMatchObject({ testAir: 'off', supplyLock: 'off', inletLock: 'off' });
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('has the air off before a nut is touched', () => {
    const { job } = play(jobOn(caseNuts), { overrides: CURED, to: 'tighten' });
    expect(job.situation.states.signalAir).toBe('isolated');
    const bled = { lastAirPa: '15 psi', airZeroPa: '3 psi', method: 'gauge' };
    const notGone = play(jobOn(caseNuts), {
      overrides: { ...CURED, bleedForNuts: bled },
      to: 'nutsAirStays',
    });
    expect(notGone.job.situation.states.signalAir).toBe('live');
  });

  test('is tightened again where it still leaks, and soaped again', () => {
    const again: Overrides = {
      ...CURED,
      soapLeft: [LEAKS, { caseJointAir: 'no' }],
      whereOn: { choice: 'left' },
    };
    const { job } = play(jobOn(caseNuts), { overrides: again });
    expect(outcomesOf(job, 'soapLeft')).toEqual(['case joint', 'tight']);
    expect(outcomesOf(job, 'tighten')).toEqual(['yes', 'yes']);
  });

  test('that is tight is given back without a nut being turned', () => {
    const { job } = play(jobOn(caseNuts));
    expect(job.closedAs).toBe('done');
    expect(pathOf(job)).not.toContain('tighten');
  });

  test('with air at the adjuster wants a diaphragm, not nuts', () => {
    const { job } = play(jobOn(caseNuts), {
      overrides: {
        soapFound: { springSideAir: 'yes' },
        diaphragmLeaks: { choice: 'leave', reason: 'none is here' },
      },
    });
    expect(outcomesOf(job, 'diaphragmLeaks')).toEqual(['leave']);
    expect(pathOf(job)).not.toContain('tighten');
  });

  test('is stopped at once where more air is on it than it may have', () => {
    const run = play(jobOn(caseNuts), { to: 'soapFound' });
    const { job } = play(run, { overrides: { soapFound: { soapPa: '25 psi' } }, to: 'ventFirst' });
    expect(outcomesOf(job, 'soapFound')).toEqual(['above limit']);
  });

  test('gets no test air without the signature of somebody who did not work on it', () => {
    const run = play(jobOn(caseNuts), { to: 'holdWork' });
    expect(() => sign(run, { id: 'p-technician', role: 'supervisor' })).toThrow(Refusal);
  });
});

describe('Case nuts are offered', () => {
  test('for a diaphragm with a spring, in a line that can be shut off', () => {
    expect(caseNuts.whyNot(aSheetOf({}), 'line')).toBeNull();
    expect(caseNuts.whyNot(aSheetOf({ inletPoint: '' }), 'line')).toContain('no block valve');
    expect(caseNuts.whyNot(aSheetOf({ inletPoint: '' }), 'bench')).toBeNull();
  });

  test('for no piston', () => {
    const piston = { ...aSheetOf({}), actuatorKind: 'piston', springHeldBy: 'no spring' } as const;
    expect(caseNuts.whyNot(piston, 'bench')).toContain('no diaphragm case');
  });
});
