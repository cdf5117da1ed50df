import { describe, expect, it } from 'vitest';
import { seatLoadAgainstNeed } from '../../../procedures/calculations/seat-load.ts';
import { expectClose, expectMonotone, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const good = { portDiameterM: 0.0508, seatLoadBeforeN: 2000, seatLoadGainN: 700, seatLoadNeedNPerM: 14000 };

describe('the seat load', () => {
  it('goes by circumference, not by area: twice the port, half the load for each length', () => {
    const single = seatLoadAgainstNeed(good).seatLoadNPerM;
    expectClose(seatLoadAgainstNeed({ ...good, portDiameterM: 0.1016 }).seatLoadNPerM, single / 2);
  });

  it('that is negative is reported as such, not as none', () => {
    const open = seatLoadAgainstNeed({ ...good, seatLoadBeforeN: -5000 });
    expect(open.seatLoadN).toBe(-4300);
    expect(open.enough).toBe(false);
    expect(open.marginNPerM).toBeLessThan(-14000);
  });

  it('that just meets the need is enough', () => {
    const { seatLoadNPerM } = seatLoadAgainstNeed(good);
    expect(seatLoadAgainstNeed({ ...good, seatLoadNeedNPerM: seatLoadNPerM }).enough).toBe(true);
  });

  it('rises with the gain', () => {
    expectMonotone({
      of: (seatLoadGainN) => seatLoadAgainstNeed({ ...good, seatLoadGainN }).marginNPerM,
      from: 0,
      to: 1e4,
      rises: true,
    });
  });

  it('of impossible figures is refused by name', () => {
    refusesEachNonNumber(seatLoadAgainstNeed, good);
    refusesOrAnswers(seatLoadAgainstNeed, good);
  });
});
