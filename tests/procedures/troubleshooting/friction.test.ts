import { expect, test } from 'vitest';
import { causeOf } from '../../../procedures/troubleshooting/causes.ts';
import { modelOf, sharesOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { frictionGrades } from '../../../procedures/troubleshooting/friction.ts';
import { BARE_DIAPHRAGM, DIAPHRAGM_WITH_POSITIONER, PISTON_ONE_RELAY, VALVES } from './valves.ts';

const SIZES = [{ share: 0.1, where: 1, breakaway: 1.3 }];

test('only a positioner hunts about a stem that sticks, and about one of a cylinder more often than about one with a spring', () => {
  const hunting = (facts: typeof BARE_DIAPHRAGM) =>
    frictionGrades(facts, { sizes: SIZES, shows: {} })
      .filter(({ id }) => id.endsWith('hunts'))
      .reduce((sum, { share }) => sum + share, 0);
  expect(hunting(BARE_DIAPHRAGM)).toBe(0);
  expect(hunting(DIAPHRAGM_WITH_POSITIONER)).toBeGreaterThan(0.1);
  expect(hunting(PISTON_ONE_RELAY)).toBeGreaterThan(hunting(DIAPHRAGM_WITH_POSITIONER));
});

test('a small step that swings leaves tight packing of a cylinder in the running beside a lively positioner', () => {
  const model = modelOf(PISTON_ONE_RELAY);
  const table = model.tables.get('smallStep');
  if (table === undefined) throw new Error('no small step on a piston');
  const swings = table.codes.indexOf('swings');
  const of = (cause: 'packingTight' | 'gainTooHigh') =>
    sharesOf(table, [model.rowOf.get(cause) ?? -1])[swings] ?? 0;
  expect(of('packingTight')).toBeGreaterThan(0.3);
  expect(of('gainTooHigh')).toBeGreaterThan(of('packingTight'));
});

test('leave no gap between the grades of what is measured: each size in between is explained by one of them', () => {
  for (const facts of Object.values(VALVES)) {
    for (const cause of ['springTooTight', 'springSlack', 'plugSetWrong'] as const) {
      if (!(causeOf(cause).when?.(facts) ?? true)) continue;
      const check = cause === 'plugSetWrong' ? 'flowAgainstTravel' : 'airAtTravel';
      const pieces = (causeOf(cause).grades?.(facts) ?? []).flatMap(({ shows }) => {
        const row = shows[check];
        return row !== undefined && 'pieces' in row && Array.isArray(row.pieces) ? row.pieces : [];
      }) as (readonly [number, number, number])[];
      for (const size of [7, 12, 18, 24]) {
        const at = cause === 'springSlack' ? -size : size;
        // Twice the scatter of a sound reading beside a piece it still explains it.
        expect(pieces.some(([, low, high]) => at > low - 8 && at < high + 8)).toBe(true);
      }
    }
  }
});
