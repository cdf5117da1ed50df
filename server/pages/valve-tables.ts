/** Valve sheets in and out by tables. */
import { z } from 'zod';
import { writeSheetsCsv } from '../../procedures/valve-sheet/csv.ts';
import { writeSheetsJson } from '../../procedures/valve-sheet/json.ts';
import { oneOf } from '../http/fields.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import { valveTable } from '../valves/valve-table.ts';
import { csvFile, jsonFile, tableRoutes } from './tables.ts';
import { type SavedValve, SHEET_KEEPERS } from './valve-parts.ts';

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
    return { data: { table }, raw: csvFile(table, `valve-sheets-${units}.csv`) };
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
    const data = { valveSheets: valveSheets.map((sheet) => ({ ...sheet })) };
    return { data, raw: jsonFile(data, 'valve-sheets.json') };
  },
});

export const valveTableRoutes: readonly Route[] = [
  ...tableRoutes({
    table: valveTable,
    roles: SHEET_KEEPERS,
    path: '/valves/tables',
    list: '/valves',
    name: 'ValveTable',
    many: 'valve sheets',
    title: 'Sheets in and out',
    words: {
      in: 'Sheets in',
      out: 'Sheets out',
      all: 'all valves in use',
      key: 'tag',
      thing: 'sheet',
      contradicts: true,
      help: 'Paste the whole table with its head. Each column of figures names its unit: benchSetLow [psi]. A table that was taken out below shows how.',
      save: 'Save these sheets',
    },
    exports: [
      { href: '/valves/sheets.csv?units=us', text: 'Table in psi, in, lbf' },
      { href: '/valves/sheets.csv?units=si', text: 'Table in kPa, mm, N' },
      { href: '/valves/sheets.json', text: 'JSON' },
    ],
  }),
  exportCsv,
  exportJson,
];
