import { describe, expect, it } from 'vitest';
import {
  type LeakageClass,
  SEAT_LOAD_TABLES,
  type SeatLoadTable,
  seatLoadNeed,
} from '../../../procedures/calculations/seat-load-tables.ts';
import { SOURCES } from '../../../procedures/calculations/sources.ts';
import { toSi } from '../../../procedures/calculations/units.ts';
import { expectClose, expectRefused, refusesEachNonNumber } from './support.ts';

const port = { portDiameterM: 0.05 };

describe('a seat-load table', () => {
  const tables: readonly SeatLoadTable[] = Object.values(SEAT_LOAD_TABLES);

  it.each(tables)('$title names a source that there is, and says how far it goes', ({ source, note }) => {
    expect(Object.keys(SOURCES)).toContain(source);
    expect(note).not.toBe('');
  });

  it('disagrees with another by a factor of two: it is chosen, never assumed', () => {
    const guide = seatLoadNeed({ table: 'sizing-guide-2008', leakageClass: 'II', ...port });
    const handbook = seatLoadNeed({ table: 'handbook-metal-seats', leakageClass: 'II', ...port });
    expectClose(handbook.seatLoadNeedNPerM / guide.seatLoadNeedNPerM, 2);
    expect(guide.source).not.toBe(handbook.source);
  });

  it('may ask more of a larger port: 80 instead of 40 above 4 3/8 in', () => {
    const at = (inches: number) =>
      seatLoadNeed({
        table: 'handbook-metal-seats',
        leakageClass: 'IV',
        portDiameterM: toSi({ value: inches, unit: 'in' }),
      });
    expect([at(4).printedLbfPerIn, at(4.375).printedLbfPerIn, at(4.5).printedLbfPerIn]).toEqual([40, 40, 80]);
  });

  it('gives the need of the whole port by its circumference', () => {
    const need = seatLoadNeed({ table: 'sizing-guide-2008', leakageClass: 'V', ...port });
    expectClose(need.seatLoadNeedN, need.seatLoadNeedNPerM * Math.PI * 0.05);
  });

  it('refuses a class that it does not have instead of guessing', () => {
    const classes: readonly LeakageClass[] = ['I', 'III'];
    for (const leakageClass of classes) {
      expectRefused(() => seatLoadNeed({ table: 'sizing-guide-2008', leakageClass, ...port }), {
        code: 'CALC-005',
        name: 'leakageClass',
      });
    }
    expectRefused(() => seatLoadNeed({ table: 'handbook-metal-seats', leakageClass: 'V', ...port }), {
      code: 'CALC-005',
      name: 'leakageClass',
    });
    expectRefused(() => seatLoadNeed({ table: 'mine' as 'sizing-guide-2008', leakageClass: 'II', ...port }), {
      code: 'CALC-005',
      name: 'table',
    });
    refusesEachNonNumber(seatLoadNeed, {
      table: 'sizing-guide-2008' as const,
      leakageClass: 'II' as const,
      ...port,
    });
  });
});
