import { SOUND } from '../causes.ts';
import { type RepairId, repairFor } from '../repairs.ts';
import type { Belief } from './belief.ts';
import { causesLeft } from './likelihood.ts';
import { type CheckTable, type Model, rowAt, visibleAt } from './model.ts';
import { amissOf, expectedExtraMisread } from './reader.ts';

/**
 * What is left out of a choice: the least likely hypotheses that together weigh no more than this. They are counted
 * in what is believed, and change no order of checks.
 */
const NEGLECTED = 0.01;

/**
 * What is asked: which repair is wanted. Two causes with one repair need no telling apart; of two faults at once
 * either is an answer, half and half.
 */
export interface Question {
  readonly classes: readonly RepairId[];
  /** For each hypothesis that still counts: its weight, its classes, what it would show. */
  readonly weights: Float64Array;
  readonly members: readonly (readonly number[])[];
  readonly rows: readonly (readonly number[])[];
  /** Probability of each class. */
  readonly shares: Float64Array;
  /** Misreads to be expected of the next answer, beside those of its check. */
  readonly extraMisread: number;
}

export function questionOf(model: Model, belief: Belief): Question {
  const classes = model.repairs;
  const at = new Map(classes.map((id, index) => [id, index] as const));
  const weights: number[] = [];
  const members: (readonly number[])[] = [];
  const rows: (readonly number[])[] = [];
  const shares = new Float64Array(classes.length);
  const least = leastCounted(belief.weights);
  model.hypotheses.forEach((hypothesis, h) => {
    const weight = belief.weights[h] ?? 0;
    const left = causesLeft(hypothesis.causes, belief.repaired);
    const mine = (left.length === 0 ? [SOUND] : left).map((cause) => at.get(repairFor(cause)) ?? 0);
    for (const one of mine) shares[one] = (shares[one] ?? 0) + weight / mine.length;
    if (weight < least) return;
    weights.push(weight);
    members.push(mine);
    rows.push(
      left.length === hypothesis.causes.length
        ? hypothesis.rows
        : left.length === 0
          ? [model.soundRow]
          : left.map((cause) => model.rowOf.get(cause) ?? model.soundRow),
    );
  });
  const extraMisread = expectedExtraMisread(model.readers, belief.readers);
  return { classes, weights: Float64Array.from(weights), members, rows, shares, extraMisread };
}

/** The weight below which a hypothesis is left out. */
function leastCounted(weights: Float64Array): number {
  const sorted = Float64Array.from(weights).sort();
  let sum = 0;
  for (const weight of sorted) {
    sum += weight;
    if (sum > NEGLECTED) return weight;
  }
  return 0;
}

/** Probability of each outcome together with each class: class by class, outcomes in a row. */
export function jointOf(question: Question, table: CheckTable): Float64Array {
  const width = table.codes.length;
  const joint = new Float64Array(width * question.classes.length);
  for (let n = 0; n < question.weights.length; n++) {
    const mine = question.members[n] ?? [];
    const part = (question.weights[n] ?? 0) / mine.length;
    const [one, other] = visibleAt(table, question.rows[n] ?? []);
    const a = rowAt(table, one).shares;
    const b = other === null ? null : rowAt(table, other).shares;
    for (const member of mine) addShares(joint, { at: member * width, part, a, b });
  }
  return misread(joint, { width, fraction: amissOf([table.check.misread, question.extraMisread]) });
}

/** Adds what one hypothesis shows; two faults by the rule of `bothShares`, written out where it runs millions of times. */
function addShares(
  joint: Float64Array,
  of: {
    readonly at: number;
    readonly part: number;
    readonly a: Float64Array;
    readonly b: Float64Array | null;
  },
): void {
  const { at, part, a, b } = of;
  if (b === null) {
    for (let k = 0; k < a.length; k++) joint[at + k] = (joint[at + k] ?? 0) + part * (a[k] ?? 0);
    return;
  }
  const [soundA, soundB] = [a[0] ?? 0, b[0] ?? 0];
  const [ofA, ofB] = [(part * (1 + soundB)) / 2, (part * (1 + soundA)) / 2];
  joint[at] = (joint[at] ?? 0) + part * soundA * soundB;
  for (let k = 1; k < a.length; k++)
    joint[at + k] = (joint[at + k] ?? 0) + ofA * (a[k] ?? 0) + ofB * (b[k] ?? 0);
}

function misread(
  joint: Float64Array,
  of: { readonly width: number; readonly fraction: number },
): Float64Array {
  const { width, fraction } = of;
  for (let from = 0; from < joint.length; from += width) {
    let sum = 0;
    for (let at = from; at < from + width; at++) sum += joint[at] ?? 0;
    for (let at = from; at < from + width; at++)
      joint[at] = (1 - fraction) * (joint[at] ?? 0) + (fraction * sum) / width;
  }
  return joint;
}

/** Information in bits that an outcome gives about the class, on the average. */
export function bitsOf(joint: Float64Array, classes: number): number {
  const width = joint.length / classes;
  const byOutcome = new Float64Array(width);
  let [total, bits] = [0, 0];
  for (let from = 0; from < joint.length; from += width) {
    let byClass = 0;
    for (let k = 0; k < width; k++) {
      const share = joint[from + k] ?? 0;
      byClass += share;
      byOutcome[k] = (byOutcome[k] ?? 0) + share;
      bits += weighed(share);
    }
    total += byClass;
    bits -= weighed(byClass);
  }
  for (const share of byOutcome) bits -= weighed(share);
  return total > 0 ? Math.max(0, (bits + weighed(total)) / total) : 0;
}

/** Share times its logarithm; nothing for nothing. */
function weighed(share: number): number {
  return share > 0 ? share * Math.log2(share) : 0;
}
