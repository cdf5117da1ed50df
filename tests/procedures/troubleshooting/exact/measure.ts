import type { Model } from '../../../../procedures/troubleshooting/engine/model.ts';
import { modelOfValve } from '../../../../procedures/troubleshooting/engine/model-of-valve.ts';
import type { ValveFacts } from '../../../../procedures/troubleshooting/valve-facts.ts';
import { VALVES } from '../valves.ts';
import { cutModel, type Size } from './cut.ts';
import { bestMinutes, engineMinutes } from './policies.ts';
import { smallWorld } from './world.ts';

/** Nobody slips and each check is made once; or slips as in the table, and up to three looks at each. */
export const ONE_LOOK: Size = { causes: [4, 7], checks: [4, 6], noSlips: true };
export const WITH_SLIPS: Size = { causes: [4, 7], checks: [3, 4] };
/** The same, small enough for every run of the tests. */
export const WITH_SLIPS_SMALLEST: Size = { causes: [4, 5], checks: [2, 2] };

/** More places than this are not worth the minutes of the long run. */
const PLACES_MOST = 40_000;

export interface AgainstBest {
  readonly models: number;
  /** The engine's expected minutes over the least possible ones. */
  readonly meanRatio: number;
  readonly worstRatio: number;
  /** No policy can do better than the best: below 1 something is worked out wrongly. */
  readonly leastRatio: number;
  readonly asGoodAsBestFraction: number;
}

/** The engine on so many small models, each worked out whole; the same seed cuts the same models. */
export function againstBest(of: {
  readonly size: Size;
  readonly models: number;
  readonly seed: number;
  readonly placesMost?: number;
  readonly valves?: readonly ValveFacts[];
}): AgainstBest {
  const whole = (of.valves ?? Object.values(VALVES)).map(modelOfValve);
  const ratios: number[] = [];
  for (let seed = of.seed; ratios.length < of.models; seed++) {
    const model = whole[seed % whole.length];
    const cut = model === undefined ? null : cutModel(model, { size: of.size, seed });
    if (cut === null || placesOf(cut) > (of.placesMost ?? PLACES_MOST)) continue;
    const world = smallWorld(cut);
    ratios.push(engineMinutes(world) / bestMinutes(world));
  }
  return {
    models: ratios.length,
    meanRatio: ratios.reduce((sum, one) => sum + one, 0) / ratios.length,
    worstRatio: Math.max(...ratios),
    leastRatio: Math.min(...ratios),
    asGoodAsBestFraction: ratios.filter((ratio) => ratio < 1.0005).length / ratios.length,
  };
}

/** Ways in which the checks may have answered; three looks may say so many things together. */
function placesOf({ tables }: Model): number {
  return [...tables.values()].reduce((product, { check, codes: { length } }) => {
    const threeLooks = ((length + 1) * (length + 2) * (length + 3)) / 6;
    return product * (check.misread > 0 ? threeLooks : length + 1);
  }, 1);
}
