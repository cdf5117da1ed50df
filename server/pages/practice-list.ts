/** The first page of the practice bench: which exercises there are, and setting one. */
import { z } from 'zod';
import { causesToPractise } from '../../procedures/practice/bench/draw.ts';
import { causeOf } from '../../procedures/troubleshooting/causes.ts';
import { findTheFault } from '../../procedures/troubleshooting/find-the-fault.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { textIn } from '../../views/language/speak.ts';
import { oneOf, optionalText, text } from '../http/fields.ts';
import { type BareCall, type RefusedCall, type Reply, type Route, route } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { newestJobLines } from '../jobs/job-stream.ts';
import { openJob } from '../jobs/open-job.ts';
import { closedWords } from '../jobs/view/words.ts';
import type { Person } from '../people/person.ts';
import { notYoursToChoose } from '../practice/bench-refusals.ts';
import type { ExerciseLine } from '../practice/exercise-stream.ts';
import { AT_BENCH } from '../practice/links.ts';
import { knowPerson } from '../practice/on-bench.ts';
import { setExercise } from '../practice/set-exercise.ts';
import type { Services } from '../services.ts';
import { shownTime } from '../shown-time.ts';
import { noSuchValve } from '../valves/valve-refusals.ts';
import { valveKind } from '../valves/valve-stream.ts';
import { byOf } from './parts.ts';
import { hasLeftTour } from './tour.ts';

const WORKERS = ['technician', 'supervisor', 'engineer'] as const;
const CHOOSERS: readonly Person['role'][] = ['supervisor', 'engineer'];
/** So many valves are offered at once; the others are found by their words. */
const VALVES_LISTED = 100;
const LISTED = 40;

export function practiceListRoutes(catalogue: Catalogue): readonly Route[] {
  return [listRoute, setRoute(catalogue)];
}

const listAnswer = z.object({
  valves: z
    .array(z.object({ tag: z.string(), service: z.string(), kind: z.array(z.string()) }))
    .describe('The first hundred that hold all words of `find`'),
  found: z.int().describe('How many hold them in all'),
  exercises: z.array(
    z.object({ job: z.string(), tag: z.string(), after: z.string(), by: z.string(), stands: z.string() }),
  ),
});

const listRoute = route({
  method: 'GET',
  path: AT_BENCH,
  name: 'showPracticeBench',
  summary: 'The practice bench: valves of the plant to practise on, and the exercises there are',
  roles: 'signed-in',
  isPractice: true,
  menu: { text: 'Practice bench', order: 30 },
  query: z.object({
    tag: z.string().max(60).default(''),
    find: optionalText({ called: 'what is looked for' }).default(''),
  }),
  answer: listAnswer,
  handle: (call) => page(call, { ...call.query, typed: {} }),
});

const setFields = z.object({
  tag: text({ called: 'the valve tag', max: 60 }),
  how: oneOf(['drawn', 'drawn, two', 'chosen']).default('drawn'),
  cause1: z.string().max(60).default(''),
  cause2: z.string().max(60).default(''),
  severity: oneOf(['slight', 'plain', 'bad']).default('plain'),
});

function setRoute(catalogue: Catalogue): Route {
  return route({
    method: 'POST',
    path: AT_BENCH,
    name: 'setExercise',
    summary:
      'Set an exercise on a simulated valve, its fault drawn or chosen, and open the job that looks for it',
    roles: WORKERS,
    isPractice: true,
    body: setFields,
    answer: z.object({ job: z.string(), tag: z.string() }),
    handle: async (call) => {
      const { services, person, requestId, screen, body } = call;
      if (body.how === 'chosen' && !CHOOSERS.includes(person.role)) throw notYoursToChoose();
      const sheet = await sheetOf(services, body.tag);
      await knowPerson(call, person);
      const { how, severity, cause1, cause2 } = body;
      const asked = { sheet, how, severity, causes: [cause1, cause2], seed: services.drawSeed() };
      const { tag, gear } = await setExercise({ services, by: byOf(call) }, asked);
      const opening = { procedure: findTheFault.id, place: 'line' as const, requestId: `${requestId}-job` };
      const job = await openJob({ services, catalogue, person, screen, tag, gear, ...opening });
      return { data: { job, tag }, status: 201, seeOther: `${AT_BENCH}/jobs/${job}` };
    },
    refused: async (call: RefusedCall) => {
      if (call.person === null) throw new TypeError('a refused act without a person');
      const of = (name: string) => (typeof call.typed[name] === 'string' ? call.typed[name] : '');
      const names = ['how', 'cause1', 'cause2', 'severity'];
      const typed = Object.fromEntries(names.map((name) => [name, of(name)]));
      const reply = await page({ ...call, person: call.person }, { tag: of('tag'), find: '', typed });
      return reply.page === undefined ? {} : { page: reply.page };
    },
  });
}

/** The bench takes its valves from the sheets of the plant, and nothing else. */
async function sheetOf({ bench }: Services, tag: string): Promise<ValveSheet> {
  const valve = await bench?.real.state(valveKind, tag);
  if (valve === undefined || valve.sheet === null || valve.retired) throw noSuchValve(tag);
  return valve.sheet;
}

interface Asked {
  readonly tag: string;
  readonly find: string;
  readonly typed: Readonly<Record<string, string>>;
}

async function page(
  call: BareCall & { readonly person: Person },
  { tag, find, typed }: Asked,
): Promise<Reply<z.input<typeof listAnswer>>> {
  const { services, person } = call;
  const suit = (await services.bench?.valves.byId()) ?? new Map<string, never>();
  const found = (await services.bench?.valvesByWords.find(find)) ?? [];
  const valves = found.slice(0, VALVES_LISTED).map(({ tag: its, service, kind }) => ({
    ...{ tag: its, service, kind: [...kind] },
  }));
  const say = textIn(call.language);
  const sayKind = (kind: readonly string[]) => kind.map(say).join(', ');
  const chosen = suit.get(tag) ?? null;
  const mayChoose = chosen !== null && CHOOSERS.includes(person.role);
  const exercises = await exercisesOf(services);
  const params = {
    chosen: chosen && { ...chosen, kind: sayKind(chosen.kind) },
    suit: suit.size,
    listed: VALVES_LISTED,
    find,
    valves: valves.map((one) => ({
      value: one.tag,
      label: `${one.tag}, ${one.service}: ${sayKind(one.kind)}`,
      selected: one.tag === tag,
    })),
    exercises,
    tourOffered: !hasLeftTour(call.cookies.all, person.id),
    mayPractise: (WORKERS as readonly string[]).includes(person.role),
    causes: mayChoose ? causeOptions(await sheetOf(services, chosen.tag)) : [],
    typed: { how: 'drawn', cause1: '', cause2: '', severity: 'plain', ...withoutBlanks(typed) },
  };
  return {
    data: {
      valves,
      found: found.length,
      exercises: exercises.map(({ href: _, at: __, ...one }) => one),
    },
    page: { title: 'Practice bench', template: 'pages/practice.njk', params },
  };
}

function causeOptions(sheet: ValveSheet): readonly { readonly value: string; readonly label: string }[] {
  const all = causesToPractise(sheet).map((value) => ({ value, label: causeOf(value).words }));
  return [...all].sort((a, b) => a.label.localeCompare(b.label));
}

function withoutBlanks(fields: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== ''));
}

/** The newest exercises, open ones first. */
async function exercisesOf({ log, people }: Services) {
  const jobs = await newestJobLines(log, LISTED);
  const names = new Map((await people.list()).map(({ id, name }) => [id, name]));
  const lines = await Promise.all(jobs.map(({ tag }) => log.summary('exercise', tag)));
  return jobs.map((job, at) => ({
    job: job.id,
    href: `${AT_BENCH}/jobs/${job.id}`,
    tag: job.tag,
    after: (lines[at]?.body as ExerciseLine | undefined)?.after ?? '',
    by: names.get(job.openedBy) ?? job.openedBy,
    at: shownTime(job.openedAt),
    stands: job.status === 'closed' ? closedWords(job) : job.status,
  }));
}
