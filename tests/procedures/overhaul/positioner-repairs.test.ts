import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import {
  AIR_AS_IT_SHOULD,
  EMPTY,
  FULL,
  POSITIONER_SHEET,
  repairNamed,
  SWINGS,
  swing,
} from '../../builders/own-air-valve.ts';
import { aSheet } from '../../builders/sheets.ts';

function playing(id: string, overrides: Overrides, to?: string) {
  return play(jobOn(repairNamed(id), { sheet: POSITIONER_SHEET, place: 'line' }), {
    overrides: { ...AIR_AS_IT_SHOULD, ...overrides },
    ...(to === undefined ? {} : { to }),
  });
}

const held = (start: number, end: number, bellowsBled = 'yes') => ({
  bellowsStartPa: `${start} psi`,
  bellowsEndPa: `${end} psi`,
  bellowsBled,
});

describe('[SAF-09] The input bellows of a positioner', () => {
  const LEAKS: Overrides = { holdFound: held(15, 11), handFound: held(15, 11), handLeft: held(15, 15) };

  test('is tried in its place, renewed with air and signal off, tried again, and set', () => {
    const run = playing('positioner-bellows', LEAKS);
    const path = pathOf(run.job);
    expect(run.job.closedAs).toBe('done');
    expect(path.indexOf('holdFound')).toBeLessThan(path.indexOf('shutSupply'));
    expect(path.indexOf('actuatorZero')).toBeLessThan(path.indexOf('lineOff'));
    expect(path.indexOf('handLeft')).toBeLessThan(path.indexOf('lineBack'));
    expect(path.indexOf('zeroSpan')).toBeLessThan(path.indexOf('strokeLeft'));
    expect(run.job.situation.states).toMatchObject({ controllerLine: 'connected', supplyLock: 'off' });
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test('that is tight in its place is not taken out', () => {
    const { job } = playing('positioner-bellows', { ...LEAKS, holdFound: held(15, 15) });
    expect(pathOf(job)).not.toContain('shutSupply');
    expect(job.closedAs).toBe('done');
  });

  test('without a cock is tried by hand, the supply locked off, before it comes out', () => {
    const { job } = playing('positioner-bellows', {
      ...LEAKS,
      signalCock: { choice: 'none' },
      triedBefore: { choice: 'no' },
    });
    expect(outcomesOf(job, 'handFound')).toEqual(['falls']);
    expect(job.closedAs).toBe('done');
  });

  // By hand: the range ends at 15 psi and 5 psi over it is the most; half of the range is 9 psi.
  test.each([
    [held(15, 15), 'holds'],
    [held(15, 12), 'falls'],
    [held(5, 5), 'too little signal'],
    [held(20.6, 20.6), 'above range'],
    [held(15, 15, 'no'), 'still under air'],
  ])('says of %j: %s', (read, outcome) => {
    const run = playing('positioner-bellows', { holdFound: read }, 'holdFound');
    const { job } = play(run, { overrides: { holdFound: read }, to: nextOf(outcome) });
    expect(outcomesOf(job, 'holdFound')).toEqual([outcome]);
  });

  test('whose new gasket leaks is taken out again', () => {
    const { job } = playing('positioner-bellows', {
      ...LEAKS,
      handLeft: [held(15, 12), held(15, 15)],
      leftFalls: { choice: 'out' },
    });
    expect(pathOf(job).filter((step) => step === 'bellowsIn')).toHaveLength(2);
    expect(job.closedAs).toBe('done');
  });
});

function nextOf(outcome: string): string {
  const { holdFound } = repairNamed('positioner-bellows').definition.steps;
  const to = holdFound?.kind === 'reading' ? holdFound.ways[outcome]?.to : undefined;
  if (typeof to !== 'string') throw new Error(`nothing follows ${outcome}`);
  return to;
}

describe('[SAF-09] Nozzle and flapper', () => {
  const DIRTY: Overrides = {
    swingFound: FULL,
    flapperSeen: { nozzleClean: 'no' },
    swingLeft: SWINGS,
  };

  test('are cleaned with the air on, zero and span set, the stroke read', () => {
    const run = playing('nozzle-flapper', DIRTY);
    expect(run.job.closedAs).toBe('done');
    expect(outcomesOf(run.job, 'flapperSeen')).toEqual(['dirty']);
    expect(pathOf(run.job)).not.toContain('shutSupply');
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test.each([
    [{ flapperSquare: 'no' }, 'bent'],
    [{ pivotTight: 'no' }, 'loose'],
  ])('with %j come out with the air off: %s', (seen, outcome) => {
    const run = playing('nozzle-flapper', { ...DIRTY, flapperSeen: seen });
    expect(outcomesOf(run.job, 'flapperSeen')).toEqual([outcome]);
    expect(pathOf(run.job).indexOf('actuatorZero')).toBeLessThan(pathOf(run.job).indexOf('flapperOut'));
    expect(run.job.closedAs).toBe('done');
  });

  test('that are sound and answer go on to zero and span', () => {
    const { job } = playing('nozzle-flapper', { swingFound: SWINGS });
    expect(outcomesOf(job, 'flapperSeen')).toEqual(['sound']);
    expect(pathOf(job)).not.toContain('cleanNozzle');
  });

  test('are left alone where the output is empty both ways: that is the restriction', () => {
    const { job } = playing('nozzle-flapper', { swingFound: EMPTY });
    expect(pathOf(job)).toContain('restrictionFirst');
    expect(job.closedAs).toBe('done');
  });

  test('that still do not answer are taken out', () => {
    const { job } = playing('nozzle-flapper', { ...DIRTY, swingLeft: [swing(12, 3), SWINGS] });
    expect(pathOf(job)).toEqual(expect.arrayContaining(['nozzleStill', 'flapperOut']));
    expect(job.closedAs).toBe('done');
  });
});

describe('[SAF-09] The feedback linkage', () => {
  const MENDED: Overrides = {
    linkWatched: { linkSeen: 'late' },
    linkPlay: [{ linkPlayM: '0.06 in' }, { linkPlayM: '0.01 in' }],
  };

  test('is measured and renewed with the air off, measured again, set to its marks and watched', () => {
    const run = playing('feedback-linkage', MENDED);
    const path = pathOf(run.job);
    expect(run.job.closedAs).toBe('done');
    // By hand: half of 10 % of 0.75 in are 0.0375 in.
    expect(outcomesOf(run.job, 'linkPlay')).toEqual(['worn', 'tight']);
    expect(Number(run.job.figures.linkPlay?.limitM)).toBeCloseTo(0.0375 * 0.0254, 9);
    expect(path.indexOf('actuatorZero')).toBeLessThan(path.indexOf('linkPlay'));
    expect(outcomesOf(run.job, 'linkLeft')).toEqual(['yes']);
    expect(auditJob(run.entries, run.compiled)).toEqual([]);
  });

  test.each([
    [{ linkWhole: 'no' }, 'off', 'linkMended'],
    [{ linkPlayM: '' }, 'not read', 'playNotRead'],
  ])('with %j is %s', (read, outcome, step) => {
    const { job } = playing('feedback-linkage', { ...MENDED, linkPlay: [read, { linkPlayM: '0.01 in' }] });
    expect(outcomesOf(job, 'linkPlay')[0]).toBe(outcome);
    expect(pathOf(job)).toContain(step);
  });

  test('that follows is not touched with the air on', () => {
    const { job } = playing('feedback-linkage', {
      linkWatched: { linkSeen: 'follows' },
      linkFollows: { choice: 'leave' },
    });
    expect(pathOf(job)).not.toContain('linkPlay');
    expect(job.closedAs).toBe('done');
  });

  test('is mended on any positioner, and offered to no valve without one', () => {
    const { whyNot } = repairNamed('feedback-linkage');
    expect(whyNot(aSheet({ positioner: 'electropneumatic' }), 'line')).toBeNull();
    expect(whyNot(aSheet(), 'line')).toContain('no positioner');
  });
});
