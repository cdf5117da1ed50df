import { describe, expect, test } from 'vitest';
import { isSpread, priorOf } from '../../../procedures/troubleshooting/cause.ts';
import { CAUSE_IDS, causeOf, causesFor } from '../../../procedures/troubleshooting/causes.ts';
import { type CheckId, checkOf, isCheckId } from '../../../procedures/troubleshooting/checks.ts';
import { FULLY_FITTED, VALVES } from './valves.ts';

/** What is wrong with one row of one cause. */
function faultsOf(cause: string, shows: object): readonly string[] {
  return Object.entries(shows).flatMap(([check, row]) => {
    if (!isCheckId(check)) return [`${cause}: no check ${check}`];
    const known = Object.keys(checkOf(check).outcomes);
    const words: Readonly<Record<string, number>> = isSpread(row) ? (row.words ?? {}) : row;
    const pieces = isSpread(row) ? row.pieces : [];
    const shares = [...Object.values(words), ...pieces.map(([share]) => share)];
    const sum = shares.reduce((total, share) => total + share, 0);
    return [
      ...Object.keys(words)
        .filter((word) => !known.includes(word))
        .map((word) => `${cause} ${check}: no outcome ${word}`),
      ...(Number.isFinite(sum) && sum <= 1 + 1e-9 ? [] : [`${cause} ${check}: shares add up to ${sum}`]),
      ...(shares.every((share) => share >= 0) ? [] : [`${cause} ${check}: a share below 0`]),
      ...(pieces.length > 0 && checkOf(check).measured === undefined
        ? [`${cause} ${check}: numbers for a check in words`]
        : []),
      ...(pieces.every(([, low, high]) => low <= high) ? [] : [`${cause} ${check}: a piece upside down`]),
      // The sound outcome is what is left: a cause never names it.
      ...(known[0] !== undefined && known[0] in words ? [`${cause} ${check}: names the sound outcome`] : []),
    ];
  });
}

describe('the causes', () => {
  test('are at least sixty, each with words, a weight and where that comes from', () => {
    expect(CAUSE_IDS.length).toBeGreaterThanOrEqual(60);
    for (const id of CAUSE_IDS) {
      const cause = causeOf(id);
      expect(cause.words.length).toBeGreaterThan(10);
      expect(cause.basis).toMatch(/judgement/);
      expect(priorOf(cause, FULLY_FITTED)).toBeGreaterThan(0);
    }
  });

  test.each(Object.entries(VALVES))('show only what checks know, on %s', (_, facts) => {
    const faults = causesFor(facts).flatMap((id) => {
      const cause = causeOf(id);
      const grades = cause.grades?.(facts) ?? [{ id, share: 1, shows: cause.shows(facts) }];
      const total = grades.reduce((sum, { share }) => sum + share, 0);
      return [
        ...grades.flatMap((grade) => faultsOf(`${id} ${grade.id}`, grade.shows)),
        ...(Math.abs(total - 1) < 1e-9 ? [] : [`${id}: grades add up to ${total}`]),
      ];
    });
    expect(faults).toEqual([]);
  });

  test.each(Object.entries(VALVES))(
    'each show something that a check of the valve can see, on %s',
    (_, facts) => {
      const silent = causesFor(facts).filter((id) => {
        if (id === 'nothingWrong') return false;
        const cause = causeOf(id);
        const grades = cause.grades?.(facts) ?? [{ shows: cause.shows(facts) }];
        const seen = grades.flatMap(({ shows }) => Object.keys(shows) as CheckId[]);
        return !seen.some((check) => checkOf(check).when?.(facts) ?? true);
      });
      expect(silent).toEqual([]);
    },
  );

  test('have weights that follow the kind of valve: little but its diaphragm, or a positioner to go wrong', () => {
    const positioner = (facts: (typeof VALVES)[string]) =>
      causesFor(facts).filter((id) => causeOf(id).family === 'positioner').length;
    const [bare, , one, each] = Object.values(VALVES).map(positioner);
    expect(bare).toBe(0);
    expect(one).toBeGreaterThan(10);
    expect(each).toBeGreaterThan(one ?? 0);
  });
});
