import { describe, expect, test } from 'vitest';
import {
  airActionOf,
  failPositionOf,
  figuresOf,
  stemMayTurn,
} from '../../../procedures/valve-sheet/derived.ts';
import { aSheet } from '../../builders/sheets.ts';

/** 1 psi and 1 lbf/in, NIST SP 811. */
const PSI_PA = 6894.757293168361;
const LBF_PER_INCH = 175.12683524647636;

describe('what follows from a valve sheet', () => {
  test.each([
    ['down', 'up', 'air-to-open', 'shut'],
    ['down', 'down', 'air-to-close', 'open'],
    ['up', 'up', 'air-to-close', 'open'],
    ['up', 'down', 'air-to-open', 'shut'],
  ] as const)(
    'plug closes %s and air moves the stem %s: %s, and with a spring %s on loss of air',
    (...valve) => {
      const [plugCloses, airMovesStem, airAction, fails] = valve;
      expect(airActionOf({ plugCloses, airMovesStem })).toBe(airAction);
      expect(failPositionOf({ airAction, springHeldBy: 'adjuster' })).toBe(fails);
      expect(failPositionOf({ airAction, springHeldBy: 'case' })).toBe(fails);
      expect(failPositionOf({ airAction, springHeldBy: 'no spring' })).toBe('stays');
    },
  );

  test('a stem under a bellows seal or with a pin is never turned', () => {
    expect(stemMayTurn({ bellowsSeal: false, stemPinned: false })).toBe(true);
    expect(stemMayTurn({ bellowsSeal: true, stemPinned: false })).toBe(false);
    expect(stemMayTurn({ bellowsSeal: false, stemPinned: true })).toBe(false);
  });

  test('12 psi on 100 in² over 0.75 in is 1600 lbf/in, and 3 psi on it is 300 lbf', () => {
    const figures = figuresOf(aSheet({ springRateNPerM: null }));
    expect((figures.springRateNPerM ?? 0) / LBF_PER_INCH).toBeCloseTo(1600, 9);
    expect(figures.springRateFrom).toBe('bench set');
    expect((figures.preloadN ?? 0) / 4.4482216152605).toBeCloseTo(300, 9);
  });

  test('a spring rate on the sheet outranks the one that is worked out', () => {
    expect(figuresOf(aSheet({ springRateNPerM: 300000 }))).toMatchObject({
      springRateNPerM: 300000,
      springRateFrom: 'sheet',
    });
  });

  test('without a spring there is neither rate nor preload', () => {
    expect(figuresOf(aSheet({ springHeldBy: 'no spring' }))).toMatchObject({
      springRateNPerM: null,
      springRateFrom: 'no spring',
      preloadN: null,
    });
  });

  test.each([
    [50, 15, 20, 'signal and margin'],
    [18, 15, 18, 'case rating'],
    [null, 15, 20, 'signal and margin'],
    [null, 38, 40, 'blank case rating'],
  ])('case rating %s psi and signal up to %d psi: test air up to %d psi, by the %s', (...figures) => {
    const [rating, signal, limit, because] = figures;
    const { testAir } = figuresOf(
      aSheet({ caseRatingPa: rating === null ? null : rating * PSI_PA, signalHighPa: signal * PSI_PA }),
    );
    expect(testAir.limitPa / PSI_PA).toBeCloseTo(limit, 9);
    expect(testAir.because).toBe(because);
  });
});
