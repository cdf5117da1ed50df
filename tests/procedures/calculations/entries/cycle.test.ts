import { describe, expect, it } from 'vitest';
import { CYCLE_CALCULATIONS } from '../../../../procedures/calculations/entries/cycle.ts';
import { calculationOf } from '../../../../procedures/calculations/registry.ts';
import { expectRefused } from '../support.ts';

const TERMS = [
  'errorMaxPercent',
  'errorMinPercent',
  'hysteresisPercent',
  'repeatabilityPercent',
  'independentPercent',
  'terminalPercent',
  'zeroBasedPercent',
];

function termsOf(id: string, values: Readonly<Record<string, unknown>>): readonly unknown[] {
  const result = calculationOf(id).run(values);
  return TERMS.map((name) =>
    typeof result[name] === 'number' ? Number(result[name].toFixed(9)) : result[name],
  );
}

/** One stroke of 20 mm, as pressure, as current and as percent. */
const READ = [
  { share: 0, travelM: 0.0001, direction: 'up' },
  { share: 0.25, travelM: 0.0048, direction: 'up' },
  { share: 0.5, travelM: 0.0097, direction: 'up' },
  { share: 0.75, travelM: 0.0149, direction: 'up' },
  { share: 1, travelM: 0.0199, direction: 'up' },
  { share: 0.75, travelM: 0.0152, direction: 'down' },
  { share: 0.5, travelM: 0.0103, direction: 'down' },
  { share: 0.25, travelM: 0.0051, direction: 'down' },
  { share: 0, travelM: 0.0002, direction: 'down' },
] as const;

describe('an up and down table', () => {
  const travel = { ratedTravelM: 0.02, airAction: 'air-to-open' };

  it('says the same as pressure, as current and as percent', () => {
    const pressure = READ.map(({ share, travelM, direction }) => ({
      signalPa: 20000 + 80000 * share,
      travelM,
      direction,
    }));
    const current = READ.map(({ share, travelM, direction }) => ({
      signal: 0.004 + 0.016 * share,
      travelM,
      direction,
    }));
    const percent = READ.map(({ share, travelM, direction }) => ({
      inputPercent: 100 * share,
      outputPercent: (100 * travelM) / 0.02,
      direction,
    }));
    const wanted = termsOf('cycle-percent', { points: percent, reverse: false });
    expect(termsOf('cycle-current', { rows: current, rangeLow: 0.004, rangeHigh: 0.02, ...travel })).toEqual(
      wanted,
    );
    expect(
      termsOf('stroke-table', { rows: pressure, rangeLowPa: 20000, rangeHighPa: 100000, ...travel }),
    ).toEqual(wanted);
    expect(wanted[2]).toBeCloseTo(3, 9);
  });

  it('of a valve that more signal shuts is judged against the falling line', () => {
    const points = [
      { inputPercent: 0, outputPercent: 100, direction: 'up' },
      { inputPercent: 100, outputPercent: 1, direction: 'up' },
    ];
    expect(calculationOf('cycle-percent').run({ points, reverse: true }).errorMaxPercent).toBeCloseTo(1, 9);
    expect(calculationOf('cycle-percent').run({ points, reverse: false }).errorMaxPercent).toBeCloseTo(
      100,
      9,
    );
  });

  it('without a row is refused by the name of the table', () => {
    const current = { rangeLow: 0.004, rangeHigh: 0.02, ...travel };
    expectRefused(() => calculationOf('cycle-current').run({ rows: [], ...current }), {
      code: 'CALC-004',
      name: 'rows',
    });
    expectRefused(() => calculationOf('cycle-percent').run({ points: [], reverse: false }), {
      code: 'CALC-004',
      name: 'points',
    });
    expect(CYCLE_CALCULATIONS).toHaveLength(3);
  });
});
