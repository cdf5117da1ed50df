/** The best that can be done in a small world, and what the engine does there; both without any drawing of lots. */
import { believe } from '../../../../procedures/troubleshooting/engine/belief.ts';
import { decide } from '../../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../../procedures/troubleshooting/engine/evidence.ts';
import { standingAtStart } from '../simulate.ts';
import { after, keyOf, minutesOfRepairs, type Place, type SmallWorld, weightsAt } from './world.ts';

function startOf(world: SmallWorld): Place {
  return { standing: standingAtStart(world.model), told: world.checks.map(() => 0) };
}

/** Expected minutes to a cured valve where every next step is the best there is: dynamic programming over all places. */
export function bestMinutes(world: SmallWorld): number {
  const known = new Map<string, number>();
  const from = (place: Place): number => {
    const key = keyOf(place);
    const before = known.get(key);
    if (before !== undefined) return before;
    const weights = weightsAt(world, place);
    const here = total(weights);
    let best = minutesOfRepairs(world, { place, weights });
    world.checks.forEach((_, at) => {
      const way = here > 0 ? after(world, { place, at }) : null;
      if (way === null) return;
      // Dear ones are not followed to their end.
      let minutes = here * way.minutes;
      for (const next of way.ways) if (minutes < best) minutes += from(next);
      best = Math.min(best, minutes);
    });
    known.set(key, best);
    return best;
  };
  return from(startOf(world));
}

/** Expected minutes to a cured valve where the engine says each next step. */
export function engineMinutes(world: SmallWorld): number {
  const known = new Map<string, number>();
  const from = (place: Place, evidence: readonly Evidence[]): number => {
    const key = keyOf(place);
    const before = known.get(key);
    if (before !== undefined) return before;
    const minutes = engineFrom(world, { place, evidence, from });
    known.set(key, minutes);
    return minutes;
  };
  return from(startOf(world), []);
}

function engineFrom(
  world: SmallWorld,
  of: {
    readonly place: Place;
    readonly evidence: readonly Evidence[];
    readonly from: (place: Place, evidence: readonly Evidence[]) => number;
  },
): number {
  const { place, evidence } = of;
  const weights = weightsAt(world, place);
  const here = total(weights);
  if (here <= 0) return 0;
  const { model } = world;
  const said = decide(model, { belief: believe(model, evidence), evidence, standing: place.standing });
  const at = said.best === 'check' ? world.checks.findIndex(({ id }) => id === said.check?.check) : -1;
  const way = at < 0 ? null : after(world, { place, at });
  if (way === null) return minutesOfRepairs(world, { place, weights });
  const check = world.checks[at];
  return way.ways.reduce((minutes, next, word) => {
    const outcome = check?.table.codes[word] ?? '';
    const more = [
      ...evidence,
      { kind: 'answer', check: check?.id ?? 'trend', outcome, gaugeAlive: true } as const,
    ];
    return minutes + of.from(next, more);
  }, here * way.minutes);
}

function total(weights: Float64Array): number {
  return weights.reduce((sum, one) => sum + one, 0);
}
