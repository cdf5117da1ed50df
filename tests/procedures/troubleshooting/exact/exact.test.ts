import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BARE_DIAPHRAGM } from '../valves.ts';
import { againstBest, ONE_LOOK, WITH_SLIPS, WITH_SLIPS_SMALLEST } from './measure.ts';
import { minutesUntil } from './world.ts';

// A few models in the short run, some dozens in the long one.
const LONG = process.env.YOKESIDE_LONG === '1';
const LIMIT_MS = LONG ? 3_600_000 : 60_000;

function orders<One>(of: readonly One[]): readonly (readonly One[])[] {
  if (of.length < 2) return [of];
  return of.flatMap((first, at) =>
    orders([...of.slice(0, at), ...of.slice(at + 1)]).map((rest) => [first, ...rest]),
  );
}

describe('on small models whose best policy is worked out whole', () => {
  test.each([
    ['where nobody reads amiss', { size: ONE_LOOK, models: LONG ? 60 : 4, placesMost: LONG ? 40_000 : 2500 }],
    [
      'where looks slip and are taken again',
      LONG ? { size: WITH_SLIPS, models: 40 } : { size: WITH_SLIPS_SMALLEST, models: 6 },
    ],
  ])(
    '%s, the engine takes hardly more minutes to a cured valve than the best there is',
    (_, of) => {
      const figures = againstBest({ ...of, seed: 1, ...(LONG ? {} : { valves: [BARE_DIAPHRAGM] }) });
      if (LONG) console.log(JSON.stringify({ world: 'exact', ...figures }));
      expect(figures.meanRatio).toBeLessThanOrEqual(1.005);
      expect(figures.worstRatio).toBeLessThanOrEqual(1.2);
      expect(figures.leastRatio).toBeGreaterThan(1 - 1e-9);
    },
    LIMIT_MS,
  );

  test('repairs by chance for their minutes are tried in the best order of all', () => {
    const repair = fc.record({
      minutes: fc.integer({ min: 1, max: 300 }),
      inVainMinutes: fc.constantFrom(0, 0, 60, 240),
      chance: fc.integer({ min: 1, max: 100 }),
    });
    fc.assert(
      fc.property(fc.array(repair, { minLength: 1, maxLength: 5 }), (repairs) => {
        const all = repairs.map((one, at) => ({ ...one, at }));
        const expected = (order: typeof all) =>
          all.reduce((sum, { at, chance }) => sum + chance * minutesUntil(order, [at]), 0);
        const worth = (one: (typeof repairs)[number]) => one.chance / (one.minutes + one.inVainMinutes);
        const ours = expected([...all].sort((a, b) => worth(b) - worth(a)));
        const least = Math.min(...orders(all).map((order) => expected([...order])));
        expect(ours).toBeCloseTo(least, 6);
      }),
      { numRuns: 50 },
    );
  });
});
