import { describe, expect, test } from 'vitest';
import { type Hypothesis, type Model, modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import {
  type Draws,
  mostThatCanBeKnown,
  searches,
  soundOf,
  type TableWorld,
  tableWorldOf,
} from './measure-table.ts';
import { drawHypothesis, pairsOf, random, readBy, singlesOf } from './simulate.ts';
import { byExpectedCost, type Cure, checklist, cure, type Lead, likeliestRepair } from './simulate-cure.ts';
import { VALVES } from './valves.ts';

/**
 * The short form holds the size of things on one kind of valve. The long one, with YOKESIDE_LONG=1, takes the four kinds
 * together, since one alone would want ten times the draws for the same error; `npm run measure` tells any number of them.
 */
const LONG = process.env.YOKESIDE_LONG === '1';
const KINDS = Object.values(VALVES)
  .slice(0, LONG ? 4 : 1)
  .map(modelOf);
const LIMIT_MS = LONG ? 600_000 : 120_000;

function mean<Run>(runs: readonly Run[], of: (run: Run) => number): number {
  return runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
}

/** So many of each kind. Run by run each lead meets the same fault, so that they can be compared. */
function cures(of: { readonly lead: Lead; readonly runs: number }): readonly Cure[] {
  return KINDS.flatMap((model, kind) =>
    Array.from({ length: of.runs }, (_, run) => {
      const seed = 1000 * (kind + 1) + run;
      const truth = drawHypothesis({ from: singlesOf(model), chance: random(seed) });
      return cure(model, { truth, chance: random(5 * seed), lead: of.lead });
    }),
  );
}

/** So many of each kind, each kind with faults of its own. */
function world(
  of: Omit<Draws, 'from'> & { readonly from?: (model: Model) => readonly Hypothesis[] },
): TableWorld {
  const figures = tableWorldOf(
    KINDS.flatMap((model, kind) => {
      const { from, ...draws } = of;
      const seeded = { ...draws, seed: of.seed + 10 * kind };
      return searches(model, from === undefined ? seeded : { ...seeded, from: from(model) });
    }),
  );
  tell(figures);
  return figures;
}

function tell(figures: unknown): void {
  if (LONG) console.log(expect.getState().currentTestName, JSON.stringify(figures));
}

describe('valves with a hidden fault', () => {
  test(
    'are cured in fewer minutes than by a checklist, and in far fewer than by trying the likeliest repair',
    () => {
      const runs = LONG ? 12 : 8;
      const ours = cures({ lead: byExpectedCost, runs });
      const list = cures({ lead: checklist, runs });
      const tried = cures({ lead: likeliestRepair, runs });
      const minutes = [ours, list, tried].map((all) => mean(all, (one) => one.minutes));
      tell({
        minutesToCured: { ours: minutes[0], checklist: minutes[1], likeliestRepair: minutes[2] },
        checks: { ours: mean(ours, (run) => run.checks), checklist: mean(list, (run) => run.checks) },
        repairs: mean(ours, (run) => run.repairs),
        firstRepairRight: mean(ours, (run) => (run.firstRepairRight ? 1 : 0)),
      });
      expect(minutes[0] ?? 0).toBeLessThan((LONG ? 0.75 : 0.9) * (minutes[1] ?? 0));
      expect(minutes[0] ?? 0).toBeLessThan(0.4 * (minutes[2] ?? 0));
    },
    LIMIT_MS,
  );

  test(
    'have their repair named, and as surely as is said',
    () => {
      const figures = world({ runs: LONG ? 40 : 20, seed: 2 });
      expect(figures.single.first).toBeGreaterThanOrEqual(LONG ? 0.9 : 0.7);
      expect(figures.single.firstThree).toBeGreaterThanOrEqual(LONG ? 0.95 : 0.8);
      expect(Math.abs(figures.statedLessKnown)).toBeLessThan(0.03);
    },
    LIMIT_MS,
  );

  test(
    'are named less often where a tenth of all answers is amiss, yet as surely as is said',
    () => {
      const figures = world({ runs: LONG ? 40 : 6, seed: 2, extraMisread: 0.1 });
      expect(Math.abs(figures.statedLessKnown)).toBeLessThan(LONG ? 0.03 : 0.06);
    },
    LIMIT_MS,
  );

  test(
    'have their repair as surely as is said where it is known how often an answer is amiss',
    () => {
      for (const extraMisread of [0, 0.1]) {
        const all = KINDS.map((model, kind) =>
          mostThatCanBeKnown(readBy(model, extraMisread), {
            ...{ runs: LONG ? 400 : 40, seed: 5 + 1000 * kind, looks: 1 },
            ...(extraMisread > 0 ? { extraMisread } : {}),
          }),
        );
        tell({ extraMisread, all });
        const said = mean(all, ({ stated, right }) => stated - right);
        expect(Math.abs(said)).toBeLessThan(LONG ? 0.02 : 0.12);
      }
    },
    LIMIT_MS,
  );

  test(
    'are called sound where they are, as often as if every check had been read, and oftener than is said',
    () => {
      const of = { runs: LONG ? 15 : 6, seed: 3, from: soundOf };
      const { advised } = world(of);
      // A slip on one of fifty checks looks like a fault that shows little: nobody can call all of them sound.
      const most = mean(
        KINDS.map((model, kind) =>
          mostThatCanBeKnown(model, { ...of, seed: of.seed + 10 * kind, from: soundOf(model), looks: 1 }),
        ),
        ({ right }) => right,
      );
      tell({ everyCheckReadOnce: most });
      expect(advised.right).toBeGreaterThanOrEqual(most - (LONG ? 0.05 : 0.35));
      expect(advised.right).toBeGreaterThanOrEqual(advised.stated - (LONG ? 0.03 : 0.3));
      expect(advised.right).toBeGreaterThanOrEqual(LONG ? 0.78 : 0.6);
    },
    LIMIT_MS,
  );

  test(
    'with two faults at once have one of them named',
    () => {
      const { advised } = world({ runs: LONG ? 20 : 12, seed: 4, from: pairsOf });
      expect(advised.first).toBeGreaterThanOrEqual(LONG ? 0.85 : 0.7);
    },
    LIMIT_MS,
  );
});
