/** Many things at once from a table: shown first, then saved as they were shown, all in one act or none. */
import type { Json } from '../../procedures/json.ts';
import {
  csvReading,
  jsonReading,
  type Reading,
  type ReadSoFar,
  toTheEnd,
} from '../../procedures/tables/read-table.ts';
import {
  type CellFault,
  refusedTable,
  type TableForm,
  type TableRow,
  tableFault,
} from '../../procedures/tables/table-form.ts';
import type { Read } from '../log/act.ts';
import { parseStrict } from '../log/canonical.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { type StreamKind, streamOf } from '../log/stream-kind.ts';
import { TELL_NOBODY, type Tell } from '../long/long-work.ts';
import type { By } from '../people/people.ts';
import type { Store } from '../store/store.ts';
import { isSaved, type RowChange, type Standing, type TableKind } from './table-kind.ts';
import { notWhatWasShown } from './table-refusals.ts';

export interface PlannedRow {
  readonly row: number;
  /** The tag of a valve, the number of a piece of gear. */
  readonly id: string;
  readonly change: RowChange;
  readonly says: readonly string[];
}

export interface TablePlan {
  readonly rows: readonly PlannedRow[];
  /** Stands for the text and what it would change now: what is confirmed is what was shown. */
  readonly digest: string;
}

/** A text that begins like JSON is JSON, anything else a table. */
function reading<Item>(form: TableForm<Item>, text: string): Reading<Item> {
  if (!/^\s*[[{]/.test(text)) return csvReading(form, text);
  try {
    return jsonReading(form, parseStrict(text));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refusing([tableFault(`It begins like JSON and cannot be read as JSON: ${why}`)]);
  }
}

// biome-ignore lint/correctness/useYield: what cannot be read has no steps
function* refusing(faults: readonly CellFault[]): Reading<never> {
  return refusedTable(faults);
}

export interface Looked {
  readonly faults: readonly CellFault[];
  readonly moreFaults: number;
  /** Null as soon as there is one fault. */
  readonly plan: TablePlan | null;
}

/**
 * What a text would change, compared with the site as it is now, or every wrong cell. Saves nothing.
 * @throws Stopped where `tell` says so
 */
export async function lookAt<Item>(
  kind: TableKind<Item>,
  {
    log,
    text,
    today,
    tell = TELL_NOBODY,
  }: { readonly log: SiteLog; readonly text: string; readonly today: string; readonly tell?: Tell },
): Promise<Looked> {
  const { rows, faults, moreFaults } = await inSteps(reading(kind.form(today), text), {
    doing: 'row read',
    tell,
  });
  if (faults.length > 0) return { faults, moreFaults, plan: null };
  const states = new Map<string, unknown>();
  for (const [at, row] of rows.entries()) {
    for (const { kind: of, id } of kind.beside(row)) {
      const name = streamOf(of.kind, id);
      if (!states.has(name)) states.set(name, await log.state(of, id));
    }
    await tell({ doing: 'row looked up', done: at + 1, of: rows.length });
  }
  const standing: Standing = {
    // Each was put there under the name of its own kind.
    state: <State>(of: StreamKind<State>, id: string) => states.get(streamOf(of.kind, id)) as State,
  };
  const { plan, faults: against } = await inSteps(planning(kind, { text, rows, standing }), {
    doing: 'row compared',
    tell,
  });
  if (against.length === 0) return { faults: [], moreFaults: 0, plan };
  const refused = refusedTable(against);
  return { faults: refused.faults, moreFaults: refused.moreFaults, plan: null };
}

export interface Saving {
  readonly services: { readonly log: SiteLog; readonly store: Store };
  readonly by: By;
  /** Of the plan that was shown. */
  readonly digest: string;
  /** YYYY-MM-DD */
  readonly today: string;
  readonly tell?: Tell;
  /** Told when it begins to write: from then on it is not stopped. */
  readonly writing?: () => void;
}

/**
 * Saves what was shown. All rows are one act: a single commit, in which each has its own entry.
 *
 * @returns how many were saved
 * @throws Refusal if the text was not kept, or would now change something else than was shown
 * @throws Stopped where `tell` or `writing` says so; then nothing was saved
 */
export async function saveShown<Item>(
  kind: TableKind<Item>,
  { services: { log, store }, by, digest, today, tell = TELL_NOBODY, writing = () => {} }: Saving,
): Promise<{ readonly saved: number }> {
  const person = by.person ?? '';
  const kept = await store.outside(kind.keptAs, person);
  const text = kept === undefined ? '' : (kept as { readonly text: string }).text;
  const { rows } = await inSteps(reading(kind.form(today), text), { doing: 'row read', tell });
  const beside = rows.flatMap((row) => kind.beside(row).map((one) => streamOf(one.kind.kind, one.id)));
  writing();
  const answer = await log.act({
    ...by,
    fingerprint: fingerprintOf({ importTable: kind.keptAs, digest }),
    streams: [...new Set(beside)],
    decide: (read: Read) => {
      const { plan, faults } = toTheEnd(planning(kind, { text, rows, standing: read }));
      if (rows.length === 0 || faults.length > 0 || plan.digest !== digest) throw notWhatWasShown(kind);
      const entries = rows.flatMap((row, at) =>
        isSaved(plan.rows[at]?.change ?? 'unchanged') ? [kind.draft(row)] : [],
      );
      return { entries, answer: { saved: entries.length } };
    },
  });
  await store.deleteOutside(kind.keptAs, person);
  return answer;
}

/** A reading or a comparison to its end, told row by row. */
async function inSteps<End>(
  steps: Generator<ReadSoFar, End>,
  { doing, tell }: { readonly doing: string; readonly tell: Tell },
): Promise<End> {
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    await tell({ doing, done: step.value.rows, of: step.value.of });
  }
}

interface Planning<Item> {
  readonly text: string;
  readonly rows: readonly TableRow<Item>[];
  readonly standing: Standing;
}

function* planning<Item>(
  kind: TableKind<Item>,
  { text, rows: given, standing }: Planning<Item>,
): Generator<ReadSoFar, { readonly plan: TablePlan; readonly faults: readonly CellFault[] }> {
  const rows: PlannedRow[] = [];
  const faults: CellFault[] = [];
  const stands: Json[] = [];
  for (const [at, item] of given.entries()) {
    const looked = kind.look(standing, item);
    const { row } = item;
    rows.push({ row, id: kind.beside(item)[0].id, change: looked.change, says: looked.says });
    stands.push(looked.stands);
    for (const { names, what } of looked.faults ?? []) faults.push({ row, column: names.join(', '), what });
    yield { rows: at + 1, of: given.length };
  }
  const digest = fingerprintOf({ text, changes: rows.map(({ change }) => change), stands });
  return { plan: { rows, digest }, faults };
}
