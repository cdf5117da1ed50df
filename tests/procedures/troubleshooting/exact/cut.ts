/** Small models cut from the table of a valve: few enough causes and checks that the best there is can be worked out. */
import { type CauseId, SOUND } from '../../../../procedures/troubleshooting/causes.ts';
import { CHECK_IDS, type CheckId } from '../../../../procedures/troubleshooting/checks.ts';
import { believe } from '../../../../procedures/troubleshooting/engine/belief.ts';
import { bitsOf, jointOf, questionOf } from '../../../../procedures/troubleshooting/engine/information.ts';
import type { CheckTable, Model } from '../../../../procedures/troubleshooting/engine/model.ts';
import { CAREFUL } from '../../../../procedures/troubleshooting/engine/reader.ts';
import { repairFor } from '../../../../procedures/troubleshooting/repairs.ts';
import { random } from '../simulate.ts';

export interface Size {
  readonly causes: readonly [least: number, most: number];
  readonly checks: readonly [least: number, most: number];
  /** Nobody reads amiss, and each check is made once; left out: slips as in the table, and up to three looks. */
  readonly noSlips?: true;
}

/** A check that tells less of the few causes that are left has nothing to choose. */
const TELLS_BITS = 0.02;

/**
 * A model of a few causes and checks drawn from the whole one; their priors, shares, minutes and repairs stay. Its reader
 * is known to be careful: to weigh readers as well would make the whole working-out as many times larger.
 * @returns null where so few of the checks tell these causes apart
 */
export function cutModel(
  model: Model,
  { size, seed }: { readonly size: Size; readonly seed: number },
): Model | null {
  const chance = random(seed);
  const causes = drawn(
    model.causes.filter((id) => id !== SOUND),
    { count: between(size.causes, chance), chance },
  );
  if (chance() < 0.5) causes[0] = SOUND;
  const few = withCauses(model, causes);
  const question = questionOf(few, believe(few, []));
  const telling = few.checks.filter((id) => {
    const table = few.tables.get(id);
    if (table === undefined || table.check.broughtOnly === true) return false;
    return bitsOf(jointOf(question, table), question.classes.length) >= TELLS_BITS;
  });
  const count = between(size.checks, chance);
  if (question.classes.length < 2 || telling.length < count) return null;
  return withChecks(few, { checks: drawn(telling, { count, chance }), noSlips: size.noSlips === true });
}

function between([least, most]: readonly [number, number], chance: () => number): number {
  return least + Math.floor(chance() * (most - least + 1));
}

function drawn<One>(
  from: readonly One[],
  of: { readonly count: number; readonly chance: () => number },
): One[] {
  const left = [...from];
  return Array.from({ length: Math.min(of.count, left.length) }, () =>
    left.splice(Math.floor(of.chance() * left.length), 1),
  ).flat();
}

function withCauses(model: Model, causes: readonly CauseId[]): Model {
  const left = model.hypotheses.filter((one) => one.causes.every((id) => causes.includes(id)));
  const total = left.reduce((sum, { prior }) => sum + prior, 0);
  return {
    ...model,
    causes,
    hypotheses: left.map((one) => ({ ...one, prior: one.prior / total })),
    repairs: model.repairs.filter((id) => causes.some((cause) => repairFor(cause) === id)),
    readers: [CAREFUL],
  };
}

function withChecks(
  model: Model,
  { checks, noSlips }: { readonly checks: readonly CheckId[]; readonly noSlips: boolean },
): Model {
  const kept = CHECK_IDS.filter((id) => checks.includes(id));
  const tables = new Map(
    kept.flatMap((id): readonly (readonly [CheckId, CheckTable])[] => {
      const table = model.tables.get(id);
      if (table === undefined) return [];
      return [[id, noSlips ? { ...table, check: { ...table.check, misread: 0 } } : table]];
    }),
  );
  return { ...model, checks: kept, tables };
}
