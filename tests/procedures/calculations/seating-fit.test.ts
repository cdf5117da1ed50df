import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seatLoadAgainstNeed } from '../../../procedures/calculations/seat-load.ts';
import { seatingObstacles, seatingTurnsForNeed } from '../../../procedures/calculations/seating-fit.ts';
import { between, expectRefused, refusesEachNonNumber, refusesOrAnswers } from './support.ts';

const need = {
  portDiameterM: 0.05,
  seatLoadBeforeN: 2000,
  seatLoadNeedNPerM: 20000,
  springRateNPerM: 280000,
  threadPitchM: 0.00127,
};

describe('the turns that a seat load wants', () => {
  it('give just that load, and rounded up to a quarter never less', () => {
    fc.assert(
      fc.property(between(-3000, 5000), between(0, 50000), (seatLoadBeforeN, seatLoadNeedNPerM) => {
        const wanted = seatingTurnsForNeed({ ...need, seatLoadBeforeN, seatLoadNeedNPerM });
        const load = seatLoadAgainstNeed({
          ...need,
          seatLoadBeforeN,
          seatLoadNeedNPerM,
          seatLoadGainN: wanted.turnsToQuarter * need.threadPitchM * need.springRateNPerM,
        });
        expect(load.marginNPerM).toBeGreaterThan(-1e-3);
        expect(wanted.turnsToQuarter - wanted.turns).toBeLessThan(0.25);
        expect(wanted.turnsToQuarter * 4).toBe(Math.round(wanted.turnsToQuarter * 4));
      }),
    );
  });

  it('are none where the load is there already', () => {
    expect(seatingTurnsForNeed({ ...need, seatLoadBeforeN: 1e5 })).toMatchObject({
      turns: 0,
      missingN: 0,
      turnsToQuarter: 0,
    });
  });

  it('are refused for impossible figures', () => {
    expectRefused(() => seatingTurnsForNeed({ ...need, portDiameterM: 0 }), {
      code: 'CALC-002',
      name: 'portDiameterM',
    });
    expectRefused(() => seatingTurnsForNeed({ ...need, seatLoadNeedNPerM: -1 }), {
      code: 'CALC-002',
      name: 'seatLoadNeedNPerM',
    });
    refusesEachNonNumber(seatingTurnsForNeed, need);
    refusesOrAnswers(seatingTurnsForNeed, need);
  });
});

describe('a plug stem', () => {
  const facts = {
    plugCloses: 'down' as const,
    bellowsSeal: false,
    stemPinned: false,
    threadEngagedM: 0.02,
    threadEngagedMinM: 0.0127,
    threadPitchM: 0.00127,
    turns: 2,
  };

  it('is never turned with a bellows seal or a pin', () => {
    expect(seatingObstacles({ ...facts, bellowsSeal: true, stemPinned: true })).toMatchObject({
      mayTurn: false,
      obstacles: ['bellows seal', 'pinned stem'],
    });
  });

  it('is not turned out where too little thread would be left, and may be turned in', () => {
    const little = { ...facts, threadEngagedM: 0.0127 };
    expect(seatingObstacles(little).obstacles).toEqual(['too little thread left']);
    expect(seatingObstacles({ ...little, plugCloses: 'up' }).mayTurn).toBe(true);
  });

  it('with just enough thread left may be turned', () => {
    expect(seatingObstacles({ ...facts, threadEngagedM: 0.0127 + 2 * 0.00127 }).mayTurn).toBe(true);
  });

  it('whose thread was not measured has that said, not taken as good', () => {
    expect(seatingObstacles({ ...facts, threadEngagedM: null })).toMatchObject({
      unknown: ['thread left'],
      threadLeftM: null,
    });
    expect(seatingObstacles({ ...facts, threadEngagedMinM: null }).unknown).toEqual(['thread left']);
    expect(seatingObstacles(facts)).toMatchObject({ unknown: [], mayTurn: true });
  });

  it('with impossible figures is refused by name', () => {
    refusesEachNonNumber(seatingObstacles, facts);
    refusesOrAnswers(seatingObstacles, facts);
  });
});
