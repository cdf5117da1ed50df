/** Isolation points of the site: what is locked and bypassed now, each point with its history, and what it is. */
import { z } from 'zod';
import { POINT_KINDS } from '../../safety/isolation-points.ts';
import { oneOf, optionalText, text, wrongFields } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import { pointKind, type SitePoint } from '../jobs/point-stream.ts';
import type { Names } from '../jobs/view/words.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Role } from '../people/person.ts';
import { historyOf } from '../points/history.ts';
import { readPoints } from '../points/import-points.ts';
import { allowTag, describePoints } from '../points/point-acts.ts';
import { noSuchPoint } from '../points/refusals.ts';
import { pointRow, type SiteView, siteView, siteViewSchema } from '../points/site-view.ts';
import { byOf, typedIn } from './parts.ts';

/** Who says what a point is. */
const KEEPERS = ['supervisor', 'engineer'] as const satisfies readonly Role[];
const isKeeper = ({ person }: BareCall): boolean => KEEPERS.some((role) => role === person?.role);

/** More than 2,000 points with their places. */
const TABLE_BYTES_MAX = 1024 * 1024;
const TABLE_LETTERS_MAX = 400_000;

const tagField = text({ called: 'the tag of the point', max: 40 });
const pathOf = (tag: string): string => `/points/${encodeURIComponent(tag)}`;

async function namesOf({ services }: BareCall): Promise<Names> {
  return new Map((await services.people.list()).map(({ id, name }) => [id, name]));
}

const listPoints = route({
  method: 'GET',
  path: '/points',
  name: 'listPoints',
  summary: 'What is locked and bypassed on the site now, by whom, for which job, since when; free points too',
  roles: 'signed-in',
  menu: { text: 'Locked now', order: 20 },
  query: z.object({ find: optionalText({ called: 'the tag of the point', max: 40 }).default('') }),
  answer: siteViewSchema,
  handle: async (call) => {
    const { services, now, query } = call;
    const view = await siteView(services, { names: await namesOf(call), nowMs: now.getTime() });
    const found = query.find === '' ? '' : query.find.toUpperCase();
    const isKnown = found !== '' && (await services.log.place(streamOf('point', found))) > 0;
    const params = {
      ...view,
      rows: lockedRows(view),
      unknown: isKnown ? '' : found,
      mayKeep: isKeeper(call),
    };
    return {
      data: view,
      page: { title: 'Locked now', template: 'pages/points.njk', params },
      ...(isKnown ? { seeOther: pathOf(found) } : {}),
    };
  },
});

/** A line for each lock; a point that stands shut without one has a line of its own. */
function lockedRows({ locked }: SiteView) {
  return locked.flatMap(({ tag, kind, place, stands, locks }) => {
    const point = {
      tag,
      href: pathOf(tag),
      what: [kind, place].filter((part) => part !== '').join(', '),
      stands,
    };
    if (locks.length === 0)
      return [{ ...point, lock: 'no lock', owner: '', job: '', jobHref: '', since: '', hours: '' }];
    return locks.map(({ lock, ownerName, job, valve, since, hours, tagBecause }) => ({
      ...point,
      lock: tagBecause === '' ? lock : `${lock}, alone: ${tagBecause}`,
      owner: ownerName,
      job: valve === '' ? `job ${job}` : `job ${job}, ${valve}`,
      jobHref: `/jobs/${job}/people`,
      since,
      hours: hours === null ? '' : hours.toFixed(1),
    }));
  });
}

const pointAnswer = z.object({
  point: siteViewSchema.shape.locked.element,
  history: z.array(z.object({ at: z.string(), who: z.string(), what: z.string() })),
});

interface Typed {
  readonly kind: string;
  readonly place: string;
  readonly lockable: string;
  readonly job: string;
  readonly because: string;
}

const NOTHING: Typed = { kind: '', place: '', lockable: '', job: '', because: '' };

/** The tag in the address. @throws Refusal PNT-007 where no point could have it */
function tagOf({ params }: BareCall): string {
  const { success, data } = tagField.safeParse(params.tag ?? '');
  if (!success) throw noSuchPoint(params.tag ?? '');
  return data;
}

/** Whoever says what points are opens the page of one that nobody has described yet. @throws Refusal PNT-007 */
async function pointOf(call: BareCall): Promise<SitePoint> {
  const tag = tagOf(call);
  const isKnown = (await call.services.log.place(streamOf('point', tag))) > 0;
  if (!(isKnown || isKeeper(call))) throw noSuchPoint(tag);
  return { ...(await call.services.log.state(pointKind, tag)), tag };
}

async function dataOf(call: BareCall): Promise<z.input<typeof pointAnswer>> {
  const point = await pointOf(call);
  const names = await namesOf(call);
  const entries = await call.services.log.entriesOf(streamOf('point', point.tag));
  const seen = { names, nowMs: call.now.getTime() };
  return { point: pointRow(point, { seen, jobs: [] }), history: [...historyOf(entries, names)] };
}

async function pointPage(call: BareCall, typed: Typed = NOTHING): Promise<PageView> {
  const { point, history } = await dataOf(call);
  const kind = typed.kind || point.kind;
  const lockable = typed.lockable || (point.lockable ? 'yes' : 'no');
  const params = {
    point: { ...point, href: pathOf(point.tag) },
    rows: lockedRows({ locked: [point] } as unknown as SiteView),
    history,
    typed: { ...typed, place: typed.place || point.place },
    kinds: ['', ...POINT_KINDS].map((value) => ({
      value,
      label: value || 'not said',
      selected: value === kind,
    })),
    lockables: [
      { value: 'yes', label: 'Yes', checked: lockable === 'yes' },
      { value: 'no', label: 'No, a tag is all that it takes', checked: lockable === 'no' },
    ],
    mayKeep: isKeeper(call),
    mayAllow: call.person?.role === 'supervisor',
  };
  return { title: point.tag, template: 'pages/point.njk', params };
}

const showPoint = route({
  method: 'GET',
  path: '/points/:tag',
  name: 'showPoint',
  summary: 'One isolation point: its locks and everything that happened to it',
  roles: 'signed-in',
  answer: pointAnswer,
  handle: async (call) => ({ data: await dataOf(call), page: await pointPage(call) }),
});

const describePoint = route({
  method: 'POST',
  path: '/points/:tag',
  name: 'describePoint',
  summary: 'Say what a point is, where it is, and whether it takes a lock',
  roles: KEEPERS,
  body: z.object({
    kind: oneOf(POINT_KINDS),
    place: text({ called: 'where it is', max: 120 }),
    lockable: oneOf(['yes', 'no']),
  }),
  answer: z.object({ tag: z.string() }),
  refused: async (call) => ({
    page: await pointPage(call, { ...NOTHING, ...typedIn(call.typed, ['kind', 'place', 'lockable']) }),
  }),
  handle: async (call) => {
    const { kind, place, lockable } = call.body;
    const tag = tagOf(call).toUpperCase();
    const to = { log: call.services.log, by: byOf(call) };
    await describePoints(to, [{ tag, kind, place, lockable: lockable === 'yes' }]);
    return { data: { tag }, seeOther: pathOf(tag) };
  },
});

const allowTagAlone = route({
  method: 'POST',
  path: '/points/:tag/tag-alone',
  name: 'allowTagAlone',
  summary: 'Allow a tag alone on a point that takes a lock, for one job, with the reason',
  roles: ['supervisor'],
  body: z.object({
    job: text({ called: 'the number of the job', max: 20 }),
    because: text({ called: 'why no lock can be hung, and what protects as well', max: 300 }),
  }),
  answer: z.object({ tag: z.string() }),
  refused: async (call) => ({
    page: await pointPage(call, { ...NOTHING, ...typedIn(call.typed, ['job', 'because']) }),
  }),
  handle: async (call) => {
    const { tag } = await pointOf(call);
    await allowTag({ log: call.services.log, by: byOf(call) }, { tag, ...call.body });
    return { data: { tag }, seeOther: pathOf(tag) };
  },
});

function tablesPage(params: { readonly table: string; readonly faults: readonly string[] }): PageView {
  return { title: 'Point table', template: 'pages/point-tables.njk', params };
}

const showPointTables = route({
  method: 'GET',
  path: '/points/tables',
  name: 'showPointTables',
  summary: 'The form that takes points from a table or JSON',
  roles: KEEPERS,
  answer: z.object({ columns: z.array(z.string()) }),
  handle: () => ({
    data: { columns: ['tag', 'kind', 'place', 'lockable'] },
    page: tablesPage({ table: '', faults: [] }),
  }),
});

const importPoints = route({
  method: 'POST',
  path: '/points/tables',
  name: 'importPoints',
  summary: 'Describe points from a table or JSON, all rows or none',
  roles: KEEPERS,
  bodyBytesMax: TABLE_BYTES_MAX,
  body: z.object({ table: text({ called: 'the table', max: TABLE_LETTERS_MAX, lines: true }) }),
  answer: z.object({ points: z.int() }),
  refused: ({ typed }) => {
    const { table } = typedIn(typed, ['table']);
    return {
      page: tablesPage({ table, faults: table.trim() === '' ? [] : readPoints(table).faults.slice(0, 50) }),
    };
  },
  handle: async (call) => {
    const { points, faults } = readPoints(call.body.table);
    if (faults.length > 0) throw wrongFields({ table: faults.slice(0, 5).join(' ') });
    const saved = await describePoints({ log: call.services.log, by: byOf(call) }, points);
    return { data: { points: saved }, status: 201, seeOther: '/points' };
  },
});

/** The address of tables stands before that of a point: no point is called so. */
export const pointRoutes: readonly Route[] = [
  listPoints,
  showPointTables,
  importPoints,
  showPoint,
  describePoint,
  allowTagAlone,
];
