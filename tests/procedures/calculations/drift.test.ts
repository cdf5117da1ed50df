import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type DatedValue,
  driftLine,
  leavingTolerance,
  noSurerThanGauges,
} from '../../../procedures/calculations/drift.ts';
import { normalChance } from '../../builders/normal-chance.ts';
import { between, expectClose, expectRefused } from './support.ts';

const DAY_S = 24 * 3600;
const isLong = process.env.YOKESIDE_LONG !== undefined;
/** Standard uncertainties of a plant's gauges, in turn: some jobs are read better than others. */
const STANDARD = [0.3, 0.6, 0.4, 0.9, 0.3, 0.5, 0.7] as const;

interface Made {
  readonly startSi: number;
  readonly driftSi: number;
  readonly count: number;
}

/** A history about half a year apart, scattered as its uncertainties say. */
function history({ startSi, driftSi, count }: Made, normal: () => number): readonly DatedValue[] {
  return Array.from({ length: count }, (_, at) => {
    const timeS = (at * 182 + (at % 3) * 20) * DAY_S;
    const standard = STANDARD[at % STANDARD.length] ?? 1;
    return { timeS, valueSi: startSi + driftSi * timeS + standard * normal(), uncertaintySi: 2 * standard };
  });
}

const UPPER = { limitLowSi: null, limitHighSi: 5 };

describe('the drift of a history', () => {
  it('lies within its stated uncertainty in ten histories of known drift, and so does the date of leaving', () => {
    // An interval at 95.45 % misses one time in 22: of ten, mostly none, as here. How often is tried below.
    const normal = normalChance(2);
    const missed: string[] = [];
    for (let of = 1; of <= 10; of += 1) {
      const driftSi = (0.3 * of) / (365 * DAY_S);
      const line = driftLine(history({ startSi: 0.5, driftSi, count: 7 }, normal));
      const trueTimeS = (5 - 0.5) / driftSi;
      const { earliestTimeS, latestTimeS } = leavingTolerance({ line, ...UPPER, fromTimeS: 0 });
      if (Math.abs(line.driftSi - driftSi) > line.coverageFactor * line.driftUncertaintySi)
        missed.push(`drift ${of}`);
      if (trueTimeS < (earliestTimeS ?? 0) || trueTimeS > (latestTimeS ?? Number.POSITIVE_INFINITY))
        missed.push(`date ${of}`);
    }
    expect(missed).toEqual([]);
  });

  it('is covered, drift and date, as often as stated, and histories without drift are not called drifting more often', () => {
    const runs = isLong ? 10_000 : 500;
    const normal = normalChance(20_261_125);
    const driftSi = 1.2 / (365 * DAY_S);
    let [alarms, drifts, dates] = [0, 0, 0];
    for (let run = 0; run < runs; run += 1) {
      if (driftLine(history({ startSi: 1, driftSi: 0, count: 6 }, normal)).isDrifting) alarms += 1;
      const line = driftLine(history({ startSi: 0, driftSi, count: 6 }, normal));
      if (Math.abs(line.driftSi - driftSi) <= line.coverageFactor * line.driftUncertaintySi) drifts += 1;
      const { earliestTimeS, latestTimeS } = leavingTolerance({ line, ...UPPER, fromTimeS: -1e12 });
      const trueTimeS = 5 / driftSi;
      const isAfter = earliestTimeS !== null && trueTimeS >= earliestTimeS;
      if (isAfter && trueTimeS <= (latestTimeS ?? Number.POSITIVE_INFINITY)) dates += 1;
    }
    // Four standard deviations of a count with the stated rate, 4.55 %.
    const slack = 4 * Math.sqrt(0.0455 * 0.9545 * runs);
    expect(Math.abs(alarms - 0.0455 * runs)).toBeLessThan(slack);
    expect(Math.abs(drifts - 0.9545 * runs)).toBeLessThan(slack);
    expect(Math.abs(dates - 0.9545 * runs)).toBeLessThan(slack);
  });

  it('gives a point of half the uncertainty the weight of four', () => {
    const [one, two, three] = [
      { timeS: 0, valueSi: 1 },
      { timeS: 10, valueSi: 4 },
      { timeS: 30, valueSi: 2 },
    ];
    const sure = (point: object, uncertaintySi: number) => ({ ...point, uncertaintySi }) as DatedValue;
    const weighted = driftLine([sure(one ?? {}, 2), sure(two ?? {}, 1), sure(three ?? {}, 2)]);
    const repeated = driftLine([
      sure(one ?? {}, 2),
      ...Array.from({ length: 4 }, () => sure(two ?? {}, 2)),
      sure(three ?? {}, 2),
    ]);
    expectClose(weighted.driftSi, repeated.driftSi);
    expectClose(weighted.middleSi, repeated.middleSi);
  });

  it('is none, and none is told, of values that never change', () => {
    const line = driftLine([0, 1, 2, 3].map((timeS) => ({ timeS, valueSi: 7, uncertaintySi: 1 })));
    expect([line.driftSi, line.isDrifting]).toEqual([0, false]);
  });

  it('is never surer than the gauges, however close together the values happen to lie', () => {
    const points = [0, 10, 20, 30].map((timeS) => ({ timeS, valueSi: 7 + timeS / 1000, uncertaintySi: 2 }));
    const alone = driftLine(points);
    const line = noSurerThanGauges({ line: alone, points });
    expect([alone.isDrifting, line.isDrifting]).toEqual([true, false]);
    // U over the root of the sum of squares about the middle, 500; and over the root of 4 for the height.
    expectClose(line.coverageFactor * line.driftUncertaintySi, 2 / Math.sqrt(500));
    expectClose(line.coverageFactor * line.middleUncertaintySi, 2 / Math.sqrt(4));
    const wide = points.map((point, at) => ({ ...point, valueSi: 100 * (at % 2) }));
    expect(noSurerThanGauges({ line: driftLine(wide), points: wide })).toEqual(driftLine(wide));
  });

  it('needs three points at two times, each with an uncertainty', () => {
    const at = (timeS: number, uncertaintySi = 1) => ({ timeS, valueSi: 1, uncertaintySi });
    expectRefused(() => driftLine([at(0), at(1)]), { code: 'CALC-004', name: 'points' });
    expectRefused(() => driftLine([at(3), at(3), at(3)]), { code: 'CALC-004', name: 'times' });
    expectRefused(() => driftLine([at(0), at(1), at(2, 0)]), { code: 'CALC-002', name: 'uncertaintySi' });
    expectRefused(() => driftLine([at(0), at(1), at(Number.NaN)]), { code: 'CALC-001', name: 'timeS' });
  });
});

describe('the date of leaving tolerance', () => {
  const steady = driftLine([0, 1, 2, 3, 4].map((at) => ({ timeS: at, valueSi: at % 2, uncertaintySi: 1 })));
  const rising = driftLine(
    [0, 1.1, 1.9, 3, 4.1].map((valueSi, timeS) => ({ timeS, valueSi, uncertaintySi: 1 })),
  );

  it('is not expected where no drift is told, yet the early end says how far the history reaches', () => {
    const { expectedTimeS, earliestTimeS, latestTimeS } = leavingTolerance({
      line: steady,
      limitLowSi: -5,
      limitHighSi: 5,
      fromTimeS: 4,
    });
    expect([expectedTimeS, latestTimeS]).toEqual([null, null]);
    expect(earliestTimeS).toBeGreaterThan(4);
  });

  it('is told of the limit that the drift runs to', () => {
    const limits = { limitLowSi: -10, limitHighSi: 10, fromTimeS: 4 };
    expect(leavingTolerance({ line: rising, ...limits }).limitSi).toBe(10);
    const falling = { ...rising, middleSi: -rising.middleSi, driftSi: -rising.driftSi };
    expect(leavingTolerance({ line: falling, ...limits }).limitSi).toBe(-10);
  });

  it('never comes where the drift runs away from the only limit', () => {
    const { earliestTimeS } = leavingTolerance({
      line: rising,
      limitLowSi: -5,
      limitHighSi: null,
      fromTimeS: 4,
    });
    expect(earliestTimeS).toBeNull();
  });

  it('is now where the limit lies within the uncertainty of the line already', () => {
    const { earliestTimeS } = leavingTolerance({
      line: rising,
      limitLowSi: null,
      limitHighSi: 4,
      fromTimeS: 4,
    });
    expect(earliestTimeS).toBe(4);
  });

  it('lies between its early and its late end, whatever the history', () => {
    const values = fc.array(between(-3, 3), { minLength: 5, maxLength: 9 });
    fc.assert(
      fc.property(values, between(0.5, 4), (scatter, drift) => {
        const line = driftLine(
          scatter.map((each, timeS) => ({ timeS, valueSi: drift * timeS + each / 4, uncertaintySi: 1 })),
        );
        const { expectedTimeS, earliestTimeS, latestTimeS } = leavingTolerance({
          line,
          limitLowSi: null,
          limitHighSi: 100,
          fromTimeS: 0,
        });
        if (expectedTimeS === null) return;
        expect(earliestTimeS ?? Number.NaN).toBeLessThanOrEqual(expectedTimeS + 1e-9);
        expect(latestTimeS ?? Number.NaN).toBeGreaterThanOrEqual(expectedTimeS - 1e-9);
      }),
    );
  });

  it('needs a limit, and limits that rise', () => {
    expectRefused(
      () => leavingTolerance({ line: rising, limitLowSi: null, limitHighSi: null, fromTimeS: 0 }),
      {
        code: 'CALC-004',
        name: 'limits',
      },
    );
    expectRefused(() => leavingTolerance({ line: rising, limitLowSi: 5, limitHighSi: -5, fromTimeS: 0 }), {
      code: 'CALC-003',
      name: 'limitHighSi',
    });
  });
});
