/** A valve over the years: what its closed jobs read, how it drifts, and when the next check is due. */
import { z } from 'zod';
import { format, fromSi, unitFor } from '../../procedures/calculations/units.ts';
import { procedureNamed } from '../../procedures/served.ts';
import { type HistoryCurve, historyCurve } from '../../views/pictures/history-curve.ts';
import { doubtsIn, withDoubts } from '../history/doubts.ts';
import { type NotedRow, notedCsv, notedRows } from '../history/noted.ts';
import {
  type PlantHistory,
  plantHistory,
  plantHistorySchema,
  type ReadValve,
} from '../history/plant-history.ts';
import { unitWordsOf } from '../history/trend.ts';
import {
  type HistorySheets,
  type ValveHistory,
  valveHistory,
  valveHistorySchema,
} from '../history/valve-history.ts';
import { optionalText } from '../http/fields.ts';
import { type BareCall, type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import type { JobLine } from '../jobs/job-stream.ts';
import { day } from '../jobs/view/words.ts';
import { jobsOfValve } from '../lists.ts';
import { TELL_NOBODY } from '../long/long-work.ts';
import type { Person } from '../people/person.ts';
import type { Services } from '../services.ts';
import { pathOfWork, resultOf } from './long-work.ts';
import { mayPlan } from './plans.ts';
import { pathOfValve, valveAt } from './valve-parts.ts';

/** The lines of all jobs, as the list of jobs has them. */
async function jobLines({ log }: Services): Promise<readonly JobLine[]> {
  return (await log.summaries('job')).map(({ body }) => body as unknown as JobLine);
}

function historyRoute(catalogue: Catalogue): Route {
  return route({
    method: 'GET',
    path: '/valves/:tag/history',
    name: 'showValveHistory',
    summary: 'A valve over its closed jobs: readings with limits, drift, and the date of leaving tolerance',
    roles: 'signed-in',
    answer: valveHistorySchema,
    handle: async (call) => {
      const { log } = call.services;
      const { sheet } = await valveAt(call);
      const lines = await jobsOfValve(call.services, sheet.tag);
      const { history: bare, drawn } = valveHistory(lines, sheet);
      const history = withDoubts(bare, await doubtsIn(lines, { log, catalogue }));
      const { tag, service } = sheet;
      const params = { tag, service, href: pathOfValve(tag), ...pageParams({ history, drawn }) };
      return {
        data: history,
        page: { title: `${tag}, history`, template: 'pages/valve-history.njk', params },
      };
    },
  });
}

function pageParams({ history, drawn }: HistorySheets) {
  const { proposedMonths, method } = history;
  return {
    method,
    proposed: proposedWords(proposedMonths),
    jobs: history.jobs.map(jobRow),
    noted: history.noted.map(notedRow),
    quantities: drawn.map((one, at) => ({
      title: one.series.title,
      unit: unitWordsOf(one.series),
      limits: limitWords(history.quantities[at]),
      says: [...expectedWords(one.series), ...one.trend.says],
      picture: historyCurve(curveOf(one)),
      rows: (history.quantities[at]?.points ?? []).map((point) => pointRow(point, one.series.unit)),
    })),
  };
}

function proposedWords(months: number | null): string {
  if (months === null) return 'No interval is proposed yet: below stands what is wanting.';
  return months === 0
    ? 'The next check is due now.'
    : `Proposed: the next check within ${months === 1 ? '1 month' : `${months} months`} of the last.`;
}

function jobRow({
  job,
  procedure,
  closedOn,
  closedAs,
  outsideAsFound,
  strokeOpenS,
  strokeShutS,
}: ValveHistory['jobs'][number]) {
  const seconds = (value: number | null) => (value === null ? '' : `${Number(value.toFixed(1))} s`);
  return {
    cells: [
      { text: `job ${job}`, href: `/jobs/${job}/record`, strong: true },
      { text: closedOn },
      { text: procedureNamed(procedure)?.definition.title ?? procedure },
      { text: closedAs },
      { text: outsideAsFound.join(', ') },
      { text: seconds(strokeOpenS) },
      { text: seconds(strokeShutS) },
    ],
  };
}

function notedRow({ job, closedOn, kind, what, words, number, batch, quantity }: NotedRow) {
  return {
    cells: [
      { text: closedOn },
      { text: `job ${job}`, href: `/jobs/${job}/record` },
      { text: NOTED[kind] },
      { text: quantity === null ? what : `${quantity} off ${what}`, strong: true },
      { text: [words, number, batch].filter((text) => text !== '').join(', ') },
    ],
  };
}

const NOTED = { finding: 'found', repair: 'fault named', part: 'put in' } as const;

/** Beside a limit, or in its place: the reader is told that it is none. */
function expectedWords({ expected, unit }: HistorySheets['drawn'][number]['series']): readonly string[] {
  if (expected === null) return [];
  const value = format({ valueSi: expected.valueSi, unit });
  return [`${value} is what its packing should cost: an expectation, no limit. From: ${expected.from}.`];
}

type Quantity = ValveHistory['quantities'][number];

function limitWords(quantity: Quantity | undefined): string {
  if (quantity === undefined) return '';
  const { limitLow, limitHigh, expected, unit } = quantity;
  const short = (value: number) => Number(value.toPrecision(6));
  if (limitHigh === null)
    return expected === null
      ? 'no limit on the sheet'
      : `no limit on the sheet; ${short(expected.value)} ${unit} expected`;
  const size = short(limitHigh);
  return limitLow === null ? `at most ${size} ${unit}` : `at most ${size} ${unit} either way`;
}

function pointRow(point: Quantity['points'][number], unit: HistorySheets['drawn'][number]['series']['unit']) {
  const { decimals } = unitFor(unit);
  const text = (value: number) => value.toFixed(Math.max(1, decimals)).replace('-', '\u2212');
  return {
    cells: [
      { text: point.on },
      { text: `job ${point.job}`, href: `/jobs/${point.job}/record` },
      { text: point.when },
      { text: text(point.value), strong: true },
      { text: text(point.uncertainty) },
      { text: point.counted ? 'yes' : 'no, read before it was last set' },
      { text: point.doubt === '' ? '' : `${point.doubt} found wrong since` },
    ],
  };
}

function curveOf({ series, trend }: HistorySheets['drawn'][number]): HistoryCurve {
  const { unit, title, points, limitLowSi, limitHighSi, expected } = series;
  const inUnit = (valueSi: number) => fromSi({ valueSi, unit });
  const label = unitWordsOf(series);
  const limits = [limitLowSi, limitHighSi]
    .filter((limit) => limit !== null)
    .map((limit) => ({ value: inUnit(limit), text: 'limit' }));
  const [first, last] = [points.at(0), points.at(-1)];
  const span = first === undefined || last === undefined ? '' : ` from ${day(first.at)} to ${day(last.at)}`;
  return {
    title,
    axis: label,
    limits,
    expected: expected === null ? [] : [{ value: inUnit(expected.valueSi), text: 'expected' }],
    line: trend.line,
    points: points.map(({ at, valueSi, uncertaintySi, when, isCounted }) => ({
      timeMs: Date.parse(at),
      value: inUnit(valueSi),
      give: inUnit(uncertaintySi),
      isLeft: when === 'as left',
      isCounted,
    })),
    sentence: `${title}: ${points.length} readings${span}. ${trend.says.join(' ')}`,
  };
}

/** So many valves are read while a page waits for them. */
const AT_ONCE_MAX = 200;

/** Never sent: a page is sent on to the work. */
const NOT_YET: PlantHistory = plantHistory({ valves: [], jobs: [], usualMonths: 0, nowMs: 0 });

/** What each valve says; or the work that reads them, where that is more than a page may wait for. */
async function readValves(
  call: BareCall & { readonly person: Person },
  months: string,
): Promise<{ readonly valves: readonly ReadValve[]; readonly work: string | null }> {
  const { lists, long } = call.services;
  const { readings } = lists;
  if ((await readings.wanting()) > AT_ONCE_MAX) {
    const shows = `/history?${new URLSearchParams({ months })}`;
    const { id: person } = call.person;
    const begun = { title: 'Reading the history of every valve', person, back: '/', shows };
    const work = long.startOrJoin(begun, (tell) => readings.valves(tell));
    if ((await resultOf(call, work)) === null) return { valves: [], work };
  }
  return { valves: await readings.valves(TELL_NOBODY), work: null };
}

const showPlant = route({
  method: 'GET',
  path: '/history',
  name: 'showPlantHistory',
  summary: 'The plant over the years: valves by how they stood last, overdue checks, commonest findings',
  roles: 'signed-in',
  menu: { text: 'History', order: 45 },
  query: z.object({
    months: z
      .string()
      .regex(/^([1-9]|[1-9]\d|1[01]\d|120)$/, 'Whole months, from 1 to 120.')
      .default('12'),
  }),
  answer: plantHistorySchema,
  handle: async (call) => {
    const { services, query, now, person } = call;
    const usualMonths = Number(query.months);
    const { valves, work } = await readValves(call, query.months);
    if (work !== null) return { data: NOT_YET, seeOther: pathOfWork(work) };
    const jobs = await services.lists.jobs.inOrder();
    const plant = plantHistory({ valves, jobs, usualMonths, nowMs: now.getTime() });
    const page = {
      title: 'History',
      template: 'pages/plant-history.njk',
      params: plantParams(plant, mayPlan(person)),
    };
    return { data: plant, page };
  },
});

/** An interval of no whole month has run out already. */
function monthsWords(months: number): string {
  if (months === 0) return 'at once';
  return months === 1 ? '1 month' : `${months} months`;
}

function plantParams(plant: PlantHistory, plans: boolean) {
  const { worst, overdue, proposed, method, findings, causes, usualMonths, valves, checked } = plant;
  const href = (tag: string) => `${pathOfValve(tag)}/history`;
  const planned = (tag: string, dueOn: string | null) =>
    plans
      ? [
          {
            text: 'plan a check',
            href: `/plans/new?${new URLSearchParams({ tag, procedure: 'stroke-check', ...(dueOn === null ? {} : { dueOn }) })}`,
          },
        ]
      : [];
  return {
    usualMonths: String(usualMonths),
    count: `${checked} of ${valves} valves were checked`,
    worst: worst.map((one) => ({
      cells: [
        { text: one.tag, href: href(one.tag), strong: true },
        { text: `${one.ofLimitPercent} %`, boxed: one.ofLimitPercent > 100 },
        { text: one.what },
        { text: `${one.when}, ${one.checkedOn}` },
      ],
    })),
    overdue: overdue.map((one) => ({
      cells: [
        { text: one.tag, href: href(one.tag), strong: true },
        { text: one.lastOn ?? 'never' },
        { text: one.dueOn ?? 'now' },
        { text: one.lateDays === null ? '' : String(one.lateDays) },
        { text: `${monthsWords(one.intervalMonths)}, ${one.proposed ? 'by its history' : 'as usual'}` },
        ...planned(one.tag, null),
      ],
    })),
    plans,
    method,
    proposed: proposed.map((one) => ({
      cells: [
        { text: one.tag, href: href(one.tag), strong: true },
        { text: monthsWords(one.intervalMonths) },
        { text: one.dueOn, date: true },
        { text: one.by },
        { text: String(one.readings) },
        ...planned(one.tag, one.dueOn),
      ],
    })),
    causes: causes.map((one) => ({
      cells: [{ text: one.cause, strong: true }, { text: String(one.jobs) }, { text: String(one.valves) }],
    })),
    findings: findings.map((one) => ({
      cells: [{ text: `${one.finding} outside` }, { text: String(one.jobs) }, { text: String(one.valves) }],
    })),
  };
}

const exportNoted = route({
  method: 'GET',
  path: '/history/noted.csv',
  name: 'exportNoted',
  summary: 'What was found and what was put in on all closed jobs, or on those of one valve, as a table',
  roles: 'signed-in',
  rawType: 'text/csv',
  query: z.object({ tag: optionalText({ called: 'the valve tag', max: 60 }).default('') }),
  answer: z.object({ table: z.string() }),
  handle: async ({ services, query: { tag } }) => {
    const lines = tag === '' ? await jobLines(services) : await jobsOfValve(services, tag);
    const table = notedCsv(notedRows(lines));
    const raw = { contentType: 'text/csv; charset=utf-8', body: table, fileName: 'found-and-put-in.csv' };
    return { data: { table }, raw };
  },
});

export function valveHistoryRoutes(catalogue: Catalogue): readonly Route[] {
  return [showPlant, exportNoted, historyRoute(catalogue)];
}
