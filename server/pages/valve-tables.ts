/** Valve sheets in and out by tables. */
import { z } from 'zod';
import type { UnitSystem } from '../../procedures/calculations/units.ts';
import { csvRows, csvText } from '../../procedures/tables/csv-text.ts';
import { sheetCells, sheetHeads } from '../../procedures/valve-sheet/csv.ts';
import { writeSheetsJson } from '../../procedures/valve-sheet/json.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { oneOf } from '../http/fields.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import { streamed } from '../http/streamed.ts';
import { turns } from '../long/turns.ts';
import type { Summary } from '../store/store.ts';
import { valveTable } from '../valves/valve-table.ts';
import { csvFile, tableRoutes } from './tables.ts';
import { type SavedValve, SHEET_KEEPERS } from './valve-parts.ts';

/** So many are read at a time. */
const PAGE_SHEETS = 50;

/**
 * In order of their tags, without the retired ones. A plant of thousands would keep everybody waiting for the time of its
 * writing; so each is taken as it stands when its turn comes.
 */
async function* sheetsInUse({ services }: BareCall): AsyncIterable<ValveSheet> {
  const turn = turns();
  for (let after: { readonly after?: Summary } = {}; ; ) {
    const page = await services.log.summaries('valve', { ...after, limit: PAGE_SHEETS });
    for (const { body } of page) {
      const { sheet, retired } = body as unknown as SavedValve;
      if (!retired) yield sheet;
      await turn();
    }
    const last = page.at(-1);
    if (last === undefined || page.length < PAGE_SHEETS) return;
    after = { after: last };
  }
}

async function* csvPieces(call: BareCall, units: UnitSystem): AsyncIterable<string> {
  yield csvText([sheetHeads(units)]);
  for await (const sheet of sheetsInUse(call)) yield csvRows(sheetCells([sheet], units));
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
    const pieces = csvPieces(call, units);
    // Whoever looks gets the file, and none of what a program gets.
    if (call.wantsPage)
      return { data: { table: '' }, raw: csvFile(streamed(pieces), `valve-sheets-${units}.csv`) };
    let table = '';
    for await (const piece of pieces) table += piece;
    return { data: { table } };
  },
});

async function* jsonPieces(call: BareCall): AsyncIterable<string> {
  let between = '{"valveSheets":[\n';
  for await (const sheet of sheetsInUse(call)) {
    yield between + JSON.stringify(writeSheetsJson([sheet]).valveSheets[0]);
    between = ',\n';
  }
  yield between.startsWith('{') ? `${between}]}\n` : '\n]}\n';
}

const exportJson = route({
  method: 'GET',
  path: '/valves/sheets.json',
  name: 'exportValvesJson',
  summary: 'All sheets in use as JSON, each quantity with its unit; reads back to the very same',
  roles: 'signed-in',
  answer: z.object({ valveSheets: z.array(z.record(z.string(), z.string())) }),
  handle: (call) => {
    const raw = {
      contentType: 'application/json; charset=utf-8',
      body: streamed(jsonPieces(call)),
      fileName: 'valve-sheets.json',
    };
    // The file is the very data, for programs too.
    return { data: { valveSheets: [] }, raw };
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
