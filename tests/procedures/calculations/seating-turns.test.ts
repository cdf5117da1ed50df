import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type PlugCloses,
  seatingTurns,
  stemTurn,
  travelAfterSeating,
} from '../../../procedures/calculations/seating-turns.ts';
import { fromSi, toSi } from '../../../procedures/calculations/units.ts';
import {
  between,
  expectClose,
  expectMonotone,
  expectRefused,
  refusesEachNonNumber,
  refusesOrAnswers,
} from './support.ts';

const psi = (value: number) => toSi({ value, unit: 'psi' });

/** A of 100 in², 3-15 psi over 0.75 in, 1/2-20 stem, two turns: the example that everybody gets wrong. */
const example = {
  plugCloses: 'down' as const,
  airAction: 'air-to-open' as const,
  effectiveAreaM2: toSi({ value: 100, unit: 'in2' }),
  benchSetLowPa: psi(3),
  benchSetHighPa: psi(15),
  travelM: toSi({ value: 0.75, unit: 'in' }),
  threadPitchM: toSi({ value: 0.05, unit: 'in' }),
  turns: 2,
};

describe('seating turns', () => {
  it('follow from how the plug closes: down is out and longer, up is in and shorter', () => {
    expect(stemTurn({ plugCloses: 'down' })).toEqual({ screwPlugStem: 'out', stemGets: 'longer' });
    expect(stemTurn({ plugCloses: 'up' })).toEqual({ screwPlugStem: 'in', stemGets: 'shorter' });
    expectRefused(() => stemTurn({ plugCloses: 'left' as PlugCloses }), {
      code: 'CALC-005',
      name: 'plugCloses',
    });
  });

  it('never follow from the air action', () => {
    const open = seatingTurns(example);
    const shut = seatingTurns({ ...example, airAction: 'air-to-close' });
    expect(open.screwPlugStem).toBe(shut.screwPlugStem);
  });

  it.each([
    ['air-to-open', 4.6],
    ['air-to-close', 13.4],
  ] as const)('of the worked example, %s: contact at %d psi', (airAction, contactPsi) => {
    const done = seatingTurns({ ...example, airAction });
    expect(fromSi({ valueSi: done.plugShiftM, unit: 'in' })).toBeCloseTo(0.1, 12);
    expect(fromSi({ valueSi: done.seatLoadGainN, unit: 'lbf' })).toBeCloseTo(160, 9);
    expect(fromSi({ valueSi: done.signalShiftPa, unit: 'psi' })).toBeCloseTo(1.6, 10);
    expect(fromSi({ valueSi: done.contactPa, unit: 'psi' })).toBeCloseTo(contactPsi, 10);
    expect(done.liftLostPercent).toBeCloseTo(13.3333, 4);
    expect(fromSi({ valueSi: done.liftLeftM, unit: 'in' })).toBeCloseTo(0.65, 12);
    expect(fromSi({ valueSi: done.springRateNPerM, unit: 'lbf/in' })).toBeCloseTo(1600, 8);
  });

  it('take the spring rate of the sheet where it has one', () => {
    const rate = toSi({ value: 800, unit: 'lbf/in' });
    const halved = seatingTurns({ ...example, springRateNPerM: rate });
    expectClose(halved.seatLoadGainN, seatingTurns(example).seatLoadGainN / 2);
    expectClose(
      seatingTurns({ ...example, springRateNPerM: null }).seatLoadGainN,
      seatingTurns(example).seatLoadGainN,
    );
  });

  it('gain more load and lose more lift with each turn', () => {
    const gain = (turns: number) => seatingTurns({ ...example, turns }).seatLoadGainN;
    expectMonotone({ of: gain, from: 0, to: 14, rises: true });
    expectMonotone({
      of: (turns) => seatingTurns({ ...example, turns }).liftLeftM,
      from: 0,
      to: 14,
      rises: false,
    });
  });

  it('that would leave no lift, or go backwards, are refused', () => {
    expectRefused(() => seatingTurns({ ...example, turns: 15 }), { code: 'CALC-002', name: 'turns' });
    expectRefused(() => seatingTurns({ ...example, turns: -1 }), { code: 'CALC-002', name: 'turns' });
    expectRefused(() => seatingTurns({ ...example, springRateNPerM: 0 }), {
      code: 'CALC-002',
      name: 'springRateNPerM',
    });
    refusesEachNonNumber(seatingTurns, example);
    refusesOrAnswers(seatingTurns, example);
  });
});

describe('the indicator after seating turns', () => {
  const stroke = {
    signal: 9,
    rangeLow: 3,
    rangeHigh: 15,
    airAction: 'air-to-open' as const,
    ratedTravelM: 0.02,
    liftLostPercent: 40 / 3,
  };

  it('still shows 50 % at mid signal: travel is counted from the open end', () => {
    expect(travelAfterSeating(stroke)).toMatchObject({ openPercent: 50, onSeat: false });
    expect(travelAfterSeating({ ...stroke, airAction: 'air-to-close' })).toMatchObject({
      openPercent: 50,
      onSeat: false,
    });
  });

  it('stops where the plug meets its seat, at 4.6 psi', () => {
    expect(travelAfterSeating({ ...stroke, signal: 4.5 })).toMatchObject({
      openPercent: 40 / 3,
      onSeat: true,
    });
    expect(travelAfterSeating({ ...stroke, signal: 4.7 })).toMatchObject({ onSeat: false });
    expect(travelAfterSeating({ ...stroke, signal: 13.5, airAction: 'air-to-close' })).toMatchObject({
      onSeat: true,
    });
  });

  it('never shows less than the lift that is lost', () => {
    fc.assert(
      fc.property(between(0, 20), between(0, 100), (signal, liftLostPercent) => {
        const shown = travelAfterSeating({ ...stroke, signal, liftLostPercent });
        expect(shown.openPercent).toBeGreaterThanOrEqual(liftLostPercent);
        expect(shown.openPercent).toBeLessThanOrEqual(100);
      }),
    );
  });

  it('refuses a loss of more than the stroke', () => {
    expectRefused(() => travelAfterSeating({ ...stroke, liftLostPercent: 101 }), {
      code: 'CALC-002',
      name: 'liftLostPercent',
    });
    refusesEachNonNumber(travelAfterSeating, stroke);
    refusesOrAnswers(travelAfterSeating, stroke);
  });
});
