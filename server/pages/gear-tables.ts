/** Test gear in and out by tables. */
import { z } from 'zod';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { writeGearCsv } from '../../procedures/test-gear/gear-table.ts';
import { gearText } from '../../procedures/test-gear/gear-text.ts';
import { gearTable } from '../gear/gear-table.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import { csvFile, jsonFile, tableRoutes } from './tables.ts';

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
    return { data: { table }, raw: csvFile(table, 'test-gear.csv') };
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
    return { data: { testGear }, raw: jsonFile({ testGear }, 'test-gear.json') };
  },
});

export const gearTableRoutes: readonly Route[] = [
  ...tableRoutes({
    table: gearTable,
    roles: ['supervisor', 'engineer'],
    path: '/gear/tables',
    list: '/gear',
    name: 'GearTable',
    many: 'pieces of test gear',
    title: 'Gear in and out',
    words: {
      in: 'Gear in',
      out: 'Gear out',
      all: 'all test gear in use',
      key: 'number',
      thing: 'gear',
      contradicts: false,
      help: 'Paste the whole table with its head. The scale of each piece is in the unit of its own row. A table that was taken out below shows how.',
      save: 'Save this gear',
    },
    exports: [
      { href: '/gear/tables/gear.csv', text: 'Table' },
      { href: '/gear/tables/gear.json', text: 'JSON' },
    ],
  }),
  exportCsv,
  exportJson,
];
