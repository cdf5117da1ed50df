import type { CauseId } from '../causes.ts';
import { repairOf } from '../repairs.ts';
import type { Answer, Counted, Proof, Repaired, SeenBefore } from './evidence.ts';
import { givenBy, likelyOf, saysTheSame, weighLooks } from './looks.ts';
import {
  type CheckTable,
  type Hypothesis,
  type Model,
  type RowsSideBySide,
  sharesOf,
  sideBySide,
} from './model.ts';

/** A repair that was made as written does not take so often: judgement. */
const REPAIR_FAILS = 0.05;
/** The proof of a repair says "cured" though another fault is left, or though it was not this one: judgement. */
const CURED_WITH_ANOTHER = 0.15;
export const CURED_BY_CHANCE = 0.02;

/** Likelihood of one item of evidence, for each reader of the model, under every hypothesis; each above 0. */
export function likelihoods(model: Model, counted: Counted): readonly Float64Array[] {
  const { item, looks, after, earlier } = counted;
  if (item.kind === 'answer') {
    const fresh = answerLikelihoods(model, { looks, after });
    return earlier === null
      ? fresh
      : fresh.map((one) => saidAgain(model, { item, after, earlier, fresh: one }));
  }
  const whoeverRead =
    item.kind === 'repaired' ? repairLikelihoods(model, { item, after }) : seenBeforeLikelihoods(model, item);
  return model.readers.map(() => whoeverRead);
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
  const again = saysTheSame(item, earlier.item) ? SAYS_IT_AGAIN : 1 - SAYS_IT_AGAIN;
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

function answerLikelihoods(
  model: Model,
  { looks, after }: { readonly looks: readonly Answer[]; readonly after: readonly Repaired[] },
): readonly Float64Array[] {
  const saysNothing = () => new Float64Array(model.hypotheses.length).fill(1);
  const [first] = looks;
  const table = first === undefined ? undefined : model.tables.get(first.check);
  if (table === undefined) return model.readers.map(saysNothing);
  const weighed = model.readers.map(({ extraMisread }) => weighLooks(table, { looks, extraMisread }));
  const rows =
    after.length === 0
      ? rowsOf(model.hypotheses)
      : sideBySide(model.hypotheses.map((hypothesis) => rowsLeft(model, { hypothesis, after })));
  // Readers differ in how likely a slip is, never in what a reading says of the valve: that is asked once.
  const given = weighed[0]?.groups.map(({ item }) => givenBy(table, { item, rows })) ?? [];
  return weighed.map((looked) => (looked === null ? saysNothing() : likelyOf(looked, given)));
}

const ROWS = new WeakMap<readonly Hypothesis[], RowsSideBySide>();

function rowsOf(hypotheses: readonly Hypothesis[]): RowsSideBySide {
  const known = ROWS.get(hypotheses) ?? sideBySide(hypotheses.map(({ rows }) => rows));
  ROWS.set(hypotheses, known);
  return known;
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

/** As of a repair of this job that did not cure, but for its doubt, by which it says nothing. */
function seenBeforeLikelihoods(model: Model, { repair, doubt }: SeenBefore): Float64Array {
  const cures = repairOf(repair).cures;
  return Float64Array.from(model.hypotheses, ({ causes }) => {
    const hit = causes.some((cause) => cures.includes(cause));
    const rest = causes.some((cause) => !cures.includes(cause));
    const cured = hit ? (rest ? CURED_WITH_ANOTHER : 1 - REPAIR_FAILS) : CURED_BY_CHANCE;
    return doubt + (1 - doubt) * (1 - cured);
  });
}

function repairLikelihoods(
  model: Model,
  of: { readonly item: Repaired; readonly after: readonly Repaired[] },
): Float64Array {
  const { item, after } = of;
  const cures = repairOf(item.repair).cures;
  const made = [...after, { ...item, cured: true }];
  return Float64Array.from(model.hypotheses, (hypothesis) => {
    const left = causesLeft(hypothesis.causes, after);
    const hit = left.some((cause) => cures.includes(cause));
    const rest = left.some((cause) => !cures.includes(cause));
    const rows = rowsLeft(model, { hypothesis, after: made });
    const least = hit ? CURED_WITH_ANOTHER : CURED_BY_CHANCE;
    const cured =
      hit && !rest ? 1 - REPAIR_FAILS : soundAllTheSame(model, { proof: item.proof, rows, least });
    return item.cured ? cured : 1 - cured;
  });
}

/**
 * How often the proof of a repair reads as on a sound valve though a fault is left. A proof that was sound before it tells
 * nothing of it; one that nobody had looked at tells what that check tells of what is left.
 */
function soundAllTheSame(
  model: Model,
  of: { readonly proof: Proof | undefined; readonly rows: readonly number[]; readonly least: number },
): number {
  const { proof, rows, least } = of;
  const table = proof === undefined ? undefined : model.tables.get(proof.check);
  if (proof === undefined || table === undefined || proof.soundBefore === false) return least;
  if (proof.soundBefore) return 1 - REPAIR_FAILS;
  const { misread } = table.check;
  const sound = (1 - misread) * (sharesOf(table, rows)[0] ?? 0) + misread / table.codes.length;
  return Math.min(1 - REPAIR_FAILS, Math.max(least, sound));
}
