/** What repairs cost, and in which order they are tried. */
import { SOUND } from '../causes.ts';
import { type Hub, moveMinutes } from '../check.ts';
import { checkOf } from '../checks.ts';
import { MENDED_HERE } from '../repair-procedures.ts';
import type { Repair } from '../repairs/repair.ts';
import { type RepairId, repairFor, repairOf } from '../repairs.ts';
import type { Question } from './information.ts';
import { CURED_BY_CHANCE } from './likelihood.ts';
import type { Model } from './model.ts';

/** A valve that is called sound and is not comes back: another visit. Minutes: judgement. */
const COMES_BACK_MINUTES = 240;
/**
 * A repair that is planned, and was not it: the valve had gone back into service, 40 minutes, and is isolated once more,
 * 75 (`moveMinutes`), to be looked at anew. Minutes: judgement.
 */
const LOOKED_AT_ANEW_MINUTES = 120;

/**
 * Three repairs are named. Where it is none of them, three are made in vain, and the valve stays out of service until
 * somebody else has begun anew: two shifts. Minutes: judgement.
 */
export const UNNAMED_MINUTES = 960;

/**
 * Share of the first so many classes that is not among the three likeliest of them.
 * @example unnamedShare([0.5, 0.3, 0.05, 0.1], 4) // 0.05
 */
export function unnamedShare(shares: ArrayLike<number>, count: number): number {
  let [first, second, third, total] = [0, 0, 0, 0];
  for (let at = 0; at < count; at++) {
    const share = shares[at] ?? 0;
    total += share;
    if (share > first) {
      third = second;
      second = first;
      first = share;
    } else if (share > second) {
      third = second;
      second = share;
    } else if (share > third) third = share;
  }
  return Math.max(0, total - first - second - third);
}

export interface RepairCost {
  readonly minutes: number;
  /** Beside the minutes, where it was not this. */
  readonly inVainMinutes: number;
}

/** Minutes of each repair from the present hub, with the first of its proofs that this valve has and the way there. */
export function repairCosts(
  model: Model,
  of: { readonly question: Pick<Question, 'classes'>; readonly hub: Hub },
): readonly RepairCost[] {
  return of.question.classes.map((id) => {
    const repair = repairOf(id);
    const minutes =
      repair.minutes + moveMinutes({ from: of.hub, to: repair.hub }) + proofMinutes(model, repair);
    return { minutes, inVainMinutes: inVainMinutes(id) };
  });
}

/**
 * What it costs beside its own minutes where it was not this: where its proof says by chance that it was, the valve comes
 * back; else it is looked at anew.
 */
function inVainMinutes(id: RepairId): number {
  if (id === repairFor(SOUND)) return COMES_BACK_MINUTES;
  const lookedAtAnew = MENDED_HERE.includes(id) ? 0 : LOOKED_AT_ANEW_MINUTES;
  return CURED_BY_CHANCE * COMES_BACK_MINUTES + (1 - CURED_BY_CHANCE) * lookedAtAnew;
}

function proofMinutes(model: Model, { proof, hub }: Repair): number {
  const check = proof.find((id) => model.checks.includes(id));
  if (check === undefined) return 0;
  const { minutes, hubs } = checkOf(check);
  return minutes + Math.min(...hubs.map((to) => moveMinutes({ from: hub, to })));
}

/**
 * Expected minutes of trying repairs by probability for their minutes until one cures, and which comes first; what it
 * costs where it is none of the three likeliest is counted in.
 */
export function expectedRepair(
  shares: ArrayLike<number>,
  costs: readonly RepairCost[],
): { readonly expectedMinutes: number; readonly first: number } {
  const order = costs
    .map(({ minutes, inVainMinutes }, at) => ({ at, worth: (shares[at] ?? 0) / (minutes + inVainMinutes) }))
    .sort((a, b) => b.worth - a.worth);
  let left = 0;
  for (let at = 0; at < costs.length; at++) left += shares[at] ?? 0;
  const total = left || 1;
  let expectedMinutes = 0;
  for (const { at } of order) {
    const cost = costs[at];
    if (cost === undefined) continue;
    const after = Math.max(0, left - (shares[at] ?? 0));
    expectedMinutes += (left * cost.minutes + after * cost.inVainMinutes) / total;
    left = after;
  }
  expectedMinutes += (UNNAMED_MINUTES * unnamedShare(shares, costs.length)) / total;
  return { expectedMinutes, first: order[0]?.at ?? 0 };
}

/** Expected minutes of the repairs, once the outcome is known. */
export function minutesAfter(joint: Float64Array, costs: readonly RepairCost[]): number {
  const width = joint.length / costs.length;
  const part = new Float64Array(costs.length);
  let minutes = 0;
  for (let k = 0; k < width; k++) {
    let share = 0;
    for (let one = 0; one < part.length; one++) {
      part[one] = joint[one * width + k] ?? 0;
      share += part[one] ?? 0;
    }
    if (share > 0) minutes += share * expectedRepair(part, costs).expectedMinutes;
  }
  return minutes;
}
