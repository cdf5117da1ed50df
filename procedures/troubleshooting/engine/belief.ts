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
  /** Of each reader with each hypothesis: reader by reader, hypotheses in a row. */
  readonly both: Float64Array;
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
  return { items, each, ...mixtureOf(model, logsAfter(model, each)), repaired };
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
 * What would be believed if each item were not known, one after the other: for each item the weights of the hypotheses.
 * @example weightsWithoutEach(model, believe(model, [one]))[0] // the priors
 */
export function weightsWithoutEach(model: Model, { each, both }: Belief): readonly Float64Array[] {
  const count = model.hypotheses.length;
  return each.map((item) => {
    const inverse = inverseOf(item);
    const weights = new Float64Array(count);
    let sum = 0;
    for (let n = 0; n < both.length; n++) {
      const weight = (both[n] ?? 0) * (inverse[n] ?? 0);
      weights[n % count] = (weights[n % count] ?? 0) + weight;
      sum += weight;
    }
    // What an item made impossible cannot be had back by dividing.
    if (!Number.isFinite(sum))
      return mixtureOf(
        model,
        logsAfter(
          model,
          each.filter((one) => one !== item),
        ),
      ).weights;
    for (let h = 0; h < count; h++) weights[h] = (weights[h] ?? 0) / sum;
    return weights;
  });
}

const INVERSES = new WeakMap<readonly Float64Array[], Float64Array>();

/** One over each likelihood: reader by reader, hypotheses in a row. */
function inverseOf(item: readonly Float64Array[]): Float64Array {
  const inverse =
    INVERSES.get(item) ??
    Float64Array.from(item.flatMap((logs) => Array.from(logs, (log) => Math.exp(-log))));
  INVERSES.set(item, inverse);
  return inverse;
}

function logsAfter(model: Model, each: Belief['each']): Float64Array {
  const logs = priorLogs(model).slice();
  for (const item of each) add(logs, item);
  return logs;
}

const PRIORS = new WeakMap<Model, Float64Array>();

/** Logarithms of the priors: reader by reader, hypotheses in a row. */
function priorLogs(model: Model): Float64Array {
  const logs =
    PRIORS.get(model) ??
    Float64Array.from(
      model.readers.flatMap((reader) => model.hypotheses.map(({ prior }) => Math.log(prior * reader.prior))),
    );
  PRIORS.set(model, logs);
  return logs;
}

function add(logs: Float64Array, item: readonly Float64Array[]): void {
  let at = 0;
  for (const log of item)
    for (let h = 0; h < log.length; h++, at++) logs[at] = (logs[at] ?? 0) + (log[h] ?? 0);
}

/**
 * Priors times likelihoods, scaled to 1 without ever leaving the range of a number. What is believed of the valve is the
 * mixture of what each reader would make of it, each as likely as the answers leave them.
 */
function mixtureOf(model: Model, logs: Float64Array): Pick<Belief, 'both' | 'weights' | 'readers'> {
  const count = model.hypotheses.length;
  const both = fromLogs(logs);
  const weights = new Float64Array(count);
  const readers = new Float64Array(model.readers.length);
  for (let r = 0; r < readers.length; r++)
    for (let h = 0; h < count; h++) {
      const weight = both[r * count + h] ?? 0;
      weights[h] = (weights[h] ?? 0) + weight;
      readers[r] = (readers[r] ?? 0) + weight;
    }
  return { both, weights, readers };
}

/** Exponentials of logarithms, scaled to add up to 1. */
function fromLogs(logs: Float64Array): Float64Array {
  let most = Number.NEGATIVE_INFINITY;
  for (const log of logs) if (log > most) most = log;
  const weights = new Float64Array(logs.length);
  let sum = 0;
  for (let n = 0; n < logs.length; n++) {
    const weight = Math.exp((logs[n] ?? 0) - most);
    weights[n] = weight;
    sum += weight;
  }
  for (let n = 0; n < weights.length; n++) weights[n] = (weights[n] ?? 0) / sum;
  return weights;
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
