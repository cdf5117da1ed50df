import { describe, expect, test } from 'vitest';
import { PSI_PA } from '../../builders/gear.ts';
import { act, answer, jobAt, openJob, playTo, scripted } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';
import { sheetFor } from '../../builders/stroke-script.ts';

describe('An answer', () => {
  test('to a card that another screen has answered meanwhile is refused, and says so', () => {
    const run = jobAt('rigGauges');
    const stale = refusalOf(() =>
      act(run, { kind: 'answer', given: {}, place: run.job.place - 1 } as Parameters<typeof act>[1]),
    );
    expect(stale).toMatchObject({ kind: 'conflict', code: 'JOB-002' });
    expect(stale.kept).toContain('what you typed is still there');
  });

  test('to another step than the open one is refused', () => {
    const run = jobAt('rigGauges');
    const wrong = { kind: 'answer', given: {}, step: 'turnStem' } as Parameters<typeof act>[1];
    expect(refusalOf(() => act(run, wrong)).code).toBe('JOB-003');
  });

  test('to a closed job is refused', () => {
    const run = jobAt('done', { place: 'bench' });
    expect(refusalOf(() => answer(run))).toMatchObject({ code: 'JOB-001', what: 'This job is closed.' });
  });

  test('keeps each reading as typed, with its gauge and what the gauge may be off', () => {
    const run = jobAt('rigGauges');
    answer(run, { rigGaugePa: ' 9.00 psi', rigCheckPa: '62 kPa' });
    // 0 to 30 psi, 0.25 %: 2 / sqrt 3 x 0.075 psi covers it at 95 % (JCGM 100:2008, 4.3.7).
    expect(run.job.readings.rigGaugePa).toMatchObject({ typed: '9.00 psi', unit: 'psi', gauge: 'G-101' });
    expect(Number(run.job.readings.rigGaugePa?.uncertaintySi) / PSI_PA).toBeCloseTo(0.0866, 4);
    expect(run.job.readings.rigCheckPa).toMatchObject({ valueSi: 62_000, unit: 'kPa', gauge: 'G-102' });
  });

  test('that says nothing, or something else, to a question is refused', () => {
    const run = jobAt('chooseWork');
    expect(refusalOf(() => answer(run, {}))).toMatchObject({
      code: 'REA-012',
      fields: { choice: expect.any(String) },
    });
    expect(refusalOf(() => answer(run, { choice: 'weld' })).what).toBe('"weld" is not an answer here.');
  });

  test('that departs from the sheet wants its reason', () => {
    const run = jobAt('contactFound');
    answer(run, { moves: 'no' });
    expect(refusalOf(() => answer(run, { choice: 'stop', reason: '  ' })).code).toBe('REA-013');
    answer(run, { choice: 'stop', reason: 'no time in this shutdown' });
    expect(run.job.step).toBe('ventNow');
    expect(run.job.answers.at(-1)?.words.reason).toBe('no time in this shutdown');
  });

  test('to a wait comes too early until the time is over', () => {
    const run = jobAt('rigShutIn');
    run.nowMs = Date.parse(run.job.arrivedAt) + 19_500;
    expect(refusalOf(() => answer(run)).what).toBe('The wait is not over: 1 s is left.');
    run.nowMs += 500;
    answer(run);
    expect(run.job.step).toBe('rigHold');
  });
});

describe('[SAF-08] More air than the case may have', () => {
  test('on a held signal goes to the danger card, and the reading is kept', () => {
    const run = jobAt('holdForPlug');
    answer(run, { heldPa: '22 psi', heldAgainPa: '9 psi', heldTravelM: '50 %' });
    expect(run.job.step).toBe('ventFirst');
    expect(run.job.readings.heldPa?.typed).toBe('22 psi');
    expect(Number(run.job.figures.holdForPlug?.highestPa) / PSI_PA).toBeCloseTo(22, 9);
    expect(run.job.situation.states).toMatchObject({ signalAir: 'live', plug: 'seat unknown' });
  });

  test('on a row of a table goes there too, and the row is not counted', () => {
    const run = jobAt('asFoundCycle');
    answer(run, { signalPa: '20.1 psi', travelM: '0 %' });
    expect(run.job.step).toBe('ventFirst');
    expect(run.job.tables.asFoundCycle ?? []).toEqual([]);
    expect(run.job.answers.at(-1)?.readings[0]?.typed).toBe('20.1 psi');
  });

  test('begins above the limit, not at it: 20 psi is allowed on 3 to 15 psi', () => {
    const run = jobAt('contactFound');
    answer(run, { moves: 'yes', contactLeavesPa: '20 psi', contactTouchesPa: '3 psi' });
    expect(run.job.step).toBe('asFoundCycle');
  });

  test('is 20 psi also where the case could bear more, and less where it cannot', () => {
    const run = jobAt('contactFound', {
      sheet: sheetFor({ plugCloses: 'down', airMovesStem: 'up' }, { caseRatingPa: '16' }),
    });
    answer(run, { moves: 'yes', contactLeavesPa: '17 psi', contactTouchesPa: '3 psi' });
    expect(run.job.step).toBe('ventFirst');
  });

  test('is vented and shown zero before anything else: the card leads on only with a zero', () => {
    const run = jobAt('contactFound');
    answer(run, { moves: 'yes', contactLeavesPa: '22 psi', contactTouchesPa: '3 psi' });
    answer(run, { airZeroPa: '4 psi', method: 'gauge' });
    expect(run.job.step).toBe('ventFirst');
    answer(run, { airZeroPa: '0', method: 'gauge' });
    expect(run.job.step).toBe('haltAir');
    expect(run.job.situation.states.signalAir).toBe('isolated');
  });
});

describe('A stem that is said to move', () => {
  test('wants its numbers: with one left blank the line would say that it does not move', () => {
    const run = jobAt('contactFound');
    const lines = run.job.answers.length;
    expect(() => answer(run, { moves: 'yes', contactLeavesPa: '3.3 psi' })).toThrow(/Touches its seat at/);
    expect(run.job.answers).toHaveLength(lines);
    answer(run, { moves: 'no' });
    expect(run.job.answers.at(-1)?.outcome).toBe('does not move');
  });

  test('is vented first where the air was too much, though a number is left blank', () => {
    const run = jobAt('contactFound');
    answer(run, { moves: 'yes', contactLeavesPa: '22 psi' });
    expect(run.job.step).toBe('ventFirst');
  });
});

describe('A table', () => {
  test('takes a row left blank as read at the signal that the card asked for', () => {
    const run = jobAt('asFoundCycle');
    answer(run, { travelM: '0 %' });
    expect(Number(run.job.tables.asFoundCycle?.[0]?.signal.valueSi) / PSI_PA).toBeCloseTo(3, 3);
    expect(run.job.tables.asFoundCycle?.[0]?.signal.typed).toBe('3 psi');
  });

  test('refuses a row far from the signal that the card asked for', () => {
    const run = jobAt('asFoundCycle');
    const far = refusalOf(() => answer(run, { signalPa: '5 psi', travelM: '0 %' }));
    expect(far).toMatchObject({ code: 'REA-011', what: '5 psi is not the setting of this row.' });
    answer(run, { signalPa: '4 psi', travelM: '7 %' });
    expect(run.job.tables.asFoundCycle).toHaveLength(1);
  });

  test('is read from its start again where the work comes back to it', () => {
    const run = jobAt('chooseWork');
    expect(run.job.tables.asFoundCycle).toHaveLength(9);
    act(run, { kind: 'make-safe', reason: '' });
    answer(run, { airZeroPa: '0', method: 'gauge' });
    answer(run, { choice: 'goOn' });
    scripted(run);
    answer(run, { choice: 'cycle' });
    expect(run.job.step).toBe('asFoundCycle');
    expect(run.job.tables.asFoundCycle).toEqual([]);
  });
});

describe('A stem that must not be turned', () => {
  test.each([{ bellowsSeal: 'yes' }, { stemPinned: 'yes' }])('never comes to the turning: %o', (texts) => {
    const run = jobAt('chooseWork', { sheet: sheetFor({ plugCloses: 'down', airMovesStem: 'up' }, texts) });
    answer(run, { choice: 'setPlug' });
    expect(run.job.step).toBe('mustNotTurn');
    answer(run, { choice: 'back' });
    expect(run.job.step).toBe('chooseWork');
  });

  test('is also one with too little thread left in its connector', () => {
    const run = playTo(openJob(), 'threadLook');
    answer(run, { choice: 'tooLittle' });
    expect(run.job.step).toBe('mustNotTurn');
  });
});

describe('What the stroke says', () => {
  /** The cycle and three strokes to mid-range, each at the given travel in percent. */
  function verdict(cycle: readonly number[], mid: readonly number[]): string {
    const run = jobAt('asFoundCycle');
    for (const percent of cycle) answer(run, { travelM: `${percent} %` });
    for (const percent of mid) answer(run, { travelM: `${percent} %` });
    answer(run);
    return run.job.answers.at(-1)?.outcome ?? '';
  }
  const STRAIGHT = [0, 25, 50, 75, 100, 75, 50, 25, 0];

  test('is inside where every reading is', () => {
    expect(verdict(STRAIGHT, [50, 50, 50])).toBe('inside');
  });

  test('does not repeat where three strokes to mid-range differ, whatever else it says', () => {
    expect(verdict(STRAIGHT, [45, 50, 55])).toBe('does not repeat');
    expect(verdict([0, 35, 60, 75, 100, 75, 60, 35, 0], [45, 50, 55])).toBe('does not repeat');
  });

  test('is outside where the error is, gauge counted in', () => {
    expect(verdict([0, 33, 50, 75, 100, 75, 50, 33, 0], [50, 50, 50])).toBe('outside');
  });

  test('is too close for the gauge near the limit', () => {
    // 5 % allowed; 0.0866 psi in 12 psi and 0.0023 in in 0.75 in are 0.78 % together.
    expect(verdict([0, 29.8, 50, 75, 100, 75, 50, 29.8, 0], [50, 50, 50])).toBe('too close');
  });
});
