/** Many things at once from a table: shown first, then saved as they were shown, all in one act or none. */
import type { Json } from '../../procedures/json.ts';
import { csvReading, jsonReading, type Reading, toTheEnd } from '../../procedures/tables/read-table.ts';
import {
  type CellFault,
  refusedTable,
  type TableForm,
  type TableRead,
  type TableRow,
  tableFault,
} from '../../procedures/tables/table-form.ts';
import type { Read } from '../log/act.ts';
import { parseStrict } from '../log/canonical.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { type StreamKind, streamOf } from '../log/stream-kind.ts';
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
export function reading<Item>(form: TableForm<Item>, text: string): Reading<Item> {
  if (!/^\s*[[{]/.test(text)) return csvReading(form, text);
  try {
    return jsonReading(form, parseStrict(text));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refusing([tableFault(`It begins like JSON and cannot be read as JSON: ${why}`)]);
  }
}

export function readText<Item>(form: TableForm<Item>, text: string): TableRead<Item> {
  return toTheEnd(reading(form, text));
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

/** What a text would change, compared with the site as it is now, or every wrong cell. Saves nothing. */
export async function lookAt<Item>(
  kind: TableKind<Item>,
  { log, text, today }: { readonly log: SiteLog; readonly text: string; readonly today: string },
): Promise<Looked> {
  const { rows, faults, moreFaults } = readText(kind.form(today), text);
  if (faults.length > 0) return { faults, moreFaults, plan: null };
  const states = new Map<string, unknown>();
  for (const row of rows)
    for (const { kind: of, id } of kind.beside(row)) {
      const name = streamOf(of.kind, id);
      if (!states.has(name)) states.set(name, await log.state(of, id));
    }
  const standing: Standing = {
    // Each was put there under the name of its own kind.
    state: <State>(of: StreamKind<State>, id: string) => states.get(streamOf(of.kind, id)) as State,
  };
  const { plan, faults: against } = planned(kind, { text, rows, standing });
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
}

/**
 * Saves what was shown. All rows are one act: a single commit, in which each has its own entry.
 *
 * @returns how many were saved
 * @throws Refusal if the text was not kept, or would now change something else than was shown
 */
export async function saveShown<Item>(
  kind: TableKind<Item>,
  { services: { log, store }, by, digest, today }: Saving,
): Promise<{ readonly saved: number }> {
  const person = by.person ?? '';
  const kept = await store.outside(kind.keptAs, person);
  const text = kept === undefined ? '' : (kept as { readonly text: string }).text;
  const { rows } = readText(kind.form(today), text);
  const answer = await log.act({
    ...by,
    fingerprint: fingerprintOf({ importTable: kind.keptAs, digest }),
    streams: [
      ...new Set(rows.flatMap((row) => kind.beside(row).map((one) => streamOf(one.kind.kind, one.id)))),
    ],
    decide: (read: Read) => {
      const { plan, faults } = planned(kind, { text, rows, standing: read });
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

function planned<Item>(
  kind: TableKind<Item>,
  of: { readonly text: string; readonly rows: readonly TableRow<Item>[]; readonly standing: Standing },
): { readonly plan: TablePlan; readonly faults: readonly CellFault[] } {
  const looked = of.rows.map((item) => kind.look(of.standing, item));
  const rows = looked.map(({ change, says }, at) => {
    const item = of.rows[at];
    return { row: item?.row ?? 0, id: item === undefined ? '' : kind.beside(item)[0].id, change, says };
  });
  const faults = looked.flatMap(({ faults: against = [] }, at) =>
    against.map(({ names, what }) => ({ row: of.rows[at]?.row ?? 0, column: names.join(', '), what })),
  );
  const stands: Json = looked.map((each) => each.stands);
  const digest = fingerprintOf({ text: of.text, changes: rows.map(({ change }) => change), stands });
  return { plan: { rows, digest }, faults };
}
