import type { Belief } from './belief.ts';
import type { Answer, Counted } from './evidence.ts';
import { rowsLeft } from './likelihood.ts';
import { misreadOf } from './looks.ts';
import { type CheckTable, type Model, rowAt, sharesOf, visibleAt } from './model.ts';
import { densityTogether, partsUnder } from './rows.ts';

/** Below this chance the readings fit no cause of the list: judgement. */
const STRANGE_BELOW_FRACTION = 0.01;
/** How many of the likeliest hypotheses are asked whether they explain the readings. */
const ASKED = 5;

export interface Surprise {
  /** Chance that so many readings are misread though the best explanation holds. */
  readonly chanceFraction: number;
  /** No cause of the list explains the readings: look at the test gear, at what is not on the list, read again. */
  readonly strange: boolean;
  /** The readings that the best explanation does not explain. */
  readonly unexplained: readonly Counted[];
}

/**
 * Whether anything on the list explains the readings. Under each of the likeliest explanations a reading counts as
 * misread by as much as its likelihood comes from the misread share; the chance of so many misreads is exact.
 */
export function surpriseOf(model: Model, belief: Belief): Surprise {
  const likeliest = [...belief.weights.keys()]
    .sort((a, b) => (belief.weights[b] ?? 0) - (belief.weights[a] ?? 0))
    .slice(0, ASKED);
  const answers = belief.items.filter(
    (one): one is Counted & { readonly item: Answer } => one.item.kind === 'answer',
  );
  const read = answers.flatMap((one) => {
    const table = model.tables.get(one.item.check);
    return table === undefined ? [] : [{ one, table, misread: misreadOf(table, one.item) }];
  });
  let best: Surprise = { chanceFraction: 0, strange: read.length > 0, unexplained: [] };
  for (const h of likeliest) {
    const off = read.filter(({ one, table }) => !explains(model, { h, one, table }));
    const chanceFraction = chanceOfSoMany(
      off.length,
      read.map(({ misread }) => misread),
    );
    if (chanceFraction > best.chanceFraction)
      best = {
        chanceFraction,
        strange: chanceFraction < STRANGE_BELOW_FRACTION,
        unexplained: off.map(({ one }) => one),
      };
  }
  return read.length === 0 ? { chanceFraction: 1, strange: false, unexplained: [] } : best;
}

/** Under a hypothesis an outcome below this share is not explained by it: judgement. */
const EXPLAINED_FROM = 0.02;
/** A number is explained where its density is at least this part of an even spread over the axis: judgement. */
const EXPLAINED_DENSITY = 0.1;

function explains(
  model: Model,
  of: { readonly h: number; readonly one: Counted & { readonly item: Answer }; readonly table: CheckTable },
): boolean {
  const { table } = of;
  const { item, after } = of.one;
  const hypothesis = model.hypotheses[of.h];
  if (hypothesis === undefined) return true;
  const rows = rowsLeft(model, { hypothesis, after });
  if (item.value === undefined) {
    const at = table.codes.indexOf(item.outcome ?? '');
    return at < 0 || (sharesOf(table, rows)[at] ?? 0) >= EXPLAINED_FROM;
  }
  const measured = table.check.measured;
  if (measured === undefined) return true;
  const read = { value: item.value, readSigma: item.readSigma ?? 0 };
  const [one, other] = visibleAt(table, rows);
  const under = (at: number) => partsUnder(measured, { ...read, row: rowAt(table, at) });
  const density = densityTogether(under(one), other === null ? undefined : under(other));
  return density * (measured.anywhere[1] - measured.anywhere[0]) >= EXPLAINED_DENSITY;
}

/** Chance that at least so many of independent events with these chances happen. */
function chanceOfSoMany(count: number, chances: readonly number[]): number {
  let exactly: readonly number[] = [1];
  for (const chance of chances)
    exactly = [...exactly, 0].map(
      (share, happened) => share * (1 - chance) + (exactly[happened - 1] ?? 0) * chance,
    );
  return Math.min(
    1,
    exactly.slice(count).reduce((sum, share) => sum + share, 0),
  );
}
