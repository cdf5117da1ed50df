import { SOUND } from '../causes.ts';
import { type Hub, moveMinutes } from '../check.ts';
import { checkOf } from '../checks.ts';
import type { Repair } from '../repairs/repair.ts';
import { type RepairId, repairFor, repairOf } from '../repairs.ts';
import type { Belief } from './belief.ts';
import type { Evidence } from './evidence.ts';
import { type Question, questionOf } from './information.ts';
import type { Model } from './model.ts';
import { jointOfSuggested, type Standing, type Suggestion, suggestions } from './next-check.ts';

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
  const cheapest = bestCheck(model, { ...of, question, costs, all: all.slice(0, LOOKED_AT) });
  const base = { repair, repairNowMinutes: expectedMinutes, checks: all };
  if (cheapest === null)
    return { ...base, best: 'nothing left to check', check: null, checkFirstMinutes: null };
  const again = isSure(question) ? lookThatPays(model, { ...of, question, all }) : null;
  const check = again ?? all[0] ?? null;
  const checkFirstMinutes = cheapest.minutes;
  const on = isSure(question) ? again !== null : cheapest.minutes < expectedMinutes;
  return { ...base, best: on ? 'check' : 'repair', check, checkFirstMinutes };
}

/**
 * Before a sure repair is made: the reading on which it hangs, where looking at it once more is expected to save more
 * minutes than it takes. Null where nothing hangs on a single reading.
 */
export function lookThatPays(
  model: Model,
  of: {
    readonly question: Question;
    readonly evidence: readonly Evidence[];
    readonly standing: Standing;
    readonly all: readonly Suggestion[];
  },
): Suggestion | null {
  const costs = repairCosts(model, { question: of.question, hub: of.standing.hub });
  let best: { readonly suggestion: Suggestion; readonly savedMinutes: number } | null = null;
  for (const suggestion of of.all) {
    const joint = suggestion.again ? jointOfSuggested(model, { ...of, suggestion }) : null;
    if (joint === null) continue;
    const savedMinutes =
      minutesAfter(unread(joint, costs.length), costs) - minutesAfter(joint, costs) - suggestion.minutes;
    if (savedMinutes > (best?.savedMinutes ?? 0)) best = { suggestion, savedMinutes };
  }
  return best?.suggestion ?? null;
}

/** The same classes where nobody has looked. */
function unread(joint: Float64Array, classes: number): Float64Array {
  const width = joint.length / classes;
  const shares = new Float64Array(classes);
  joint.forEach((share, at) => {
    const one = Math.floor(at / width);
    shares[one] = (shares[one] ?? 0) + share;
  });
  return shares;
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
    readonly evidence: readonly Evidence[];
    readonly costs: readonly RepairCost[];
    readonly all: readonly Suggestion[];
  },
): { readonly minutes: number } | null {
  let best: { readonly minutes: number } | null = null;
  for (const suggestion of of.all) {
    const joint = jointOfSuggested(model, { ...of, suggestion });
    if (joint === null) continue;
    const minutes = suggestion.minutes + minutesAfter(joint, of.costs);
    if (best === null || minutes < best.minutes) best = { minutes };
  }
  return best;
}

/** Expected minutes of the repairs, once the outcome is known. */
function minutesAfter(joint: Float64Array, costs: readonly RepairCost[]): number {
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
