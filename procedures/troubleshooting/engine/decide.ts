import { SOUND } from '../causes.ts';
import { type RepairId, repairFor } from '../repairs.ts';
import { type Belief, repairRanking } from './belief.ts';
import type { Evidence } from './evidence.ts';
import { type Question, questionOf } from './information.ts';
import type { Model } from './model.ts';
import { jointOfSuggested, type Standing, type Suggestion, suggestions } from './next-check.ts';
import { expectedRepair, minutesAfter, type RepairCost, repairCosts } from './repair-cost.ts';
import { thinkThrough } from './rollout.ts';
import { smallProblem } from './small-problem.ts';

/** So sure of one repair that nothing more is asked: judgement. */
const SURE_FRACTION = 0.9;
/** How many of the best checks are looked at for what they would save. */
const LOOKED_AT = 12;

export interface Decision {
  readonly best: 'check' | 'repair' | 'nothing left to check';
  readonly check: Suggestion | null;
  /** How likely each outcome of that check is together with each repair; null without a check, or where it is looked at again. */
  readonly joint: Float64Array | null;
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
  const id = question.classes[first] ?? repairFor(SOUND);
  // Beside another fault it is wanted all the same; the question counts such a pair half.
  const probability = repairRanking(model, of.belief).find((one) => one.id === id)?.probability ?? 0;
  const repair = { id, probability, minutes: costs[first]?.minutes ?? 0 };
  const all = suggestions(model, { ...of, question });
  const base = { repair, repairNowMinutes: expectedMinutes, checks: all };
  const decided = checkOrRepair(model, { ...of, question, all, costs, expectedMinutes });
  const suggestion = decided.check?.again === false ? decided.check : null;
  const joint = suggestion === null ? null : jointOfSuggested(model, { ...of, question, suggestion });
  return { ...base, ...decided, joint };
}

interface Open {
  readonly question: Question;
  readonly evidence: readonly Evidence[];
  readonly standing: Standing;
  readonly all: readonly Suggestion[];
  readonly costs: readonly RepairCost[];
  readonly expectedMinutes: number;
}

type CheckOrRepair = Pick<Decision, 'best' | 'check' | 'checkFirstMinutes'> &
  Partial<Pick<Decision, 'repairNowMinutes'>>;

function checkOrRepair(model: Model, of: Open): CheckOrRepair {
  const [first] = of.all;
  if (first === undefined) return { best: 'nothing left to check', check: null, checkFirstMinutes: null };
  const thought = byThinkingThrough(model, of) ?? byNextLook(model, of);
  if (thought?.best === 'check') return thought;
  // The last word before a repair has everything that is likely, not its heaviest part alone.
  const last = lookBeforeRepair(model, of);
  return last.best === 'check' ? last : { ...last, ...thought };
}

/** Where few causes are left, by what each check costs in the end. */
function byThinkingThrough(model: Model, of: Open): CheckOrRepair | null {
  const problem = smallProblem(model, of);
  if (problem === null) return null;
  const { checkFirstMinutes, repairNowMinutes } = thinkThrough(problem);
  let at = 0;
  checkFirstMinutes.forEach((minutes, other) => {
    if (minutes < (checkFirstMinutes[at] ?? 0)) at = other;
  });
  const minutes = checkFirstMinutes[at] ?? Number.POSITIVE_INFINITY;
  const on = minutes < repairNowMinutes;
  const check = (on ? problem.offers[at]?.suggestion : undefined) ?? of.all[0] ?? null;
  return {
    best: on ? 'check' : 'repair',
    check,
    checkFirstMinutes: Number.isFinite(minutes) ? minutes : null,
    repairNowMinutes,
  };
}

/** Where much is likely still: what tells most for its minutes. Null where none of the next looks would save any. */
function byNextLook(model: Model, of: Open): CheckOrRepair | null {
  if (isSure(of.question)) return null;
  const look = lookBeforeRepair(model, { ...of, all: of.all.slice(0, LOOKED_AT) });
  return look.best === 'check' ? { ...look, check: of.all[0] ?? null } : null;
}

/**
 * Before a repair is made: the look that saves most for its minutes, a new one or once more at a reading on which much
 * hangs, where it is expected to save more minutes than it takes.
 */
function lookBeforeRepair(model: Model, of: Open): CheckOrRepair {
  let [paying, most, savedMost]: [Suggestion | null, number, number] = [null, 0, Number.NEGATIVE_INFINITY];
  for (const suggestion of of.all) {
    const joint = jointOfSuggested(model, { ...of, suggestion });
    if (joint === null) continue;
    const { costs } = of;
    const savedMinutes =
      minutesAfter(unread(joint, costs.length), costs) - minutesAfter(joint, costs) - suggestion.minutes;
    savedMost = Math.max(savedMost, savedMinutes);
    if (savedMinutes / suggestion.minutes > most)
      [paying, most] = [suggestion, savedMinutes / suggestion.minutes];
  }
  return {
    best: paying === null ? 'repair' : 'check',
    check: paying ?? of.all[0] ?? null,
    checkFirstMinutes: Number.isFinite(savedMost) ? of.expectedMinutes - savedMost : null,
  };
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
