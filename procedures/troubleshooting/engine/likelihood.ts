import type { CauseId } from '../causes.ts';
import { repairOf } from '../repairs.ts';
import type { Answer, Counted, Repaired } from './evidence.ts';
import { type CheckTable, type Hypothesis, type Model, sharesOf, visible } from './model.ts';
import { densityUnder, densityUnderBoth } from './rows.ts';

/** A gauge that shows nothing and was never seen to move is wrong so often: judgement. */
const UNPROVEN_ZERO_MISREAD = 0.3;
/** A repair that was made as written does not take so often: judgement. */
const REPAIR_FAILS = 0.05;
/** The proof of a repair says "cured" though another fault is left, or though it was not this one: judgement. */
const CURED_WITH_ANOTHER = 0.15;
const CURED_BY_CHANCE = 0.02;

/** Likelihood of one item of evidence under every hypothesis; each above 0. */
export function likelihoods(model: Model, { item, after }: Counted): Float64Array {
  if (item.kind === 'repaired') return repairLikelihoods(model, { item, after });
  const table = model.tables.get(item.check);
  const flat = new Float64Array(model.hypotheses.length).fill(1);
  if (table === undefined) return flat;
  return item.value === undefined
    ? wordLikelihoods(model, { table, item, after })
    : numberLikelihoods(model, { table, item, value: item.value, after });
}

/** Share of answers that say nothing about the valve. */
export function misreadOf(table: CheckTable, item: Answer): number {
  const zero = item.outcome !== undefined && item.outcome === table.check.zero && item.gaugeAlive !== true;
  const base = zero ? Math.max(UNPROVEN_ZERO_MISREAD, table.check.misread) : table.check.misread;
  return 1 - (1 - base) * (1 - Math.min(0.95, Math.max(0, item.doubt ?? 0)));
}

function wordLikelihoods(
  model: Model,
  of: { readonly table: CheckTable; readonly item: Answer; readonly after: readonly Repaired[] },
): Float64Array {
  const { table, item, after } = of;
  const at = table.codes.indexOf(item.outcome ?? '');
  const result = new Float64Array(model.hypotheses.length).fill(1);
  // A word that the check does not know says nothing.
  if (at < 0) return result;
  const misread = misreadOf(table, item);
  const width = table.codes.length;
  model.hypotheses.forEach((hypothesis, h) => {
    const share =
      after.length === 0
        ? (table.shares[h * width + at] ?? 0)
        : (sharesOf(table, rowsLeft(model, { hypothesis, after }))[at] ?? 0);
    result[h] = (1 - misread) * share + misread / width;
  });
  return result;
}

function numberLikelihoods(
  model: Model,
  of: {
    readonly table: CheckTable;
    readonly item: Answer;
    readonly value: number;
    readonly after: readonly Repaired[];
  },
): Float64Array {
  const { table, item, value, after } = of;
  const measured = table.check.measured;
  const result = new Float64Array(model.hypotheses.length).fill(1);
  // A number for a check that is answered in words says nothing.
  if (measured === undefined) return result;
  const misread = misreadOf(table, item);
  const evenly = 1 / (measured.anywhere[1] - measured.anywhere[0]);
  const uncertaintyOnAxis = Number.isFinite(item.uncertaintyOnAxis)
    ? Math.abs(item.uncertaintyOnAxis ?? 0)
    : 0;
  const read = { value, uncertaintyOnAxis };
  const known = new Map<string, number>();
  model.hypotheses.forEach((hypothesis, h) => {
    const rows = after.length === 0 ? hypothesis.rows : rowsLeft(model, { hypothesis, after });
    const key = rows.join(' ');
    let density = known.get(key);
    if (density === undefined) {
      const [one, other] = visible(table, rows);
      density =
        other === undefined
          ? densityUnder(measured, { ...read, row: one })
          : densityUnderBoth(measured, { ...read, one, other });
      known.set(key, density);
    }
    result[h] = (1 - misread) * density + misread * evenly;
  });
  return result;
}

/**
 * What is left of a hypothesis after repairs. A repair takes its causes away, except where it was all there was and
 * did not cure: then it did not take.
 */
export function rowsLeft(
  model: Model,
  of: { readonly hypothesis: Hypothesis; readonly after: readonly Repaired[] },
): readonly number[] {
  const left = causesLeft(of.hypothesis.causes, of.after);
  if (left.length === of.hypothesis.causes.length) return of.hypothesis.rows;
  return left.length === 0 ? [model.soundRow] : left.map((cause) => model.rowOf.get(cause) ?? model.soundRow);
}

export function causesLeft(causes: readonly CauseId[], after: readonly Repaired[]): readonly CauseId[] {
  return after.reduce<readonly CauseId[]>((left, { repair, cured }) => {
    const cures = repairOf(repair).cures;
    const remaining = left.filter((cause) => !cures.includes(cause));
    return !cured && remaining.length === 0 ? left : remaining;
  }, causes);
}

function repairLikelihoods(
  model: Model,
  of: { readonly item: Repaired; readonly after: readonly Repaired[] },
): Float64Array {
  const cures = repairOf(of.item.repair).cures;
  return Float64Array.from(model.hypotheses, ({ causes }) => {
    const left = causesLeft(causes, of.after);
    const hit = left.some((cause) => cures.includes(cause));
    const rest = left.some((cause) => !cures.includes(cause));
    const cured = hit ? (rest ? CURED_WITH_ANOTHER : 1 - REPAIR_FAILS) : CURED_BY_CHANCE;
    return of.item.cured ? cured : 1 - cured;
  });
}
