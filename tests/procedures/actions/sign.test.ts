import { describe, expect, test } from 'vitest';
import { PSI_PA } from '../../builders/gear.ts';
import {
  act,
  answer,
  jobAt,
  OTHER_TECHNICIAN,
  playTo,
  SUPERVISOR,
  sign,
  TECHNICIAN,
} from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';

const HOURS_MS = 3_600_000;

describe('[SAF-05] A hold', () => {
  test('is not signed by a technician, not even one who did none of the work', () => {
    const run = jobAt('holdWork');
    expect(refusalOf(() => sign(run, OTHER_TECHNICIAN))).toMatchObject({
      kind: 'not-allowed',
      code: 'HLD-001',
    });
  });

  test('is not signed by whoever did the work, nor by a supervisor who recorded one card of it (HP-07, SA-31)', () => {
    const run = jobAt('springLook');
    answer(run, { caseTight: 'yes' }, SUPERVISOR);
    expect(run.job.step).toBe('holdWork');
    expect(refusalOf(() => sign(run, TECHNICIAN)).code).toBe('HLD-002');
    expect(refusalOf(() => sign(run, SUPERVISOR)).code).toBe('HLD-002');
    sign(run, { id: 'p-second', role: 'supervisor' });
    expect(run.job.step).toBe('connectAir');
  });

  test('is not signed over a page that has changed since it was shown (SA-12, SA-30)', () => {
    const run = jobAt('holdWork');
    const old = refusalOf(() => act(run, { kind: 'sign', shownDigest: 'as it was' }, SUPERVISOR));
    expect(old).toMatchObject({ kind: 'conflict', code: 'HLD-004' });
    expect(run.job.holds).toEqual([]);
  });

  test('is not signed over an energy that is not shown any more', () => {
    const run = jobAt('holdWork');
    run.nowMs += 4 * HOURS_MS + 120_000;
    const aged = refusalOf(() => sign(run));
    expect(aged.code).toBe('HLD-003');
    expect(aged.what).toContain('Supply air');
    expect(aged.what).toContain('Residue');
    expect(aged.what).not.toContain('Weight');
  });

  test('is not answered, and where none is open nothing is signed: never ahead of the work (HP-19)', () => {
    const run = jobAt('holdWork');
    expect(refusalOf(() => answer(run, {})).code).toBe('JOB-004');
    expect(refusalOf(() => sign(jobAt('needs'))).what).toBe('No hold is open on this job.');
  });

  test('goes back with its reason, to a card that is safe', () => {
    const run = jobAt('holdWork');
    expect(
      refusalOf(() => act(run, { kind: 'send-back', reason: ' ', disposition: 'again' }, SUPERVISOR)).code,
    ).toBe('HLD-005');
    act(run, { kind: 'send-back', reason: 'drain not seen', disposition: 'again' }, SUPERVISOR);
    expect(run.job.step).toBe('haltIsolating');
    expect(run.job.holds).toEqual([]);
  });

  test('may be signed later by the supervisor who sent it back: reading is no work', () => {
    const run = jobAt('holdWork');
    act(run, { kind: 'send-back', reason: 'drain not seen', disposition: 'again' }, SUPERVISOR);
    answer(run, { choice: 'goOn' });
    playTo(run, 'holdWork');
    sign(run);
    expect(run.job.step).toBe('connectAir');
  });

  test('is not signed by whoever took the job up or read a gauge of it again: they acknowledged the work', () => {
    const run = jobAt('springLook');
    act(run, { kind: 'park', reason: 'shift ends' });
    act(run, { kind: 'take-up' }, SUPERVISOR);
    playTo(run, 'holdWork');
    expect(run.job.signing.acknowledgers).toContain(SUPERVISOR.id);
    const refused = refusalOf(() => sign(run, SUPERVISOR));
    expect(refused).toMatchObject({ code: 'HLD-002', what: expect.stringContaining('acknowledged') });
  });

  test('keeps who signed, what was seen of each energy, and the result; sent back, what is done about it (HP-09, HP-17)', () => {
    const run = jobAt('holdWork');
    act(run, { kind: 'send-back', reason: 'drain not seen', disposition: 'putRight' }, SUPERVISOR);
    const back = run.entries.at(-1);
    expect(back).toMatchObject({
      kind: 'hold-sent-back',
      inputs: { reason: 'drain not seen', disposition: 'putRight', signature: { person: SUPERVISOR.id } },
    });
    answer(run, { choice: 'goOn' });
    playTo(run, 'holdWork');
    const draft = sign(run);
    expect(draft.outcome).toEqual({ name: 'signed', figures: { evidence: 17 } });
    expect(draft.inputs.signature).toMatchObject({ person: SUPERVISOR.id, meaning: 'signed' });
    const { evidence, sentBack } = draft.inputs.shown as unknown as {
      evidence: { condition: string; state: string; note: { readings: { typed: string }[] } }[];
      sentBack: { reason: string }[];
    };
    const supply = evidence.find(({ condition }) => condition === 'supplyAir');
    expect([supply?.state, supply?.note.readings.map(({ typed }) => typed)]).toEqual(['isolated', ['0']]);
    expect(sentBack).toMatchObject([{ reason: 'drain not seen' }]);
  });

  test('begins a new count of who did the work', () => {
    const run = jobAt('holdWork');
    expect(run.job.performers).toEqual([TECHNICIAN.id]);
    sign(run);
    expect(run.job.performers).toEqual([]);
    expect(run.job.holds).toMatchObject([{ step: 'holdWork', person: SUPERVISOR.id, shownDigest: 'digest' }]);
  });
});

describe('[SAF-06] A signature', () => {
  test('names the work, the pressure and the hour', () => {
    const run = jobAt('holdWork');
    const at = run.nowMs;
    sign(run);
    expect(run.job.envelope).toMatchObject({
      hold: 'holdWork',
      work: [
        'connectTestAir',
        'strokeByTestAir',
        'turnPlugStem',
        'windAdjusterOnTestAir',
        'setIndicatorOnTestAir',
      ],
      untilMs: at + 8 * HOURS_MS,
      signedBy: SUPERVISOR.id,
    });
    expect(Number(run.job.envelope?.testAirPaMax) / PSI_PA).toBeCloseTo(20, 9);
  });

  test('ends after its eight hours, in the middle of the work', () => {
    const run = jobAt('turnStem');
    run.nowMs = Number(run.job.envelope?.untilMs);
    expect(refusalOf(() => answer(run, { turnsMade: '2', lockNuts: 'yes' })).what).toContain(
      'Sign-off for the work counts as none',
    );
  });

  test('for the return ends too, and may be had again without isolating the valve', () => {
    const run = jobAt('openBlocks');
    run.nowMs = Number(run.job.envelope?.untilMs);
    expect(refusalOf(() => answer(run, { blocksOpen: 'yes' })).code).toBe('ILK-001');
    act(run, { kind: 'make-safe', reason: 'no signature' });
    expect(refusalOf(() => answer(run, { choice: 'goOn' })).code).toBe('ILK-001');
    answer(run, { choice: 'signAgain' });
    answer(run, { caseStillTight: 'yes', toolsOut: 'yes' });
    sign(run);
    expect(run.job.step).toBe('unlockBlocks');
    expect(playTo(run, 'done').job.closedAs).toBe('done');
  });
});
