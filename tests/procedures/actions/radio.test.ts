import { describe, expect, test } from 'vitest';
import type { Signatory } from '../../../procedures/actions/action.ts';
import { advance } from '../../../procedures/advance.ts';
import { around, type JobRun, jobAt, SUPERVISOR, store, TECHNICIAN } from '../../builders/jobs.ts';
import { atHoldWith } from '../../builders/points.ts';
import { refusalOf } from '../../builders/refusals.ts';

const SAID: Signatory = {
  signer: SUPERVISOR,
  name: 'Supervisor 1',
  way: 'radio',
  why: 'at another unit',
  nonce: 'n1',
  radio: { code: 'K7Q-49X', heardBy: TECHNICIAN.id },
};

function signBy(run: JobRun, signatory: Signatory) {
  const { place, step } = run.job;
  const action = { kind: 'sign', place, step, shownDigest: run.shownDigest } as const;
  return store(run, advance(run.job, action, { ...around(run), signatory }), TECHNICIAN);
}

function byRadio(
  run: JobRun,
  act: 'confirm-radio' | 'deny-radio',
  of: { code?: string; person?: typeof SUPERVISOR },
) {
  const { code = '', person = SUPERVISOR } = of;
  const about = run.job.signing.radio[0]?.place ?? 0;
  const action =
    act === 'confirm-radio'
      ? ({ kind: act, place: 0, about, code } as const)
      : ({ kind: act, place: 0, about, reason: 'not me' } as const);
  return store(run, advance(run.job, action, around(run, person)), person);
}

describe('A hold signed by radio', () => {
  test('names who was heard and by whom, and leaves the spring adjuster out of what it allows', () => {
    const run = jobAt('holdWork');
    signBy(run, SAID);
    expect(run.job.holds).toMatchObject([
      { person: SUPERVISOR.id, name: 'Supervisor 1', way: 'radio', why: 'at another unit' },
    ]);
    expect(run.job.envelope?.work).toEqual([
      'connectTestAir',
      'strokeByTestAir',
      'turnPlugStem',
      'setIndicatorOnTestAir',
    ]);
    expect(run.job.signing.radio).toMatchObject([
      { heardBy: TECHNICIAN.id, code: 'K7Q-49X', stands: 'open' },
    ]);
  });

  test('is refused without the reason, and for what opens spring, case or line', () => {
    expect(refusalOf(() => signBy(jobAt('holdWork'), { ...SAID, why: '' })).code).toBe('HLD-008');
    const run = atHoldWith({ allows: ['connectTestAir', 'loosenCaseBolts'] });
    expect(refusalOf(() => signBy(run, SAID)).code).toBe('HLD-011');
  });

  test('is confirmed by the one who was heard, with the code that was read back then', () => {
    const run = jobAt('holdWork');
    signBy(run, SAID);
    const other = { id: 'p-second', role: 'supervisor' };
    expect(refusalOf(() => byRadio(run, 'confirm-radio', { code: 'K7Q-49X', person: other })).code).toBe(
      'RAD-001',
    );
    expect(refusalOf(() => byRadio(run, 'confirm-radio', { code: 'AAA-AAA' })).code).toBe('RAD-002');
    const { readings, step } = run.job;
    byRadio(run, 'confirm-radio', { code: 'k7q 49x' });
    expect([run.job.step, run.job.readings, run.job.signing.radio[0]?.stands]).toEqual([
      step,
      readings,
      'confirmed',
    ]);
    expect(refusalOf(() => byRadio(run, 'confirm-radio', { code: 'K7Q-49X' })).code).toBe('JOB-004');
  });

  test('that was never given ends all that it allowed, at once', () => {
    const run = jobAt('holdWork');
    signBy(run, SAID);
    byRadio(run, 'deny-radio', {});
    expect(run.job.envelope).toBeNull();
    expect(run.job.situation.lapsed.workSignOff).toBe('corrected');
    const { place, step } = run.job;
    const next = { kind: 'answer', place, step, given: {} } as const;
    expect(refusalOf(() => advance(run.job, next, around(run))).code).toBe('ILK-001');
  });
});

describe('A hold signed by a second competent person', () => {
  const second: Signatory = {
    signer: { id: 'p-engineer', role: 'engineer', competent: true },
    name: 'Engineer 1',
    way: 'second person',
    why: 'night shift, nobody else here',
    nonce: 'n2',
    radio: null,
  };

  test('wants the reason why no supervisor can come, and somebody who was named', () => {
    expect(refusalOf(() => signBy(jobAt('holdWork'), { ...second, why: '' })).code).toBe('HLD-008');
    const unnamed = { ...second, signer: { id: 'p-engineer', role: 'engineer' } };
    expect(refusalOf(() => signBy(jobAt('holdWork'), unnamed)).code).toBe('HLD-001');
    const run = jobAt('holdWork');
    signBy(run, second);
    expect(run.job.holds).toMatchObject([{ person: 'p-engineer', way: 'second person', why: second.why }]);
  });
});
