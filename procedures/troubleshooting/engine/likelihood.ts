import type { CauseId } from '../causes.ts';
import { repairOf } from '../repairs.ts';
import type { Answer, Counted, Repaired } from './evidence.ts';
import { type CheckTable, type Hypothesis, type Model, shareOf, visibleAt } from './model.ts';
import { densityTogether, partsUnder } from './rows.ts';

/** A gauge that shows nothing and was never seen to move is wrong so often: judgement. */
const UNPROVEN_ZERO_MISREAD = 0.3;
/** A repair that was made as written does not take so often: judgement. */
const REPAIR_FAILS = 0.05;
/** The proof of a repair says "cured" though another fault is left, or though it was not this one: judgement. */
const CURED_WITH_ANOTHER = 0.15;
const CURED_BY_CHANCE = 0.02;

/** However doubtful an answer is, something of it counts: judgement. */
const DOUBT_MAX = 0.95;

/** Likelihood of one item of evidence under every hypothesis; each above 0. */
export function likelihoods(model: Model, counted: Counted): Float64Array {
  const { item, after, earlier } = counted;
  if (item.kind === 'repaired') return repairLikelihoods(model, { item, after });
  const fresh = answerLikelihoods(model, { item, after });
  return earlier === null ? fresh : saidAgain(model, { item, after, earlier, fresh });
}

/** Where nothing changed, the same eye on the same gauge says the same again so often: judgement. */
const SAYS_IT_AGAIN = 0.9;

/** A second reading after a repair is news only under the hypotheses that the repair changed. */
function saidAgain(
  model: Model,
  of: {
    readonly item: Answer;
    readonly after: readonly Repaired[];
    readonly earlier: NonNullable<Counted['earlier']>;
    readonly fresh: Float64Array;
  },
): Float64Array {
  const { item, after, earlier, fresh } = of;
  const table = model.tables.get(item.check);
  if (table === undefined) return fresh;
  const width = table.check.measured?.anywhere ?? [0, table.codes.length];
  const evenly = 1 / (width[1] - width[0]);
  const again = sameAgain(item, earlier.item) ? SAYS_IT_AGAIN : 1 - SAYS_IT_AGAIN;
  // A number that comes again stands as close to the first as two readings of one gauge do.
  const likely = item.value === undefined ? again : again * Math.max(evenly, 1 / (6 * spreadOf(item, table)));
  return fresh.map((value, h) => {
    const hypothesis = model.hypotheses[h];
    if (hypothesis === undefined) return value;
    const [now, then] = [after, earlier.after].map(
      (repairs) => causesLeft(hypothesis.causes, repairs).length,
    );
    return now === then ? likely : value;
  });
}

function spreadOf(item: Answer, table: CheckTable): number {
  return Math.hypot(item.readSigma ?? 0, table.check.measured?.soundSigma ?? 1);
}

function sameAgain(one: Answer, other: Answer): boolean {
  if (one.value === undefined || other.value === undefined) return one.outcome === other.outcome;
  const apart = Math.hypot(one.readSigma ?? 0, other.readSigma ?? 0);
  return Math.abs(one.value - other.value) <= 3 * apart + 1;
}

function answerLikelihoods(
  model: Model,
  { item, after }: { readonly item: Answer; readonly after: readonly Repaired[] },
): Float64Array {
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
  const doubt = item.doubt ?? 0;
  // A doubt that is no number leaves as little of the answer as the largest one.
  const share = Number.isNaN(doubt) ? DOUBT_MAX : Math.min(DOUBT_MAX, Math.max(0, doubt));
  return 1 - (1 - base) * (1 - share);
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
    const rows = after.length === 0 ? hypothesis.rows : rowsLeft(model, { hypothesis, after });
    result[h] = (1 - misread) * shareOf(table, { rows, at }) + misread / width;
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
  const readSigma = Number.isFinite(item.readSigma) ? Math.abs(item.readSigma ?? 0) : 0;
  const read = { value, readSigma };
  // Each row is asked once: the pairs are put together from them.
  const parts = table.rows.map((row) => partsUnder(measured, { ...read, row }));
  model.hypotheses.forEach((hypothesis, h) => {
    const rows = after.length === 0 ? hypothesis.rows : rowsLeft(model, { hypothesis, after });
    const [one, other] = visibleAt(table, rows);
    const density = densityTogether(parts[one], other === null ? undefined : parts[other]);
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
