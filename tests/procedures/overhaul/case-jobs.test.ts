import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { OVERHAUL } from '../../../procedures/overhaul/procedures.ts';
import { sayFigure } from '../../../procedures/say.ts';
import type { ServedProcedure } from '../../../procedures/served-procedure.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { act, answer } from '../../builders/jobs.ts';
import { aSheetOf } from '../../builders/sheets.ts';

function served(id: string): ServedProcedure {
  const found = OVERHAUL.find(({ definition }) => definition.id === id);
  if (found === undefined) throw new Error(`${id} is not served`);
  return found;
}

const DIAPHRAGM = served('diaphragm-renewal');
const SPRING = served('spring-change');
const CASE_HELD = aSheetOf({ springHeldBy: 'case', adjusterThread: '' });

/** 3 psi on 100 in2 press a spring of 1600 lbf/in together by 0.1875 in. */
const ROOM: Overrides = { springNew: { newLengthM: '6.1875 in', springRoomM: '6 in' } };

const EVERY = [DIAPHRAGM, SPRING].flatMap((procedure) =>
  (['line', 'bench'] as const).flatMap((place) =>
    (['adjuster', 'case'] as const).map((heldBy) => ({
      procedure,
      place,
      heldBy,
      id: procedure.definition.id,
    })),
  ),
);

describe.each(EVERY)('[SAF-09] $id, $place, spring held by the $heldBy', ({ procedure, place, heldBy }) => {
  const sheet = heldBy === 'case' ? CASE_HELD : aSheetOf({});
  const run = play(jobOn(procedure, { place, sheet }), { overrides: heldBy === 'case' ? ROOM : {} });
  const path = pathOf(run.job);

  test('is done, with everything off and the log borne out', () => {
    expect(run.job.closedAs).toBe('done');
    expect(run.job.situation.states).toMatchObject({ testAir: 'off', supplyLock: 'off', closure: 'shut' });
    expect(outcomesOf(run.job, 'soapLeft')).toEqual(['tight']);
    expect(outcomesOf(run.job, 'benchSetLeft')).toEqual(['as the sheet']);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('frees the spring in its own order before the cover comes off', () => {
    const freed = heldBy === 'case' ? ['shortBolts', 'longBolts'] : ['freeSpring', 'loosenCase'];
    const order = [...freed, 'coverOff'].map((step) => path.indexOf(step));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order).not.toContain(-1);
    expect(path.includes('freeSpring')).toBe(heldBy === 'adjuster');
  });
});

describe('A case is not opened', () => {
  test('on a spring that is not free: the card is refused, whatever the machine says', () => {
    const run = play(jobOn(DIAPHRAGM), { to: 'freeSpring' });
    const forced = { ...run, job: { ...run.job, step: 'loosenCase' } };
    expect(() => answer(forced, { coverStill: 'yes' })).toThrow(Refusal);
  });

  test('further once its cover follows the nuts: run down, freed further, and only then loosened again', () => {
    const follows: Overrides = {
      loosenCase: [{ coverStill: 'no' }, {}],
      freeAgain: { adjusterTurnsOff: '6' },
    };
    const run = play(jobOn(DIAPHRAGM), { overrides: follows, to: 'freeAgain' });
    expect(run.job.situation.states).toMatchObject({ spring: 'contained', closure: 'shut' });
    play(run, { overrides: follows });
    expect(outcomesOf(run.job, 'loosenCase')).toEqual(['no', 'yes']);
    expect(run.job.closedAs).toBe('done');
  });

  test('further on long bolts that do not stand sound', () => {
    const job = jobOn(DIAPHRAGM, { sheet: CASE_HELD });
    const run = play(job, { overrides: { shortBolts: { longStay: 'no' } }, to: 'longNotSound' });
    expect(run.job.situation.states).toMatchObject({ spring: 'loaded', shortBolts: 'out' });
    act(run, { kind: 'make-safe', reason: 'no bolts here' });
    expect(run.job.step).toBe('haltLoaded');
  });

  test('further once the cover follows the long bolts, and is run down again from there', () => {
    const stuck = jobOn(DIAPHRAGM, { sheet: CASE_HELD });
    const run = play(stuck, { overrides: { longBolts: { coverLoose: 'no' } }, to: 'longBoltsNotFree' });
    act(run, { kind: 'make-safe', reason: 'end of the shift' });
    expect(run.job.step).toBe('haltLoaded');
    play(run, { to: 'haltAirAway' });
    expect(run.job.situation.states).toMatchObject({
      spring: 'contained',
      shortBolts: 'in',
      closure: 'shut',
    });
  });
});

describe('After the case was shut', () => {
  test('a joint that leaks gets its nuts again, and soap again', () => {
    const leaks: Overrides = { soapLeft: [{ caseJointAir: 'yes' }, {}], whereAir: { choice: 'soap' } };
    const { job } = play(jobOn(DIAPHRAGM), { overrides: leaks });
    expect(outcomesOf(job, 'soapLeft')).toEqual(['case joint', 'tight']);
    expect(pathOf(job)).toContain('nutsAgain');
  });

  test('air that still comes through has the case opened again, the spring first', () => {
    const leaks: Overrides = { soapLeft: [{ springSideAir: 'yes' }, {}] };
    const { job } = play(jobOn(DIAPHRAGM), { overrides: leaks });
    expect(pathOf(job).filter((step) => step === 'freeSpring')).toHaveLength(2);
    expect(job.closedAs).toBe('done');
  });

  test('a diaphragm that is sound is said so, and a wrong new one does not go in unasked', () => {
    const { job } = play(jobOn(DIAPHRAGM), {
      overrides: { diaphragmLook: { diaphragmFound: 'sound' }, diaphragmNew: [{ diaphragmSame: 'no' }, {}] },
    });
    expect(outcomesOf(job, 'diaphragmLook')).toEqual(['sound']);
    expect(outcomesOf(job, 'diaphragmNew')).toEqual(['no', 'yes']);
  });
});

describe('A new spring', () => {
  test('of the wrong rate is refused before it goes in, with what it would do', () => {
    const run = play(jobOn(SPRING), {
      overrides: { springNew: { newRateNPerM: '2000 lbf/in' } },
      to: 'springWrong',
    });
    // By hand: 2000 lbf/in over 0.75 in on 100 in2 are 15 psi of span, from 3 psi.
    expect(sayFigure('newBenchHigh', run.job)).toBe('18.00 psi');
    expect(outcomesOf(run.job, 'springNew')).toEqual(['wrong span']);
  });

  test('that wants more air than the case may have does not go in', () => {
    const run = play(jobOn(SPRING), {
      overrides: { springNew: { newRateNPerM: '3000 lbf/in' } },
      to: 'springTooMuch',
    });
    expect(outcomesOf(run.job, 'springNew')).toEqual(['too much for the case']);
  });

  test('is wound by count from where it touches: 3 psi on 100 in2 at 1600 lbf/in are 3.375 turns of 18 to the inch', () => {
    const { job } = play(jobOn(SPRING), { to: 'windNew' });
    expect(sayFigure('turnsFromTouch', job)).toBe('3.38 turns');
    expect(sayFigure('newBenchLow', job)).toBe('3.00 psi');
    expect(sayFigure('newBenchHigh', job)).toBe('15.00 psi');
  });
});
