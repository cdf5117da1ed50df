import type { CauseId } from '../causes.ts';
import { type Belief, weightsWithoutEach } from './belief.ts';
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
 * What speaks for and against each of some causes. Each item is weighed against everything else that is known: the odds
 * with it over the odds without it, so that nothing is counted that another item has already said.
 * @returns for each cause the strongest first, whichever way it speaks
 */
export function voicesFor(
  model: Model,
  { belief, causes }: { readonly belief: Belief; readonly causes: readonly CauseId[] },
): readonly (readonly Voice[])[] {
  const without = weightsWithoutEach(model, belief);
  const left = model.hypotheses.map((one) => causesLeft(one.causes, belief.repaired));
  return causes.map((cause) => {
    const within = left.map((one) => one.includes(cause));
    const now = logOdds(belief.weights, within);
    return belief.items
      .map((item, at) => ({ item, logOdds: now - logOdds(without[at] ?? belief.weights, within) }))
      .sort((a, b) => Math.abs(b.logOdds) - Math.abs(a.logOdds));
  });
}

/** Smallest probability on either side, so that the odds stay finite. */
const LEAST = 1e-300;

function logOdds(weights: Float64Array, within: readonly boolean[]): number {
  let [inside, outside] = [0, 0];
  for (let h = 0; h < weights.length; h++) {
    if (within[h]) inside += weights[h] ?? 0;
    else outside += weights[h] ?? 0;
  }
  return Math.log(Math.max(inside, LEAST)) - Math.log(Math.max(outside, LEAST));
}
