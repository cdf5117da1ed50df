/** The sheet as a form: a new valve, a sheet saved anew, a valve retired. */
import { z } from 'zod';
import type { UnitSystem } from '../../procedures/calculations/units.ts';
import { FIELDS } from '../../procedures/valve-sheet/fields.ts';
import { sheetTexts } from '../../procedures/valve-sheet/schema.ts';
import { type Fields, oneOf, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { sheetForm, type Texts, textsOf } from '../valves/sheet-form.ts';
import { addValve, retireValve, saveValve } from '../valves/valve-acts.ts';
import { byOf, typedIn as typedFields } from './parts.ts';
import { mayKeepSheets, pathOfValve, SHEET_KEEPERS, valveAt } from './valve-parts.ts';
import { valvePage } from './valves.ts';

const NAMES = FIELDS.map(({ name }) => name as string);
const typedInField = oneOf(['us', 'si'])
  .optional()
  .describe('Which units numbers without a unit are in; left out: those that `units` names.');

const newFields = sheetTexts.extend({ typedIn: typedInField });
const savedFields = sheetTexts
  .omit({ tag: true })
  .extend({ typedIn: typedInField, revision: text({ called: 'the revision that was changed', max: 10 }) });

const savedAnswer = z.object({ tag: z.string(), revision: z.int() });

/** The texts of the sheet alone, and the units that they are in. */
function sheetOfBody(body: Readonly<Record<string, string | undefined>>): {
  readonly texts: Texts;
  readonly typedIn: UnitSystem | undefined;
} {
  const { typedIn, revision: _, ...rest } = body;
  const given = Object.entries(rest).filter((pair): pair is [string, string] => pair[1] !== undefined);
  return {
    texts: Object.fromEntries(given),
    typedIn: typedIn === 'us' || typedIn === 'si' ? typedIn : undefined,
  };
}

function systemOf(fields: Fields): UnitSystem {
  const { typedIn } = typedFields(fields, ['typedIn']);
  return typedIn === 'si' ? 'si' : 'us';
}

function newPage(of: { readonly texts: Texts; readonly typedIn: UnitSystem }): PageView {
  const params = {
    action: '/valves',
    tag: '',
    revision: 0,
    retired: false,
    back: '/valves',
    form: sheetForm(of),
  };
  return { title: 'New valve sheet', template: 'pages/valve-form.njk', params };
}

const showNewValve = route({
  method: 'GET',
  path: '/valves/new',
  name: 'showNewValve',
  summary: 'What is asked of a new valve sheet',
  roles: SHEET_KEEPERS,
  query: z.object({ units: oneOf(['us', 'si']).default('us') }),
  answer: z.object({
    fields: z.array(z.object({ name: z.string(), label: z.string(), required: z.boolean() })),
  }),
  handle: ({ query }) => ({
    data: {
      fields: FIELDS.map(({ name, label, required }) => ({ name, label, required: required === true })),
    },
    page: newPage({ texts: { units: query.units }, typedIn: query.units }),
  }),
});

const addRoute = route({
  method: 'POST',
  path: '/valves',
  name: 'addValve',
  summary: 'Add a valve by its sheet; numbers as texts, with or without their unit',
  roles: SHEET_KEEPERS,
  body: newFields,
  answer: savedAnswer,
  refused: ({ typed }) => ({ page: newPage({ texts: typedFields(typed, NAMES), typedIn: systemOf(typed) }) }),
  handle: async (call) => {
    const saved = await addValve({ log: call.services.log, by: byOf(call) }, sheetOfBody(call.body));
    return { status: 201, data: saved, seeOther: pathOfValve(saved.tag) };
  },
});

async function editPage(call: BareCall, typed?: Fields): Promise<PageView> {
  const valve = await valveAt(call);
  const { sheet, revision, retired } = valve;
  const of =
    typed === undefined
      ? { texts: textsOf(valve), typedIn: sheet.units }
      : { texts: typedFields(typed, NAMES), typedIn: systemOf(typed) };
  const href = pathOfValve(sheet.tag);
  const form = sheetForm({ ...of, without: ['tag'] });
  const params = { action: href, tag: sheet.tag, revision, retired, back: href, form };
  return { title: `Sheet of ${sheet.tag}`, template: 'pages/valve-form.njk', params };
}

const showValveForm = route({
  method: 'GET',
  path: '/valves/:tag/edit',
  name: 'showValveForm',
  summary: 'The sheet of a valve as the texts that a save takes, with the revision to send back',
  roles: SHEET_KEEPERS,
  answer: z.object({
    tag: z.string(),
    revision: z.string(),
    typedIn: z.enum(['us', 'si']),
    texts: z.record(z.string(), z.string()),
  }),
  handle: async (call) => {
    const valve = await valveAt(call);
    const { tag, units } = valve.sheet;
    const data = { tag, revision: String(valve.revision), typedIn: units, texts: { ...textsOf(valve) } };
    return { data, page: await editPage(call) };
  },
});

const saveRoute = route({
  method: 'POST',
  path: '/valves/:tag',
  name: 'saveValve',
  summary: 'Save the sheet of a valve anew; a retired valve is taken back into use',
  roles: SHEET_KEEPERS,
  body: savedFields,
  answer: savedAnswer,
  refused: async (call) => ({ page: await editPage(call, call.typed) }),
  handle: async (call) => {
    const { revision = '' } = call.body;
    const of = { ...sheetOfBody(call.body), tag: call.params.tag ?? '', revision };
    const saved = await saveValve({ log: call.services.log, by: byOf(call) }, of);
    return { data: saved, seeOther: pathOfValve(saved.tag) };
  },
});

const retireRoute = route({
  method: 'POST',
  path: '/valves/:tag/retire',
  name: 'retireValve',
  summary: 'Retire a valve: it leaves the list, its log stays',
  roles: SHEET_KEEPERS,
  body: z.object({ why: text({ called: 'why', max: 200 }) }),
  answer: savedAnswer,
  refused: async (call) => {
    if (!mayKeepSheets(call.person)) return {};
    return { page: await valvePage(call, await valveAt(call), typedFields(call.typed, ['why'])) };
  },
  handle: async (call) => {
    const to = { log: call.services.log, by: byOf(call) };
    const saved = await retireValve(to, { tag: call.params.tag ?? '', why: call.body.why });
    return { data: saved, seeOther: pathOfValve(saved.tag) };
  },
});

export const valveFormRoutes: readonly Route[] = [
  showNewValve,
  addRoute,
  showValveForm,
  saveRoute,
  retireRoute,
];
