/** Many sheets at once: shown first, then saved as they were shown, all in one act or none. */
import type { Json } from '../../procedures/json.ts';
import { readSheetsCsv } from '../../procedures/valve-sheet/csv.ts';
import {
  type RowsRead,
  refused,
  type SheetRow,
  tableFault,
} from '../../procedures/valve-sheet/import-rows.ts';
import { readSheetsJson } from '../../procedures/valve-sheet/json.ts';
import type { Read } from '../log/act.ts';
import { parseStrict } from '../log/canonical.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import type { Store } from '../store/store.ts';
import { isUnchanged, savedSheet } from './valve-acts.ts';
import { notWhatWasShown } from './valve-refusals.ts';
import { type Valve, valveKind } from './valve-stream.ts';

/** 5,000 sheets with long notes. */
export const TABLE_BYTES_MAX = 12 * 1024 * 1024;

const KEPT_KIND = 'valve-table';

export type Change = 'new' | 'changed' | 'unchanged' | 'taken back into use';

export interface PlannedRow {
  readonly row: number;
  readonly tag: string;
  readonly change: Change;
  /** What the sheet says against itself and may be saved with. */
  readonly contradictions: readonly string[];
}

export interface Plan {
  readonly rows: readonly PlannedRow[];
  /** Stands for the text and what it would change now: what is confirmed is what was shown. */
  readonly digest: string;
}

/** A text that begins like JSON is JSON, anything else a table. */
export function readTable(text: string): RowsRead {
  if (!/^\s*[[{]/.test(text)) return readSheetsCsv(text);
  try {
    return readSheetsJson(parseStrict(text));
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refused([tableFault(`It begins like JSON and cannot be read as JSON: ${why}`)]);
  }
}

/** What the rows would change, compared with the sheets as they are now. Writes nothing. */
export async function planOf(
  { log }: { readonly log: SiteLog },
  { text, rows }: { readonly text: string; readonly rows: readonly SheetRow[] },
): Promise<Plan> {
  const valves = await Promise.all(rows.map(({ sheet }) => log.state(valveKind, sheet.tag)));
  return planned({ text, rows, valves });
}

/** Keeps the text that was shown, one for each person, until they confirm it or look at another. */
export async function keepShown(
  store: Store,
  { person, text }: { readonly person: string; readonly text: string },
): Promise<void> {
  await store.putOutside({ kind: KEPT_KIND, id: person, body: { text } });
}

/**
 * Saves what was shown. All sheets are one act: a single commit, in which each has its own entry.
 *
 * @param digest  of the plan that was shown
 * @returns how many sheets were saved
 * @throws Refusal VAL-007 if the text was not kept, or would now change something else than was shown
 */
export async function saveShown(
  { log, store, by }: { readonly log: SiteLog; readonly store: Store; readonly by: By },
  digest: string,
): Promise<{ readonly saved: number }> {
  const person = by.person ?? '';
  const kept = await store.outside(KEPT_KIND, person);
  const text = kept === undefined ? '' : (kept as { readonly text: string }).text;
  const { rows } = readTable(text);
  const answer = await log.act({
    ...by,
    fingerprint: fingerprintOf({ importValves: digest }),
    streams: rows.map(({ sheet }) => streamOf('valve', sheet.tag)),
    decide: (read: Read) => {
      const valves = rows.map(({ sheet }) => read.state(valveKind, sheet.tag));
      if (rows.length === 0 || planned({ text, rows, valves }).digest !== digest) throw notWhatWasShown();
      const entries = rows.flatMap(({ sheet, texts }, index) =>
        changeOf(valves[index], sheet) === 'unchanged' ? [] : [savedSheet(sheet, texts)],
      );
      return { entries, answer: { saved: entries.length } };
    },
  });
  await store.deleteOutside(KEPT_KIND, person);
  return answer;
}

function planned(of: {
  readonly text: string;
  readonly rows: readonly SheetRow[];
  readonly valves: readonly Valve[];
}): Plan {
  const rows = of.rows.map(({ row, sheet, contradictions }, index) => ({
    row,
    tag: sheet.tag,
    change: changeOf(of.valves[index], sheet),
    contradictions: contradictions.map(({ code, what }) => `${code}: ${what}`),
  }));
  const revisions: Json = of.valves.map(({ revision }) => revision);
  const digest = fingerprintOf({ text: of.text, changes: rows.map(({ change }) => change), revisions });
  return { rows, digest };
}

function changeOf(valve: Valve | undefined, sheet: SheetRow['sheet']): Change {
  if (valve === undefined || valve.sheet === null) return 'new';
  if (valve.retired) return 'taken back into use';
  return isUnchanged(valve, sheet) ? 'unchanged' : 'changed';
}
