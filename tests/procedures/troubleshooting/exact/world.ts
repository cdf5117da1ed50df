/**
 * A small model as a world of its own: every way in which its checks may answer, with the chance of each, worked out
 * here from the shares of the table and from what a slip is, apart from the engine's own weighing.
 */

import { SOUND } from '../../../../procedures/troubleshooting/causes.ts';
import type { CheckId } from '../../../../procedures/troubleshooting/checks.ts';
import {
  type CheckTable,
  type Model,
  sharesOf,
} from '../../../../procedures/troubleshooting/engine/model.ts';
import { planFor, type Standing } from '../../../../procedures/troubleshooting/engine/next-check.ts';
import { repairCosts } from '../../../../procedures/troubleshooting/engine/repair-cost.ts';
import { repairFor } from '../../../../procedures/troubleshooting/repairs.ts';

/** Of its misreads, so many come again at the next look; looks at one reading: the same judgement as the engine's. */
const COMES_AGAIN = 0.5;
const LOOKS_MOST = 3;
/** So many repairs are named, and what it costs where it is none of them; the same judgement as the engine's. */
const NAMED = 3;
const UNNAMED_MINUTES = 960;

/** How often each word of a check was given. */
interface Told {
  readonly counts: readonly number[];
  /** Chance of such answers in their order, under each hypothesis. */
  readonly chance: Float64Array;
  /** The place of what is told after one more look, by its word; none where nobody looks once more. */
  readonly next: readonly number[];
}

export interface SmallCheck {
  readonly id: CheckId;
  readonly table: CheckTable;
  readonly told: readonly Told[];
}

export interface SmallWorld {
  readonly model: Model;
  readonly checks: readonly SmallCheck[];
  readonly priors: Float64Array;
  /** Which repairs each hypothesis wants: of two faults either, half and half. */
  readonly wanted: readonly (readonly number[])[];
}

export function smallWorld(model: Model): SmallWorld {
  return {
    model,
    checks: model.checks.flatMap((id) => {
      const table = model.tables.get(id);
      return table === undefined ? [] : [{ id, table, told: everythingTold(model, table) }];
    }),
    priors: Float64Array.from(model.hypotheses, ({ prior }) => prior),
    wanted: model.hypotheses.map(({ causes }) =>
      (causes.length === 0 ? [SOUND] : causes).map((cause) => model.repairs.indexOf(repairFor(cause))),
    ),
  };
}

function everythingTold(model: Model, table: CheckTable): readonly Told[] {
  const most = table.check.misread > 0 ? LOOKS_MOST : 1;
  const all: number[][] = [table.codes.map(() => 0)];
  for (let at = 0; at < all.length; at++) {
    const counts = all[at] ?? [];
    if (sum(counts) === most) continue;
    counts.forEach((_, word) => {
      const more = counts.map((count, k) => (k === word ? count + 1 : count));
      if (!all.some((one) => one.join() === more.join())) all.push(more);
    });
  }
  const places = new Map(all.map((counts, at) => [counts.join(), at]));
  return all.map((counts) => ({
    counts,
    chance: Float64Array.from(model.hypotheses, ({ rows }) =>
      chanceOf(counts, { shares: sharesOf(table, rows), misread: table.check.misread }),
    ),
    next:
      sum(counts) === most
        ? []
        : counts.map((_, word) => places.get(counts.map((n, k) => (k === word ? n + 1 : n)).join()) ?? 0),
  }));
}

/** Either an amiss that lasts gives one word for good, or something is there and each look slips by itself. */
function chanceOf(
  counts: readonly number[],
  of: { readonly shares: Float64Array; readonly misread: number },
): number {
  const lasting = COMES_AGAIN * of.misread;
  const slip = (of.misread - lasting) / (1 - lasting);
  const width = counts.length;
  let seen = 0;
  of.shares.forEach((share, there) => {
    let product = share;
    counts.forEach((count, word) => {
      product *= (slip / width + (word === there ? 1 - slip : 0)) ** count;
    });
    seen += product;
  });
  const given = counts.filter((count) => count > 0).length;
  const amiss = given === 0 ? 1 : given === 1 ? 1 / width : 0;
  return lasting * amiss + (1 - lasting) * seen;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}

/** Where a search stands: how the valve stands, and what each check has told so far. */
export interface Place {
  readonly standing: Standing;
  readonly told: readonly number[];
}

export function keyOf({ standing, told }: Place): string {
  return `${standing.hub} ${standing.gaugesFitted.length} ${[...standing.gaugesFitted].sort().join()} ${told.join()}`;
}

/** Chance of being here, under each hypothesis. */
export function weightsAt(world: SmallWorld, { told }: Place): Float64Array {
  const weights = Float64Array.from(world.priors);
  world.checks.forEach((check, c) => {
    const chance = check.told[told[c] ?? 0]?.chance;
    for (let h = 0; h < weights.length; h++) weights[h] = (weights[h] ?? 0) * (chance?.[h] ?? 0);
  });
  return weights;
}

/** What a check costs from here and where it may lead, or null where it cannot be made once more. */
export function after(
  world: SmallWorld,
  of: { readonly place: Place; readonly at: number },
): { readonly minutes: number; readonly ways: readonly Place[] } | null {
  const check = world.checks[of.at];
  const { standing, told } = of.place;
  const next = check?.told[told[of.at] ?? 0]?.next ?? [];
  if (check === undefined || next.length === 0) return null;
  const gauges = check.table.check.gauges?.(world.model.facts) ?? [];
  const plan = planFor(check.table.check, { standing, gauges });
  if (plan === null) return null;
  const there: Standing = {
    ...standing,
    hub: plan.hub,
    gaugesFitted: [...standing.gaugesFitted, ...plan.fit],
  };
  return {
    minutes: plan.minutes,
    ways: next.map((place) => ({
      standing: there,
      told: told.map((one, c) => (c === of.at ? place : one)),
    })),
  };
}

/**
 * Minutes of trying repairs from here until every fault is gone, times the chance of being here. Each repair costs what
 * the engine says; the order is that of chance for minutes, where either fault of two counts half. Where no two faults
 * meet, no other order is better.
 */
export function minutesOfRepairs(
  world: SmallWorld,
  of: { readonly place: Place; readonly weights: Float64Array },
): number {
  const classes = world.model.repairs;
  const costs = repairCosts(world.model, { question: { classes }, hub: of.place.standing.hub });
  const chances = classes.map(() => 0);
  of.weights.forEach((weight, h) => {
    const wanted = world.wanted[h] ?? [];
    for (const one of wanted) chances[one] = (chances[one] ?? 0) + weight / wanted.length;
  });
  const order = costs.map((cost, at) => ({ ...cost, at, chance: chances[at] ?? 0 }));
  order.sort((a, b) => b.chance * (a.minutes + a.inVainMinutes) - a.chance * (b.minutes + b.inVainMinutes));
  const unnamed = sum([...chances].sort((a, b) => b - a).slice(NAMED));
  return of.weights.reduce(
    (total, weight, h) => total + weight * minutesUntil(order, world.wanted[h] ?? []),
    unnamed * UNNAMED_MINUTES,
  );
}

/** Repairs one after the other, until all that are wanted were made; those that are not wanted are in vain. */
export function minutesUntil(
  order: readonly { readonly at: number; readonly minutes: number; readonly inVainMinutes: number }[],
  wanted: readonly number[],
): number {
  const left = new Set(wanted);
  let minutes = 0;
  for (const { at, ...cost } of order) {
    if (left.size === 0) break;
    minutes += cost.minutes + (left.delete(at) ? 0 : cost.inVainMinutes);
  }
  return minutes;
}
