import type { CauseId } from '../causes.ts';
import { SOUND } from '../causes.ts';
import { type RepairId, repairFor } from '../repairs.ts';
import { type Counted, counted, type Evidence, type Repaired } from './evidence.ts';
import { causesLeft, likelihoods } from './likelihood.ts';
import type { Model } from './model.ts';

/** What is believed after the evidence: a probability for each hypothesis, and what follows for causes and repairs. */
export interface Belief {
  readonly items: readonly Counted[];
  /** Natural logarithm of the likelihood of each item: for each reader of the model, under each hypothesis. */
  readonly each: readonly (readonly Float64Array[])[];
  /** One for each hypothesis of the model; they add up to 1. */
  readonly weights: Float64Array;
  /** How likely each reader of the model is; they add up to 1. */
  readonly readers: Float64Array;
  readonly repaired: readonly Repaired[];
}

/**
 * Exact Bayes over single faults and pairs, and over how carefully they were read, in logarithms.
 * @example believe(model, []).weights // the priors
 */
export function believe(model: Model, evidence: readonly Evidence[]): Belief {
  const items = counted(evidence);
  const each = items.map((item) => logsOf(model, item));
  const repaired = evidence.filter((item): item is Repaired => item.kind === 'repaired');
  return { items, each, ...weigh(model, each), repaired };
}

/** Items whose logarithms are kept for one model; the oldest goes first. A search rarely has more. */
const KEPT = 60;

const LOGS = new WeakMap<Model, Map<string, readonly Float64Array[]>>();

/** Each next step of a search weighs the same answers again and one more: what they say depends on nothing else. */
function logsOf(model: Model, item: Counted): readonly Float64Array[] {
  const kept = LOGS.get(model) ?? new Map<string, readonly Float64Array[]>();
  LOGS.set(model, kept);
  const key = JSON.stringify(item, (_, value) => (typeof value === 'number' ? String(value) : value));
  const logs = kept.get(key) ?? likelihoods(model, item).map((one) => one.map(Math.log));
  kept.delete(key);
  kept.set(key, logs);
  const [oldest] = kept.keys();
  if (kept.size > KEPT && oldest !== undefined) kept.delete(oldest);
  return logs;
}

/**
 * Priors times likelihoods, scaled to 1 without ever leaving the range of a number. What is believed of the valve is the
 * mixture of what each reader would make of it, each as likely as the answers leave them.
 */
export function weigh(model: Model, each: Belief['each']): Pick<Belief, 'weights' | 'readers'> {
  const count = model.hypotheses.length;
  const logs = new Float64Array(count * model.readers.length);
  model.readers.forEach((reader, r) => {
    const mine = logs.subarray(r * count, (r + 1) * count);
    model.hypotheses.forEach(({ prior }, h) => {
      mine[h] = Math.log(prior * reader.prior);
    });
    for (const { [r]: log } of each)
      for (let h = 0; h < count; h++) mine[h] = (mine[h] ?? 0) + (log?.[h] ?? 0);
  });
  const both = fromLogs(logs);
  const weights = new Float64Array(count);
  const readers = new Float64Array(model.readers.length);
  for (let r = 0; r < readers.length; r++)
    for (let h = 0; h < count; h++) {
      const weight = both[r * count + h] ?? 0;
      weights[h] = (weights[h] ?? 0) + weight;
      readers[r] = (readers[r] ?? 0) + weight;
    }
  return { weights, readers };
}

/** Exponentials of logarithms, scaled to add up to 1. */
function fromLogs(logs: Float64Array): Float64Array {
  let most = Number.NEGATIVE_INFINITY;
  for (const log of logs) if (log > most) most = log;
  const weights = logs.map((log) => Math.exp(log - most));
  let sum = 0;
  for (const weight of weights) sum += weight;
  return weights.map((weight) => weight / sum);
}

export interface Ranked<Id> {
  readonly id: Id;
  readonly probability: number;
}

/** How likely each cause is to be there now, alone or beside another; repaired ones are gone. Most likely first. */
export function causeRanking(model: Model, belief: Belief): readonly Ranked<CauseId>[] {
  return ranking(model, { belief, keysOf: (left) => (left.length === 0 ? [SOUND] : left) });
}

/** How likely each repair is to put something right that is there now. Most likely first. */
export function repairRanking(model: Model, belief: Belief): readonly Ranked<RepairId>[] {
  return ranking(model, {
    belief,
    keysOf: (left) => (left.length === 0 ? [repairFor(SOUND)] : [...new Set(left.map(repairFor))]),
  });
}

function ranking<Id extends string>(
  model: Model,
  of: { readonly belief: Belief; readonly keysOf: (left: readonly CauseId[]) => readonly Id[] },
): readonly Ranked<Id>[] {
  const sums = new Map<Id, number>();
  model.hypotheses.forEach(({ causes }, h) => {
    const weight = of.belief.weights[h] ?? 0;
    for (const key of of.keysOf(causesLeft(causes, of.belief.repaired)))
      sums.set(key, (sums.get(key) ?? 0) + weight);
  });
  return [...sums]
    .map(([id, probability]) => ({ id, probability }))
    .sort((a, b) => b.probability - a.probability || (a.id < b.id ? -1 : 1));
}
