import { SOUND } from '../causes.ts';
import { type Hub, moveMinutes } from '../check.ts';
import { checkOf } from '../checks.ts';
import type { Repair } from '../repairs/repair.ts';
import { type RepairId, repairFor, repairOf } from '../repairs.ts';
import type { Belief } from './belief.ts';
import type { Evidence } from './evidence.ts';
import { jointOf, type Question, questionOf } from './information.ts';
import type { Model } from './model.ts';
import { type Standing, type Suggestion, suggestions } from './next-check.ts';

/** A valve that is called sound and is not comes back: another visit. Minutes: judgement. */
const COMES_BACK_MINUTES = 240;
/** So sure of one repair that nothing more is asked: judgement. */
export const SURE_FRACTION = 0.9;
/** How many of the best checks are looked at for what they would save. */
const LOOKED_AT = 12;

export interface Decision {
  readonly best: 'check' | 'repair' | 'nothing left to check';
  readonly check: Suggestion | null;
  /** Every check that may be made, the best for its minutes first. */
  readonly checks: readonly Suggestion[];
  /** The repair that would be tried first, with how likely it is to be the one. */
  readonly repair: { readonly id: RepairId; readonly probability: number; readonly minutes: number };
  /** Expected minutes to a cured valve if repairs are tried from here, and if the check is made first. */
  readonly repairNowMinutes: number;
  readonly checkFirstMinutes: number | null;
}

/**
 * Check on, or repair: whichever is expected to cost fewer minutes to a cured valve. Repairs are tried in the order
 * of probability for their minutes, each with the check that proves it; a check pays where it changes that order.
 */
export function decide(
  model: Model,
  of: { readonly belief: Belief; readonly evidence: readonly Evidence[]; readonly standing: Standing },
): Decision {
  const question = questionOf(model, of.belief);
  const costs = repairCosts(model, { question, hub: of.standing.hub });
  const { expectedMinutes, first } = expectedRepair(question.shares, costs);
  const probability = question.shares[first] ?? 0;
  const id = question.classes[first] ?? repairFor(SOUND);
  const repair = { id, probability, minutes: costs[first]?.minutes ?? 0 };
  const all = suggestions(model, { ...of, question });
  const cheapest = bestCheck(model, { question, costs, all });
  const [likeliest] = all;
  const base = { repair, repairNowMinutes: expectedMinutes, checks: all };
  if (likeliest === undefined || cheapest === null)
    return { ...base, best: 'nothing left to check', check: null, checkFirstMinutes: null };
  const sure = isSure(question);
  const pays = cheapest.minutes < expectedMinutes;
  return sure || !pays
    ? { ...base, best: 'repair', check: likeliest, checkFirstMinutes: cheapest.minutes }
    : { ...base, best: 'check', check: likeliest, checkFirstMinutes: cheapest.minutes };
}

/** Whether one repair, or leaving the valve alone, is so likely that nothing more is asked. */
export function isSure({ classes, shares }: Question): boolean {
  return classes.some((_, at) => (shares[at] ?? 0) >= SURE_FRACTION);
}

interface RepairCost {
  readonly minutes: number;
  /** Beside the minutes, where it was not this. */
  readonly inVainMinutes: number;
}

/** Minutes of each repair from the present hub, with the first of its proofs that this valve has and the way there. */
export function repairCosts(
  model: Model,
  of: { readonly question: Question; readonly hub: Hub },
): readonly RepairCost[] {
  return of.question.classes.map((id) => {
    const repair = repairOf(id);
    const minutes =
      repair.minutes + moveMinutes({ from: of.hub, to: repair.hub }) + proofMinutes(model, repair);
    return { minutes, inVainMinutes: id === repairFor(SOUND) ? COMES_BACK_MINUTES : 0 };
  });
}

function proofMinutes(model: Model, { proof, hub }: Repair): number {
  const check = proof.find((id) => model.checks.includes(id));
  if (check === undefined) return 0;
  const { minutes, hubs } = checkOf(check);
  return minutes + Math.min(...hubs.map((to) => moveMinutes({ from: hub, to })));
}

/** Expected minutes of trying repairs by probability for their minutes until one cures, and which comes first. */
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
  return { expectedMinutes, first: order[0]?.at ?? 0 };
}

function bestCheck(
  model: Model,
  of: {
    readonly question: Question;
    readonly costs: readonly RepairCost[];
    readonly all: readonly Suggestion[];
  },
): { readonly minutes: number } | null {
  let best: { readonly minutes: number } | null = null;
  for (const suggestion of of.all.slice(0, LOOKED_AT)) {
    const table = model.tables.get(suggestion.check);
    if (table === undefined) continue;
    const joint = jointOf(of.question, table);
    const width = table.codes.length;
    const part = new Float64Array(of.question.classes.length);
    let minutes = suggestion.minutes;
    for (let k = 0; k < width; k++) {
      let share = 0;
      for (let one = 0; one < part.length; one++) {
        part[one] = joint[one * width + k] ?? 0;
        share += part[one] ?? 0;
      }
      if (share > 0) minutes += share * expectedRepair(part, of.costs).expectedMinutes;
    }
    if (best === null || minutes < best.minutes) best = { minutes };
  }
  return best;
}
