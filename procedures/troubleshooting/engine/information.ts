import { SOUND } from '../causes.ts';
import { type RepairId, repairFor } from '../repairs.ts';
import type { Belief } from './belief.ts';
import { causesLeft } from './likelihood.ts';
import { type CheckTable, type Model, sharesOf } from './model.ts';

/** Hypotheses below this weight change no choice and are left out of it. */
const NEGLECTED = 1e-7;

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
  /** Index in the model, where nothing was repaired and the tables hold; else -1. */
  readonly places: readonly number[];
  /** Probability of each class. */
  readonly shares: Float64Array;
}

export function questionOf(model: Model, belief: Belief): Question {
  const classes = model.repairs;
  const at = new Map(classes.map((id, index) => [id, index] as const));
  const weights: number[] = [];
  const members: (readonly number[])[] = [];
  const rows: (readonly number[])[] = [];
  const places: number[] = [];
  const shares = new Float64Array(classes.length);
  model.hypotheses.forEach((hypothesis, h) => {
    const weight = belief.weights[h] ?? 0;
    const left = causesLeft(hypothesis.causes, belief.repaired);
    const mine = (left.length === 0 ? [SOUND] : left).map((cause) => at.get(repairFor(cause)) ?? 0);
    for (const one of mine) shares[one] = (shares[one] ?? 0) + weight / mine.length;
    if (weight < NEGLECTED) return;
    weights.push(weight);
    members.push(mine);
    rows.push(
      left.length === hypothesis.causes.length
        ? hypothesis.rows
        : left.length === 0
          ? [model.soundRow]
          : left.map((cause) => model.rowOf.get(cause) ?? model.soundRow),
    );
    places.push(left.length === hypothesis.causes.length ? h : -1);
  });
  return { classes, weights: Float64Array.from(weights), members, rows, places, shares };
}

/** Probability of each outcome together with each class: outcome by outcome, classes in a row. */
export function jointOf(question: Question, table: CheckTable): Float64Array {
  const width = table.codes.length;
  const classes = question.classes.length;
  const joint = new Float64Array(width * classes);
  for (let n = 0; n < question.weights.length; n++) {
    const weight = question.weights[n] ?? 0;
    const place = question.places[n] ?? -1;
    const mine = question.members[n] ?? [];
    const shares = place < 0 ? sharesOf(table, question.rows[n] ?? []) : table.shares;
    const from = place < 0 ? 0 : place * width;
    const part = weight / mine.length;
    for (let k = 0; k < width; k++) {
      const share = part * (shares[from + k] ?? 0);
      for (const one of mine) joint[k * classes + one] = (joint[k * classes + one] ?? 0) + share;
    }
  }
  return misread(joint, { width, classes, fraction: table.check.misread });
}

function misread(
  joint: Float64Array,
  of: { readonly width: number; readonly classes: number; readonly fraction: number },
): Float64Array {
  const { width, classes, fraction } = of;
  for (let one = 0; one < classes; one++) {
    let sum = 0;
    for (let k = 0; k < width; k++) sum += joint[k * classes + one] ?? 0;
    for (let k = 0; k < width; k++) {
      const at = k * classes + one;
      joint[at] = (1 - fraction) * (joint[at] ?? 0) + (fraction * sum) / width;
    }
  }
  return joint;
}

/** Information in bits that an outcome gives about the class, on the average. */
export function bitsOf(joint: Float64Array, classes: number): number {
  const width = joint.length / classes;
  const byClass = new Float64Array(classes);
  const byOutcome = new Float64Array(width);
  let total = 0;
  for (let k = 0; k < width; k++)
    for (let one = 0; one < classes; one++) {
      const share = joint[k * classes + one] ?? 0;
      byClass[one] = (byClass[one] ?? 0) + share;
      byOutcome[k] = (byOutcome[k] ?? 0) + share;
      total += share;
    }
  let bits = 0;
  for (let k = 0; k < width; k++)
    for (let one = 0; one < classes; one++) {
      const share = joint[k * classes + one] ?? 0;
      const even = (byClass[one] ?? 0) * (byOutcome[k] ?? 0);
      if (share > 0 && even > 0) bits += share * Math.log2((share * total) / even);
    }
  return Math.max(0, bits / (total || 1));
}
