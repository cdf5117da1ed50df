/** Test gear: the list, each piece with what was saved of it, and what engineers and supervisors do about it. */

import { z } from 'zod';
import { GEAR_FIELDS } from '../../procedures/test-gear/fields.ts';
import { isOverdue } from '../../procedures/test-gear/fit.ts';
import { GEAR_KINDS, type GearItem, type GearKind } from '../../procedures/test-gear/gear.ts';
import { gearText, rangeText } from '../../procedures/test-gear/gear-text.ts';
import { addGear, type GearTexts, noSuchGear, retireGear, saveGear } from '../gear/gear-acts.ts';
import { type Gear, gearKind } from '../gear/gear-stream.ts';
import { historyOf, standing } from '../gear/gear-words.ts';
import { type Fields, optionalText, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person, Role } from '../people/person.ts';
import { shownTime } from '../shown-time.ts';
import { byOf, typedIn } from './parts.ts';

/** Who keeps the test gear. */
const KEEPERS = ['supervisor', 'engineer'] as const satisfies readonly Role[];

const mayKeep = (person: Person | null): boolean => KEEPERS.some((role) => role === person?.role);

const FIELD_NAMES = GEAR_FIELDS.map(({ name }) => name);
const SAVED_NAMES = FIELD_NAMES.filter((name) => name !== 'number');

/** Left blank, each is told by `readGear` with the reason. */
const gearField = (name: string) => optionalText({ called: `the ${name}`, max: 400 }).default('');
const savedFields = z.object(Object.fromEntries(SAVED_NAMES.map((name) => [name, gearField(name)])));
const gearFields = savedFields.extend({ number: gearField('number') });

const gearAnswer = z.object({
  number: z.string(),
  kind: z.string(),
  unit: z.string(),
  rangeLow: z.string(),
  rangeHigh: z.string(),
  accuracyPercentOfSpan: z.string(),
  calibratedOn: z.string(),
  dueOn: z.string(),
  certificate: z.string(),
  bleedsDown: z.string(),
  note: z.string(),
  revision: z.int(),
  retired: z.boolean(),
  standing: z.string(),
});

const historyAnswer = z.array(
  z.object({ at: z.iso.datetime(), person: z.string().nullable(), what: z.string() }),
);

type SavedGear = Gear & { readonly item: GearItem };

const todayOf = ({ services }: BareCall): string => services.now().toISOString().slice(0, 10);

function answerOf(gear: SavedGear, today: string): z.input<typeof gearAnswer> {
  const { item, revision, retired } = gear;
  return { ...gearText(item), revision, retired, standing: standing(gear, today) };
}

/** Those in use, then the retired ones, each in order of their numbers. */
async function allGear({ services }: BareCall): Promise<readonly SavedGear[]> {
  const all = (await services.log.summaries('gear')).map(({ body }) => body as unknown as SavedGear);
  return [...all.filter(({ retired }) => !retired), ...all.filter(({ retired }) => retired)];
}

/** @throws Refusal GEA-001 */
async function gearAt(call: BareCall): Promise<SavedGear> {
  const number = call.params.number ?? '';
  const gear = await call.services.log.state(gearKind, number);
  if (gear.item === null) throw noSuchGear(number);
  return { ...gear, item: gear.item };
}

const pathOf = (number: string): string => `/gear/${encodeURIComponent(number)}`;

const listGear = route({
  method: 'GET',
  path: '/gear',
  name: 'listGear',
  summary: 'All test gear, with what is due',
  roles: 'signed-in',
  menu: { text: 'Test gear', order: 60 },
  answer: z.object({ gear: z.array(gearAnswer) }),
  handle: async (call) => {
    const [all, today] = [await allGear(call), todayOf(call)];
    const rows = all.map((gear) => ({
      ...gearText(gear.item),
      // A range that breaks over three lines is hard to read on a phone.
      range: rangeText(gear.item).replaceAll(' ', '\u00a0'),
      href: pathOf(gear.item.number),
      standing: standing(gear, today),
    }));
    const params = { rows, mayKeep: mayKeep(call.person) };
    return {
      data: { gear: all.map((gear) => answerOf(gear, today)) },
      page: { title: 'Test gear', template: 'pages/gear.njk', params },
    };
  },
});

/** The form's fields, for drawing them with what was typed or saved. */
function formParams(texts: GearTexts): object {
  const fields = Object.fromEntries(
    GEAR_FIELDS.map((field) => [field.name, { ...field, value: texts[field.name] ?? '' }]),
  );
  const option =
    (value: string, label = value) =>
    (typed: string) => ({
      value,
      label,
      selected: value === typed,
    });
  const kinds = (Object.keys(GEAR_KINDS) as GearKind[]).map((kind) => option(kind)(texts.kind ?? ''));
  const bleeds = [option('', 'not a regulator'), option('yes'), option('no')].map((make) =>
    make(texts.bleedsDown ?? ''),
  );
  return { fields, kinds, bleeds };
}

function newPage(texts: GearTexts): PageView {
  return { title: 'New test gear', template: 'pages/gear-new.njk', params: formParams(texts) };
}

const showNewGear = route({
  method: 'GET',
  path: '/gear/new',
  name: 'showNewGear',
  summary: 'What is asked of a new piece of test gear',
  roles: KEEPERS,
  answer: z.object({
    fields: z.array(z.object({ name: z.string(), label: z.string(), help: z.string().optional() })),
  }),
  handle: () => ({ data: { fields: [...GEAR_FIELDS] }, page: newPage({}) }),
});

const addRoute = route({
  method: 'POST',
  path: '/gear',
  name: 'addGear',
  summary: 'Add a piece of test gear; numbers as texts, with or without their unit',
  roles: KEEPERS,
  body: gearFields,
  answer: z.object({ number: z.string() }),
  refused: ({ typed }) => ({ page: newPage(typedIn(typed, FIELD_NAMES)) }),
  handle: async (call) => {
    const to = { log: call.services.log, by: byOf(call), today: todayOf(call) };
    const number = await addGear(to, call.body);
    return { status: 201, data: { number }, seeOther: pathOf(number) };
  },
});

async function gearPage(call: BareCall, typed?: Fields): Promise<PageView> {
  const gear = await gearAt(call);
  const { item, revision, retired } = gear;
  const names = new Map((await call.services.people.list()).map(({ id, name }) => [id, name]));
  const entries = await call.services.log.entriesOf(streamOf('gear', item.number));
  const history = historyOf(entries).map(({ at, person, what }) => ({
    at: shownTime(at),
    who: names.get(person ?? '') ?? person ?? 'nobody',
    what,
  }));
  const texts = typed === undefined ? gearText(item) : { ...gearText(item), ...typedIn(typed, SAVED_NAMES) };
  const params = {
    ...gearText(item),
    href: pathOf(item.number),
    range: rangeText(item),
    standing: standing(gear, todayOf(call)),
    isOverdue: isOverdue(item, todayOf(call)),
    retired,
    revision,
    history,
    mayKeep: mayKeep(call.person),
    form: formParams(texts),
  };
  return { title: item.number, template: 'pages/gear-item.njk', params };
}

const showGear = route({
  method: 'GET',
  path: '/gear/:number',
  name: 'showGear',
  summary: 'One piece of test gear, and what was saved of it',
  roles: 'signed-in',
  answer: z.object({ gear: gearAnswer, history: historyAnswer }),
  handle: async (call) => {
    const gear = await gearAt(call);
    const entries = await call.services.log.entriesOf(streamOf('gear', gear.item.number));
    return {
      data: { gear: answerOf(gear, todayOf(call)), history: [...historyOf(entries)] },
      page: await gearPage(call),
    };
  },
});

const saveRoute = route({
  method: 'POST',
  path: '/gear/:number',
  name: 'saveGear',
  summary: 'Save a piece of test gear anew; a retired one is taken back into use',
  roles: KEEPERS,
  body: savedFields.extend({ revision: text({ called: 'the revision that was changed', max: 10 }) }),
  answer: z.object({ number: z.string() }),
  refused: async (call) => ({ page: await gearPage(call, call.typed) }),
  handle: async (call) => {
    const { revision = '', ...texts } = call.body;
    const to = { log: call.services.log, by: byOf(call), today: todayOf(call) };
    const number = await saveGear(to, { number: call.params.number ?? '', revision, texts });
    return { data: { number }, seeOther: pathOf(number) };
  },
});

const retireRoute = route({
  method: 'POST',
  path: '/gear/:number/retire',
  name: 'retireGear',
  summary: 'Take a piece of test gear out of use; jobs that used it still name it',
  roles: KEEPERS,
  body: z.object({ why: text({ called: 'why it is retired' }) }),
  answer: z.object({ number: z.string() }),
  refused: async (call) => ({ page: await gearPage(call) }),
  handle: async (call) => {
    const to = { log: call.services.log, by: byOf(call) };
    const number = await retireGear(to, { number: call.params.number ?? '', why: call.body.why });
    return { data: { number }, seeOther: '/gear' };
  },
});

export const gearRoutes: readonly Route[] = [
  listGear,
  showNewGear,
  addRoute,
  showGear,
  saveRoute,
  retireRoute,
];
