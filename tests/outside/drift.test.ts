import { expect, test } from 'vitest';
import { driftLine } from '../../procedures/calculations/drift.ts';
import { coverageFactorFor } from '../../procedures/calculations/uncertainty.ts';
import norris from './fixtures/norris.json' with { type: 'json' };

/** How many leading digits two numbers share. */
function digitsOf(got: number, certified: number): number {
  return got === certified ? 15 : -Math.log10(Math.abs(got - certified) / Math.abs(certified));
}

test('a line through the certified data set Norris has the certified height, slope and uncertainties', () => {
  const { x, y, slope, slopeStandardDeviation, intercept, interceptStandardDeviation } = norris;
  const line = driftLine(x.map((timeS, at) => ({ timeS, valueSi: y[at] ?? Number.NaN, uncertaintySi: 0.5 })));
  const height = line.middleSi - line.driftSi * line.middleTimeS;
  const heightDeviation = Math.hypot(line.middleUncertaintySi, line.driftUncertaintySi * line.middleTimeS);
  expect(x.length).toBe(36);
  expect(line.degreesOfFreedom).toBe(norris.degreesOfFreedom);
  for (const [got, certified] of [
    [line.driftSi, slope],
    [line.driftUncertaintySi, slopeStandardDeviation],
    [height, intercept],
    [heightDeviation, interceptStandardDeviation],
  ] as const)
    expect(digitsOf(got, certified)).toBeGreaterThan(10);
  expect(line.isDrifting).toBe(true);
});

/** GUM (JCGM 100:2008), table G.2: Student's t at 95.45 %. */
test.each([
  [3, 3.31],
  [4, 2.87],
  [5, 2.65],
  [10, 2.28],
  [20, 2.13],
  [50, 2.05],
])(
  'with %i degrees of freedom an interval at 95.45 percent is %f times the standard uncertainty',
  (degreesOfFreedom, factor) => {
    expect(coverageFactorFor({ degreesOfFreedom })).toBeCloseTo(factor, 2);
  },
);
