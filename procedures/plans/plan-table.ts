/** Plans as a table or as JSON: read whole or not at all, and written so that they read back to the very same. */
import { csvText } from '../tables/csv-text.ts';
import { namedColumns } from '../tables/named-columns.ts';
import { readCsv } from '../tables/read-table.ts';
import type { TableForm, TableRead } from '../tables/table-form.ts';
import { PLAN_FIELDS, type Plan } from './plan.ts';
import { planText, readPlan } from './read-plan.ts';

/** A year of work on as many valves as a plant has. */
const PLAN_ROWS_MAX = 5000;

const NAMES = PLAN_FIELDS.map(({ name }) => name);
const COLUMNS = namedColumns({ names: NAMES, called: 'a plan' });

export interface PlanRow {
  readonly plan: Plan;
}

export const PLAN_TABLE: TableForm<PlanRow> = {
  many: 'plans',
  none: 'There is no plan in it.',
  rowsMax: PLAN_ROWS_MAX,
  listName: 'plans',
  key: 'number',
  mustHave: NAMES.filter((name) => name !== 'note').map((name) => ({ name, head: name })),
  column: COLUMNS.column,
  jsonText: COLUMNS.jsonText,
  readRow: (texts) => {
    const unknown = COLUMNS.unknownNames(texts);
    if (unknown.length > 0) return { faults: unknown };
    const read = readPlan(texts);
    if (read.ok) return { plan: read.plan };
    return { faults: Object.entries(read.faults).map(([name, what]) => ({ names: [name], what })) };
  },
  keyOf: ({ plan }) => plan.number,
};

/**
 * Plans from a table; all rows are taken, or none and every wrong cell named.
 * @example readPlansCsv('number,tag,procedure,place,dueOn,role\r\nP-1,FV-214,stroke-check,line,2026-03-04,technician').rows[0].plan.dueOn // '2026-03-04'
 */
export function readPlansCsv(text: string): TableRead<PlanRow> {
  return readCsv(PLAN_TABLE, text);
}

/**
 * Plans as a table that reads back to the very same; no cell begins like a formula.
 * @example writePlansCsv([]) // '\ufeffnumber,tag,procedure,place,dueOn,role,note\r\n'
 */
export function writePlansCsv(plans: readonly Plan[]): string {
  return csvText([NAMES, ...plans.map((plan) => NAMES.map((name) => planText(plan)[name]))]);
}
