/** Test gear in and out: a table or JSON is shown with what it would change, then confirmed; or taken along. */
import { z } from 'zod';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { type GearTableRead, writeGearCsv } from '../../procedures/test-gear/gear-table.ts';
import { gearText } from '../../procedures/test-gear/gear-text.ts';
import type { CellFault } from '../../procedures/valve-sheet/import-rows.ts';
import { Refusal } from '../../safety/refusal.ts';
import {
  GEAR_TABLE_BYTES_MAX,
  type GearChange,
  type GearPlan,
  readGearTable,
  saveShownGear,
  showGearPlan,
} from '../gear/gear-import.ts';
import { text } from '../http/fields.ts';
import { type BareCall, type PageView, type Raw, type Route, route } from '../http/route.ts';
import { faultIds, faultName } from '../valves/valve-refusals.ts';
import { byOf, typedIn } from './parts.ts';

/** Who keeps the test gear. */
const KEEPERS = ['supervisor', 'engineer'] as const;

/** So many rows are listed on the page; the counts are of all. */
const ROWS_SHOWN = 200;

/** So many wrong cells are named to a program; the page lists more. */
const NAMED_MAX = 50;

interface Shown {
  readonly typed: string;
  readonly faults: readonly CellFault[];
  readonly moreFaults: number;
  readonly plan: GearPlan | null;
}

const NOTHING: Shown = { typed: '', faults: [], moreFaults: 0, plan: null };

const CHANGES: readonly GearChange[] = [
  'new',
  'changed',
  'taken back into use',
  'stays out of use',
  'unchanged',
];

function tablesPage({ typed, faults, moreFaults, plan }: Shown): PageView {
  const ids = faultIds(faults);
  const rows = plan?.rows ?? [];
  const params = {
    typed,
    faults: faults.map(({ row, column, what }, at) => ({
      id: ids[at] ?? '',
      row: row ?? 'all',
      column: column ?? '',
      what,
    })),
    moreFaults,
    digest: plan?.digest ?? '',
    counts: CHANGES.map((change) => ({ change, count: rows.filter((row) => row.change === change).length })),
    rows: rows.slice(0, ROWS_SHOWN),
    moreRows: Math.max(0, rows.length - ROWS_SHOWN),
  };
  return { title: 'Gear in and out', template: 'pages/gear-tables.njk', params };
}

const todayOf = ({ services }: BareCall): string => services.now().toISOString().slice(0, 10);

function cellsNotRight({ faults, moreFaults }: GearTableRead): Refusal {
  const count = faults.length + moreFaults;
  const named = faults.slice(0, NAMED_MAX).map((fault): [string, string] => {
    const place = [fault.row === null ? '' : `Row ${fault.row}`, fault.column ?? ''].filter(
      (one) => one !== '',
    );
    return [faultName(fault), place.length === 0 ? fault.what : `${place.join(', ')}: ${fault.what}`];
  });
  return new Refusal({
    kind: 'unreadable',
    code: 'GEA-006',
    what: count === 1 ? 'One cell is not right.' : `${count} cells are not right.`,
    kept: 'No test gear was changed; what you pasted stands below.',
    next: 'Put the cells right that are named, and look again.',
    fields: Object.fromEntries(named),
  });
}

const showTables = route({
  method: 'GET',
  path: '/gear/tables',
  name: 'showGearTables',
  summary: 'Where test gear comes in and goes out as tables or JSON',
  roles: KEEPERS,
  answer: z.object({ export: z.array(z.string()), import: z.string() }),
  handle: () => ({
    data: { export: ['/gear/tables/gear.csv', '/gear/tables/gear.json'], import: '/gear/tables' },
    page: tablesPage(NOTHING),
  }),
});

/** Read by `readGearTable` with its own reasons; here only that there is something. */
const tableField = z
  .string('Write the table as text.')
  .refine((table) => table.trim() !== '', 'Paste the table, its head first.');

const planAnswer = z.object({
  digest: z.string().describe('Send it to /gear/tables/confirm to save what is shown here.'),
  rows: z.array(z.object({ row: z.int(), number: z.string(), change: z.enum(CHANGES), says: z.string() })),
});

const lookAtTable = route({
  method: 'POST',
  path: '/gear/tables',
  name: 'lookAtGearTable',
  summary: 'Show what a table or JSON of test gear would change, or every wrong cell; saves nothing',
  roles: KEEPERS,
  bodyBytesMax: GEAR_TABLE_BYTES_MAX,
  body: z.object({ table: tableField }),
  answer: planAnswer,
  refused: (call) => {
    const { table } = typedIn(call.typed, ['table']);
    const { faults, moreFaults } = table.trim() === '' ? NOTHING : readGearTable(table, todayOf(call));
    return { page: tablesPage({ ...NOTHING, typed: table, faults, moreFaults }) };
  },
  handle: async (call) => {
    const { table } = call.body;
    const read = readGearTable(table, todayOf(call));
    if (read.faults.length > 0) throw cellsNotRight(read);
    const { log, store } = call.services;
    const plan = await showGearPlan({ log, store, person: call.person.id }, { text: table, rows: read.rows });
    return {
      data: { digest: plan.digest, rows: plan.rows.map((row) => ({ ...row })) },
      page: tablesPage({ ...NOTHING, plan }),
    };
  },
});

const confirmTable = route({
  method: 'POST',
  path: '/gear/tables/confirm',
  name: 'confirmGearTable',
  summary: 'Save the test gear that was shown, all or none',
  roles: KEEPERS,
  body: z.object({ digest: text({ called: 'what was shown', max: 100 }) }),
  answer: z.object({ saved: z.int() }),
  refused: () => ({ page: tablesPage(NOTHING) }),
  handle: async (call) => {
    const { log, store } = call.services;
    const of = { digest: call.body.digest, today: todayOf(call) };
    const { saved } = await saveShownGear({ log, store, by: byOf(call) }, of);
    return { data: { saved }, seeOther: '/gear' };
  },
});

/** In order of their numbers, without the retired ones. */
async function gearInUse({ services }: BareCall): Promise<readonly GearItem[]> {
  const all = await services.log.summaries('gear');
  return all
    .map(({ body }) => body as unknown as { readonly item: GearItem; readonly retired: boolean })
    .filter(({ retired }) => !retired)
    .map(({ item }) => item);
}

const exportCsv = route({
  method: 'GET',
  path: '/gear/tables/gear.csv',
  name: 'exportGearCsv',
  summary: 'All test gear in use as a table; reads back to the very same',
  roles: 'signed-in',
  rawType: 'text/csv',
  answer: z.object({ table: z.string() }),
  handle: async (call) => {
    const table = writeGearCsv(await gearInUse(call));
    const raw: Raw = { contentType: 'text/csv; charset=utf-8', body: table, fileName: 'test-gear.csv' };
    return { data: { table }, raw };
  },
});

const exportJson = route({
  method: 'GET',
  path: '/gear/tables/gear.json',
  name: 'exportGearJson',
  summary: 'All test gear in use as JSON; reads back to the very same',
  roles: 'signed-in',
  answer: z.object({ testGear: z.array(z.record(z.string(), z.string())) }),
  handle: async (call) => {
    const testGear = (await gearInUse(call)).map((item) => ({ ...gearText(item) }));
    const raw: Raw = {
      contentType: 'application/json; charset=utf-8',
      body: JSON.stringify({ testGear }, null, 1),
      fileName: 'test-gear.json',
    };
    return { data: { testGear }, raw };
  },
});

export const gearTableRoutes: readonly Route[] = [
  showTables,
  lookAtTable,
  confirmTable,
  exportCsv,
  exportJson,
];
