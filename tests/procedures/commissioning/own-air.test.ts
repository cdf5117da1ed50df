import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';
import { PROCEDURES } from '../../../procedures/served.ts';
import type { ServedProcedure } from '../../../procedures/served-procedure.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play, playOne } from '../../builders/answers.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { act } from '../../builders/jobs.ts';
import { aSheetOf } from '../../builders/sheets.ts';

function served(id: string): ServedProcedure {
  const found = PROCEDURES.find(({ definition }) => definition.id === id);
  if (found === undefined) throw new Error(`${id} is not served`);
  return found;
}

/** A valve with a positioner that opens on a rising signal. */
const SHEET = aSheetOf({
  positioner: 'pneumatic',
  positionerRisingSignalLoads: 'bottom',
  positionerRelays: 'one',
  supplyLowPa: '18',
  supplyHighPa: '22',
});
/** No positioner: a converter alone feeds its actuator. */
const WITH_CONVERTER = aSheetOf({ electricalV: '24', electricalPoint: 'EB-1' });
const travels = (of: (percent: number, direction: string) => number) =>
  Object.fromEntries(
    CYCLE_POINTS.map((point) => [pointField(point, 'travel'), `${of(point.percent, point.direction)} %`]),
  );
const SUPPLY = { supplyReadPa: '20 psi' };

describe('[SAF-09] A valve stroked on its own air', () => {
  const stroke = served('positioner-stroke');
  const good: Overrides = {
    supplyRead: SUPPLY,
    strokeFound: travels((percent) => percent),
    airAtHalf: { actuatorAirPa: '9 psi', airTravelM: '50 %' },
  };
  const jobWith = () => jobOn(stroke, { sheet: SHEET, place: 'line' });

  test('is taken over, stroked and given back, without a lock and without a signature', () => {
    const run = play(jobWith(), { overrides: good });
    expect(run.job.closedAs).toBe('done');
    expect(outcomesOf(run.job, 'strokeFound')).toEqual(['inside']);
    expect(run.job.holds).toEqual([]);
    expect(run.job.situation.states).toMatchObject({ inletLock: 'off', bypass: 'shut', loop: 'automatic' });
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('that is off at one end is told so, with the percent by which', () => {
    const off = travels((percent) => (percent === 100 ? 90 : percent));
    const run = play(jobWith(), { overrides: { ...good, strokeFound: off }, to: 'strokeOutside' });
    expect(Number(run.job.figures.strokeFound?.errorWorstPercent)).toBeCloseTo(-10, 6);
  });

  test('that hangs on the way down shows it as hysteresis', () => {
    const hangs = travels((percent, way) => (way === 'down' && percent === 50 ? 62 : percent));
    const run = play(jobWith(), { overrides: { ...good, strokeFound: hangs }, to: 'strokeOutside' });
    expect(Number(run.job.figures.strokeFound?.hysteresisPercent)).toBeCloseTo(12, 6);
  });

  test('is asked for what is missing where not every setting was read', () => {
    const { travelDown0M: _, ...some } = travels((percent) => percent);
    const run = play(jobWith(), {
      overrides: { ...good, strokeFound: { ...some, travelDown0M: '' } },
      to: 'strokeNotRead',
    });
    expect(outcomesOf(run.job, 'strokeFound')).toEqual(['not all read']);
  });

  // Common practice, no source: a positioner gives whatever air it takes.
  test.each([
    ['13 psi', 'more than expected'],
    ['5 psi', 'less than expected'],
    ['9 psi', 'as expected'],
  ])('with %s on the actuator at half travel wants %s', (air, outcome) => {
    const overrides = { ...good, airAtHalf: { actuatorAirPa: air, airTravelM: '50 %' } };
    const run = play(jobWith(), { overrides, to: outcome === 'as expected' ? 'nextPerson' : 'airOff' });
    expect(outcomesOf(run.job, 'airAtHalf')).toEqual([outcome]);
    expect(Number(run.job.figures.airAtHalf?.expectedPa) / PSI_PA).toBeCloseTo(9, 6);
  });

  test.each([
    ['12 psi', 'low'],
    ['30 psi', 'high'],
  ])('with %s of supply is not stroked before somebody decides', (supplyReadPa, outcome) => {
    const run = play(jobWith(), { overrides: { ...good, supplyRead: { supplyReadPa } }, to: 'supplyOut' });
    expect(outcomesOf(run.job, 'supplyRead')).toEqual([outcome]);
  });

  test('does not move before everybody is seen clear', () => {
    const run = play(jobWith(), { overrides: { lookBeforeStroke: { toolsOut: 'no' } }, to: 'notClearYet' });
    expect(pathOf(run.job)).not.toContain('strokeFound');
    expect(run.job.situation.states.clear).toBe('not looked at');
  });

  test('is left alone where a lock hangs on it', () => {
    const overrides = { noLock: { notLocked: 'no' }, lockedByOthers: { choice: 'stop' } };
    const run = play(jobWith(), { overrides });
    expect([run.job.closedAs, run.job.step]).toEqual(['stopped', 'notStarted']);
  });

  test('is not stroked with flow in it: a block valve that does not shut is decided on first', () => {
    const overrides = { blockForStroke: [{ blocksShut: 'no' }, {}] };
    const first = play(jobWith(), { overrides, to: 'blocksNotHeld' });
    expect(pathOf(first.job)).not.toContain('lookBeforeStroke');
    expect(pathOf(play(first, { overrides: good, to: 'strokeFound' }).job).slice(-4)).toEqual(
      expect.arrayContaining(['blocksNotHeld', 'blockForStroke', 'lookBeforeStroke']),
    );
  });

  test('has its block valves looked at again after every stop', () => {
    const run = play(jobWith(), { overrides: good, to: 'strokeFound' });
    act(run, { kind: 'make-safe', reason: 'called away' });
    playOne(run);
    expect(run.job.step).toBe('blockForStroke');
    playOne(run, { blockForStroke: { inletTag: '', outletTag: '' } });
    expect(run.job.step).toBe('lookBeforeStroke');
  });

  test('is offered for a valve with a positioner or a converter, in its line and on the bench', () => {
    expect(stroke.whyNot(SHEET, 'line')).toBeNull();
    expect(stroke.whyNot(SHEET, 'bench')).toBeNull();
    expect(stroke.whyNot(WITH_CONVERTER, 'line')).toBeNull();
    expect(stroke.whyNot(aSheetOf({}), 'line')).toContain('neither positioner nor converter');
    expect(
      stroke.whyNot(aSheetOf({ electricalV: '24', electricalPoint: 'EB-1', inletPoint: '' }), 'line'),
    ).toContain('block valve');
  });

  test('on the bench is stroked on shop air, and its hoses come off at zero', () => {
    const run = play(jobOn(stroke, { sheet: SHEET, place: 'bench' }), { overrides: good });
    expect(run.job.closedAs).toBe('done');
    expect(pathOf(run.job)).toContain('benchLinesOff');
    expect(run.job.situation.states).toMatchObject({ testAir: 'off', signalAir: 'isolated' });
  });

  test('that does not stand at its ends past its own part is told so', () => {
    const overrides = { ...good, pastEnds: { standsBelow: 'no' } };
    expect(play(jobWith(), { overrides, to: 'endsNotReached' }).job.step).toBe('endsNotReached');
  });

  test('fed by a converter has current and signal read together, each current as it was read', () => {
    // sig-r17 of the derived cases: 10.4 mA are 7.8 psi; 4.2 mA and 19.8 mA by hand.
    const right = {
      terminalLowA: '4.2 mA',
      valveLowPa: '3.15 psi',
      terminalMiddleA: '10.4 mA',
      valveMiddlePa: '7.8 psi',
      terminalHighA: '19.8 mA',
      valveHighPa: '14.85 psi',
    };
    const job = () => jobOn(stroke, { sheet: WITH_CONVERTER, place: 'line' });
    const run = play(job(), { overrides: { ...good, signalAtValve: right }, to: 'strokeFound' });
    expect(outcomesOf(run.job, 'signalAtValve')).toEqual(['inside']);
    expect(Number(run.job.figures.signalAtValve?.signalErrorPercent)).toBeCloseTo(0, 6);
    // By hand: 0.36 psi of 12 are three percent.
    const off = { ...right, valveMiddlePa: '8.16 psi' };
    const wrong = play(job(), { overrides: { ...good, signalAtValve: off }, to: 'signalOff' });
    expect(Number(wrong.job.figures.signalAtValve?.signalErrorPercent)).toBeCloseTo(3, 6);
    const blank = { ...right, valveLowPa: '' };
    play(job(), { overrides: { ...good, signalAtValve: blank }, to: 'signalNotRead' });
  });
});

describe('[SAF-09] The fail action', () => {
  const fail = served('fail-action');
  const good: Overrides = {
    signalLost: { wentWithoutSignal: 'shut' },
    supplyLost: { wentWithoutSupply: 'shut' },
    openSupply: { followsAgain: 'yes' },
    solenoidTrip: { solenoid: 'none' },
  };
  const sheet = aSheetOf({});

  test('of a valve that shuts on loss of air is shown, and the air given back', () => {
    expect(sheet.failPosition).toBe('shut');
    const run = play(jobOn(fail, { sheet, place: 'line' }), { overrides: good });
    expect(run.job.closedAs).toBe('done');
    expect(outcomesOf(run.job, 'supplyLost')).toEqual(['as the sheet says']);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  // FV-214 may take 10 s to open and 8 s to shut.
  test.each([
    [{ strokeOpenS: '9.5', strokeShutS: '8', runsEvenly: 'yes' }, 'even, in time', 'signalLost'],
    [{ strokeOpenS: '10.5', strokeShutS: '5', runsEvenly: 'yes' }, 'too slow', 'strokeSlow'],
    [{ strokeShutS: '8.2', runsEvenly: 'yes' }, 'too slow', 'strokeSlow'],
    [{ runsEvenly: 'yes' }, 'even, in time', 'signalLost'],
    [{ strokeOpenS: '20', runsEvenly: 'no' }, 'uneven', 'strokeUneven'],
  ])('holds the times %j against the sheet: %s', (strokeTime, outcome, to) => {
    const run = play(jobOn(fail, { sheet, place: 'line' }), { overrides: { ...good, strokeTime }, to });
    expect(outcomesOf(run.job, 'strokeTime')).toEqual([outcome]);
  });

  test('judges no time where the sheet has no limit', () => {
    const unlimited = aSheetOf({ strokeOpenMaxS: '', strokeShutMaxS: '' });
    const overrides = { ...good, strokeTime: { strokeOpenS: '300', runsEvenly: 'yes' } };
    const run = play(jobOn(fail, { sheet: unlimited, place: 'line' }), { overrides, to: 'signalLost' });
    expect(outcomesOf(run.job, 'strokeTime')).toEqual(['even, in time']);
  });

  test.each([
    ['open', 'otherwise'],
    ['part way', 'not all the way'],
  ])('that goes %s is told to the operator before anything else', (wentWithoutSupply, outcome) => {
    const overrides = { ...good, supplyLost: { wentWithoutSupply } };
    const run = play(jobOn(fail, { sheet, place: 'line' }), { overrides, to: 'failsWrong' });
    expect(outcomesOf(run.job, 'supplyLost')).toEqual([outcome]);
  });

  test('of a valve with a lock-up relay is to stay where it stood', () => {
    const run = play(jobOn(fail, { sheet: { ...sheet, lockUp: true }, place: 'line' }), {
      overrides: { ...good, supplyLost: { wentWithoutSupply: 'stays' }, keptAirDoes: { keptAirDid: 'held' } },
      to: 'airAgain',
    });
    expect(outcomesOf(run.job, 'supplyLost')).toEqual(['as the sheet says']);
  });

  test('with a lock-up relay that creeps is told to the operator, and its air comes back', () => {
    const overrides = { ...good, keptAirDoes: [{ keptAirDid: 'crept' }, { keptAirDid: 'held' }] };
    const run = play(jobOn(fail, { sheet, place: 'line' }), { overrides });
    expect(outcomesOf(run.job, 'keptAirDoes')).toEqual(['no', 'yes']);
    expect(run.job.closedAs).toBe('done');
  });

  test('is shown on the bench by the shop air, and asks for no tag there', () => {
    const run = play(jobOn(fail, { sheet, place: 'bench' }), { overrides: good });
    expect(run.job.closedAs).toBe('done');
    expect(run.job.words.supplyTag).toBeUndefined();
  });

  test('with a solenoid that does not trip it is no trip', () => {
    const overrides = { ...good, solenoidTrip: { solenoid: 'failed' } };
    const run = play(jobOn(fail, { sheet, place: 'line' }), { overrides, to: 'solenoidFails' });
    expect(run.job.step).toBe('solenoidFails');
  });
});

describe('[SAF-09] A converter', () => {
  test('is no part of a positioner that takes the current itself', () => {
    const electric = aSheetOf({
      positioner: 'electropneumatic',
      positionerRisingSignalLoads: 'bottom',
      electricalV: '24',
      electricalPoint: 'EB-1',
    });
    expect(served('converter-calibration').whyNot(electric, 'line')).toContain('takes the current itself');
    expect(served('converter-calibration').whyNot(aSheetOf({}), 'line')).toContain(
      'its voltage goes on the sheet first',
    );
  });

  const converter = served('converter-calibration');
  const sheet = aSheetOf({
    electricalV: '24',
    electricalPoint: 'EB-1',
    supplyLowPa: '18',
    supplyHighPa: '22',
  });
  const outputs = (of: (percent: number, direction: string) => number) =>
    Object.fromEntries(
      CYCLE_POINTS.map((point) => [
        pointField(point, 'output'),
        `${3 + (12 * of(point.percent, point.direction)) / 100} psi`,
      ]),
    );
  const good: Overrides = { supplyRead: SUPPLY, pointsFound: outputs((percent) => percent) };

  test('inside its limits at five points is given back', () => {
    const run = play(jobOn(converter, { sheet, place: 'line' }), { overrides: good });
    expect(run.job.closedAs).toBe('done');
    expect(outcomesOf(run.job, 'pointsFound')).toEqual(['inside']);
  });

  test('that is off by three percent of its span is set, and read again', () => {
    const run = play(jobOn(converter, { sheet, place: 'line' }), {
      overrides: {
        ...good,
        pointsFound: outputs((percent) => percent + 3),
        pointsLeft: outputs((percent) => percent),
      },
    });
    expect(outcomesOf(run.job, 'pointsFound')).toEqual(['outside']);
    expect(Number(run.job.figures.pointsFound?.errorWorstPercent)).toBeCloseTo(3, 6);
    expect(outcomesOf(run.job, 'pointsLeft')).toEqual(['inside']);
  });

  test('that gives more coming down shows it as hysteresis', () => {
    const run = play(jobOn(converter, { sheet, place: 'line' }), {
      overrides: {
        ...good,
        pointsFound: outputs((percent, way) => percent + (way === 'down' && percent === 50 ? 4 : 0)),
      },
      to: 'setConverter',
    });
    expect(Number(run.job.figures.pointsFound?.hysteresisPercent)).toBeCloseTo(4, 6);
  });
});
