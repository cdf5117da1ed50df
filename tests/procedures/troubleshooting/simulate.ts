import { causeOf } from '../../../procedures/troubleshooting/causes.ts';
import { CHECK_IDS, type CheckId } from '../../../procedures/troubleshooting/checks.ts';
import { type Belief, believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import { lookThatPays } from '../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { questionOf } from '../../../procedures/troubleshooting/engine/information.ts';
import { type Hypothesis, type Model, sharesOf } from '../../../procedures/troubleshooting/engine/model.ts';
import {
  type Standing,
  type Suggestion,
  suggestions,
} from '../../../procedures/troubleshooting/engine/next-check.ts';
import { repairFor } from '../../../procedures/troubleshooting/repairs.ts';

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

/** Of its misreads, so many come again at the next look; the same judgement as the engine's. */
const COMES_AGAIN = 0.5;

/** A valve with a hidden fault: answers each check as a person would, slips and all; what is there stays there. */
export function hiddenValve(
  model: Model,
  of: {
    readonly truth: Hypothesis;
    readonly chance: () => number;
    readonly extraMisread?: number;
  },
): (check: CheckId) => string {
  const known = new Map<CheckId, { readonly there: string; readonly lasting: string | null }>();
  return (check) => {
    const table = model.tables.get(check);
    if (table === undefined) throw new Error(`no check ${check} on this valve`);
    const misread = 1 - (1 - table.check.misread) * (1 - (of.extraMisread ?? 0));
    const lasting = COMES_AGAIN * misread;
    const anything = () => table.codes[Math.floor(of.chance() * table.codes.length)] ?? '';
    const look = known.get(check) ?? {
      there: drawWord(table.codes, { shares: sharesOf(table, of.truth.rows), chance: of.chance }),
      lasting: of.chance() < lasting ? anything() : null,
    };
    known.set(check, look);
    if (look.lasting !== null) return look.lasting;
    return of.chance() < (misread - lasting) / (1 - lasting) ? anything() : look.there;
  };
}

function drawWord(
  codes: readonly string[],
  of: { readonly shares: Float64Array; readonly chance: () => number },
): string {
  let left = of.chance();
  const at = of.shares.findIndex((share) => {
    left -= share;
    return left <= 0;
  });
  return codes[Math.max(0, at)] ?? '';
}

export type Policy = (
  model: Model,
  of: { readonly belief: Belief; readonly all: readonly Suggestion[] },
) => Suggestion | undefined;

/** Best expected information for its minutes. */
export const bestInformation: Policy = (_, { all }) => all[0];

/** Round the valve in the order of the list, each thing once, whatever was found. */
export const fixedOrder: Policy = (_, { all }) =>
  all.filter(({ again }) => !again).sort((a, b) => rank(a) - rank(b))[0];

function rank({ check, moveMinutes }: Suggestion): number {
  return CHECK_IDS.indexOf(check) + (moveMinutes > 0 ? 1000 : 0) + (moveMinutes > 30 ? 1000 : 0);
}

/** Straight at the likeliest cause, with the quickest check that would show it. */
export const likeliestFirst: Policy = (model, { belief, all }) => {
  for (const { id } of causeRanking(model, belief)) {
    const row = model.rowOf.get(id) ?? 0;
    const shows = all
      .filter(({ check }) => {
        const table = model.tables.get(check);
        return table !== undefined && (sharesOf(table, [row])[0] ?? 1) < 0.5;
      })
      .sort((a, b) => a.minutes - b.minutes);
    if (shows[0] !== undefined) return shows[0];
  }
  return all[0];
};

export interface Run {
  readonly minutes: number;
  readonly checks: number;
  readonly right: boolean;
  readonly stated: number;
  readonly firstThree: boolean;
  readonly truth: Hypothesis;
  readonly asked: readonly CheckId[];
}

export interface RunOptions {
  readonly truth: Hypothesis;
  readonly chance: () => number;
  readonly policy: Policy;
  readonly stopFraction: number;
  readonly extraMisread?: number;
  readonly doubt?: number;
  readonly opening?: readonly Evidence[];
  readonly standing?: Partial<Standing>;
}

/** One search, from the first look until one repair is as sure as wanted or nothing is left to check. */
export function search(model: Model, of: RunOptions): Run {
  const answer = hiddenValve(model, of);
  const evidence: Evidence[] = [...(of.opening ?? [])];
  let standing: Standing = { ...standingAtStart(model), ...of.standing };
  let minutes = 0;
  const asked: CheckId[] = [];
  for (;;) {
    const belief = believe(model, evidence);
    const question = questionOf(model, belief);
    const sure = Math.max(...question.shares) >= of.stopFraction;
    const all = suggestions(model, { question, evidence, standing });
    const next = sure
      ? lookThatPays(model, { question, evidence, standing, all })
      : of.policy(model, { belief, all });
    if (next === undefined || next === null) return verdict(model, { ...of, belief, minutes, asked });
    asked.push(next.check);
    minutes += next.minutes;
    standing = { ...standing, hub: next.hub, gaugesFitted: [...standing.gaugesFitted, ...next.fit] };
    evidence.push({
      kind: 'answer',
      check: next.check,
      outcome: answer(next.check),
      gaugeAlive: true,
      ...(of.doubt === undefined ? {} : { doubt: of.doubt }),
    });
  }
}

function verdict(
  model: Model,
  of: RunOptions & { readonly belief: Belief; readonly minutes: number; readonly asked: readonly CheckId[] },
): Run {
  const question = questionOf(model, of.belief);
  const order = [...question.shares.keys()].sort(
    (a, b) => (question.shares[b] ?? 0) - (question.shares[a] ?? 0),
  );
  const wanted = of.truth.causes.map(repairFor);
  const named = order.map((at) => question.classes[at]);
  return {
    minutes: of.minutes,
    checks: of.asked.length,
    right: wanted.some((one) => one === named[0]),
    stated: question.shares[order[0] ?? 0] ?? 0,
    firstThree: wanted.every((one) => named.slice(0, 3).includes(one)),
    truth: of.truth,
    asked: of.asked,
  };
}

export interface Figures {
  readonly runs: number;
  readonly minutes: number;
  readonly checks: number;
  readonly right: number;
  readonly firstThree: number;
  readonly stated: number;
}

export function figuresOf(runs: readonly Run[]): Figures {
  const mean = (of: (run: Run) => number) => runs.reduce((sum, run) => sum + of(run), 0) / runs.length;
  return {
    runs: runs.length,
    minutes: mean((run) => run.minutes),
    checks: mean((run) => run.checks),
    right: mean((run) => (run.right ? 1 : 0)),
    firstThree: mean((run) => (run.firstThree ? 1 : 0)),
    stated: mean((run) => run.stated),
  };
}

/** Singles as the priors have them; a job with two faults is measured apart. */
export function singlesOf(model: Model): readonly Hypothesis[] {
  return model.hypotheses.filter(({ causes }) => causes.length === 1);
}

export function pairsOf(model: Model): readonly Hypothesis[] {
  return model.hypotheses.filter(({ causes }) => causes.length === 2);
}

export function wordsOf(hypothesis: Hypothesis): string {
  return hypothesis.causes.map((id) => causeOf(id).words).join(' + ');
}
