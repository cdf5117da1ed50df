/** Many people, several jobs on shared points, acts in any order: what must hold at every moment. */
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { lockOwner, locksOf } from '../../../procedures/actions/lock-owners.ts';
import type { Job } from '../../../procedures/job.ts';
import { Refusal } from '../../../safety/refusal.ts';
import { Catalogue } from '../../../server/jobs/catalogue.ts';
import { jobKind } from '../../../server/jobs/job-stream.ts';
import { loadJob } from '../../../server/jobs/load.ts';
import { pointKind } from '../../../server/jobs/point-stream.ts';
import type { Person } from '../../../server/people/person.ts';
import { handOverJob, joinJob, leaveJob } from '../../../server/points/crew-acts.ts';
import { crewKind } from '../../../server/points/crew-stream.ts';
import { removeInAbsence } from '../../../server/points/removal-acts.ts';
import { aSheet } from '../../builders/sheets.ts';
import { openSiteJob, type SiteJob } from '../../builders/site-jobs.ts';
import { SIGNED_STEPS, strokeScript, textsAt } from '../../builders/stroke-script.ts';
import { type AnApp, anApp, newRequestId } from '../an-app.ts';
import { away } from './site.ts';

const catalogue = new Catalogue();
/** All jobs hang on one supply cock and one inlet, as valves of one header do. */
const SHARED = { supplyPoint: 'IA-1', inletPoint: 'HV-1' } as const;
const STARTS = ['shutInlet', 'breakSignalLine', 'supplyBack'] as const;
const sheetOf = (at: number) => aSheet({ ...SHARED, tag: `FV-${at}`, outletPoint: `HV-2${at}` });
const TAGS = ['IA-1', 'HV-1', 'HV-20', 'HV-21', 'HV-22'];

let app: AnApp;
let people: readonly Person[];
let supervisor: Person;
let jobs: readonly SiteJob[];

beforeAll(async () => {
  app = await anApp({ people: true });
  supervisor = (await app.signedIn('supervisor')).person;
  const by = () => ({ requestId: newRequestId(), person: null, screen: 'test bench' });
  const added = await Promise.all(
    ['736158', '285914', '917352'].map((pin, at) =>
      app.services.people.addWithPin({ name: `Technician ${at + 2}`, role: 'technician', pin }, by()),
    ),
  );
  people = [(await app.signedIn('technician')).person, ...added];
  const opened: SiteJob[] = [];
  const [technician] = people as readonly [Person];
  for (const [at, step] of STARTS.entries()) {
    const job = await openSiteJob(app, { technician, supervisor, sheet: sheetOf(at) });
    await job.playTo(step);
    opened.push(job);
  }
  jobs = opened;
}, 120_000);
afterAll(() => app.close());

interface Move {
  readonly kind:
    | 'join'
    | 'leave'
    | 'hand over'
    | 'go on'
    | 'prove again'
    | 'away'
    | 'make safe'
    | 'park'
    | 'take up';
  readonly job: number;
  readonly who: number;
  readonly other: number;
}

const move: fc.Arbitrary<Move> = fc.record({
  kind: fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom('join', 'leave', 'hand over', 'prove again') },
    { weight: 6, arbitrary: fc.constant('go on') },
    { weight: 1, arbitrary: fc.constantFrom('away', 'make safe', 'park', 'take up') },
  ) as fc.Arbitrary<Move['kind']>,
  job: fc.nat({ max: 2 }),
  who: fc.nat({ max: 3 }),
  other: fc.nat({ max: 3 }),
});

let locksHung = 0;

/** Labels as they are, and lock numbers that nobody else has. */
function textsFor(job: Job): Record<string, string> {
  return Object.fromEntries(
    locksOf(job).flatMap(([id, { point }]) => {
      locksHung += 1;
      return [
        [`${id}Tag`, point],
        [`${id}Number`, `L-${locksHung}`],
      ];
    }),
  );
}

async function doMove({ kind, job: at, who, other }: Move): Promise<void> {
  const site = jobs[at] as SiteJob;
  const [person, incoming] = [people[who] as Person, people[other] as Person];
  const job = await site.job();
  const call = {
    services: app.services,
    catalogue,
    requestId: newRequestId(),
    person,
    screen: 'screen 1',
    job: site.id,
  };
  switch (kind) {
    case 'join':
      return joinJob(call, { verified: 'relied-on-primary', texts: textsFor(job) });
    case 'leave':
      return leaveJob(call);
    case 'hand over':
      return handOverJob(call, { incoming, texts: textsFor(job) });
    case 'away':
      return removeInAbsence({ ...call, person: supervisor }, { owner: person.id, ...away });
    case 'go on':
      return goOn(site, { job, person, at });
    case 'prove again': {
      const zeros = ['supplyAir', 'signalAir', 'processInlet', 'processOutlet'].map((id) => [
        `${id}AgainPa`,
        '0',
      ]);
      return site.act(
        { kind: 'prove-again', given: { asLeft: 'yes', ...Object.fromEntries(zeros) } },
        person,
      );
    }
    case 'make safe':
      return site.act({ kind: 'make-safe', reason: '' }, person);
    case 'park':
      return site.act({ kind: 'park', reason: '' }, person);
    case 'take up':
      return site.act({ kind: 'take-up' }, person);
  }
}

async function goOn(
  site: SiteJob,
  { job, person, at }: { readonly job: Job; readonly person: Person; readonly at: number },
): Promise<void> {
  if (SIGNED_STEPS.includes(job.step)) {
    const { around } = await loadJob(site.id, { services: app.services, catalogue, person: supervisor });
    return site.act({ kind: 'sign', shownDigest: around.shownDigest }, supervisor);
  }
  const row = (job.tables[job.step] ?? []).length;
  const script = strokeScript(sheetOf(at));
  const given = job.step in script ? textsAt(script, { step: job.step, row }) : { choice: 'goOn' };
  const number = `L-${++locksHung}`;
  const locks = { supplyLockNumber: number, inletLockNumber: number, outletLockNumber: number };
  const asks = Object.keys(given).some((name) => name.endsWith('LockNumber'));
  return site.act({ kind: 'answer', given: asks ? { ...given, ...only(given, locks) } : given }, person);
}

const only = (given: object, locks: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(locks).filter(([name]) => name in given));

/** What is wrong at this moment; nothing where it is as it must be. */
async function wrongNow(): Promise<readonly string[]> {
  const points = await Promise.all(TAGS.map((tag) => app.services.log.state(pointKind, tag)));
  const open = points
    .filter(({ position, locks }) => position === 'open' && locks.length > 0)
    .map(({ tag }) => `${tag} is open with a lock on it`);
  const bare = await Promise.all(
    jobs.map(async (site) => {
      const job = await app.services.log.state(jobKind, site.id);
      const { members } = await app.services.log.state(crewKind, site.id);
      const owner = lockOwner(job);
      const working = [...(owner === null ? [] : [owner]), ...members.map(({ person }) => person)];
      const relied = locksOf(job).map(([, { point }]) => points.find(({ tag }) => tag === point));
      const lacking = working.flatMap((person) =>
        relied
          .filter(
            (point) =>
              point?.position !== 'shut' ||
              !point.locks.some((lock) => lock.job === site.id && lock.owner === person),
          )
          .map((point) => `${person} works on job ${site.id} without a lock on ${point?.tag ?? 'a point'}`),
      );
      const strangers = points.flatMap(({ tag, locks }) =>
        locks
          .filter((lock) => lock.job === site.id && !working.includes(lock.owner))
          .map((lock) => `${lock.lock} of ${lock.owner} hangs on ${tag} for nobody at work`),
      );
      return [
        ...lacking,
        ...strangers,
        ...(job.status === 'closed' && working.length > 0 ? ['closed over people'] : []),
      ];
    }),
  );
  return [...open, ...bare.flat()];
}

test('[SAF-07] In any order of acts nobody at work is without a lock, and no point is open with a lock on (EI-15, EI-17)', async () => {
  const done = new Map<string, number>();
  await fc.assert(
    fc.asyncProperty(fc.array(move, { minLength: 60, maxLength: 60 }), async (moves) => {
      for (const each of moves) {
        const took = await doMove(each).then(
          () => true,
          (error: unknown) => {
            if (error instanceof Refusal) return false;
            throw error;
          },
        );
        if (took) done.set(each.kind, (done.get(each.kind) ?? 0) + 1);
        expect(await wrongNow()).toEqual([]);
      }
    }),
    { seed: 20261125, numRuns: 12, endOnFailure: true },
  );
  // Each kind of act was taken, not only refused.
  for (const kind of [
    'join',
    'leave',
    'hand over',
    'go on',
    'prove again',
    'away',
    'make safe',
    'park',
    'take up',
  ])
    expect(done.get(kind) ?? 0, kind).toBeGreaterThan(2);
}, 120_000);
