import type { CauseId } from '../causes.ts';
import type { CheckId } from '../checks.ts';
import { type Belief, causeRanking } from './belief.ts';
import type { Evidence } from './evidence.ts';
import { type Model, sharesOf } from './model.ts';
import { settledIn } from './reopened.ts';

/** Two causes are told apart by a check where half of their answers differ. */
const TOLD_APART = 0.5;
/** Causes below this are not worth naming beside the likeliest. */
const WORTH_NAMING = 0.05;

/** Whether a check opens something: then it is no look from outside. */
export function fromOutside(model: Model, id: CheckId): boolean {
  const check = model.tables.get(id)?.check;
  return check?.hubs.some((hub) => hub !== 'isolated') ?? false;
}

/** The share of answers by which two causes differ on a check: 0 the same, 1 never the same. */
function apartOn(
  model: Model,
  of: { readonly check: CheckId; readonly one: CauseId; readonly other: CauseId },
): number {
  const table = model.tables.get(of.check);
  const [a, b] = [model.rowOf.get(of.one), model.rowOf.get(of.other)];
  if (table === undefined || a === undefined || b === undefined) return 0;
  const [one, other] = [sharesOf(table, [a]), sharesOf(table, [b])];
  const { misread } = table.check;
  let sum = 0;
  one.forEach((share, k) => {
    sum += Math.abs(share - (other[k] ?? 0));
  });
  return ((1 - misread) * sum) / 2;
}

/** The checks of a list that tell two causes apart, the sharpest first. */
export function tellingApart(
  model: Model,
  of: { readonly one: CauseId; readonly other: CauseId; readonly checks: readonly CheckId[] },
): readonly CheckId[] {
  return of.checks
    .map((check) => ({ check, apart: apartOn(model, { ...of, check }) }))
    .filter(({ apart }) => apart >= TOLD_APART)
    .sort((a, b) => b.apart - a.apart)
    .map(({ check }) => check);
}

export interface Alike {
  /** The likeliest cause and those that no check left from outside tells from it. */
  readonly causes: readonly CauseId[];
  /** What would tell them apart, once isolated and opened. */
  readonly toldBy: readonly CheckId[];
}

/**
 * Causes that cannot be told apart from outside any more: they stand high, and what tells them apart means opening.
 * Null where only one cause stands high, or a look from outside is left.
 */
export function alikeFromOutside(
  model: Model,
  of: { readonly belief: Belief; readonly evidence: readonly Evidence[] },
): Alike | null {
  const done = settledIn(model, of.evidence);
  const left = model.checks.filter((id) => !done.has(id) && model.tables.get(id)?.check.broughtOnly !== true);
  const outside = left.filter((id) => fromOutside(model, id));
  const [first, ...rest] = causeRanking(model, of.belief).filter(
    ({ probability }) => probability >= WORTH_NAMING,
  );
  if (first === undefined) return null;
  const same = rest
    .map(({ id }) => id)
    .filter((other) => tellingApart(model, { one: first.id, other, checks: outside }).length === 0);
  if (same.length === 0) return null;
  const toldBy = new Set(
    same.flatMap((other) => tellingApart(model, { one: first.id, other, checks: left })),
  );
  return { causes: [first.id, ...same], toldBy: [...toldBy] };
}

/**
 * Groups of causes that no single check of a list tells apart: each pair within a group is alike on all of them.
 * @example groupsAlike(model, model.checks).filter((group) => group.length > 1)
 */
export function groupsAlike(model: Model, checks: readonly CheckId[]): readonly (readonly CauseId[])[] {
  const alike = (one: CauseId, other: CauseId) => tellingApart(model, { one, other, checks }).length === 0;
  const groups: CauseId[][] = [];
  for (const cause of model.causes) {
    const home = groups.find((group) => group.every((member) => alike(member, cause)));
    if (home === undefined) groups.push([cause]);
    else home.push(cause);
  }
  return groups;
}
