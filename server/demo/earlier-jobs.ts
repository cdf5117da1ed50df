/**
 * Jobs of the demo plant: whole stroke checks, decided act by act as those of people are, over simulated valves. The
 * demo plant's clock is set back for each, so that the invented year has its dates.
 */
import type { Action } from '../../procedures/actions/action.ts';
import type { Compiled } from '../../procedures/compile.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { actStreams, decideAct, pointTags } from '../jobs/acts.ts';
import { Catalogue } from '../jobs/catalogue.ts';
import { jobKind } from '../jobs/job-stream.ts';
import { openJob } from '../jobs/open-job.ts';
import { shownDigest } from '../jobs/shown.ts';
import type { Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { Person } from '../people/person.ts';
import type { Services } from '../services.ts';
import { DEMO_SCREEN } from './demo-people.ts';
import { type Found, strokeAnswers, textsAt } from './stroke-answers.ts';

export interface DemoWorkers {
  readonly technician: Person;
  readonly signer: Person;
}

interface EarlierJob extends Found {
  readonly tag: string;
  /** Who works and who signs, of those that take turns. */
  readonly by: 0 | 1;
  /** How many days before the loading it was done. */
  readonly daysBack: number;
  /** The step at which it is left standing; without one it is done to its end. */
  readonly until?: string;
}

const PLAYED = 'Demo: an invented job on a simulated valve.';

/** In the order of their days: a valve has one open job at a time, and the log's times go forward. */
const JOBS: readonly EarlierJob[] = [
  // FV-102 is only looked at, year after year, so that its history has a line to draw.
  { tag: 'FV-102', by: 0, daysBack: 1410, frictionPsi: 0.2, shiftPsi: 0, work: 'leave', note: PLAYED },
  { tag: 'FV-102', by: 1, daysBack: 1130, frictionPsi: 0.2, shiftPsi: 0.03, work: 'leave', note: PLAYED },
  { tag: 'FV-102', by: 0, daysBack: 860, frictionPsi: 0.25, shiftPsi: 0.05, work: 'leave', note: PLAYED },
  { tag: 'FV-102', by: 1, daysBack: 590, frictionPsi: 0.25, shiftPsi: 0.08, work: 'leave', note: PLAYED },
  { tag: 'FV-101', by: 0, daysBack: 350, frictionPsi: 0.25, shiftPsi: 0, work: 'leave', note: PLAYED },
  { tag: 'FV-102', by: 1, daysBack: 318, frictionPsi: 0.3, shiftPsi: 0.1, work: 'leave', note: PLAYED },
  { tag: 'FV-103', by: 0, daysBack: 290, frictionPsi: 0.2, shiftPsi: -0.1, work: 'setPlug', note: PLAYED },
  { tag: 'FV-104', by: 1, daysBack: 241, frictionPsi: 0.35, shiftPsi: 0, work: 'setPlug', note: PLAYED },
  { tag: 'FV-214', by: 0, daysBack: 196, frictionPsi: 0.3, shiftPsi: 0, work: 'setPlug', note: PLAYED },
  {
    tag: 'FV-103',
    by: 1,
    daysBack: 97,
    frictionPsi: 0.25,
    shiftPsi: 0,
    work: 'leave',
    isTurned: true,
    note: PLAYED,
  },
  {
    tag: 'FV-214',
    by: 1,
    daysBack: 33,
    frictionPsi: 0.4,
    shiftPsi: 0,
    work: 'leave',
    isTurned: true,
    note: PLAYED,
  },
  {
    tag: 'TV-302',
    by: 1,
    daysBack: 0,
    frictionPsi: 0.3,
    shiftPsi: 0,
    work: 'leave',
    note: PLAYED,
    until: 'holdWork',
  },
];

/** The gear of a stroke check in the line, in psi. */
export const GEAR_IN_PSI: Readonly<Record<string, string>> = {
  signalGauge: 'G-07',
  checkGauge: 'G-08',
  travelIndicator: 'D-01',
  regulator: 'R-01',
  supplyGauge: 'G-03',
  inletGauge: 'G-11',
  outletGauge: 'G-12',
};

/** The longest that a card of the stroke check has people wait is five minutes: nobody waits for it here. */
const NOT_WAITED_MS = 300_000;

/** More acts than a stroke check has. */
const ACTS_MAX = 120;

/** Sets the demo plant's clock back by so many milliseconds; 0 is the true time. */
export type SetBack = (backMs: number) => void;

const DAY_MS = 24 * 3600 * 1000;
/** From one card to the next, as long as people take. */
const CARD_MS = 3 * 60 * 1000;

/** Does the demo plant's jobs; one of them is left at a hold, for somebody to read and sign. */
export async function doEarlierJobs(
  services: Services,
  { workers, setBack }: { readonly workers: readonly [DemoWorkers, DemoWorkers]; readonly setBack: SetBack },
): Promise<void> {
  const catalogue = new Catalogue();
  for (const job of JOBS) {
    const startMs = job.daysBack * DAY_MS + ACTS_MAX * CARD_MS;
    setBack(startMs);
    const of = { catalogue, job, workers: workers[job.by] };
    await play(services, {
      ...of,
      id: await open(services, of),
      tick: (acts) => setBack(startMs - acts * CARD_MS),
    });
  }
}

function open(
  services: Services,
  { catalogue, job, workers }: Omit<Playing, 'id' | 'tick'>,
): Promise<string> {
  return openJob({
    services,
    catalogue,
    requestId: services.newId(),
    person: workers.technician,
    screen: DEMO_SCREEN,
    tag: job.tag,
    procedure: 'stroke-check',
    place: 'line',
    gear: GEAR_IN_PSI,
  });
}

interface Playing {
  readonly catalogue: Catalogue;
  readonly job: EarlierJob;
  readonly workers: DemoWorkers;
  /** Number of the job. */
  readonly id: string;
  /** Lets time pass after so many acts. */
  tick(acts: number): void;
}

/** @throws Error if the stroke check asks what the demo plant has no answer to */
async function play(services: Services, playing: Playing): Promise<void> {
  const { id, job } = playing;
  for (let acts = 0; acts < ACTS_MAX; acts += 1) {
    playing.tick(acts);
    const state = await services.log.state(jobKind, id);
    if (state.status === 'closed' || state.step === job.until) return;
    await playOne(services, { ...playing, state }).catch((cause: unknown) => {
      throw new Error(`The demo job on ${job.tag} stands at ${state.step}: ${String(cause)}`, { cause });
    });
  }
  throw new Error(`The demo job on ${job.tag} did not come to its end in ${ACTS_MAX} acts.`);
}

/** One act, decided by the very machine that people's acts are decided by. */
async function playOne(services: Services, playing: Playing & { readonly state: Job }): Promise<void> {
  const { catalogue, workers, state, job, id } = playing;
  const compiled = await catalogue.of(state, services.log);
  const isHold = compiled.definition.steps[state.step]?.kind === 'hold';
  const person = isHold ? workers.signer : workers.technician;
  const action = isHold ? signing(state, compiled) : answering(state, job);
  const tags = pointTags(state);
  const call = {
    services,
    catalogue,
    requestId: services.newId(),
    person,
    screen: DEMO_SCREEN,
    job: id,
    action,
  };
  await services.log.act({
    requestId: call.requestId,
    fingerprint: fingerprintOf({ job: id, action: action as unknown as Json }),
    person: person.id,
    screen: DEMO_SCREEN,
    streams: actStreams(call, { tag: state.tag, tags }),
    decide: (read) => decideAct(call, { read: afterWaiting(read), compiled, tags }),
  });
}

function signing(state: Job, compiled: Compiled): Action {
  const { place, step } = state;
  return { kind: 'sign', place, step, shownDigest: shownDigest(state, compiled) };
}

function answering(state: Job, found: Found): Action {
  const row = (state.tables[state.step] ?? []).length;
  const given = textsAt(strokeAnswers(state.sheet, found), { step: state.step, row });
  return { kind: 'answer', place: state.place, step: state.step, given };
}

/** Decisions take it that the wait of a card is over. */
function afterWaiting(read: Read): Read {
  return { ...read, now: new Date(Date.parse(read.now) + NOT_WAITED_MS).toISOString() };
}
