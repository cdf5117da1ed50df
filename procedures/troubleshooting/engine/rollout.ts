/**
 * One-step rollout: what each check would cost in the end, where after it whatever tells most for its minutes is
 * checked until a repair costs less. Pattipati and Alexandridis 1990; Tu and Pattipati 2003.
 */
import { UNNAMED_MINUTES, unnamedShare } from './repair-cost.ts';
import type { SmallProblem, Stance } from './small-problem.ts';

/** What is so unlikely on the way is not followed further, nor is a way so long; the repairs stand for the rest. */
const FOLLOWED_FRACTION = 0.004;
const DEPTH_MOST = 6;
/** Places looked at for one check. */
const PLACES_MOST = 80;

export interface Thought {
  readonly repairNowMinutes: number;
  /**
   * Expected minutes to a cured valve where a check is made first; in the order of the offers. One that costs more than
   * an earlier one is not worked out further.
   */
  readonly checkFirstMinutes: readonly number[];
}

interface Walk extends SmallProblem {
  readonly total: number;
  /** What is left of each hypothesis at each depth. */
  readonly left: readonly Float64Array[];
  places: number;
}

interface Here {
  readonly depth: number;
  readonly stance: Stance;
  /** Offers that were taken, as bits. */
  readonly taken: number;
}

/** @example thinkThrough(problem).checkFirstMinutes[0] // where the first offer is taken */
export function thinkThrough(problem: SmallProblem): Thought {
  const left = Array.from({ length: DEPTH_MOST + 2 }, () => new Float64Array(problem.weights.length));
  left[0]?.set(problem.weights);
  const walk: Walk = { ...problem, total: sum(problem.weights), left, places: 0 };
  const here: Here = { depth: 0, stance: problem.start, taken: 0 };
  let most = Number.POSITIVE_INFINITY;
  const checkFirstMinutes = problem.offers.map((_, at) => {
    walk.places = 0;
    const minutes = checkFrom(walk, { ...here, at, share: walk.total, most });
    most = Math.min(most, minutes);
    return minutes / walk.total;
  });
  return { repairNowMinutes: repairFrom(walk, here).minutes / walk.total, checkFirstMinutes };
}

/** Minutes from a place times its share, where one offer is taken there. Given up where it passes `most`. */
function checkFrom(
  walk: Walk,
  of: Here & { readonly at: number; readonly share: number; readonly most: number },
): number {
  const { depth, at, taken, share } = of;
  const way = of.stance.offers[at];
  const offer = walk.offers[at];
  const [here, there] = [walk.left[depth], walk.left[depth + 1]];
  if (!way || offer === undefined || here === undefined || there === undefined)
    return Number.POSITIVE_INFINITY;
  const { width, shares } = offer;
  const to = way.to === null ? of.stance : way.to();
  let minutes = share * way.minutes;
  for (let k = 0; k < width && minutes < of.most; k++) {
    for (let n = 0; n < here.length; n++) there[n] = (here[n] ?? 0) * (shares[n * width + k] ?? 0);
    minutes += bestFrom(walk, { depth: depth + 1, stance: to, taken: taken | (1 << at) });
  }
  return minutes;
}

/** Minutes from a place times its share: repairing, or checking on where that costs less. */
function bestFrom(walk: Walk, here: Here): number {
  const { minutes, perfectMinutes, share } = repairFrom(walk, here);
  walk.places += 1;
  const followed =
    share >= FOLLOWED_FRACTION * walk.total && here.depth <= DEPTH_MOST && walk.places <= PLACES_MOST;
  if (!followed) return minutes;
  const at = tellsMost(walk, { ...here, worth: minutes - perfectMinutes, share });
  return at === null ? minutes : Math.min(minutes, checkFrom(walk, { ...here, at, share, most: minutes }));
}

/** The offer that tells most for its minutes, of those that cost less than knowing everything would save. */
function tellsMost(
  walk: Walk,
  here: Here & { readonly worth: number; readonly share: number },
): number | null {
  let [best, most] = [-1, 0];
  const { offers } = here.stance;
  noteLikely(walk, here);
  for (let at = 0; at < offers.length; at++) {
    const way = offers[at];
    if (!way || (here.taken >> at) & 1 || here.share * way.minutes >= here.worth) continue;
    const told = bitsOfOffer(walk, { at, depth: here.depth }) / way.minutes;
    if (told > most) [best, most] = [at, told];
  }
  return best < 0 ? null : best;
}

/** What is less likely at a place changes no order of checks there. */
const LIKELY_FRACTION = 0.001;

const LIKELY = new Uint8Array(256);
let likelyCount = 0;

/** Hypotheses that a choice at a place looks at. */
function noteLikely(walk: Walk, of: { readonly depth: number; readonly share: number }): void {
  const left = walk.left[of.depth] ?? walk.weights;
  likelyCount = 0;
  for (let n = 0; n < left.length; n++)
    if ((left[n] ?? 0) >= LIKELY_FRACTION * of.share) {
      LIKELY[likelyCount] = n;
      likelyCount += 1;
    }
}

const JOINT = new Float64Array(4096);
const BY_WORD = new Float64Array(64);

/** Information about the class of repair, times the share of the place. */
function bitsOfOffer(walk: Walk, of: { readonly at: number; readonly depth: number }): number {
  const offer = walk.offers[of.at];
  const left = walk.left[of.depth];
  if (offer === undefined || left === undefined) return 0;
  const { width, shares } = offer;
  const { classes, members } = walk;
  JOINT.fill(0, 0, classes * width);
  BY_WORD.fill(0, 0, width);
  for (let at = 0; at < likelyCount; at++) {
    const n = LIKELY[at] ?? 0;
    const half = (left[n] ?? 0) / 2;
    const [a, b] = [(members[2 * n] ?? 0) * width, (members[2 * n + 1] ?? 0) * width];
    for (let k = 0; k < width; k++) {
      const part = half * (shares[n * width + k] ?? 0);
      JOINT[a + k] = (JOINT[a + k] ?? 0) + part;
      JOINT[b + k] = (JOINT[b + k] ?? 0) + part;
      BY_WORD[k] = (BY_WORD[k] ?? 0) + 2 * part;
    }
  }
  return informationIn(width, classes);
}

function informationIn(width: number, classes: number): number {
  let [bits, total] = [0, 0];
  for (let one = 0; one < classes; one++) {
    let byClass = 0;
    for (let k = 0; k < width; k++) {
      const share = JOINT[one * width + k] ?? 0;
      if (share <= 0) continue;
      byClass += share;
      bits += share * Math.log2(share);
    }
    if (byClass > 0) bits -= byClass * Math.log2(byClass);
    total += byClass;
  }
  for (let k = 0; k < width; k++) {
    const share = BY_WORD[k] ?? 0;
    if (share > 0) bits -= share * Math.log2(share);
  }
  return total > 0 ? bits + total * Math.log2(total) : 0;
}

const BY_CLASS = new Float64Array(256);
/** Classes by chance for their minutes, with what each is worth. */
const ORDER = new Uint8Array(256);
const WORTH = new Float64Array(256);
const UNTIL = new Float64Array(256);

/**
 * Trying repairs by chance for their minutes until every fault is gone, and what it would cost to know the right ones;
 * times the share.
 */
function repairFrom(
  walk: Walk,
  here: Here,
): { readonly minutes: number; readonly perfectMinutes: number; readonly share: number } {
  const left = walk.left[here.depth] ?? walk.weights;
  const costs = walk.costs[here.stance.hub];
  BY_CLASS.fill(0, 0, walk.classes);
  let share = 0;
  for (let n = 0; n < left.length; n++) {
    const half = (left[n] ?? 0) / 2;
    const [a, b] = [walk.members[2 * n] ?? 0, walk.members[2 * n + 1] ?? 0];
    BY_CLASS[a] = (BY_CLASS[a] ?? 0) + half;
    BY_CLASS[b] = (BY_CLASS[b] ?? 0) + half;
    share += 2 * half;
  }
  let count = 0;
  for (let one = 0; one < walk.classes; one++) {
    if ((BY_CLASS[one] ?? 0) <= 0) continue;
    const worth = (BY_CLASS[one] ?? 0) / ((costs.minutes[one] ?? 0) + (costs.inVainMinutes[one] ?? 0));
    let at = count;
    while (at > 0 && (WORTH[at - 1] ?? 0) < worth) {
      ORDER[at] = ORDER[at - 1] ?? 0;
      WORTH[at] = WORTH[at - 1] ?? 0;
      at -= 1;
    }
    ORDER[at] = one;
    WORTH[at] = worth;
    count += 1;
  }
  // Minutes until each class has been repaired, wrong ones before it in vain.
  let [spent, inVain] = [0, 0];
  for (let at = 0; at < count; at++) {
    const one = ORDER[at] ?? 0;
    spent += costs.minutes[one] ?? 0;
    UNTIL[one] = spent + inVain;
    inVain += costs.inVainMinutes[one] ?? 0;
  }
  let [minutes, perfectMinutes] = [UNNAMED_MINUTES * unnamedShare(BY_CLASS, walk.classes), 0];
  for (let n = 0; n < left.length; n++) {
    const weight = left[n] ?? 0;
    const [a, b] = [walk.members[2 * n] ?? 0, walk.members[2 * n + 1] ?? 0];
    const [first, last] = (UNTIL[a] ?? 0) < (UNTIL[b] ?? 0) ? [a, b] : [b, a];
    if (weight === 0) continue;
    // Of two faults the first repair was not in vain, and cured nothing yet.
    const both = first === last ? 0 : (costs.minutes[last] ?? 0);
    minutes += weight * ((UNTIL[last] ?? 0) - (first === last ? 0 : (costs.inVainMinutes[first] ?? 0)));
    perfectMinutes += weight * ((costs.minutes[first] ?? 0) + both);
  }
  return { minutes, perfectMinutes, share };
}

function sum(numbers: Float64Array): number {
  let total = 0;
  for (const one of numbers) total += one;
  return total;
}
