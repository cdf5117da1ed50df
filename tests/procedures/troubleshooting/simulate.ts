import type { CauseId } from '../../../procedures/troubleshooting/causes.ts';
import { CHECK_IDS, type CheckId } from '../../../procedures/troubleshooting/checks.ts';
import { fromOutside, groupsAlike } from '../../../procedures/troubleshooting/engine/alike.ts';
import {
  type Belief,
  believe,
  causeRanking,
  repairRanking,
} from '../../../procedures/troubleshooting/engine/belief.ts';
import { decide } from '../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import type { Hypothesis, Model } from '../../../procedures/troubleshooting/engine/model.ts';
import type { Standing, Suggestion } from '../../../procedures/troubleshooting/engine/next-check.ts';
import { repairFor } from '../../../procedures/troubleshooting/repairs.ts';
import { hiddenValve, type Said } from './hidden-valve.ts';

/** A generator whose numbers come again: figures of a run can be compared. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export function standingAtStart(model: Model): Standing {
  return {
    hub: 'in service',
    gaugesFitted: model.facts.gaugesFitted,
    consent: true,
    mayBypass: true,
    mayIsolate: true,
    testAir: true,
    coverMayOpen: true,
  };
}

export function drawHypothesis(of: {
  readonly from: readonly Hypothesis[];
  readonly chance: () => number;
}): Hypothesis {
  const total = of.from.reduce((sum, { prior }) => sum + prior, 0);
  let left = of.chance() * total;
  for (const hypothesis of of.from) {
    left -= hypothesis.prior;
    if (left <= 0) return hypothesis;
  }
  const last = of.from.at(-1);
  if (last === undefined) throw new Error('nothing to draw from');
  return last;
}

type Policy = (
  model: Model,
  of: { readonly belief: Belief; readonly all: readonly Suggestion[] },
) => Suggestion | undefined;

/** Round the valve in the order of the list, each thing once, whatever was found. */
export const fixedOrder: Policy = (_, { all }) =>
  all.filter(({ again }) => !again).sort((a, b) => rank(a) - rank(b))[0];

function rank({ check, moveMinutes }: Suggestion): number {
  return CHECK_IDS.indexOf(check) + (moveMinutes > 0 ? 1000 : 0) + (moveMinutes > 30 ? 1000 : 0);
}

export interface Run {
  readonly minutes: number;
  readonly checks: number;
  /** The repair that is held likeliest is wanted. */
  readonly right: boolean;
  /** The same, or the likeliest cause is one that no look from outside tells from the truth. */
  readonly first: boolean;
  /** So are all faults that are there, among the first three. */
  readonly firstThree: boolean;
  /** How likely that repair is said to be wanted. */
  readonly stated: number;
  /** How likely it is for somebody who makes of the same answers what can be made, knowing how often they are amiss. */
  readonly known: number;
  readonly truth: Hypothesis;
  readonly asked: readonly CheckId[];
}

export interface RunOptions {
  readonly truth: Hypothesis;
  readonly chance: () => number;
  /** Beside the misreads of the table; nobody tells the engine. */
  readonly extraMisread?: number;
  /** Answered by words alone, also where the card asks for a number. */
  readonly inWords?: boolean;
}

const CHECKS_MOST = 80;

/** One search as the engine advises it, from the first look until it says to repair or nothing is left to check. */
export function search(model: Model, of: RunOptions): Run {
  const answer = hiddenValve(model, of);
  const evidence: Evidence[] = [];
  let standing = standingAtStart(model);
  let minutes = 0;
  const asked: CheckId[] = [];
  for (;;) {
    const belief = believe(model, evidence);
    const { best, check: next } = decide(model, { belief, evidence, standing });
    if (best !== 'check' || next === null || asked.length >= CHECKS_MOST)
      return { ...verdict(model, { ...of, evidence, belief }), minutes, checks: asked.length, asked };
    asked.push(next.check);
    minutes += next.minutes;
    standing = { ...standing, hub: next.hub, gaugesFitted: [...standing.gaugesFitted, ...next.fit] };
    evidence.push(answered(next.check, answer));
  }
}

/** What is known once every check of the valve was read, so many times each: no search can know more. */
export function everythingRead(model: Model, of: RunOptions & { readonly looks: number }): Run {
  const answer = hiddenValve(model, of);
  const asked = model.checks.filter((id) => model.tables.get(id)?.check.broughtOnly !== true);
  const evidence = asked.flatMap((check) => Array.from({ length: of.looks }, () => answered(check, answer)));
  const belief = believe(model, evidence);
  const minutes = asked.reduce((sum, id) => sum + of.looks * (model.tables.get(id)?.check.minutes ?? 0), 0);
  return { ...verdict(model, { ...of, evidence, belief }), minutes, checks: asked.length, asked };
}

function answered(check: CheckId, answer: (check: CheckId) => Said): Evidence {
  return { kind: 'answer', check, ...answer(check), gaugeAlive: true };
}

function verdict(
  model: Model,
  of: RunOptions & { readonly evidence: readonly Evidence[]; readonly belief: Belief },
): Pick<Run, 'right' | 'first' | 'firstThree' | 'stated' | 'known' | 'truth'> {
  const { truth, belief } = of;
  const knowing = readBy(model, of.extraMisread ?? 0);
  const ifKnown = repairRanking(knowing, believe(knowing, of.evidence));
  const repairs = repairRanking(model, belief);
  const causes = causeRanking(model, belief).map(({ id }) => id);
  const named = repairs.map(({ id }) => id);
  const among = (cause: CauseId, places: number) =>
    named.slice(0, places).includes(repairFor(cause)) ||
    causes.slice(0, places).some((one) => alikeWith(model, cause).includes(one));
  return {
    truth,
    right: truth.causes.some((cause) => repairFor(cause) === named[0]),
    first: truth.causes.some((cause) => among(cause, 1)),
    firstThree: truth.causes.every((cause) => among(cause, 3)),
    stated: repairs[0]?.probability ?? 0,
    known: ifKnown.find(({ id }) => id === named[0])?.probability ?? 0,
  };
}

/** The same valve where it is known how carefully it is read. */
export function readBy(model: Model, extraMisread: number): Model {
  return { ...model, readers: [{ extraMisread, prior: 1 }] };
}

const GROUPS = new WeakMap<Model, readonly (readonly CauseId[])[]>();

/** The causes that no look from outside tells from this one. */
export function alikeWith(model: Model, cause: CauseId): readonly CauseId[] {
  const outside = () => model.checks.filter((id) => fromOutside(model, id));
  const groups = GROUPS.get(model) ?? groupsAlike(model, outside());
  GROUPS.set(model, groups);
  return groups.find((group) => group.includes(cause)) ?? [cause];
}

export interface Figures {
  readonly runs: number;
  readonly minutes: number;
  readonly checks: number;
  readonly right: number;
  readonly first: number;
  readonly firstThree: number;
  readonly stated: number;
  readonly known: number;
}

export function figuresOf(runs: readonly Run[]): Figures {
  const mean = (of: (run: Run) => number) => runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
  return {
    runs: runs.length,
    minutes: mean((run) => run.minutes),
    checks: mean((run) => run.checks),
    right: mean((run) => (run.right ? 1 : 0)),
    first: mean((run) => (run.first ? 1 : 0)),
    firstThree: mean((run) => (run.firstThree ? 1 : 0)),
    stated: mean((run) => run.stated),
    known: mean((run) => run.known),
  };
}

/** Singles as the priors have them; a job with two faults is measured apart. */
export function singlesOf(model: Model): readonly Hypothesis[] {
  return model.hypotheses.filter(({ causes }) => causes.length === 1);
}

export function pairsOf(model: Model): readonly Hypothesis[] {
  return model.hypotheses.filter(({ causes }) => causes.length === 2);
}
