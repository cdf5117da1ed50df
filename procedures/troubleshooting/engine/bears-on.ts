import type { CauseId } from '../causes.ts';
import { repairFor } from '../repairs.ts';
import type { Ranked } from './belief.ts';
import type { Model } from './model.ts';

/** Less than this, half the sum of the changes of a probability, nobody would notice: judgement. */
const LEAST_CHANGE = 0.02;
const MOST = 3;

/**
 * The causes that a check bears on most: those whose chance its answer is expected to change most, up or down. Of
 * causes with one repair the likeliest stands for all.
 *
 * @param joint  probability of each outcome of the check together with each repair of the model
 * @param causes  as ranked now, likeliest first
 * @returns at most three, the one that changes most first; none where the check tells nothing any more
 * @example bearsOn(model, { joint: decision.joint, causes })[0] // 'packingTight'
 */
export function bearsOn(
  { repairs }: Pick<Model, 'repairs'>,
  { joint, causes }: { readonly joint: Float64Array; readonly causes: readonly Ranked<CauseId>[] },
): readonly CauseId[] {
  const width = joint.length / repairs.length;
  const share = (at: number) => joint[at] ?? 0;
  const outcomes = Array.from({ length: width }, (_, k) =>
    repairs.reduce((sum, __, c) => sum + share(c * width + k), 0),
  );
  const total = outcomes.reduce((sum, each) => sum + each, 0);
  const changes = repairs.map((repair, c) => {
    const own = outcomes.reduce((sum, _, k) => sum + share(c * width + k), 0) / total;
    const change = outcomes.reduce((sum, each, k) => sum + Math.abs(share(c * width + k) - own * each), 0);
    return { repair, change: change / (2 * total) };
  });
  return changes
    .filter(({ change }) => change >= LEAST_CHANGE)
    .sort((one, other) => other.change - one.change)
    .slice(0, MOST)
    .flatMap(({ repair }) => causes.find(({ id }) => repairFor(id) === repair)?.id ?? []);
}
