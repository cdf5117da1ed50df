import { figuresOf } from '../../procedures/hold.ts';
import type { Job } from '../../procedures/job.ts';
import { fill } from '../../procedures/say.ts';
import type { OpenStep, Step } from '../../procedures/vocabulary.ts';
import type { BareCall } from '../http/route.ts';
import type { Catalogue } from '../jobs/catalogue.ts';
import { openJobLines } from '../jobs/job-stream.ts';
import { type LoadedJob, loadJob } from '../jobs/load.ts';
import { type HoldCard, holdCard } from '../jobs/view/cards/hold-card.ts';
import { scaleView } from '../jobs/view/scale.ts';
import { type Waiting, waitingRow } from '../jobs/view/shift-rows.ts';
import { clock, day, nameOf } from '../jobs/view/words.ts';
import type { Person } from '../people/person.ts';
import { shownTime } from '../shown-time.ts';
import { COUNTED, type Counted, type SiteSigning, signingKind } from './signing-stream.ts';

/** As many as one screen can be asked to show. */
const WAITING_MAX = 40;
const OPEN_MAX = 200;

export type SignedInCall = BareCall & { readonly person: Person };

export interface ToSign {
  readonly asOf: string;
  readonly waiting: readonly { readonly row: Waiting; readonly card: HoldCard; readonly place: number }[];
  readonly reviews: readonly {
    readonly job: string;
    readonly tag: string;
    readonly about: number;
    readonly place: number;
    readonly title: string;
    readonly since: string;
    readonly criterion: string;
    readonly facts: readonly { readonly label: string; readonly value: string }[];
    readonly nonce: string;
  }[];
  readonly radio: readonly {
    readonly job: string;
    readonly tag: string;
    readonly about: number;
    readonly said: string;
    readonly mine: boolean;
    readonly overdue: boolean;
    readonly nonce: string;
  }[];
  readonly competent: readonly {
    readonly person: string;
    readonly name: string;
    readonly how: string;
    readonly by: string;
  }[];
  readonly counts: readonly { readonly what: string; readonly count: number }[];
  readonly year: string;
}

/** What waits for a signature on the whole site, as the person who looks may give it. */
export async function toSign(call: SignedInCall, catalogue: Catalogue): Promise<ToSign> {
  const { services, person, now } = call;
  const { log } = services;
  const people = await services.people.list();
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const site = await log.state(signingKind);
  const jobs = await openJobs(call, catalogue);
  const looking = { person, nowMs: now.getTime(), names };
  const waiting = jobs.flatMap((one) => {
    const row = waitingRow({ job: one.job, compiled: one.around.compiled }, looking);
    return row === null ? [] : [{ row, card: cardOf(one, { call, people, site }), place: one.job.place }];
  });
  const year = String(now.getUTCFullYear());
  return {
    asOf: shownTime(now.toISOString()),
    waiting: waiting.toSorted((one, other) => other.row.waitsMinutes - one.row.waitsMinutes),
    reviews: jobs.flatMap((one) => reviewsOf(one, call)),
    radio: site.radio.map((one) => radioRow(one, { call, names })),
    competent: site.competent.map(({ person: id, how, by, at }) => ({
      person: id,
      name: nameOf(id, names),
      how,
      by: `${nameOf(by, names)}, ${day(at)}`,
    })),
    counts: (Object.keys(COUNTED) as Counted[]).map((what) => ({
      what: COUNTED[what],
      count: site.counts[year]?.[what] ?? 0,
    })),
    year,
  };
}

async function openJobs(call: SignedInCall, catalogue: Catalogue): Promise<readonly LoadedJob[]> {
  const { services, person, language } = call;
  const open = await openJobLines(services.log, OPEN_MAX);
  const loaded = await Promise.all(
    open.map(({ id }) => loadJob(id, { services, catalogue, person, language })),
  );
  return loaded
    .filter(({ job, around }) => isAskedFor(job.step, around) || job.signing.reviews.length > 0)
    .slice(0, WAITING_MAX);
}

function isAskedFor(step: string, { compiled }: LoadedJob['around']): boolean {
  return compiled.definition.steps[step]?.kind === 'hold';
}

function cardOf(
  { job, around }: LoadedJob,
  of: { readonly call: SignedInCall; readonly people: readonly Person[]; readonly site: SiteSigning },
): HoldCard {
  const step = around.compiled.definition.steps[job.step] as OpenStep;
  if (step.kind !== 'hold') throw new TypeError(`job ${job.id} stands at no hold`);
  return holdCard(step, {
    job,
    around,
    number: scaleView(job, around.compiled).at,
    again: { typed: {}, wrong: {} },
    people: of.people.filter(({ retired }) => !retired),
    competent: of.site.competent.map((one) => one.person),
    nonce: nonceFor(of.call, { job: job.id, line: job.place, digest: around.shownDigest }),
  });
}

function nonceFor(
  { services, screen }: SignedInCall,
  page: { readonly job: string; readonly line: number; readonly digest: string },
): string {
  return services.nonces.issue({ ...page, screen });
}

function reviewsOf({ job, around }: LoadedJob, call: SignedInCall): ToSign['reviews'] {
  return job.signing.reviews
    .filter((one) => one.reviewedAt === null)
    .map((one) => ({
      job: job.id,
      tag: job.tag,
      about: one.place,
      place: job.place,
      title: fill(around.compiled.definition.steps[one.step]?.title ?? one.step, job),
      ...reviewedBy(around.compiled.definition.steps[one.step], job),
      since: shownTime(one.at),
      nonce: nonceFor(call, { job: job.id, line: one.place, digest: '' }),
    }));
}

/** What an open review is looked at for, and the numbers that it is about. */
function reviewedBy(
  step: Step | undefined,
  job: Job,
): Pick<ToSign['reviews'][number], 'criterion' | 'facts'> {
  if (step?.kind !== 'hold') return { criterion: '', facts: [] };
  return {
    criterion: fill(step.criterion, job),
    facts: figuresOf(step, job).map(([label, value]) => ({ label, value })),
  };
}

function radioRow(
  one: SiteSigning['radio'][number],
  { call, names }: { readonly call: SignedInCall; readonly names: ReadonlyMap<string, string> },
): ToSign['radio'][number] {
  const until = new Date(one.confirmByMs).toISOString();
  return {
    job: one.job,
    tag: one.tag,
    about: one.place,
    said: `${nameOf(one.heardBy, names)} wrote at ${clock(one.at)} UTC on ${day(one.at)} that ${nameOf(one.person, names)} signed by radio. To be confirmed until ${clock(until)} UTC.`,
    mine: one.person === call.person.id,
    overdue: one.confirmByMs < call.now.getTime(),
    nonce: nonceFor(call, { job: one.job, line: one.place, digest: '' }),
  };
}
