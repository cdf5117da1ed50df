/** Valve sheets in and out: a table or JSON is shown with what it would change, then confirmed; or taken along. */
import { z } from 'zod';
import { writeSheetsCsv } from '../../procedures/valve-sheet/csv.ts';
import type { CellFault } from '../../procedures/valve-sheet/import-rows.ts';
import { writeSheetsJson } from '../../procedures/valve-sheet/json.ts';
import { oneOf, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Raw, type Route, route } from '../http/route.ts';
import {
  type Change,
  keepShown,
  type Plan,
  planOf,
  readTable,
  saveShown,
  TABLE_BYTES_MAX,
} from '../valves/valve-import.ts';
import { faultIds, tableHasFaults } from '../valves/valve-refusals.ts';
import { byOf, typedIn } from './parts.ts';
import { type SavedValve, SHEET_KEEPERS } from './valve-parts.ts';

/** So many rows are listed on the page; the counts are of all. */
const ROWS_SHOWN = 200;

interface Shown {
  readonly typed: string;
  readonly faults: readonly CellFault[];
  readonly moreFaults: number;
  readonly plan: Plan | null;
}

const NOTHING: Shown = { typed: '', faults: [], moreFaults: 0, plan: null };

function tablesPage({ typed, faults, moreFaults, plan }: Shown): PageView {
  const ids = faultIds(faults);
  const rows = plan?.rows ?? [];
  const params = {
    typed,
    faults: faults.map(({ row, column, what }, index) => ({
      id: ids[index] ?? '',
      row: row ?? 'all',
      column: column ?? '',
      what,
    })),
    moreFaults,
    digest: plan?.digest ?? '',
    counts: countsOf(rows),
    rows: rows.slice(0, ROWS_SHOWN).map((each) => ({ ...each, says: each.contradictions.join(' ') })),
    moreRows: Math.max(0, rows.length - ROWS_SHOWN),
  };
  return { title: 'Sheets in and out', template: 'pages/valve-tables.njk', params };
}

function countsOf(rows: Plan['rows']): readonly { readonly change: Change; readonly count: number }[] {
  const changes: readonly Change[] = ['new', 'changed', 'taken back into use', 'unchanged'];
  return changes.map((change) => ({ change, count: rows.filter((row) => row.change === change).length }));
}

const showTables = route({
  method: 'GET',
  path: '/valves/tables',
  name: 'showValveTables',
  summary: 'Where valve sheets come in and go out as tables or JSON',
  roles: SHEET_KEEPERS,
  answer: z.object({ export: z.array(z.string()), import: z.string() }),
  handle: () => ({
    data: { export: ['/valves/sheets.csv', '/valves/sheets.json'], import: '/valves/tables' },
    page: tablesPage(NOTHING),
  }),
});

/** Read by `readTable` with its own reasons; here only that there is something. */
const tableField = z
  .string('Write the table as text.')
  .refine((table) => table.trim() !== '', 'Paste the table, its head first.');

const faultAnswer = z.object({ row: z.int().nullable(), column: z.string().nullable(), what: z.string() });
const planAnswer = z.object({
  digest: z.string().describe('Send it to /valves/tables/confirm to save what is shown here.'),
  rows: z.array(
    z.object({ row: z.int(), tag: z.string(), change: z.string(), contradictions: z.array(z.string()) }),
  ),
  faults: z.array(faultAnswer),
  moreFaults: z.int(),
});

const lookAtTable = route({
  method: 'POST',
  path: '/valves/tables',
  name: 'lookAtValveTable',
  summary: 'Show what a table or JSON of valve sheets would change, or every wrong cell; saves nothing',
  roles: SHEET_KEEPERS,
  bodyBytesMax: TABLE_BYTES_MAX,
  body: z.object({ table: tableField }),
  answer: planAnswer,
  refused: ({ typed }) => {
    const { table } = typedIn(typed, ['table']);
    const { faults, moreFaults } = table.trim() === '' ? NOTHING : readTable(table);
    return { page: tablesPage({ ...NOTHING, typed: table, faults, moreFaults }) };
  },
  handle: async (call) => {
    const { table } = call.body;
    const { rows, faults, moreFaults } = readTable(table);
    if (faults.length > 0) throw tableHasFaults({ faults, moreFaults });
    const plan = await planOf(call.services, { text: table, rows });
    await keepShown(call.services.store, { person: call.person.id, text: table });
    return {
      data: { digest: plan.digest, rows: plan.rows.map(asAnswer), faults: [], moreFaults: 0 },
      page: tablesPage({ ...NOTHING, plan }),
    };
  },
});

function asAnswer({ row, tag, change, contradictions }: Plan['rows'][number]) {
  return { row, tag, change, contradictions: [...contradictions] };
}

const confirmTable = route({
  method: 'POST',
  path: '/valves/tables/confirm',
  name: 'confirmValveTable',
  summary: 'Save the sheets that were shown, all or none',
  roles: SHEET_KEEPERS,
  body: z.object({ digest: text({ called: 'what was shown', max: 100 }) }),
  answer: z.object({ saved: z.int() }),
  refused: () => ({ page: tablesPage(NOTHING) }),
  handle: async (call) => {
    const { log, store } = call.services;
    const { saved } = await saveShown({ log, store, by: byOf(call) }, call.body.digest);
    return { data: { saved }, seeOther: '/valves' };
  },
});

/** In order of their tags, without the retired ones. */
async function sheetsInUse({ services }: BareCall) {
  const all = (await services.log.summaries('valve')).map(({ body }) => body as unknown as SavedValve);
  return all.filter(({ retired }) => !retired).map(({ sheet }) => sheet);
}

const exportCsv = route({
  method: 'GET',
  path: '/valves/sheets.csv',
  name: 'exportValvesCsv',
  summary: 'All sheets in use as a table, a unit in the head of each column; reads back to the very same',
  roles: 'signed-in',
  rawType: 'text/csv',
  query: z.object({ units: oneOf(['us', 'si']).default('us') }),
  answer: z.object({ table: z.string() }),
  handle: async (call) => {
    const { units } = call.query;
    const table = writeSheetsCsv(await sheetsInUse(call), units);
    const raw: Raw = {
      contentType: 'text/csv; charset=utf-8',
      body: table,
      fileName: `valve-sheets-${units}.csv`,
    };
    return { data: { table }, raw };
  },
});

const exportJson = route({
  method: 'GET',
  path: '/valves/sheets.json',
  name: 'exportValvesJson',
  summary: 'All sheets in use as JSON, each quantity with its unit; reads back to the very same',
  roles: 'signed-in',
  answer: z.object({ valveSheets: z.array(z.record(z.string(), z.string())) }),
  handle: async (call) => {
    const { valveSheets } = writeSheetsJson(await sheetsInUse(call));
    const raw: Raw = {
      contentType: 'application/json; charset=utf-8',
      body: JSON.stringify({ valveSheets }, null, 1),
      fileName: 'valve-sheets.json',
    };
    return { data: { valveSheets: valveSheets.map((sheet) => ({ ...sheet })) }, raw };
  },
});

export const valveTableRoutes: readonly Route[] = [
  showTables,
  lookAtTable,
  confirmTable,
  exportCsv,
  exportJson,
];
