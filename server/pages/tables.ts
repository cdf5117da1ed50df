/** Things in and out by tables: a table or JSON is shown with what it would change, then confirmed; or taken along. */
import { z } from 'zod';
import type { CellFault } from '../../procedures/tables/table-form.ts';
import { optionalText, text } from '../http/fields.ts';
import { type BareCall, type Call, type PageView, type Raw, type Route, route } from '../http/route.ts';
import type { Person, Role } from '../people/person.ts';
import { lookAt, saveShown, type TablePlan } from '../tables/table-import.ts';
import { ROW_CHANGES, type TableKind } from '../tables/table-kind.ts';
import { cellsNotRight, faultIds } from '../tables/table-refusals.ts';
import { pathOfWork, resultOf } from './long-work.ts';
import { byOf, typedIn } from './parts.ts';

/** So many rows are listed on the page; the counts are of all. */
const ROWS_SHOWN = 200;

export interface TablePages<Item> {
  readonly table: TableKind<Item>;
  readonly roles: readonly Role[];
  readonly path: `/${string}/tables`;
  /** Where the list of them stands. */
  readonly list: `/${string}`;
  /** As the routes are called: `ValveTable` of `lookAtValveTable`. */
  readonly name: string;
  /** Of several: `valve sheets`. */
  readonly many: string;
  readonly title: string;
  readonly words: {
    readonly in: string;
    readonly out: string;
    /** What goes out: `all valves in use` */
    readonly all: string;
    /** How a row is told from another: `tag` */
    readonly key: string;
    readonly thing: string;
    readonly contradicts: boolean;
    readonly help: string;
    readonly save: string;
  };
  readonly exports: readonly { readonly href: string; readonly text: string }[];
}

interface Shown {
  readonly typed: string;
  readonly faults: readonly CellFault[];
  readonly moreFaults: number;
  readonly plan: TablePlan | null;
}

const NOTHING: Shown = { typed: '', faults: [], moreFaults: 0, plan: null };

/** The pages of one kind of table; what goes out has routes of its own. */
export function tableRoutes<Item>(of: TablePages<Item>): readonly Route[] {
  return [showRoute(of), lookRoute(of), confirmRoute(of)];
}

function tablesPage<Item>(
  { title, path, words, exports }: TablePages<Item>,
  { typed, faults, moreFaults, plan }: Shown,
): PageView {
  const ids = faultIds(faults);
  const rows = plan?.rows ?? [];
  const counts = ROW_CHANGES.map((change) => ({
    change,
    count: rows.filter((row) => row.change === change).length,
  }));
  const params = {
    path,
    words,
    exports,
    typed,
    faults: faults.map(({ row, column, what }, at) => ({
      id: ids[at] ?? '',
      row: row ?? 'all',
      column: column ?? '',
      what,
    })),
    moreFaults,
    digest: plan?.digest ?? '',
    counts: counts.filter(
      ({ change, count }) => count > 0 || ['new', 'changed', 'unchanged'].includes(change),
    ),
    rows: rows.slice(0, ROWS_SHOWN).map((row) => ({ ...row, says: row.says.join(' ') })),
    moreRows: Math.max(0, rows.length - ROWS_SHOWN),
  };
  return { title, template: 'pages/tables.njk', params };
}

const todayOf = ({ services }: BareCall): string => services.now().toISOString().slice(0, 10);

function showRoute<Item>(of: TablePages<Item>): Route {
  return route({
    method: 'GET',
    path: of.path,
    name: `show${of.name}s`,
    summary: `Where ${of.many} come in and go out as tables or JSON`,
    roles: of.roles,
    query: z.object({ work: optionalText({ called: 'the work', max: 100 }).default('') }),
    answer: z.object({ export: z.array(z.string()), import: z.string() }),
    handle: (call) => ({
      data: { export: of.exports.map(({ href }) => href), import: of.path },
      page: tablesPage(of, shownBy(call)),
    }),
  });
}

/** What a long work found, shown where a short one would have shown it. */
function shownBy({ query, services, person }: Call<unknown, { readonly work: string }, Person>): Shown {
  if (query.work === '') return NOTHING;
  const { outcome } = services.long.at(query.work, person.id);
  // Only `lookAtRoute` sends anybody here, and its work ends with this.
  return outcome.state === 'done' ? (outcome.result as Shown) : NOTHING;
}

/** Read with the table's own reasons; here only that there is something. */
const tableField = z
  .string('Write the table as text.')
  .refine((table) => table.trim() !== '', 'Paste the table, its head first.');

function lookRoute<Item>(of: TablePages<Item>): Route {
  return route({
    method: 'POST',
    path: of.path,
    name: `lookAt${of.name}`,
    summary: `Show what a table or JSON of ${of.many} would change, or every wrong cell; saves nothing`,
    roles: of.roles,
    bodyBytesMax: of.table.bytesMax,
    body: z.object({ table: tableField }),
    answer: z.object({
      digest: z.string().describe(`Send it to ${of.path}/confirm to save what is shown here.`),
      rows: z.array(
        z.object({ row: z.int(), id: z.string(), change: z.enum(ROW_CHANGES), says: z.array(z.string()) }),
      ),
    }),
    refused: async (call) => {
      const { table } = typedIn(call.typed, ['table']);
      const looked = table.trim() === '' ? NOTHING : await lookAt(of.table, lookingAt(call, table));
      return { page: tablesPage(of, { ...looked, typed: table }) };
    },
    handle: async (call) => {
      const { table } = call.body;
      const { long, store } = call.services;
      const begun = {
        title: `Looking at ${of.many}`,
        person: call.person.id,
        back: of.path,
        shows: (id: string) => `${of.path}?work=${id}`,
      };
      const work = long.start(begun, async (tell): Promise<Shown> => {
        const looked = await lookAt(of.table, { ...lookingAt(call, table), tell });
        if (looked.plan !== null)
          await store.putOutside({ kind: of.table.keptAs, id: begun.person, body: { text: table } });
        return { ...looked, typed: looked.plan === null ? table : '' };
      });
      const shown = await resultOf<Shown>(call, work);
      if (shown === null) return { data: { digest: '', rows: [] }, seeOther: pathOfWork(work) };
      if (shown.plan === null) throw cellsNotRight(of.table, shown);
      const rows = shown.plan.rows.map(({ says, ...row }) => ({ ...row, says: [...says] }));
      return { data: { digest: shown.plan.digest, rows }, page: tablesPage(of, shown) };
    },
  });
}

function lookingAt(call: BareCall, text: string) {
  return { log: call.services.log, text, today: todayOf(call) };
}

function confirmRoute<Item>(of: TablePages<Item>): Route {
  return route({
    method: 'POST',
    path: `${of.path}/confirm`,
    name: `confirm${of.name}`,
    summary: `Save the ${of.many} that were shown, all or none`,
    roles: of.roles,
    body: z.object({ digest: text({ called: 'what was shown', max: 100 }) }),
    answer: z.object({ saved: z.int() }),
    refused: () => ({ page: tablesPage(of, NOTHING) }),
    handle: async (call) => {
      const { services, body } = call;
      const begun = {
        title: `Saving ${of.many}`,
        person: call.person.id,
        back: of.path,
        shows: () => of.list,
      };
      const saving = { services, by: byOf(call), digest: body.digest, today: todayOf(call) };
      const work = services.long.start(begun, (tell, writing) =>
        saveShown(of.table, { ...saving, tell, writing }),
      );
      const done = await resultOf<{ readonly saved: number }>(call, work);
      if (done === null) return { data: { saved: 0 }, seeOther: pathOfWork(work) };
      return { data: { saved: done.saved }, seeOther: of.list };
    },
  });
}

/** A file of JSON that people save. */
export function jsonFile(value: object, fileName: string): Raw {
  const contentType = 'application/json; charset=utf-8';
  return { contentType, body: JSON.stringify(value, null, 1), fileName };
}

export function csvFile(body: Raw['body'], fileName: string): Raw {
  return { contentType: 'text/csv; charset=utf-8', body, fileName };
}
