import type { CauseId } from '../causes.ts';
import { type Belief, weigh } from './belief.ts';
import type { Counted } from './evidence.ts';
import { causesLeft } from './likelihood.ts';
import type { Model } from './model.ts';

/** What one item of evidence says about one cause: above 0 it speaks for it, below against. */
export interface Voice {
  readonly item: Counted;
  /** Natural logarithm of how much this item alone raises the odds of the cause. */
  readonly logOdds: number;
}

/**
 * What speaks for and against a cause. Each item is weighed against everything else that is known: the odds with it
 * over the odds without it, so that nothing is counted that another item has already said.
 * @returns the strongest first, whichever way it speaks
 */
export function voicesFor(
  model: Model,
  of: { readonly belief: Belief; readonly cause: CauseId },
): readonly Voice[] {
  const { belief, cause } = of;
  const within = model.hypotheses.map(({ causes }) => causesLeft(causes, belief.repaired).includes(cause));
  const now = logOdds(belief.weights, within);
  return belief.items
    .map((item, at) => {
      const without = weigh(
        model,
        belief.each.filter((_, other) => other !== at),
      );
      return { item, logOdds: now - logOdds(without.weights, within) };
    })
    .sort((a, b) => Math.abs(b.logOdds) - Math.abs(a.logOdds));
}

/** Smallest probability on either side, so that the odds stay finite. */
const LEAST = 1e-300;

function logOdds(weights: Float64Array, within: readonly boolean[]): number {
  let [inside, outside] = [0, 0];
  weights.forEach((weight, h) => {
    if (within[h]) inside += weight;
    else outside += weight;
  });
  return Math.log(Math.max(inside, LEAST)) - Math.log(Math.max(outside, LEAST));
}
