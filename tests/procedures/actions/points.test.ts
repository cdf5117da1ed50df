import { describe, expect, test } from 'vitest';
import { departureOf } from '../../../procedures/departures.ts';
import { act, answer, OTHER_TECHNICIAN, playTo, SUPERVISOR, sign, TECHNICIAN } from '../../builders/jobs.ts';
import { atPoint } from '../../builders/points.ts';
import { refusalOf } from '../../builders/refusals.ts';

const SECOND_SUPERVISOR = { id: 'p-second', role: 'supervisor' };
const goOn = { kind: 'go-on' } as const;

describe('A witness', () => {
  test('was told and may come: work goes on without them once the notice is over, not before, and both are kept (HP-02)', () => {
    const run = atPoint({ point: 'witness', noticeS: 600 });
    run.nowMs += 100_000;
    expect(refusalOf(() => act(run, goOn)).what).toMatch(
      /^The witness was told and has \d+ s left to come\.$/,
    );
    run.nowMs += 600_000;
    act(run, goOn);
    expect(run.job.step).toBe('rigHold');
    expect(run.job.signing.passed).toMatchObject([{ step: 'rigShutIn', how: 'not witnessed' }]);
  });

  test('who came is kept with their name, and has no hand in the work by watching it', () => {
    const run = atPoint({ point: 'witness', noticeS: 600 });
    const draft = sign(run, SUPERVISOR);
    expect(draft).toMatchObject({ kind: 'witnessed', outcome: { name: 'witnessed' } });
    expect(run.job.step).toBe('rigHold');
    expect([...run.job.performers, ...run.job.signing.acknowledgers]).not.toContain(SUPERVISOR.id);
    expect(run.job.holds).toEqual([]);
  });

  test('is no hold: a hold is not gone past so', () => {
    const run = atPoint({ point: 'hold' });
    run.nowMs += 3_600_000;
    expect(refusalOf(() => act(run, goOn)).code).toBe('JOB-004');
  });
});

describe('A review', () => {
  test('stops no work, and the job does not close with it open (HP-03)', () => {
    const run = atPoint({ point: 'review' });
    act(run, goOn);
    expect(run.job.step).toBe('rigHold');
    playTo(run, 'loopBack');
    const last = { takenBackBy: 'board operator', takenBack: 'yes' };
    expect(refusalOf(() => answer(run, last))).toMatchObject({ code: 'HLD-013', kind: 'conflict' });
    const [open] = run.job.signing.reviews;
    const review = { kind: 'review', about: open?.place ?? 0 } as const;
    expect(refusalOf(() => act(run, review, TECHNICIAN)).code).toBe('HLD-002');
    expect(refusalOf(() => act(run, review, OTHER_TECHNICIAN)).code).toBe('HLD-001');
    act(run, review, SECOND_SUPERVISOR);
    expect(run.job.step).toBe('loopBack');
    answer(run, last);
    expect(run.job.closedAs).toBe('done');
    expect(refusalOf(() => act(run, review, SECOND_SUPERVISOR)).what).toBe('That review is not open.');
  });

  test('that is not accepted says what is wrong and what is done about it, is over by that, and stands as a departure (HP-03)', () => {
    const run = atPoint({ point: 'review' });
    act(run, goOn);
    const about = run.job.signing.reviews[0]?.place ?? 0;
    const back = (reason: string, disposition = 'again') =>
      ({ kind: 'review-back', about, reason, disposition }) as const;
    expect(refusalOf(() => act(run, back(' '), SECOND_SUPERVISOR)).code).toBe('HLD-005');
    expect(refusalOf(() => act(run, back('too short', 'x'), SECOND_SUPERVISOR)).code).toBe('HLD-005');
    expect(refusalOf(() => act(run, back('too short'), TECHNICIAN)).code).toBe('HLD-002');
    const draft = act(run, back('too short'), SECOND_SUPERVISOR);
    expect(draft).toMatchObject({
      kind: 'review-sent-back',
      inputs: {
        reason: 'too short',
        disposition: 'again',
        signature: { meaning: 'sent back' },
        shown: { about },
      },
    });
    expect(run.job.signing.reviews).toMatchObject([{ sentBack: 'too short', reviewedAt: run.job.place }]);
    const last = run.job.answers.at(-1);
    expect(last === undefined ? null : departureOf(last, run.compiled.definition)).toBe('sent back');
    expect(run.job.step).toBe('rigHold');
    expect([...run.job.performers, ...run.job.signing.acknowledgers]).not.toContain(SECOND_SUPERVISOR.id);
    playTo(run, 'loopBack');
    answer(run, { takenBackBy: 'board operator', takenBack: 'yes' });
    expect(run.job.closedAs).toBe('done');
  });

  test('of a record that was made again is one review: the newer record is what is looked at', () => {
    const run = atPoint({ point: 'review' });
    act(run, goOn);
    const [first] = run.job.signing.reviews;
    act(run, { kind: 'go-back', to: 'rigShutIn' });
    act(run, goOn);
    expect(run.job.signing.reviews).toHaveLength(1);
    expect(run.job.signing.reviews[0]?.place).toBeGreaterThan(first?.place ?? 0);
    act(run, { kind: 'go-back', to: 'rigShutIn' });
    sign(run, SUPERVISOR);
    expect(run.job.signing.reviews).toEqual([]);
  });

  test('holds nobody back who makes safe', () => {
    const run = atPoint({ point: 'review' });
    act(run, goOn);
    act(run, { kind: 'make-safe', reason: 'stop' });
    expect(run.job.closedAs).toBe('stopped');
  });
});

describe('A waiver', () => {
  const waive = (reason: string) => ({ kind: 'waive', reason }) as const;
  const engineer = { id: 'p-engineer', role: 'engineer' };

  test('is given by the role that the definition names, with a reason, before work goes past, and is kept as one (HP-12)', () => {
    const run = atPoint({ point: 'hold', waivedBy: 'engineer' });
    expect(refusalOf(() => act(run, waive('no rig here'), SUPERVISOR)).what).toBe(
      'This is waived by the engineer.',
    );
    expect(refusalOf(() => act(run, waive(' '), engineer)).code).toBe('HLD-012');
    const draft = act(run, waive('rig was tried this morning'), engineer);
    expect(draft).toMatchObject({
      kind: 'hold-waived',
      inputs: { reason: 'rig was tried this morning', signature: { person: engineer.id, meaning: 'waived' } },
    });
    expect(run.job.step).toBe('rigHold');
    expect(run.job.signing.passed).toMatchObject([{ how: 'waived' }]);
    expect(run.job.holds).toEqual([]);
    expect(refusalOf(() => act(run, waive('late'), engineer)).code).toBe('JOB-004');
  });

  test('is given by nobody where the definition names nobody, nor by whoever did the work', () => {
    expect(refusalOf(() => act(atPoint({ point: 'hold' }), waive('hurry'), engineer)).what).toBe(
      'This hold is never waived.',
    );
    const run = atPoint({ point: 'hold', waivedBy: 'technician' });
    expect(refusalOf(() => act(run, waive('hurry'), TECHNICIAN)).code).toBe('HLD-002');
  });
});
