/** Valves: the list, and the page of one with its drawing, its sheet, and what was saved of it. */

import { z } from 'zod';
import { contradictionsOf } from '../../procedures/valve-sheet/contradictions.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { derived } from '../derived.ts';
import { optionalText } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import type { ValveLine } from '../lists.ts';
import { streamOf } from '../log/stream-kind.ts';
import { shownTime } from '../shown-time.ts';
import { sheetDrawing } from '../valves/sheet-drawing.ts';
import { eightFacts, historyOf, sheetSections } from '../valves/sheet-words.ts';
import type { Valve } from '../valves/valve-stream.ts';
import { mayPlan } from './plans.ts';
import {
  answerOf,
  mayKeepSheets,
  pathOfValve,
  type SavedValve,
  valveAnswer,
  valveAt,
} from './valve-parts.ts';

/** So many stand on one page of the list. */
const PAGE_LINES = 100;

const lineAnswer = z.object({
  tag: z.string(),
  service: z.string(),
  location: z.string(),
  airAction: z.string(),
  failPosition: z.string(),
  revision: z.int(),
  retired: z.boolean(),
  openJob: z.string().nullable(),
});

type Line = z.input<typeof lineAnswer>;

/** Those that hold every word that is looked for, in order of their tags. */
async function linesOf(
  { services: { lists } }: BareCall,
  { find, retired }: { readonly find: string; readonly retired: boolean },
): Promise<readonly ValveLine[]> {
  const part = retired ? 'retired' : 'inUse';
  return find === ''
    ? byRetired(await lists.valves.inOrder())[part]
    : partsOf(await lists.valvesByWords.find(find))[part];
}

function partsOf(lines: readonly ValveLine[]) {
  return {
    inUse: lines.filter(({ retired }) => !retired),
    retired: lines.filter(({ retired }) => retired),
  };
}

const byRetired = derived(partsOf);

function toldOf({ words: _, ...line }: ValveLine): Line {
  return line;
}

const listValves = route({
  method: 'GET',
  path: '/valves',
  name: 'listValves',
  summary: 'All valves by tag; `find` keeps those that hold all its words, `page` counts from 1',
  roles: 'signed-in',
  menu: { text: 'Valves', order: 40 },
  query: z.object({
    find: optionalText({ called: 'what is looked for' }).default(''),
    page: z
      .string()
      .regex(/^[1-9]\d{0,3}$/, 'A page number, from 1.')
      .default('1'),
    retired: z.enum(['yes', 'no'], 'Write yes or no.').default('no'),
  }),
  answer: z.object({ valves: z.array(lineAnswer), found: z.int(), page: z.int(), pages: z.int() }),
  handle: async (call) => {
    const { find, retired } = call.query;
    const page = Number(call.query.page);
    const found = await linesOf(call, { find, retired: retired === 'yes' });
    const pages = Math.max(1, Math.ceil(found.length / PAGE_LINES));
    const valves = found.slice((page - 1) * PAGE_LINES, page * PAGE_LINES).map(toldOf);
    const at = (to: number) => `/valves?${new URLSearchParams({ find, retired, page: String(to) })}`;
    const params = {
      rows: valves.map((line) => ({
        ...line,
        href: pathOfValve(line.tag),
        action: line.airAction.replaceAll('-', ' '),
        fails: FAILS[line.failPosition] ?? '',
        stands: line.openJob === null ? '' : `job ${line.openJob} is open`,
        jobHref: line.openJob === null ? '' : `/jobs/${line.openJob}`,
      })),
      find,
      retired: retired === 'yes',
      found: found.length,
      pageNumber: page,
      pages,
      before: page > 1 ? at(page - 1) : '',
      after: page < pages ? at(page + 1) : '',
      mayKeep: mayKeepSheets(call.person),
    };
    return {
      data: { valves, found: found.length, page, pages },
      page: { title: 'Valves', template: 'pages/valves.njk', params },
    };
  },
});

const FAILS: Readonly<Record<string, string>> = {
  shut: 'shuts',
  open: 'opens',
  stays: 'stays',
};

const historyAnswer = z.array(
  z.object({ at: z.iso.datetime(), person: z.string().nullable(), what: z.string() }),
);

/** May open a job: those who work on valves. */
const WORKERS = ['technician', 'supervisor', 'engineer'];

const showValve = route({
  method: 'GET',
  path: '/valves/:tag',
  name: 'showValve',
  summary: 'One valve: its sheet, what that says against itself, and what was saved of it',
  roles: 'signed-in',
  answer: z.object({ valve: valveAnswer, history: historyAnswer }),
  handle: async (call) => {
    const valve = await valveAt(call);
    const history = historyOf(await call.services.log.entriesOf(streamOf('valve', valve.sheet.tag)));
    return { data: { valve: answerOf(valve), history: [...history] }, page: await valvePage(call, valve) };
  },
});

/** @param retire  what was typed into the form that retires the valve */
export async function valvePage(
  call: BareCall,
  valve: SavedValve,
  { why = '' }: { readonly why?: string } = {},
): Promise<PageView> {
  const { sheet, revision, retired, openJob } = valve;
  const names = new Map((await call.services.people.list()).map(({ id, name }) => [id, name]));
  const entries = await call.services.log.entriesOf(streamOf('valve', sheet.tag));
  const href = pathOfValve(sheet.tag);
  const params = {
    tag: sheet.tag,
    service: sheet.service,
    location: sheet.location,
    notes: sheet.notes,
    revision,
    retired,
    openJob: openJob ?? '',
    href,
    why,
    contradictions: contradictionsOf(sheet),
    sections: sectionsOf(valve),
    drawing: sheetDrawing(sheet),
    facts: eightFacts(sheet),
    history: historyOf(entries).map(({ at, person, what }) => ({
      at: shownTime(at),
      who: names.get(person ?? '') ?? person ?? 'nobody',
      what,
    })),
    mayKeep: mayKeepSheets(call.person),
    mayWork: call.person !== null && WORKERS.includes(call.person.role),
    mayPlan: mayPlan(call.person),
    newPlan: `/plans/new?${new URLSearchParams({ tag: sheet.tag })}`,
    newJob: `/jobs/new?${new URLSearchParams({ tag: sheet.tag })}`,
    calculations: `/calculations?${new URLSearchParams({ valve: sheet.tag })}`,
  };
  return { title: sheet.tag, template: 'pages/valve.njk', params };
}

/** The notes stand by themselves, above. */
function sectionsOf({ sheet, typed }: Valve & { readonly sheet: ValveSheet }) {
  return sheetSections(sheet, typed).filter(({ rows }) => rows.every(({ label }) => label !== 'Notes'));
}

export const valveRoutes: readonly Route[] = [listValves, showValve];
