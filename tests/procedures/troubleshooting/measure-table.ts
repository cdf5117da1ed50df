import { SOUND } from '../../../procedures/troubleshooting/causes.ts';
import type { Hypothesis, Model } from '../../../procedures/troubleshooting/engine/model.ts';
import {
  drawHypothesis,
  everythingRead,
  type Figures,
  figuresOf,
  type Run,
  random,
  search,
} from './simulate.ts';

export interface TableWorld {
  /** Searches as advised, on faults drawn by their priors, pairs as often as the priors have them. */
  readonly advised: Figures;
  /** Those of the draws that were one fault alone. */
  readonly single: Figures;
  /** How likely the named repair is said to be wanted, less how often it was: hangs on the luck of the draws. */
  readonly statedLessRight: number;
  /**
   * The same, less how likely it is on the same answers for whoever knows how often they are amiss. Where that is right as
   * often as it says, this errs from the other by the luck of the draws alone (Rao and Blackwell).
   */
  readonly statedLessKnown: number;
}

export interface Draws {
  readonly runs: number;
  readonly seed: number;
  /** Beside the misreads of the table; nobody tells the engine. */
  readonly extraMisread?: number;
  readonly from?: readonly Hypothesis[];
}

/** The table world: what a cause shows is drawn from the same table by which the engine weighs it. */
export function tableWorld(model: Model, of: Draws): TableWorld {
  return tableWorldOf(searches(model, of));
}

/** One search for each draw. */
export function searches(model: Model, of: Draws): readonly Run[] {
  return draws(model, of).map((one) => search(model, one));
}

/** What so many searches come to, also those of several kinds of valve. */
export function tableWorldOf(runs: readonly Run[]): TableWorld {
  const advised = figuresOf(runs);
  const single = figuresOf(runs.filter(({ truth }) => truth.causes.length === 1));
  return {
    advised,
    single,
    statedLessRight: advised.stated - advised.right,
    statedLessKnown: advised.stated - advised.known,
  };
}

/** The same draws where every check is read, so many times each: what could be known at most. */
export function mostThatCanBeKnown(model: Model, of: Draws & { readonly looks: number }): Figures {
  return figuresOf(draws(model, of).map((one) => everythingRead(model, { ...one, looks: of.looks })));
}

function draws(model: Model, of: Draws) {
  const { extraMisread } = of;
  const slips = extraMisread === undefined ? {} : { extraMisread };
  return Array.from({ length: of.runs }, (_, run) => ({
    truth: drawHypothesis({ from: of.from ?? model.hypotheses, chance: random(1000 * of.seed + run) }),
    chance: random(7_000_000 + 1000 * of.seed + run),
    ...slips,
  }));
}

export function soundOf(model: Model): readonly Hypothesis[] {
  return model.hypotheses.filter(({ causes }) => causes[0] === SOUND);
}
