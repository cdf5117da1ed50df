/** Who is on a job: as its page and its JSON show it. */
import { z } from 'zod';
import { lockOwner, locksOf } from '../../procedures/actions/lock-owners.ts';
import type { Job } from '../../procedures/job.ts';
import { fill } from '../../procedures/say.ts';
import type { BareCall, PageView } from '../http/route.ts';
import { noSuchJob, pointTags } from '../jobs/acts.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { pointKind, type SitePoint } from '../jobs/point-stream.ts';
import { clock, day, type Names, nameOf } from '../jobs/view/words.ts';
import { personKind } from '../people/person-stream.ts';
import { type Crew, crewKind, type Verified } from './crew-stream.ts';
import { shownReadings } from './shown-readings.ts';

const personRow = z.object({
  person: z.string(),
  name: z.string(),
  since: z.string(),
  locks: z.array(z.object({ point: z.string(), lock: z.string() })),
  /** The one whose locks the job stands on, or how a joiner came to trust the isolation. */
  how: z.string(),
  exposed: z.boolean(),
});

export const crewAnswer = z.object({
  job: z.string(),
  tag: z.string(),
  status: z.string(),
  stands: z.string(),
  people: z.array(personRow),
  points: z.array(z.object({ lock: z.string(), tag: z.string(), what: z.string() })),
  shown: z.array(
    z.object({ energy: z.string(), stands: z.string(), shown: z.string(), by: z.string(), at: z.string() }),
  ),
});

export type CrewView = z.infer<typeof crewAnswer>;
export type CrewForm = 'none' | 'join' | 'leave' | 'hand-over' | 'away';

const HOW: Readonly<Record<Verified, string>> = {
  'verified-self': 'tried it themselves',
  'relied-on-primary': 'rests on the first person’s readings',
};

interface Seen {
  readonly job: Job;
  readonly crew: Crew;
  readonly points: readonly SitePoint[];
  readonly names: Names;
}

/** @throws Refusal JOB-000 */
async function seen({ services, params }: BareCall): Promise<Seen> {
  const job = await services.log.state(jobKind, params.id ?? '');
  if (job.status === 'none') throw noSuchJob(params.id ?? '');
  const tags = pointTags(job);
  const points = await Promise.all(
    tags.map(async ([, tag]) => ({ ...(await services.log.state(pointKind, tag)), tag })),
  );
  const names = new Map((await services.people.list()).map(({ id, name }) => [id, name]));
  return { job, crew: await services.log.state(crewKind, job.id), points, names };
}

export async function crewView(call: BareCall, catalogue: Catalogue): Promise<CrewView> {
  const all = await seen(call);
  const { job, crew, points } = all;
  const compiled = await catalogue.of(job, call.services.log);
  const step = compiled.definition.steps[job.step];
  const tags = new Map(pointTags(job));
  const owner = lockOwner(job);
  return {
    job: job.id,
    tag: job.tag,
    status: job.status,
    stands: step === undefined ? job.step : fill(step.title, job),
    people: [
      ...(owner === null ? [] : [rowOf(owner, { ...all, how: 'the job stands on these locks' })]),
      ...crew.members.map(({ person, verified }) => rowOf(person, { ...all, how: HOW[verified] })),
    ],
    points: locksOf(job).flatMap(([lock]) => {
      const point = points.find(({ tag }) => tag === tags.get(lock));
      const what =
        point === undefined ? '' : [point.kind ?? '', point.place].filter((part) => part !== '').join(', ');
      return point === undefined ? [] : [{ lock, tag: point.tag, what }];
    }),
    shown: [...shownReadings(job)],
  };
}

function rowOf(person: string, { job, points, names, how }: Seen & { readonly how: string }) {
  const mine = points.flatMap(({ tag, locks }) =>
    locks.filter((lock) => lock.job === job.id && lock.owner === person).map((lock) => ({ tag, ...lock })),
  );
  const since = mine.flatMap((lock) => lock.since ?? []).toSorted()[0];
  return {
    person,
    name: nameOf(person, names),
    since: since === undefined ? '' : `${day(since)} ${clock(since)}`,
    locks: mine.map(({ tag, lock }) => ({ point: tag, lock })),
    how,
    exposed: job.status === 'open' && mine.length > 0,
  };
}

/** The page, with one of its forms as it was typed. */
export async function crewPage(
  call: BareCall,
  {
    catalogue,
    form,
    typed,
  }: {
    readonly catalogue: Catalogue;
    readonly form: CrewForm;
    readonly typed: Readonly<Record<string, string>>;
  },
): Promise<PageView> {
  const view = await crewView(call, catalogue);
  const me = call.person?.id ?? '';
  const [first] = view.people;
  const away = view.people.find(({ person }) => person === typed.owner);
  const lastSeen = away === undefined ? '' : await lastSignIn(call, away.person);
  const params = {
    crew: view,
    form,
    typed,
    mayWork: call.person !== null && call.person.role !== 'safety-officer',
    maySupervise: call.person?.role === 'supervisor',
    isOwner: first === undefined || first.person === me,
    members: view.people.slice(1),
    away: away === undefined ? null : { ...away, lastSeen },
    who: typed.who ?? '',
  };
  return { title: `${view.tag}, job ${view.job}`, template: 'pages/crew.njk', params };
}

/** When they last signed in: the log knows that much of whether somebody is here. */
async function lastSignIn({ services }: BareCall, person: string): Promise<string> {
  const { lastSignedInAt } = await services.log.state(personKind, person);
  return lastSignedInAt === null ? 'never' : `${day(lastSignedInAt)} ${clock(lastSignedInAt)} UTC`;
}
