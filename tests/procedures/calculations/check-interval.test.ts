import { describe, expect, it } from 'vitest';
import { checkInterval } from '../../../procedures/calculations/check-interval.ts';
import { expectRefused } from './support.ts';

const DAY_S = 24 * 3600;
const LIMITS = { limitLowSi: -5, limitHighSi: 5 };

function every(days: number, values: readonly number[]) {
  return values.map((valueSi, at) => ({ timeS: at * days * DAY_S, valueSi, uncertaintySi: 1 }));
}

describe('the interval until the next check', () => {
  it('is proposed from five points over more than a year, and from nothing less', () => {
    expect(checkInterval({ points: every(100, [0, 0.1, 0, 0.2]), ...LIMITS })).toBeNull();
    expect(checkInterval({ points: every(91, [0, 0.1, 0, 0.2, 0.1]), ...LIMITS })).toBeNull();
    expect(checkInterval({ points: every(92, [0, 0.1, 0, 0.2, 0.1]), ...LIMITS })).not.toBeNull();
    expect(checkInterval({ points: [], ...LIMITS })).toBeNull();
  });

  it('ends at the early end of the date of leaving', () => {
    const found = checkInterval({ points: every(182, [0, 1.1, 1.9, 3.1, 3.9]), ...LIMITS });
    const { line, leaving, intervalS, isCapped } = found ?? {};
    expect(isCapped).toBe(false);
    expect(intervalS).toBe((leaving?.earliestTimeS ?? 0) - (line?.lastTimeS ?? 0));
    // The line ends at 4.0 and rises by 1 in half a year; the gauges alone give its end 0.77 either way. It is left
    // 0.23 to the limit, at 1 and a quarter in half a year: about 35 days.
    expect((intervalS ?? 0) / DAY_S).toBeGreaterThan(30);
    expect((intervalS ?? 0) / DAY_S).toBeLessThan(45);
  });

  it('is never longer than the history', () => {
    const found = checkInterval({ points: every(182, [0, 0.1, 0, 0.1, 0]), ...LIMITS });
    expect(found).toMatchObject({ intervalS: 4 * 182 * DAY_S, isCapped: true });
  });

  it('is none where the limit is as good as met', () => {
    expect(checkInterval({ points: every(182, [1, 2, 3, 4, 5.2]), ...LIMITS })?.intervalS).toBe(0);
  });

  it('is refused by name for a time that is none', () => {
    const points = [{ timeS: Number.NaN, valueSi: 1, uncertaintySi: 1 }];
    expectRefused(() => checkInterval({ points, ...LIMITS }), { code: 'CALC-001', name: 'timeS' });
  });
});
