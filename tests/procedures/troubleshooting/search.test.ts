import { describe, expect, test } from 'vitest';
import { type Model, modelOf } from '../../../procedures/troubleshooting/engine/model.ts';
import { soundOf, tableWorld } from './measure-table.ts';
import { drawHypothesis, pairsOf, random, singlesOf } from './simulate.ts';
import { byExpectedCost, type Cure, checklist, cure, type Lead, likeliestRepair } from './simulate-cure.ts';
import { VALVES } from './valves.ts';

// The short form holds the size of things; the long one, with YOKESIDE_LONG=1, gives the figures that are told.
const LONG = process.env.YOKESIDE_LONG === '1';
const RUNS = LONG ? 300 : 6;
/** Minutes to a cure are far apart from one fault to the next: fewer say nothing of their mean. */
const CURES = LONG ? 300 : 8;
const KINDS = Object.entries(VALVES).slice(0, LONG ? 4 : 1);
const LIMIT_MS = LONG ? 3_600_000 : 120_000;

function mean(runs: readonly Cure[], of: (run: Cure) => number): number {
  return runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
}

function cures(model: Model, of: { readonly lead: Lead; readonly seed: number }): readonly Cure[] {
  // Run by run each lead meets the same fault, so that they can be compared.
  return Array.from({ length: CURES }, (_, run) => {
    const truth = drawHypothesis({ from: singlesOf(model), chance: random(1000 * of.seed + run) });
    return cure(model, { truth, chance: random(5000 * of.seed + run), lead: of.lead });
  });
}

function tell(figures: unknown): void {
  if (LONG) console.log(JSON.stringify(figures));
}

describe.each(KINDS)('valves with a hidden fault, %s', (kind, facts) => {
  const model = modelOf(facts);

  test(
    'are cured in fewer minutes than by a checklist, and in far fewer than by trying the likeliest repair',
    () => {
      const ours = cures(model, { lead: byExpectedCost, seed: 1 });
      const list = cures(model, { lead: checklist, seed: 1 });
      const tried = cures(model, { lead: likeliestRepair, seed: 1 });
      const minutes = [ours, list, tried].map((runs) => mean(runs, (run) => run.minutes));
      tell({
        kind,
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
      const figures = tableWorld(model, { runs: RUNS, seed: 2 });
      tell({ kind, ...figures });
      expect(figures.single.first).toBeGreaterThanOrEqual(LONG ? 0.9 : 0.7);
      expect(figures.single.firstThree).toBeGreaterThanOrEqual(LONG ? 0.95 : 0.8);
      expect(Math.abs(figures.statedLessRight)).toBeLessThan(LONG ? 0.03 : 0.25);
    },
    LIMIT_MS,
  );

  test(
    'are named less often where a tenth of all answers is amiss, yet as surely as is said',
    () => {
      const figures = tableWorld(model, { runs: LONG ? RUNS : 2, seed: 2, extraMisread: 0.1 });
      tell({ kind, extraMisread: 0.1, ...figures });
      expect(Math.abs(figures.statedLessRight)).toBeLessThan(LONG ? 0.03 : 0.6);
    },
    LIMIT_MS,
  );

  test(
    'are called sound where they are',
    () => {
      const { advised } = tableWorld(model, { runs: RUNS, seed: 3, from: soundOf(model) });
      tell({ kind, sound: advised });
      expect(advised.right).toBeGreaterThanOrEqual(LONG ? 0.88 : 0.6);
    },
    LIMIT_MS,
  );

  test(
    'with two faults at once have one of them named',
    () => {
      const { advised } = tableWorld(model, { runs: LONG ? RUNS : 12, seed: 4, from: pairsOf(model) });
      tell({ kind, pairs: advised });
      expect(advised.first).toBeGreaterThanOrEqual(LONG ? 0.85 : 0.7);
    },
    LIMIT_MS,
  );
});
