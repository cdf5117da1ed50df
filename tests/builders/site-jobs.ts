/** Jobs in the log of a whole server: valve, gear and job are stored as a site stores them, and moved by its people. */
import type { Action } from '../../procedures/actions/action.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import { GEAR_ROLES, rolesAt } from '../../procedures/test-gear/roles.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { actOnJob } from '../../server/jobs/acts.ts';
import { Catalogue } from '../../server/jobs/catalogue.ts';
import { jobKind } from '../../server/jobs/job-stream.ts';
import { loadJob } from '../../server/jobs/load.ts';
import { openJob } from '../../server/jobs/open-job.ts';
import { streamOf } from '../../server/log/stream-kind.ts';
import type { Person } from '../../server/people/person.ts';
import { type AnApp, newRequestId } from '../server/an-app.ts';
import { gearItem } from './gear.ts';
import { aSheet } from './sheets.ts';
import { SIGNED_STEPS, strokeScript, textsAt, WAITED_STEPS } from './stroke-script.ts';

type WithoutPlace<A> = A extends unknown ? Omit<A, 'place' | 'step'> : never;
/** An act as a person means it: on the card that stands open now. */
export type Act = WithoutPlace<Action>;

const served = new Catalogue();
const ACTS_MAX = 120;

export interface SiteJob {
  readonly id: string;
  job(): Promise<Job>;
  act(meant: Act, person?: Person): Promise<void>;
  answer(given: Readonly<Record<string, string>>): Promise<void>;
  /** Answers the open card as the script says; a hold is signed. */
  playOne(): Promise<void>;
  /** Plays the script until a step stands open, or to the end of the job. */
  playTo(step: string): Promise<void>;
}

export interface SiteJobOptions {
  readonly technician: Person;
  readonly supervisor: Person;
  readonly sheet?: ValveSheet;
  readonly place?: 'bench' | 'line';
  /** Other procedures than those that are served. */
  readonly catalogue?: Catalogue;
  readonly procedure?: string;
}

/** Stores a valve and its gear, and opens a job on it. */
export async function openSiteJob(app: AnApp, options: SiteJobOptions): Promise<SiteJob> {
  const { technician, supervisor, sheet = aSheet(), place = 'line', catalogue = served } = options;
  const { procedure = 'stroke-check' } = options;
  const { services } = app;
  await storeValveAndGear(app, { sheet, place, person: technician });
  const by = { services, catalogue, screen: 'screen 1' };
  const gear = Object.fromEntries(rolesAt(place).map((role) => [role, gearItem(role).number]));
  const id = await openJob({
    ...by,
    requestId: newRequestId(),
    person: technician,
    tag: sheet.tag,
    procedure,
    place,
    gear,
  });
  const job = () => services.log.state(jobKind, id);
  const act = async (meant: Act, person = technician) => {
    const { step, place: at } = await job();
    app.wait(60_000);
    const action = { place: at, step, ...meant } as Action;
    await actOnJob({ ...by, requestId: newRequestId(), person, job: id, action });
  };
  const sign = async () => {
    const { around } = await loadJob(id, { services, catalogue, person: supervisor });
    await act({ kind: 'sign', shownDigest: around.shownDigest }, supervisor);
  };
  const answer = (given: Readonly<Record<string, string>>) => act({ kind: 'answer', given });
  const scripted = async () => {
    const { step, tables } = await job();
    if (SIGNED_STEPS.includes(step)) return sign();
    app.wait((WAITED_STEPS[step] ?? 0) * 1000);
    return answer(textsAt(strokeScript(sheet), { step, row: (tables[step] ?? []).length }));
  };
  const playTo = async (step: string) => {
    for (let acts = 0; (await job()).step !== step; acts += 1) {
      if (acts > ACTS_MAX || (await job()).status === 'closed')
        throw new Error(`the script came to ${(await job()).step} and not to ${step}`);
      await scripted();
    }
  };
  return { id, job, act, answer, playOne: scripted, playTo };
}

async function storeValveAndGear(
  { services }: AnApp,
  {
    sheet,
    place,
    person,
  }: { readonly sheet: ValveSheet; readonly place: 'bench' | 'line'; readonly person: Person },
): Promise<void> {
  const gear = rolesAt(place).map((role) => ({
    role,
    item: gearItem(role, { kind: GEAR_ROLES[role].kind }),
  }));
  const entry = (stream: string, kind: string, inputs: object) => ({
    stream,
    kind,
    inputs: JSON.parse(JSON.stringify(inputs)) as Json,
    outcome: {},
    effects: {},
  });
  const entries = [
    entry(streamOf('valve', sheet.tag), 'valve-sheet-saved', { sheet, typed: {} }),
    ...gear.map(({ item }) => entry(streamOf('gear', item.number), 'gear-saved', { item })),
  ];
  await services.log.act({
    requestId: newRequestId(),
    fingerprint: sheet.tag,
    person: person.id,
    screen: 'screen 1',
    streams: entries.map(({ stream }) => stream),
    decide: () => ({ entries, answer: {} }),
  });
}
