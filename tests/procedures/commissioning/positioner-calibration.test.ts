import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { FIGURES } from '../../../procedures/quantities.ts';
import { CYCLE_POINTS, pointField } from '../../../procedures/rules/own-stroke.ts';
import { procedureNamed } from '../../../procedures/served.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { POSITIONER_SHEET as SHEET } from '../../builders/own-air-valve.ts';

const found = procedureNamed('positioner-calibration');
if (found === undefined) throw new Error('positioner-calibration is not served');
const served = found;

const PISTON = {
  ...SHEET,
  actuatorKind: 'piston',
  springHeldBy: 'no spring',
  failPosition: 'stays',
  supplyLowPa: 35 * PSI_PA,
  supplyHighPa: 50 * PSI_PA,
} as const;

const strokes = (of: (percent: number, way: 'up' | 'down') => number) =>
  Object.fromEntries(
    CYCLE_POINTS.map((point) => [
      pointField(point, 'travel'),
      `${Math.min(100, Math.max(0, of(point.percent, point.direction)))} %`,
    ]),
  );
const step = (from: number, furthest: number, rest: number, more = {}) => ({
  stepFromM: `${from} %`,
  stepFurthestM: `${furthest} %`,
  stepRestM: `${rest} %`,
  ...more,
});
const GOOD: Overrides = {
  supplyRead: { supplyReadPa: '20 psi' },
  strokeFound: strokes((percent) => percent),
  stepIt: step(45, 55.5, 55),
};

function playOf(
  overrides: Overrides,
  { to, sheet = SHEET, place = 'line' }: { to?: string; sheet?: ValveSheet; place?: 'line' | 'bench' } = {},
) {
  const run = jobOn(served, { sheet, place });
  return play(run, { overrides: { ...GOOD, ...overrides }, ...(to === undefined ? {} : { to }) });
}

describe('[SAF-09] A positioner that is calibrated', () => {
  test.each(['line', 'bench'] as const)('is done whole and given back, %s', (place) => {
    const run = playOf({}, { place });
    expect(run.job.closedAs).toBe('done');
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('on the bench is asked nothing of a line, and its hoses come off at zero alone', () => {
    const run = playOf({}, { place: 'bench' });
    const path = pathOf(run.job);
    expect(path).not.toContain('openBypass');
    expect(path.indexOf('benchAirOn')).toBeGreaterThan(path.indexOf('lookBeforeStroke'));
    expect(path.indexOf('benchLinesOff')).toBeGreaterThan(path.indexOf('benchAirOff'));
    expect(run.job.situation.states).toMatchObject({
      testAir: 'off',
      signalAir: 'isolated',
      consent: 'none',
    });
    const live = { supplyBeforePa: '20 psi', supplyAfterPa: '12 psi' };
    const kept = playOf({ benchAirOff: live }, { place: 'bench', to: 'benchAirThere' });
    expect(kept.job.situation.states.signalAir).toBe('live');
  });

  test.each([
    ['three percent high all along', (percent: number) => percent + 8, 'zero off', 'zeroOff'],
    ['ten percent short', (percent: number) => 0.9 * percent, 'span off', 'spanOff'],
    [
      'right at its ends and seven percent high in the middle',
      (percent: number) => percent + (percent === 50 ? 7 : 0),
      'middle off',
      'middleOff',
    ],
    [
      'twelve percent apart at the middle',
      (percent: number, way: string) => percent + (percent === 50 ? (way === 'up' ? -6 : 6) : 0),
      'apart up and down',
      'apart',
    ],
  ] as const)('%s is told so', (_, of, outcome, to) => {
    const run = playOf({ strokeFound: strokes(of) }, { to });
    expect(outcomesOf(run.job, 'strokeFound')).toEqual([outcome]);
  });

  test('shows on the next card what it measured', () => {
    const { job } = playOf({ strokeFound: strokes((percent) => percent + 8) }, { to: 'zeroOff' });
    expect(FIGURES.strokeZero.of(job)).toBeCloseTo(8, 6);
    expect(FIGURES.strokeSpan.of(job)).toBeCloseTo(0, 6);
    expect(FIGURES.strokeLine.of(job)).toBeCloseTo(0, 6);
  });

  test('is set with its cover off and read again with its cover on', () => {
    const run = playOf({
      strokeFound: strokes((percent) => percent + 8),
      strokeLeft: strokes((percent) => percent),
    });
    const path = pathOf(run.job);
    expect(path.indexOf('coverOn')).toBeGreaterThan(path.indexOf('setZeroSpan'));
    expect(path.indexOf('strokeLeft')).toBeGreaterThan(path.indexOf('coverOn'));
    // As left stands in the place of as found.
    expect(FIGURES.strokeZero.of(run.job)).toBeCloseTo(0, 6);
  });

  test('with an electric cover keeps it shut', () => {
    const sheet = { ...SHEET, positioner: 'electropneumatic' } as const;
    const run = playOf(
      { strokeFound: strokes((percent) => percent + 8), strokeLeft: strokes((percent) => percent) },
      { sheet },
    );
    expect(pathOf(run.job)).toContain('byKeys');
    expect(pathOf(run.job)).not.toContain('coverOff');
  });

  test('with a slack linkage is not set over it', () => {
    const run = playOf({ linkage: { linkageTight: 'no' } });
    expect(pathOf(run.job)).not.toContain('setZeroSpan');
    expect(run.job.closedAs).toBe('done');
  });
});

describe('The dead band', () => {
  const band = (turned: string, down: string, up: string, ending = 'Pa') => ({
    deadBand: {
      [`turnedAt${ending}`]: turned,
      [`movedDownAt${ending}`]: down,
      [`movedUpAt${ending}`]: up,
    },
  });

  // By hand: 0.06 psi of 12 psi is half a percent, 0.24 psi two; 0.32 mA of 16 mA is two percent.
  test.each([
    ['0.06 psi of twelve', band('9', '8.94', '9'), {}, 0.5, 'inside'],
    ['0.24 psi of twelve', band('9', '8.76', '9'), {}, 2, 'outside'],
    ['wider on its way up', band('9', '8.94', '9.18'), {}, 2, 'outside'],
    ['0.32 mA', band('12', '11.68', '12', 'A'), { positioner: 'electropneumatic' }, 2, 'outside'],
  ] as const)('of %s is held against what it may be', (_, deadBand, sheet, percent, outcome) => {
    const to = outcome === 'inside' ? 'stepIt' : 'deadBandWide';
    const { job } = playOf(deadBand, { to, sheet: { ...SHEET, ...sheet } });
    expect(Number(job.figures.deadBand?.deadBandPercent)).toBeCloseTo(percent, 6);
  });

  test('of a valve with a narrower sheet is held to that', () => {
    const sheet = { ...SHEET, hysteresisTolerancePercent: 0.4, errorTolerancePercent: 0.5 };
    const run = playOf(band('9', '8.94', '9'), { sheet, to: 'deadBandWide' });
    expect(FIGURES.deadBandLimit.of(run.job)).toBe('0.4 %');
  });

  test('that was not read is asked for', () => {
    expect(playOf(band('9', '', '9'), { to: 'deadBandNotRead' }).job.step).toBe('deadBandNotRead');
  });
});

describe('A step of a tenth', () => {
  test.each([
    ['settles without overshoot', step(45, 55, 55), 'settles'],
    // By hand: three percent past a step of ten.
    ['goes three past ten', step(45, 58, 55), 'swings'],
    ['is said to swing', step(45, 55, 55, { stepSettles: 'swings' }), 'swings'],
    ['creeps', step(45, 55, 55, { stepSettles: 'creeps' }), 'creeps'],
    ['does not stir', step(45, 45, 45), 'creeps'],
    [
      'has its times the wrong way round',
      step(45, 55, 55, { stepT63S: '2', stepT86S: '1' }),
      'times do not fit',
    ],
    ['was not read', { stepFromM: '', stepRestM: '' }, 'not read'],
  ] as const)('that %s is told so', (_, stepIt, outcome) => {
    const to = { settles: 'nextPerson', 'times do not fit': 'stepTimes', 'not read': 'stepNotRead' }[
      outcome as string
    ];
    const run = playOf({ stepIt }, { to: to ?? 'stepBad' });
    expect(outcomesOf(run.job, 'stepIt')).toEqual([outcome]);
  });

  test('keeps its times and its gain', () => {
    const { job } = playOf(
      { stepIt: step(45, 55.5, 54, { stepT63S: '0.8', stepT86S: '1.4' }) },
      { to: 'nextPerson' },
    );
    expect(job.figures.stepIt).toMatchObject({ t63S: 0.8, t86S: 1.4 });
    expect(Number(job.figures.stepIt?.stepGain)).toBeCloseTo(0.9, 6);
    expect(Number(job.figures.stepIt?.overshootPercent)).toBeCloseTo((100 * 1.5) / 9, 6);
  });

  test('names the travel at which each time is taken', () => {
    const { job } = playOf({}, { to: 'stepIt' });
    // 1 - 1/e and 1 - 1/e² of ten percent above 45 %.
    expect(FIGURES.stepFirstTravel.of(job)).toContain('51.3 %');
    expect(FIGURES.stepSecondTravel.of(job)).toContain('53.6 %');
  });
});

describe('Both sides of a cylinder', () => {
  const sides = (moving: readonly [number, number], rest: readonly [number, number], more = {}) => ({
    cylinderGauges: {
      topMovingPa: `${moving[0]} psi`,
      bottomMovingPa: `${moving[1]} psi`,
      topRestPa: `${rest[0]} psi`,
      bottomRestPa: `${rest[1]} psi`,
      gaugesAnswer: 'yes',
      ...more,
    },
  });
  const supply = { supplyRead: { supplyReadPa: '45 psi' } };

  test.each([
    ['as they should be', sides([10, 14], [12, 12]), 'as expected', 'nextPerson'],
    ['with the wrong side higher', sides([14, 10], [12, 12]), 'loaded side not higher', 'relayDead'],
    ['with a side that stays empty', sides([10, 14], [0, 12]), 'a side is dead', 'relayDead'],
    [
      'with a side that does not answer',
      sides([10, 14], [12, 12], { gaugesAnswer: 'no' }),
      'a side is dead',
      'relayDead',
    ],
    // By hand: 50 lbf of packing and 88 psi on a half-inch stem are 67 lbf, 0.67 psi on 100 in2.
    ['far apart at rest', sides([10, 14], [9, 13]), 'more load than expected', 'cylinderLoad'],
    // The smaller side, its rod taken off, pulls half a pound short on these gauges.
    ['alike while it moves', sides([12, 12.1], [12, 12]), 'too close', 'cylinderClose'],
    ['not all read', sides([10, 14], [12, 12], { topRestPa: '' }), 'not read', 'cylinderNotRead'],
  ] as const)('%s are told so', (_, gauges, outcome, to) => {
    const run = playOf({ ...supply, ...gauges }, { sheet: PISTON, to });
    expect(outcomesOf(run.job, 'cylinderGauges')).toEqual([outcome]);
  });

  test('name what packing and body pressure explain at rest', () => {
    const { job } = playOf({ ...supply }, { sheet: PISTON, to: 'cylinderGauges' });
    expect(Number(FIGURES.cylinderRest.of(job)) / PSI_PA).toBeCloseTo((50 + (88 * Math.PI) / 16) / 100, 2);
  });
});
