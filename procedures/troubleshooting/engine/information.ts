import { SOUND } from '../causes.ts';
import { type RepairId, repairFor } from '../repairs.ts';
import type { Belief } from './belief.ts';
import { causesLeft } from './likelihood.ts';
import { type CheckTable, type Model, type RowsSideBySide, sideBySide, visibleSideBySide } from './model.ts';
import { amissOf, expectedExtraMisread } from './reader.ts';

/**
 * What is left out of a choice: the least likely hypotheses that together weigh no more than this. They are counted
 * in what is believed, and change no order of checks.
 */
const NEGLECTED = 0.003;

/**
 * What is asked: which repair is wanted. Two causes with one repair need no telling apart; of two faults at once
 * either is an answer, half and half.
 */
export interface Question {
  readonly classes: readonly RepairId[];
  /** For each hypothesis that still counts: its weight, its classes, what it would show. */
  readonly weights: Float64Array;
  /** Two classes for each, the same one twice where it is alone. */
  readonly members: Uint8Array;
  readonly rows: RowsSideBySide;
  /** Probability of each class. */
  readonly shares: Float64Array;
  /** Misreads to be expected of the next answer, beside those of its check. */
  readonly extraMisread: number;
  /** What was worked out by `jointOf`. */
  readonly joints: Map<CheckTable, Float64Array>;
}

export function questionOf(model: Model, belief: Belief): Question {
  const classes = model.repairs;
  const at = new Map(classes.map((id, index) => [id, index] as const));
  const weights: number[] = [];
  const members: number[] = [];
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
    const [one = 0, other = one] = mine;
    members.push(one, other);
    rows.push(
      left.length === hypothesis.causes.length
        ? hypothesis.rows
        : left.length === 0
          ? [model.soundRow]
          : left.map((cause) => model.rowOf.get(cause) ?? model.soundRow),
    );
  });
  const extraMisread = expectedExtraMisread(model.readers, belief.readers);
  return {
    classes,
    weights: Float64Array.from(weights),
    members: Uint8Array.from(members),
    rows: sideBySide(rows),
    shares,
    extraMisread,
    joints: new Map(),
  };
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

/** Probability of each outcome together with each class: class by class, outcomes in a row. Nobody may write into it. */
export function jointOf(question: Question, table: CheckTable): Float64Array {
  const joint = question.joints.get(table) ?? workOutJoint(question, table);
  question.joints.set(table, joint);
  return joint;
}

function workOutJoint(question: Question, table: CheckTable): Float64Array {
  const width = table.codes.length;
  const joint = new Float64Array(width * question.classes.length);
  const { weights, members } = question;
  const { one, other } = visibleSideBySide(table, question.rows);
  const rows = table.rows.map(({ shares }) => shares);
  const seen = new Float64Array(width);
  for (let n = 0; n < weights.length; n++) {
    const half = (weights[n] ?? 0) / 2;
    const second = other[n] ?? -1;
    putShares(seen, { a: rows[one[n] ?? 0], b: second < 0 ? undefined : rows[second] });
    const [of, beside] = [(members[2 * n] ?? 0) * width, (members[2 * n + 1] ?? 0) * width];
    for (let k = 0; k < width; k++) {
      const part = half * (seen[k] ?? 0);
      joint[of + k] = (joint[of + k] ?? 0) + part;
      joint[beside + k] = (joint[beside + k] ?? 0) + part;
    }
  }
  return misread(joint, { width, fraction: amissOf([table.check.misread, question.extraMisread]) });
}

/** What one hypothesis shows; two faults by the rule of `bothShares`, written out where it runs millions of times. */
function putShares(
  seen: Float64Array,
  { a, b }: { readonly a: Float64Array | undefined; readonly b: Float64Array | undefined },
): void {
  if (a === undefined) throw new Error('a model without its row');
  if (b === undefined) {
    seen.set(a);
    return;
  }
  const [soundA, soundB] = [a[0] ?? 0, b[0] ?? 0];
  seen[0] = soundA * soundB;
  for (let k = 1; k < a.length; k++) seen[k] = ((a[k] ?? 0) * (1 + soundB) + (b[k] ?? 0) * (1 + soundA)) / 2;
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
