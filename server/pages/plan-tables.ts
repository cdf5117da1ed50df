/** Plans in and out by tables. */
import { z } from 'zod';
import type { Plan } from '../../procedures/plans/plan.ts';
import { writePlansCsv } from '../../procedures/plans/plan-table.ts';
import { planText } from '../../procedures/plans/read-plan.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import { planTable } from '../plans/plan-table.ts';
import { stillToDo } from '../plans/planned.ts';
import { PLANNERS } from './plans.ts';
import { csvFile, jsonFile, tableRoutes } from './tables.ts';

async function plansToDo({ services }: BareCall): Promise<readonly Plan[]> {
  return (await stillToDo(services)).map(({ plan }) => plan);
}

const exportCsv = route({
  method: 'GET',
  path: '/plans/tables/plans.csv',
  name: 'exportPlansCsv',
  summary: 'All plans that are still to do as a table; reads back to the very same',
  roles: 'signed-in',
  rawType: 'text/csv',
  answer: z.object({ table: z.string() }),
  handle: async (call) => {
    const table = writePlansCsv(await plansToDo(call));
    return { data: { table }, raw: csvFile(table, 'plans.csv') };
  },
});

const exportJson = route({
  method: 'GET',
  path: '/plans/tables/plans.json',
  name: 'exportPlansJson',
  summary: 'All plans that are still to do as JSON; reads back to the very same',
  roles: 'signed-in',
  answer: z.object({ plans: z.array(z.record(z.string(), z.string())) }),
  handle: async (call) => {
    const plans = (await plansToDo(call)).map((plan) => ({ ...planText(plan) }));
    return { data: { plans }, raw: jsonFile({ plans }, 'plans.json') };
  },
});

export const planTableRoutes: readonly Route[] = [
  ...tableRoutes({
    table: planTable,
    roles: PLANNERS,
    path: '/plans/tables',
    list: '/plans',
    name: 'PlanTable',
    many: 'plans',
    title: 'Plans in and out',
    words: {
      in: 'Plans in',
      out: 'Plans out',
      all: 'all that are still to do',
      key: 'number',
      thing: 'plan',
      contradicts: false,
      help: 'Paste the whole table with its head: number, tag, procedure, place, dueOn, role, note. A table that was taken out below shows how.',
      save: 'Save these plans',
    },
    exports: [
      { href: '/plans/tables/plans.csv', text: 'Table' },
      { href: '/plans/tables/plans.json', text: 'JSON' },
    ],
  }),
  exportCsv,
  exportJson,
];
