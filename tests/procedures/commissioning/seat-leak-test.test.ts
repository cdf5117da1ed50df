import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { fromSi } from '../../../procedures/calculations/units.ts';
import { SETTINGS } from '../../../procedures/commissioning/settings.ts';
import { shownAtHold } from '../../../procedures/hold.ts';
import { sayFigure } from '../../../procedures/say.ts';
import { seatTestOf } from '../../../procedures/seat-test.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { jobOn, outcomesOf, pathOf, play, playOne } from '../../builders/answers.ts';
import { gearFor, gearItem } from '../../builders/gear.ts';
import { act } from '../../builders/jobs.ts';
import { refusalOf } from '../../builders/refusals.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';

const served = SETTINGS.find(({ definition }) => definition.id === 'seat-leak-test');
if (served === undefined) throw new Error('it is not served');
const seat = served;

const OTHER_SUPERVISOR = { id: 'p-second', role: 'supervisor' };

function opened(sheet: ValveSheet = aSheet(), place: 'line' | 'bench' = 'line') {
  return jobOn(seat, { sheet, place, gear: { ...gearFor(place), seatGauge: gearItem('seatGauge') } });
}

const PRESSED = { seatTestPa: '50 psi', jointsTight: 'yes' };
const OFF = { seatTestPa: '', seatZeroPa: '0 psi', method: 'gauge' };
const GIVEN = {
  pressOn: PRESSED,
  letOffTight: OFF,
  letOffLeaking: OFF,
  letOffAgain: OFF,
  ventSeat: OFF,
};

/** What a glass holds after five minutes at a share of what this valve may leak. */
function glass(share: number, sheet: ValveSheet = aSheet()) {
  const ml = fromSi({ valueSi: 300 * share * seatTestOf(sheet).allowedM3PerS, unit: 'ml' });
  return { seatTestPa: '50 psi', leakBy: 'glass', leakTimeS: '300 s', leakVolumeM3: `${ml} ml` };
}

const VI = aSheet({ leakageClass: 'VI', portDiameterM: 0.1016 });

describe('[SAF-09] The seat test', () => {
  test.each(['line', 'bench'] as const)(
    'of a seat that keeps its class ends with the air away and the valve back, %s',
    (place) => {
      const run = play(opened(aSheet(), place), { overrides: { ...GIVEN, measure: glass(0.5) } });
      expect(run.job.closedAs).toBe('done');
      expect(outcomesOf(run.job, 'measure')).toEqual(['tight enough']);
      expect(pathOf(run.job).includes('inletOpenTight')).toBe(place === 'bench');
      expect(auditJob(run.entries, run.compiled)).toEqual([]);
    },
  );

  test('has its verdict looked at while the work goes on, and does not close before (HP-03)', () => {
    const run = play(opened(), { overrides: { ...GIVEN, measure: glass(0.5) }, to: 'leakReview' });
    expect(sayFigure('leakFound', run.job)).toMatch(
      /^\d[\d.]* ml\/min ± \d[\d.]* ml\/min in a glass, 300 s, tight enough$/,
    );
    expect(JSON.stringify(shownAtHold(run.job, run.compiled.definition))).toContain(
      sayFigure('leakFound', run.job),
    );
    act(run, { kind: 'go-on' });
    expect(run.job.step).toBe('rigOff');
    play(run, { to: 'loopBack' });
    expect(refusalOf(() => playOne(run)).code).toBe('HLD-013');
    act(run, { kind: 'review', about: run.job.signing.reviews[0]?.place ?? 0 }, OTHER_SUPERVISOR);
    play(run);
    expect(run.job.closedAs).toBe('done');
  });

  test.each(['line', 'bench'] as const)(
    'is measured again where its verdict is sent back, the rig still on, %s',
    (place) => {
      const run = play(opened(aSheet(), place), {
        overrides: { ...GIVEN, measure: glass(0.5) },
        to: 'leakReview',
      });
      act(
        run,
        { kind: 'send-back', reason: 'too short for so little', disposition: 'again' },
        OTHER_SUPERVISOR,
      );
      expect(run.job.step).toBe(place === 'line' ? 'rigLine' : 'rigBench');
      play(run, { overrides: { ...GIVEN, measure: glass(0.5) } });
      expect(outcomesOf(run.job, 'measure')).toEqual(['tight enough', 'tight enough']);
      expect(run.job.closedAs).toBe('done');
    },
  );

  test('says on its card what this very valve may leak', () => {
    const { job } = play(opened(), { overrides: GIVEN, to: 'measure' });
    expect(sayFigure('allowedLeak', job)).toMatch(/^\d[\d.]* l\/min of air$/);
    expect(sayFigure('seatStandard', job)).toBe('ANSI/FCI 70-2');
    expect(sayFigure('bubblesAllowed', job)).toBe('none given');
  });

  test('of a seat that leaks lets the pressure off before anything is done about it, then has it stroked and tested again', () => {
    const { job } = play(opened(), {
      overrides: {
        ...GIVEN,
        measure: [glass(3), glass(0.4)],
        seatLeaks: { choice: 'stroke' },
      },
    });
    expect(outcomesOf(job, 'measure')).toEqual(['leaks', 'tight enough']);
    expect(pathOf(job).indexOf('letOffLeaking')).toBeLessThan(pathOf(job).indexOf('seatLeaks'));
    expect(job.closedAs).toBe('done');
  });

  test('may be done again on the bench, the inlet opened in between', () => {
    const { job } = play(opened(aSheet(), 'bench'), {
      overrides: { ...GIVEN, measure: [glass(3), glass(0.4)], seatLeaks: { choice: 'stroke' } },
    });
    expect(pathOf(job)).toContain('inletOpenLeaking');
    expect(job.closedAs).toBe('done');
  });

  test.each([
    ['close to what it may', glass(1.02), 'too close'],
    ['for half a minute', { ...glass(0.5), leakTimeS: '30 s' }, 'too short'],
    ['with nothing collected', { ...glass(0.5), leakVolumeM3: '' }, 'not read'],
    [
      'by bubbles, which its class has none of',
      { ...glass(0.5), leakBy: 'bubbles', leakBubbles: '3' },
      'way does not fit',
    ],
    ['by a meter that was not read', { ...glass(0.5), leakBy: 'meter' }, 'not read'],
    ['shut in without its volume', { ...glass(0.5), leakBy: 'shut in' }, 'not read'],
  ])('says nothing of a seat that was watched %s', (_, measure, outcome) => {
    const { job } = play(opened(), { overrides: { ...GIVEN, measure }, to: 'measureAgain' });
    expect(outcomesOf(job, 'measure')).toEqual([outcome]);
  });

  test('takes a pressure that falls for no test', () => {
    const measure = { ...glass(0.1), seatTestPa: '40 psi' };
    const { job } = play(opened(), { overrides: { ...GIVEN, measure }, to: 'pressureFails' });
    expect(outcomesOf(job, 'measure')).toEqual(['too little pressure']);
  });

  test.each([
    [{ seatTestPa: '40 psi', jointsTight: 'yes' }, 'too little'],
    [{ seatTestPa: '50 psi', jointsTight: 'no' }, 'joint leaks'],
  ])('does not measure while the pressure does not stand: %j', (pressOn, outcome) => {
    const { job } = play(opened(), { overrides: { ...GIVEN, pressOn }, to: 'pressureFails' });
    expect(outcomesOf(job, 'pressOn')).toEqual([outcome]);
    expect(job.situation.states.processInlet).toBe('live');
  });

  test('with more pressure than its standard allows is let off first, whatever else was read', () => {
    const run = play(opened(), {
      overrides: { ...GIVEN, pressOn: { seatTestPa: '61 psi', jointsTight: 'yes' } },
      to: 'ventSeat',
    });
    expect(outcomesOf(run.job, 'pressOn')).toEqual(['above limit']);
    const { job } = play(run, { overrides: GIVEN, to: 'haltAir' });
    expect(job.situation.states).toMatchObject({ processInlet: 'isolated', signalAir: 'isolated' });
  });

  // FCI table: 11 bubbles a minute for a port of 4 in.
  test.each([
    ['55', 'tight enough', 'letOffTight'],
    ['56', 'leaks', 'letOffLeaking'],
  ])('of class VI counts %s bubbles in five minutes as %s', (leakBubbles, outcome, to) => {
    const measure = { seatTestPa: '50 psi', leakBy: 'bubbles', leakTimeS: '300 s', leakBubbles };
    const { job } = play(opened(VI), { overrides: { ...GIVEN, measure }, to });
    expect(outcomesOf(job, 'measure')).toEqual([outcome]);
  });

  // Ideal-gas case: 2 l from 130 to 140 kPa in 300 s at 20 degrees are 2.73517e-5 mol/s, 0.658 ml/s at room conditions.
  test('by the outlet side shut in counts what came in, its uncertainty with it', () => {
    const measure = {
      seatTestPa: '50 psi',
      leakBy: 'shut in',
      leakTimeS: '300 s',
      outletStartPa: '130 kPa',
      outletEndPa: '140 kPa',
      outletVolumeM3: '2 l',
    };
    const { job } = play(opened(), { overrides: { ...GIVEN, measure }, to: 'letOffTight' });
    const { leakM3PerS, uncertaintyM3PerS } = job.figures.measure ?? {};
    expect(Number(leakM3PerS) * 1e6).toBeCloseTo(0.65795, 3);
    expect(Number(uncertaintyM3PerS)).toBeGreaterThan(0.1 * Number(leakM3PerS));
  });

  test('by a meter takes its flow', () => {
    const measure = { seatTestPa: '50 psi', leakBy: 'meter', leakTimeS: '60 s', leakFlowM3PerS: '10 l/min' };
    const { job } = play(opened(), { overrides: { ...GIVEN, measure }, to: 'letOffLeaking' });
    expect(outcomesOf(job, 'measure')).toEqual(['leaks']);
  });

  test('does not begin where something comes without test pressure', () => {
    const { job } = play(opened(), {
      overrides: { nothingComes: { nothingComes: 'no' } },
      to: 'somethingComes',
    });
    expect(pathOf(job)).not.toContain('pressOn');
  });

  test('is offered where an allowance can be worked out, and says why not for the others', () => {
    expect(seat.whyNot(aSheet(), 'line')).toBeNull();
    expect(seat.whyNot(aSheet({ leakageClass: 'I' }), 'line')).toContain('Class I');
    expect(seat.whyNot(aSheet({ leakageClass: 'V' }), 'line')).toContain('bench');
    expect(seat.whyNot(aSheet({ leakageClass: 'V' }), 'bench')).toBeNull();
    expect(seat.whyNot(aSheet({ actuatorKind: 'piston' }), 'line')).toContain('cylinder');
    expect(seat.whyNot(aSheet({ outletPoint: null }), 'line')).toContain('block valve');
  });

  test('of a valve that air shuts is held shut by its signal, no more', () => {
    const texts = { airMovesStem: 'down', airAction: 'air-to-close', failPosition: 'open' };
    const { job } = play(opened(aSheetOf(texts)), { to: 'strokeSeat' });
    expect(sayFigure('seatShutBy', job)).toBe('15.00 psi on the case, which shuts it');
    expect(sayFigure('seatShutBy', opened().job)).toContain('spring shuts it');
  });
});
