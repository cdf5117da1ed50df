import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { auditJob } from '../../../procedures/audit.ts';
import { adjusterTurnsForShift, benchSet } from '../../../procedures/calculations/bench-set.ts';
import { SETTINGS } from '../../../procedures/commissioning/settings.ts';
import { sayFigure } from '../../../procedures/say.ts';
import { springRateOf } from '../../../procedures/valve-sheet/derived.ts';
import { testAirLimit } from '../../../safety/limits.ts';
import { jobOn, type Overrides, outcomesOf, pathOf, play } from '../../builders/answers.ts';
import { PSI_PA } from '../../builders/gear.ts';
import { aSheet, aSheetOf } from '../../builders/sheets.ts';
import { validSheets } from '../../builders/valid-sheets.ts';

const served = SETTINGS.find(({ definition }) => definition.id === 'bench-set');
if (served === undefined) throw new Error('it is not served');
const job = served;

/** What friction takes each way, as signal. */
const FRICTION_PSI = 0.3;

/** Both ends as read in psi, friction on both sides of them, over a travel in inches. */
function ends(
  lowPsi: number,
  highPsi: number,
  travelIn: number,
  more: Readonly<Record<string, string>> = {},
) {
  return {
    moves: 'yes',
    plugJoined: 'yes',
    benchLowUpPa: `${lowPsi + FRICTION_PSI} psi`,
    benchHighUpPa: `${highPsi + FRICTION_PSI} psi`,
    benchHighDownPa: `${highPsi - FRICTION_PSI} psi`,
    benchLowDownPa: `${lowPsi - FRICTION_PSI} psi`,
    benchTravelM: `${travelIn} in`,
    ...more,
  };
}

/** FV-214 with two turns on its plug: contact 1.6 psi early, 0.10 in of lift lost (by hand, 1600 lbf/in on 100 in2). */
const RIGHT = ends(4.6, 15, 0.65);

describe('[SAF-09] The bench set', () => {
  test.each(['line', 'bench'] as const)(
    'that is right is read, told what its line makes of it, and given back, %s',
    (place) => {
      const run = play(jobOn(job, { place }), { overrides: { benchFound: RIGHT } });
      expect(run.job.closedAs).toBe('done');
      expect(outcomesOf(run.job, 'benchFound')).toEqual(['inside']);
      expect(pathOf(run.job)).toContain('lineExpected');
      expect(auditJob(run.entries, run.compiled)).toEqual([]);
    },
  );

  test('is told without friction, and friction by itself', () => {
    const { figures } = play(jobOn(job), { overrides: { benchFound: RIGHT }, to: 'lineExpected' }).job;
    const found = figures.benchFound ?? {};
    expect(Number(found.benchLowFoundPa) / PSI_PA).toBeCloseTo(4.6, 6);
    expect(Number(found.benchHighFoundPa) / PSI_PA).toBeCloseTo(15, 6);
    // By hand: 0.3 psi on 100 in2 are 30 lbf.
    expect(Number(found.frictionN) / 4.4482216).toBeCloseTo(30, 4);
  });

  test('with both ends a pound high is wound down by turns worked out for this adjuster, and read again', () => {
    const overrides: Overrides = { benchFound: ends(5.6, 16, 0.65), benchLeft: RIGHT };
    const at = play(jobOn(job), { overrides, to: 'windAdjuster' });
    const sheet = aSheet();
    const { turns, turn } = adjusterTurnsForShift({
      springRateNPerM: springRateOf(sheet),
      effectiveAreaM2: sheet.effectiveAreaM2,
      threadPitchM: sheet.adjusterThreadPitchM ?? 0,
      wantedShiftPa: -PSI_PA,
    });
    // By hand: 1600/18 lbf on 100 in2 are 0.889 psi a turn.
    expect([turns, turn]).toEqual([expect.closeTo(1.125, 6), 'slacken']);
    expect(sayFigure('adjusterDirection', at.job)).toBe('slacken');
    expect(sayFigure('adjusterTurns', at.job)).toContain('1.1');
    const { job: done } = play(at, { overrides });
    expect(outcomesOf(done, 'benchFound')).toEqual(['both ends shifted']);
    expect(outcomesOf(done, 'benchLeft')).toEqual(['inside']);
    expect(done.closedAs).toBe('done');
  });

  test('that the case holds is not wound: both ends shifted there are the spring, and its own job comes next', () => {
    const sheet = aSheetOf({ springHeldBy: 'case', adjusterThread: '' });
    const { job: at } = play(jobOn(job, { sheet }), {
      overrides: { benchFound: ends(5.6, 16, 0.65) },
      to: 'noAdjuster',
    });
    expect(pathOf(at)).not.toContain('adjusterNote');
    expect(pathOf(at)).not.toContain('endsShifted');
  });

  test('with another spring says rate and area, whatever its ends say', () => {
    // By hand: a spring of 2000 lbf/in takes 15 psi for 0.75 in.
    const { job: at } = play(jobOn(job), {
      overrides: { benchFound: ends(3, 18, 0.75, { plugJoined: 'no' }) },
      to: 'spanDiffers',
    });
    expect(outcomesOf(at, 'benchFound')).toEqual(['span differs']);
    const { effectiveAreaM2, travelM } = aSheet();
    const stiff = benchSet({
      effectiveAreaM2,
      travelM,
      benchSetLowPa: 3 * PSI_PA,
      benchSetHighPa: 18 * PSI_PA,
    });
    expect(at.figures.benchFound?.springRateFoundNPerM).toBeCloseTo(stiff.springRateNPerM, 3);
  });

  test.each([
    ['contact where the bench set begins: the turns are missing', ends(3, 15, 0.75), 'seat end off'],
    ['the same with the plug parted: nothing is missing', ends(3, 15, 0.75, { plugJoined: 'no' }), 'inside'],
    ['a fifth of a pound off', ends(4.8, 15.2, 0.65), 'too close'],
    ['a stem that does not move', { ...RIGHT, moves: 'no' }, 'does not move'],
    ['an end that was not read', { ...RIGHT, benchHighDownPa: '' }, 'does not move'],
    ['more air than this case may have', ends(4.6, 21, 0.65), 'above limit'],
  ])('with %s is told so', (_, benchFound, outcome) => {
    const run = jobOn(job);
    play(run, { overrides: {}, to: 'benchFound' });
    play(run, { overrides: { benchFound }, to: NEXT[outcome] ?? '' });
    expect(outcomesOf(run.job, 'benchFound')).toEqual([outcome]);
  });

  test('of a pinned stem says nothing of its seat', () => {
    const sheet = aSheetOf({ stemPinned: 'yes', seatingTurns: '' });
    const { job: at } = play(jobOn(job, { sheet }), {
      overrides: { benchFound: ends(3.9, 15, 0.694) },
      to: 'lineExpected',
    });
    expect(outcomesOf(at, 'benchFound')).toEqual(['inside']);
  });

  test('is offered for a spring on a diaphragm only', () => {
    expect(job.whyNot(aSheet(), 'line')).toBeNull();
    expect(job.whyNot(aSheet({ actuatorKind: 'piston' }), 'bench')).toContain('by its maker’s manual alone');
    const cylinder = aSheet({ actuatorKind: 'piston', springHeldBy: 'no spring' });
    expect(job.whyNot(cylinder, 'bench')).toContain('no bench set');
    expect(job.whyNot(aSheet({ springHeldBy: 'no spring' }), 'bench')).toContain('no spring');
    expect(job.whyNot(aSheet({ inletPoint: null }), 'line')).toContain('block valve');
  });
});

test('[SAF-09] The bench set never asks for more air than a case may have, whatever the valve', () => {
  fc.assert(
    fc.property(validSheets, (sheet) => {
      if (job.whyNot(sheet, 'bench') === null)
        expect(sheet.benchSetHighPa).toBeLessThanOrEqual(testAirLimit(sheet).limitPa);
      else expect(job.whyNot(sheet, 'bench')).toContain('above the test air');
    }),
  );
});

const NEXT: Readonly<Record<string, string>> = {
  inside: 'lineExpected',
  'seat end off': 'seatEndOff',
  'too close': 'endsTooClose',
  'does not move': 'endsNotRead',
  'above limit': 'ventFirst',
};
