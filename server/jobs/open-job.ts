import type { Compiled } from '../../procedures/compile.ts';
import { afterDraft } from '../../procedures/evolve.ts';
import { factsOf, knownAtOpening } from '../../procedures/facts.ts';
import type { Json } from '../../procedures/json.ts';
import { chosenGear } from '../../procedures/test-gear/choice.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import { rolesFor } from '../../procedures/test-gear/roles.ts';
import { findTheFault } from '../../procedures/troubleshooting/find-the-fault.ts';
import type { LastTime } from '../../procedures/troubleshooting/job/last-time.ts';
import { asJson, revisionOf } from '../../procedures/vocabulary.ts';
import { Refusal } from '../../safety/refusal.ts';
import { type Gear, gearKind } from '../gear/gear-stream.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { Person } from '../people/person.ts';
import { openedPlan } from '../plans/plan-acts.ts';
import { noSuchPlan, notPlanned } from '../plans/plan-refusals.ts';
import { planKind } from '../plans/plan-stream.ts';
import type { Services } from '../services.ts';
import { noSuchValve } from '../valves/valve-refusals.ts';
import { valveKind } from '../valves/valve-stream.ts';
import { actStreams, decidedOn, type JobCall, noSuchJob, pointTags } from './acts.ts';
import { type Catalogue, procedureKind, type Served } from './catalogue.ts';
import { earlierSearch } from './earlier-search.ts';
import { type GoesOnFrom, handedTo, locksHandedOn, openedFrom, takenOverAt } from './hand-on.ts';
import { jobKind } from './job-stream.ts';
import { keyOrder } from './key-order.ts';

export interface Opening {
  readonly services: Services;
  readonly catalogue: Catalogue;
  readonly requestId: string;
  readonly person: Person;
  readonly screen: string;
  readonly tag: string;
  readonly procedure: string;
  readonly place: 'bench' | 'line';
  /** Number of the gear chosen for each role. */
  readonly gear: Readonly<Record<string, string>>;
  /** Number of the plan that it is opened from. */
  readonly plan?: string;
  /** The job that this one goes on from, with everything as it stands. */
  readonly from?: GoesOnFrom;
}

/**
 * Opens a job: one active job a valve, on the definition, sheet and gear as they are now. Where it goes on from another
 * job, that one closes in the same lines.
 *
 * @returns the job's number
 * @throws Refusal OPN-001 to OPN-006, HND-002, PLN-001, PLN-004, PLN-005, and whatever the closing card refuses
 */
export async function openJob(opening: Opening): Promise<string> {
  const { services, catalogue, tag } = opening;
  const served = catalogue.current(opening.procedure);
  if (served === undefined)
    throw refuse(
      'OPN-001',
      `There is no procedure "${opening.procedure}".`,
      'Choose one that the valve offers.',
    );
  const roles = rolesFor(served.procedure, opening.place);
  const numbers = Object.fromEntries(roles.map((role) => [role, (opening.gear[role] ?? '').trim()]));
  const id = await freeNumber(services);
  const before = opening.from === undefined ? null : await closingOf(opening, opening.from);
  const isSearch = before === null && opening.procedure === findTheFault.id;
  const lastTime = isSearch ? await earlierSearch(opening.services, opening.tag) : null;
  const gearStreams = [...new Set(Object.values(numbers).filter((number) => number !== ''))].map((number) =>
    streamOf('gear', number),
  );
  const opened = await services.log.act({
    requestId: opening.requestId,
    fingerprint: fingerprintOf({
      tag,
      procedure: opening.procedure,
      place: opening.place,
      gear: numbers,
      from: opening.from?.job ?? null,
      ...(opening.plan === undefined ? {} : { plan: opening.plan }),
    }),
    person: opening.person.id,
    screen: opening.screen,
    streams: [
      streamOf('job', id),
      streamOf('valve', tag),
      streamOf('procedure', served.hash),
      ...gearStreams,
      ...(opening.plan === undefined ? [] : [streamOf(planKind.kind, opening.plan)]),
      ...(before?.streams ?? []),
    ],
    decide: (read) => decide(read, { opening, served, id, numbers, before, lastTime }),
  });
  return (opened as { readonly job: string }).job;
}

interface Deciding {
  readonly opening: Opening;
  readonly served: Served;
  readonly id: string;
  readonly numbers: Readonly<Record<string, string>>;
  readonly before: Closing | null;
  readonly lastTime: LastTime | null;
}

/** The act that closes the job before. */
interface Closing {
  readonly call: JobCall;
  readonly compiled: Compiled;
  readonly tags: ReturnType<typeof pointTags>;
  readonly streams: readonly string[];
}

async function closingOf(
  { services, catalogue, requestId, person, screen }: Opening,
  { job: id, place, step, choice, reason }: GoesOnFrom,
): Promise<Closing> {
  const job = await services.log.state(jobKind, id);
  if (job.status === 'none') throw noSuchJob(id);
  const action = { kind: 'answer', place, step, given: { choice, reason } } as const;
  const call: JobCall = { services, catalogue, requestId, person, screen, job: id, action };
  const tags = pointTags(job);
  return {
    call,
    tags,
    compiled: await catalogue.of(job, services.log),
    streams: actStreams(call, { tag: job.tag, tags }),
  };
}

/** What opening means, with the log held still: the valve is free, the procedure fits, the gear is in date. */
function decide(read: Read, deciding: Deciding) {
  const { opening, served, id, numbers } = deciding;
  const { definition } = served.compiled;
  const goesOn = goingOn(read, deciding);
  const opens = goesOn ?? beginning(read, deciding);
  const inputs = {
    id,
    tag: opening.tag,
    ...opens.carried,
    ...(deciding.lastTime === null ? {} : { lastTime: deciding.lastTime }),
    gear: chosenGear({
      roles: rolesFor(served.procedure, opening.place),
      sheet: opens.carried.sheet,
      numbers,
      today: read.now.slice(0, 10),
      find: (number) => gearOf(read.state(gearKind, number)),
    }),
    procedure: definition.id,
    procedureRevision: revisionOf(definition),
    definitionHash: served.hash,
  } as unknown as Json;
  const stored = read.place(procedureKind, served.hash) > 0;
  const storing = {
    stream: streamOf('procedure', served.hash),
    kind: 'procedure-stored',
    inputs: asJson(definition),
    outcome: { order: keyOrder(asJson(definition)) as unknown as Json },
    effects: {},
  };
  return {
    entries: [
      ...(goesOn?.closing ?? []),
      ...(stored ? [] : [storing]),
      {
        stream: streamOf('job', id),
        kind: 'job-opened',
        inputs,
        outcome: {},
        effects: { to: opens.to, sets: knownAtOpening(opens.carried.facts) } as unknown as Json,
      },
      { stream: streamOf('valve', opening.tag), kind: 'job-taken-on', inputs: { job: id }, ...bare },
      ...planTakenUp(read, deciding),
    ],
    answer: { job: id },
  };
}

const bare = { outcome: {}, effects: {} };

/** The line that takes a plan off the list, if the job is opened from one. */
function planTakenUp(read: Read, { opening, id }: Pick<Deciding, 'opening' | 'id'>): readonly EntryDraft[] {
  const { plan: number, tag, procedure, place } = opening;
  if (number === undefined) return [];
  const state = read.state(planKind, number);
  if (state.plan === null) throw noSuchPlan(number);
  if (state.status !== 'planned') throw notPlanned(number, state);
  const { plan } = state;
  if (plan.tag !== tag || plan.procedure !== procedure || plan.place !== place)
    throw refuse('PLN-005', `Plan ${number} is other work than this.`, 'Open the job from the plan itself.');
  return [openedPlan(number, id)];
}

/** A job that begins at the start, on the newest sheet. */
function beginning(read: Read, deciding: Deciding) {
  const { opening, served } = deciding;
  const { sheet, revision } = freeValve(read, deciding);
  const because = served.procedure.whyNot(sheet, opening.place);
  if (because !== null) throw refuse('OPN-004', because, 'Choose a procedure that fits the valve.');
  const facts = factsOf(sheet, opening.place);
  return { to: served.compiled.definition.start, carried: { sheet, sheetRevision: revision, facts } };
}

/** A job that goes on where another stands, on the sheet of that one; null where it does not. */
function goingOn(read: Read, { opening, served, id, before }: Deciding) {
  if (before === null) return null;
  const { job, draft, points, entries } = decidedOn(before.call, { ...before, read, goesOnAs: id });
  const { definition } = served.compiled;
  const { as } = handedTo(definition, { from: before.compiled.definition, to: draft.effects.to });
  if (job.tag !== opening.tag || job.facts.place !== opening.place)
    throw refuse('OPN-004', `Job ${job.id} stands on another valve or place.`, 'Go on from its own card.');
  const because = served.procedure.whyNot(job.sheet, opening.place);
  if (because !== null) throw refuse('OPN-004', because, 'Choose a procedure that fits the valve.');
  const closed = afterDraft(job, { draft, at: read.now, person: before.call.person.id });
  return {
    to: takenOverAt(definition, { as, closed }),
    carried: openedFrom(closed),
    closing: [...entries, ...locksHandedOn(points, { from: job.id, to: id })],
  };
}

/** The valve, if it is there and no other job has it. */
function freeValve(read: Read, { opening, id }: Pick<Deciding, 'opening' | 'id'>) {
  const { tag } = opening;
  if (read.place(jobKind, id) !== 0)
    throw refuse('OPN-005', 'Another job was opened at this moment.', 'Send it again.');
  const { sheet, revision, retired, openJob: taken } = read.state(valveKind, tag);
  if (sheet === null) throw noSuchValve(tag);
  if (retired)
    throw refuse('OPN-002', `${tag} is retired.`, 'Choose another valve, or save its sheet anew first.');
  if (taken !== null)
    throw refuse('OPN-003', `Job ${taken} is open on ${tag}.`, 'Go on with that one, or close it first.');
  return { sheet, revision };
}

/** Jobs are numbered 1, 2, 3; a number taken meanwhile is refused in the act itself. */
async function freeNumber({ lists }: Services): Promise<string> {
  let number = 1;
  for (const id of (await lists.jobs.byId()).keys()) number = Math.max(number, Number(id) + 1);
  return String(number);
}

function refuse(code: string, what: string, next: string): Refusal {
  return new Refusal({ kind: 'conflict', code, what, kept: 'No job was opened.', next });
}

function gearOf(gear: Gear): GearItem | null {
  return gear.retired ? null : gear.item;
}
