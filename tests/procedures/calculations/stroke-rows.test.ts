import { describe, expect, it } from 'vitest';
import { judgeRows, MOST_ROWS, type StrokeRow } from '../../../procedures/calculations/stroke-rows.ts';
import { expectRefused } from './support.ts';

const row: StrokeRow = { signalPa: 60000, travelM: 0.0096, direction: 'up', cycle: 1 };
const against = {
  rangeLowPa: 20000,
  rangeHighPa: 100000,
  ratedTravelM: 0.02,
  airAction: 'air-to-open' as const,
};

describe('a row of the stroke table', () => {
  it('is worked out: what the signal asks for, how far open it stood, its error', () => {
    expect(judgeRows({ ...against, rows: [row] })[0]).toMatchObject({
      index: 0,
      signalPercent: 50,
      wantedPercent: 50,
      openPercent: expect.closeTo(48, 9),
      errorPercent: expect.closeTo(-2, 9),
      leftOut: null,
    });
  });

  it('may give its travel in percent', () => {
    const { travelM: _, ...bare } = row;
    expect(judgeRows({ ...against, rows: [{ ...bare, travelPercent: 48 }] })[0]).toMatchObject({
      travelM: 0.0096,
    });
  });

  it('of air-to-close is held against the falling line', () => {
    const shut = judgeRows({
      ...against,
      airAction: 'air-to-close',
      rows: [{ ...row, signalPa: 40000, travelM: 0.015 }],
    });
    expect(shut[0]).toMatchObject({ signalPercent: 25, wantedPercent: 75, errorPercent: 0 });
  });

  it('on the seat is kept, but left out: below contact for air-to-open, above it for air-to-close', () => {
    const rows = [25000, 31000, 32000, 90000].map((signalPa) => ({ ...row, signalPa }));
    const leftOut = (input: object) =>
      judgeRows({ ...against, ...input, rows }).map((one) => one.leftOut === 'on seat');
    expect(leftOut({ contactPa: 31000 })).toEqual([true, true, false, false]);
    expect(leftOut({ contactPa: 31000, contactMarginPa: 2000 })).toEqual([true, true, true, false]);
    expect(leftOut({ contactPa: 80000, airAction: 'air-to-close' })).toEqual([false, false, false, true]);
    expect(leftOut({ contactPa: null })).toEqual([false, false, false, false]);
  });

  it('that a stop held is left out by its place', () => {
    const judged = judgeRows({ ...against, rows: [row, row], excludedRows: [1] });
    expect(judged.map(({ leftOut }) => leftOut)).toEqual([null, 'at a stop']);
  });

  it('with an impossible figure is refused by its name', () => {
    const judged = (change: object) => () => judgeRows({ ...against, rows: [{ ...row, ...change }] });
    expectRefused(judged({ signalPa: Number.NaN }), { code: 'CALC-001', name: 'signal' });
    expectRefused(judged({ travelM: Number.NaN }), { code: 'CALC-001', name: 'travelM' });
    expectRefused(judged({ travelM: undefined }), { code: 'CALC-004', name: 'rows' });
    expectRefused(judged({ travelM: undefined, travelPercent: Number.NaN }), {
      code: 'CALC-001',
      name: 'travelPercent',
    });
    expectRefused(judged({ direction: 'sideways' }), { code: 'CALC-005', name: 'direction' });
    expectRefused(judged({ cycle: Number.NaN }), { code: 'CALC-001', name: 'cycle' });
  });

  it('is refused alone with the range that it is held against', () => {
    const changed = (change: object) => () => judgeRows({ ...against, rows: [row], ...change });
    expectRefused(changed({ ratedTravelM: 0 }), { code: 'CALC-002', name: 'ratedTravelM' });
    expectRefused(changed({ rangeHighPa: 20000 }), { code: 'CALC-003', name: 'rangeHigh' });
    expectRefused(changed({ contactMarginPa: -1 }), { code: 'CALC-002', name: 'contactMarginPa' });
    expectRefused(changed({ contactPa: Number.NaN }), { code: 'CALC-001', name: 'contactPa' });
  });

  it('is one of some, not of none and not of thousands', () => {
    expectRefused(() => judgeRows({ ...against, rows: [] }), { code: 'CALC-004', name: 'rows' });
    const many = Array.from({ length: MOST_ROWS + 1 }, () => row);
    expectRefused(() => judgeRows({ ...against, rows: many }), { code: 'CALC-004', name: 'rows' });
  });
});
