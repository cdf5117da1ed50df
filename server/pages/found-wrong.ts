/** Test gear that was found wrong: telling it, and every reading that rests on it. */
import { z } from 'zod';
import { foundWrong, noSuchGear } from '../gear/gear-acts.ts';
import { type Gear, gearKind } from '../gear/gear-stream.ts';
import { type RestingReading, readingsCsv, restingReadings } from '../gear/rests-on.ts';
import { type Fields, text } from '../http/fields.ts';
import { type BareCall, type PageView, type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { jobKind } from '../jobs/job-stream.ts';
import type { Role } from '../people/person.ts';
import { shownTime } from '../shown-time.ts';
import { byOf, typedIn } from './parts.ts';

const TELLERS = ['engineer'] as const satisfies readonly Role[];

const FIELDS = ['foundOn', 'rightUntil', 'howFar'] as const;

const wrongAnswer = z.object({
  foundOn: z.string(),
  rightUntil: z.string().describe('The last day on which it was known to be right'),
  howFar: z.string(),
  at: z.iso.datetime(),
  person: z.string().nullable(),
});

const readingAnswer = z.object({
  job: z.string(),
  tag: z.string(),
  line: z.int().describe('Place in the log of the site'),
  place: z.int().describe('Place among the lines of the job'),
  at: z.iso.datetime(),
  person: z.string(),
  step: z.string(),
  reading: z.string(),
  stands: z.boolean().describe('Not corrected or asked again since'),
});

const date = (called: string) => text({ called, max: 10 });

export function foundWrongRoutes(catalogue: Catalogue): readonly Route[] {
  const show = route({
    method: 'GET',
    path: '/gear/:number/readings',
    name: 'showReadingsOnGear',
    summary:
      'Each time that a piece of test gear was found wrong, and every reading that rests on it since it was right',
    roles: 'signed-in',
    answer: z.object({ number: z.string(), wrong: z.array(wrongAnswer), readings: z.array(readingAnswer) }),
    handle: async (call) => {
      const { number, gear, readings } = await readingsOn(call, catalogue);
      const data = { number, wrong: gear.wrong.map((one) => ({ ...one })), readings: [...readings] };
      return { data, page: pageOf(call, { number, gear, readings }) };
    },
  });
  const table = route({
    method: 'GET',
    path: '/gear/:number/readings.csv',
    name: 'exportReadingsOnGear',
    summary: 'The readings that rest on a piece of test gear found wrong, as a table',
    roles: 'signed-in',
    rawType: 'text/csv',
    answer: z.object({ table: z.string() }),
    handle: async (call) => {
      const { number, readings } = await readingsOn(call, catalogue);
      const body = readingsCsv(readings);
      const raw = { contentType: 'text/csv; charset=utf-8', body, fileName: `readings-${number}.csv` };
      return { data: { table: body }, raw };
    },
  });
  const tell = route({
    method: 'POST',
    path: '/gear/:number/wrong',
    name: 'tellGearFoundWrong',
    summary: 'Record that a piece of test gear was found wrong; it is out of use until it is saved anew',
    roles: TELLERS,
    body: z.object({
      foundOn: date('when it was found wrong'),
      rightUntil: date('when it was last known to be right'),
      howFar: text({ called: 'how far off it is', max: 200 }),
    }),
    answer: z.object({ number: z.string() }),
    refused: async (call) => {
      const found = await readingsOn(call, catalogue);
      return { page: pageOf(call, { ...found, typed: call.typed }) };
    },
    handle: async (call) => {
      const to = { log: call.services.log, by: byOf(call), today: call.now.toISOString().slice(0, 10) };
      const number = await foundWrong(to, { number: call.params.number ?? '', ...call.body });
      return { data: { number }, seeOther: `/gear/${encodeURIComponent(number)}/readings` };
    },
  });
  return [show, table, tell];
}

interface OnGear {
  readonly number: string;
  readonly gear: Gear;
  readonly readings: readonly RestingReading[];
}

/** @throws Refusal GEA-001 */
async function readingsOn({ services, params }: BareCall, catalogue: Catalogue): Promise<OnGear> {
  const { log } = services;
  const number = params.number ?? '';
  const gear = await log.state(gearKind, number);
  if (gear.item === null) throw noSuchGear(number);
  const readings: RestingReading[] = [];
  if (gear.wrong.length === 0) return { number, gear, readings };
  const since = gear.wrong.map(({ rightUntil }) => rightUntil).toSorted()[0] ?? '';
  const used = [...(await services.lists.jobsByGear()).of(number)].sort();
  const all = await services.lists.jobs.byId();
  const jobs = used
    .flatMap((id) => all.get(id) ?? [])
    .filter(({ closedAt }) => closedAt === null || closedAt.slice(0, 10) >= since);
  for (const { id } of jobs) {
    const job = await log.state(jobKind, id);
    const compiled = await catalogue.of(job, log);
    readings.push(...restingReadings({ number, gear }, { job, compiled }));
  }
  return { number, gear, readings: readings.toSorted((one, other) => one.line - other.line) };
}

function pageOf(
  call: BareCall,
  { number, gear, readings, typed }: OnGear & { readonly typed?: Fields },
): PageView {
  const href = `/gear/${encodeURIComponent(number)}`;
  const blank = {
    foundOn: call.now.toISOString().slice(0, 10),
    rightUntil: gear.item?.calibratedOn ?? '',
    howFar: '',
  };
  const params = {
    number,
    href,
    times: gear.wrong.map(({ foundOn, rightUntil, howFar, at, person }) => ({
      cells: [
        { text: foundOn, strong: true },
        { text: howFar },
        { text: rightUntil },
        { text: `${(person ?? '').toUpperCase()}, ${shownTime(at)}` },
      ],
    })),
    count: `${readings.length} ${readings.length === 1 ? 'reading' : 'readings'} on ${jobsWords(new Set(readings.map(({ job }) => job)).size)}`,
    readings: readings.map(rowOf),
    form: typed === undefined ? blank : typedIn(typed, FIELDS),
    mayTell: TELLERS.some((role) => role === call.person?.role),
  };
  return { title: `${number}, found wrong`, template: 'pages/found-wrong.njk', params };
}

function rowOf({ job, tag, line, at, person, step, reading, stands }: RestingReading) {
  return {
    cells: [
      { text: String(line) },
      { text: `job ${job}, ${tag}`, href: `/jobs/${job}/record` },
      { text: step },
      { text: reading, strong: true },
      { text: `${person.toUpperCase()}, ${shownTime(at)}` },
      { text: stands ? 'stands' : 'corrected or asked again' },
    ],
  };
}

function jobsWords(count: number): string {
  return count === 1 ? '1 job' : `${count} jobs`;
}
