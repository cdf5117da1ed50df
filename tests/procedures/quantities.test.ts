import { describe, expect, test } from 'vitest';
import { FIGURES, isFigureName } from '../../procedures/quantities.ts';
import { fill, placeholdersIn, say, sayFigure } from '../../procedures/say.ts';
import { turnsWanted } from '../../procedures/seating.ts';
import { jobAt, openJob } from '../builders/jobs.ts';
import { sheetFor } from '../builders/stroke-script.ts';

const OPENS = { plugCloses: 'down', airMovesStem: 'up' } as const;
const CLOSES = { plugCloses: 'down', airMovesStem: 'down' } as const;
const jobOf = (geometry: typeof OPENS | typeof CLOSES, texts = {}) =>
  openJob({ sheet: sheetFor(geometry, texts) }).job;

describe('A text of a card', () => {
  test('carries the numbers of this valve in its units', () => {
    expect(fill('Set {benchSetMid}, {tag}.', jobOf(OPENS))).toBe('Set 9.00 psi, FV-214.');
    expect(fill('At most {testAirLimit}: {testAirBecause}.', jobOf(OPENS))).toBe(
      'At most 20.00 psi: the highest signal and 5.00 psi over it.',
    );
    const fed = {
      positioner: 'pneumatic',
      positionerRisingSignalLoads: 'bottom',
      benchSetHighPa: '20',
      springRateNPerM: '',
    };
    expect(fill('{testAirLimit}: {testAirBecause}', jobOf(OPENS, { ...fed, supplyHighPa: '40' }))).toBe(
      '25.00 psi: the end of its bench set and 5.00 psi over it, which its positioner gives it in service',
    );
    expect(sayFigure('testAirBecause', jobOf(OPENS, { ...fed, supplyHighPa: '22' }))).toContain(
      'the highest supply',
    );
    const blank = jobOf(OPENS, { caseRatingPa: '', signalHighPa: '40' });
    expect(sayFigure('testAirBecause', blank)).toContain('the sheet names no rating of the case');
    expect(fill('Up to {testAirLimit}: {testAirBecause}.', jobOf(OPENS, { caseRatingPa: '14' }))).toContain(
      'the rating of the case',
    );
  });

  test('names every figure that it leaves open', () => {
    expect(placeholdersIn('Set {benchSetMid} on {tag}, {tag}.')).toEqual(['benchSetMid', 'tag', 'tag']);
    expect(fill('No {suchThing} here.', jobOf(OPENS))).toBe('No {suchThing} here.');
    expect(isFigureName('toString')).toBe(false);
  });

  test('says so where the sheet does not', () => {
    expect(sayFigure('bypassPoint', jobOf(OPENS, { bypassPoint: '' }))).toBe('not on the sheet');
    expect(sayFigure('seatLoadNeed', jobOf(OPENS, { seatLoadNPerM: '' }))).toBe('not on the sheet');
  });
});

describe('What the flow would do', () => {
  // By hand: 100 psi on a 1 in port are 78.5 lbf, on 100 in2 0.79 psi; flow under the plug opens it.
  test('names the end of the range that it moves, how far and which way', () => {
    const text = 'Flow would move {rangeMoved} of its range by {rangeMovedBy}.';
    expect(fill(text, jobOf(OPENS))).toBe('Flow would move the lower end of its range by 0.79 psi down.');
  });
});

describe('Turns', () => {
  test('are said as they are counted', () => {
    const said = (turns: number) => say({ valueSi: turns, dimension: 'turns', units: 'us' });
    expect([2, 1, 1.25, 0.5].map(said)).toEqual(['2 turns', '1 turn', '1.25 turns', '0.5 turns']);
  });
});

describe('The open end', () => {
  test('is the top of the range where air opens, the bottom where air closes', () => {
    expect(sayFigure('openEndSignal', jobOf(OPENS))).toBe('15.00 psi');
    expect(sayFigure('openEndSignal', jobOf(CLOSES))).toBe('3.00 psi');
  });
});

describe('Turns after contact', () => {
  test('are those of the sheet, or two by common practice, or those that the seat load needs', () => {
    expect(turnsWanted(jobOf(OPENS, { seatingTurns: '3' }))).toEqual({ turns: 3, because: 'sheet' });
    expect(turnsWanted(jobOf(OPENS, { seatingTurns: '', seatLoadNPerM: '', seatLoadSource: '' }))).toEqual({
      turns: 2,
      because: 'common practice',
    });
    // 30 lbf/in on a 1 in port are 94.2 lbf; a turn of 1/20 in on 1600 lbf/in is 80 lbf: 1.18, so 1.25 turns.
    expect(turnsWanted(jobOf(OPENS, { seatingTurns: '' }))).toEqual({ turns: 1.25, because: 'seat load' });
  });
});

test('Every figure can be said of a valve whose job has just been opened', () => {
  for (const name of Object.keys(FIGURES))
    expect(sayFigure(name, jobOf(CLOSES)), name).not.toMatch(/NaN|undefined|\{/);
});

test('The adjuster is wound against the shift that was found', () => {
  const shifted = jobAt('chooseWork').job;
  const job = {
    ...shifted,
    figures: { ...shifted.figures, asFoundVerdict: { benchSetShiftPa: 0.6 * 6894.757293168361 } },
  };
  // 0.6 psi on 100 in2 are 60 lbf; a turn of 1/18 in on 1600 lbf/in is 88.9 lbf.
  expect(Number(FIGURES.adjusterTurns.of(job))).toBeCloseTo(60 / (1600 / 18), 6);
  expect(sayFigure('adjusterDirection', job)).not.toBe('not on the sheet');
  expect(sayFigure('adjusterTurns', jobOf(OPENS))).toBe('not on the sheet');
});
