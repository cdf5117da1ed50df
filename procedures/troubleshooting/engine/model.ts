import { type Grade, isSpread, priorOf, type Row } from '../cause.ts';
import { type CauseId, causeOf, causesFor } from '../causes.ts';
import type { Check } from '../check.ts';
import { type CheckId, checkOf, checksFor, isCheckId } from '../checks.ts';
import { pairFactor } from '../pairs.ts';
import { REPAIR_IDS, type RepairId, repairFor } from '../repairs.ts';
import type { ValveFacts } from '../valve-facts.ts';
import { READERS, type Reader } from './reader.ts';
import { type BareRow, bareRow, bothShares } from './rows.ts';

/** One thing that may be so: one cause in one grade, or two at once. */
export interface Hypothesis {
  readonly causes: readonly CauseId[];
  /** For a leak: how bad. */
  readonly grade: string | null;
  /** Which of the table's rows it reads like; two where two faults meet. */
  readonly rows: readonly number[];
  readonly prior: number;
}

/** Everything worked out for one valve, once: what may be so, and what each check would show then. */
export interface Model {
  readonly facts: ValveFacts;
  readonly causes: readonly CauseId[];
  readonly checks: readonly CheckId[];
  readonly hypotheses: readonly Hypothesis[];
  readonly repairs: readonly RepairId[];
  readonly tables: ReadonlyMap<CheckId, CheckTable>;
  /** The row of a sound valve, and of a cause in the mixture of its grades. */
  readonly rowOf: ReadonlyMap<CauseId, number>;
  readonly soundRow: number;
  /** Who may be reading it. */
  readonly readers: readonly Reader[];
}

export interface CheckTable {
  readonly check: Check;
  readonly codes: readonly string[];
  readonly rows: readonly BareRow[];
  /** Rows that keep a second fault from showing here. */
  readonly hiding: ReadonlySet<number>;
}

interface RowSource {
  readonly cause: CauseId;
  readonly grades: readonly Grade[];
}

/**
 * The model of one valve: singles in their grades, and every pair that may meet.
 * @example modelOf(valveFactsOf(sheet)).hypotheses.length // some two thousand
 */
export function modelOf(facts: ValveFacts): Model {
  const causes = causesFor(facts);
  const checks = checksFor(facts);
  const { sources, rowOf, singles } = rowSources(facts, causes);
  const hypotheses = scaled([...singles, ...pairs(facts, { causes, rowOf })]);
  const tables = new Map(checks.map((id) => [id, tableOf(id, { facts, sources })] as const));
  const repairs = REPAIR_IDS.filter((id) => causes.some((cause) => repairFor(cause) === id));
  return { facts, causes, checks, hypotheses, repairs, tables, rowOf, soundRow: 0, readers: READERS };
}

/** Row 0 is the sound valve; each cause has a row for each grade and one for their mixture. */
function rowSources(facts: ValveFacts, causes: readonly CauseId[]) {
  const sources: RowSource[] = [];
  const rowOf = new Map<CauseId, number>();
  const singles: Hypothesis[] = [];
  for (const id of causes) {
    const cause = causeOf(id);
    const grades = cause.grades?.(facts) ?? [{ id: '', share: 1, shows: cause.shows(facts) }];
    const weight = priorOf(cause, facts);
    rowOf.set(id, sources.length);
    sources.push({ cause: id, grades });
    for (const grade of grades) {
      const row = grades.length === 1 ? sources.length - 1 : sources.length;
      if (grades.length > 1) sources.push({ cause: id, grades: [{ ...grade, share: 1 }] });
      singles.push({ causes: [id], grade: grade.id || null, rows: [row], prior: weight * grade.share });
    }
  }
  return { sources, rowOf, singles };
}

function pairs(
  facts: ValveFacts,
  of: { readonly causes: readonly CauseId[]; readonly rowOf: ReadonlyMap<CauseId, number> },
): readonly Hypothesis[] {
  const weights = of.causes.map((id) => priorOf(causeOf(id), facts));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return of.causes.flatMap((one, at) =>
    of.causes.slice(at + 1).flatMap((other, further) => {
      const factor = pairFactor(one, other);
      if (factor === 0) return [];
      const prior = (factor * (weights[at] ?? 0) * (weights[at + 1 + further] ?? 0)) / total;
      const rows = [of.rowOf.get(one) ?? 0, of.rowOf.get(other) ?? 0];
      return [{ causes: [one, other], grade: null, rows, prior }];
    }),
  );
}

function scaled(hypotheses: readonly Hypothesis[]): readonly Hypothesis[] {
  const total = hypotheses.reduce((sum, { prior }) => sum + prior, 0);
  return hypotheses.map((one) => ({ ...one, prior: one.prior / total }));
}

/** The check with the sound readings of this valve put in. */
function checkOn(id: CheckId, facts: ValveFacts): Check {
  const check = checkOf(id);
  const own = check.measured?.soundOn?.(facts);
  return check.measured === undefined || own === undefined
    ? check
    : { ...check, measured: { ...check.measured, ...own } };
}

function tableOf(
  id: CheckId,
  of: { readonly facts: ValveFacts; readonly sources: readonly RowSource[] },
): CheckTable {
  const check = checkOn(id, of.facts);
  const codes = Object.keys(check.outcomes);
  const rows = of.sources.map(({ grades }) =>
    mixture(
      grades.map((grade) => ({
        share: grade.share,
        row: bareRow(check, grade.shows[id] ?? seenFrom(check, grade.shows)),
      })),
    ),
  );
  const hiding = new Set(
    of.sources.flatMap(({ cause }, row) => (causeOf(cause).hides?.includes(id) ? [row] : [])),
  );
  return { check, codes, rows, hiding };
}

/** What follows from another check, where this one says so. */
function seenFrom({ seenFrom: from }: Check, shows: Grade['shows']): Row | undefined {
  const row = from === undefined || !isCheckId(from.check) ? undefined : shows[from.check];
  if (from === undefined || row === undefined) return undefined;
  const there = isSpread(row) ? (row.words ?? {}) : row;
  const here: Record<string, number> = {};
  for (const [word, share] of Object.entries(there)) {
    const as = from.words[word];
    if (as !== undefined) here[as] = Math.min(from.shareMost, (here[as] ?? 0) + share);
  }
  return here;
}

/** What a set of rows shows together: none is the sound valve. */
export function sharesOf(table: Pick<CheckTable, 'rows' | 'hiding'>, rows: readonly number[]): Float64Array {
  const [one, other] = visibleAt(table, rows);
  const shares = rowAt(table, one).shares;
  return other === null ? shares : bothShares(shares, rowAt(table, other).shares);
}

/** The rows that can be seen through each other; none is the sound valve. */
export function visibleAt(
  { hiding }: Pick<CheckTable, 'hiding'>,
  rows: readonly number[],
): readonly [number, number | null] {
  const [one = 0, other] = rows;
  if (other === undefined) return [one, null];
  if (hiding.has(one)) return [one, null];
  return hiding.has(other) ? [other, null] : [one, other];
}

/** The rows of many hypotheses side by side; the second is -1 where there is none. */
export interface RowsSideBySide {
  readonly one: Int32Array;
  readonly other: Int32Array;
}

/** @example sideBySide([[3], [4, 7]]) // { one: [3, 4], other: [-1, 7] } */
export function sideBySide(rows: readonly (readonly number[])[]): RowsSideBySide {
  return {
    one: Int32Array.from(rows, ([one = 0]) => one),
    other: Int32Array.from(rows, ([, other = -1]) => other),
  };
}

/** What of them can be seen on a check. */
export function visibleSideBySide(
  { hiding }: Pick<CheckTable, 'hiding'>,
  { one, other }: RowsSideBySide,
): RowsSideBySide {
  if (hiding.size === 0) return { one, other };
  const seen = { one: Int32Array.from(one), other: Int32Array.from(other) };
  other.forEach((second, at) => {
    if (second < 0) return;
    const first = one[at] ?? 0;
    if (!hiding.has(first) && !hiding.has(second)) return;
    seen.one[at] = hiding.has(first) ? first : second;
    seen.other[at] = -1;
  });
  return seen;
}

export function rowAt({ rows }: Pick<CheckTable, 'rows'>, at: number): BareRow {
  const row = rows[at];
  if (row === undefined) throw new Error(`a model without its row ${at}`);
  return row;
}

function mixture(parts: readonly { readonly share: number; readonly row: BareRow }[]): BareRow {
  const [only] = parts;
  if (only !== undefined && parts.length === 1) return only.row;
  const shares = new Float64Array(only?.row.shares.length ?? 0);
  for (const { share, row } of parts)
    row.shares.forEach((value, at) => {
      shares[at] = (shares[at] ?? 0) + share * value;
    });
  return {
    shares,
    soundShare: parts.reduce((sum, { share, row }) => sum + share * row.soundShare, 0),
    pieces: parts.flatMap(({ share, row }) =>
      row.pieces.map(([part, low, high]) => [share * part, low, high] as const),
    ),
  };
}
