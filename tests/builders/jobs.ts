/** Jobs in memory: opened, moved on by acts and folded from what the acts store, with a clock that is moved by hand. */
import type { Action, Surroundings } from '../../procedures/actions/action.ts';
import { advance } from '../../procedures/advance.ts';
import { strokeCheck } from '../../procedures/commissioning/stroke-check.ts';
import { type Compiled, compile } from '../../procedures/compile.ts';
import { evolve, type JobDraft, type JobEntry, NO_JOB } from '../../procedures/evolve.ts';
import { factsOf, knownAtOpening } from '../../procedures/facts.ts';
import type { Job } from '../../procedures/job.ts';
import type { Json } from '../../procedures/json.ts';
import type { GearItem } from '../../procedures/test-gear/gear.ts';
import type { GearRole } from '../../procedures/test-gear/roles.ts';
import type { ValveSheet } from '../../procedures/valve-sheet/sheet.ts';
import { revisionOf } from '../../procedures/vocabulary.ts';
import type { ConditionId } from '../../safety/conditions.ts';
import type { PointState } from '../../safety/isolation-points.ts';
import { gearFor } from './gear.ts';
import { aSheet } from './sheets.ts';
import { SIGNED_STEPS, strokeScript, textsAt, WAITED_STEPS } from './stroke-script.ts';

export type Person = Surroundings['person'];

export const TECHNICIAN: Person = { id: 'p-technician', role: 'technician' };
export const OTHER_TECHNICIAN: Person = { id: 'p-other', role: 'technician' };
export const SUPERVISOR: Person = { id: 'p-supervisor', role: 'supervisor' };

/** Compiled once for all tests of a file: the proof runs over every standing of the facts. */
export const COMPILED: Compiled = compile(strokeCheck);

const OPENED_AT_MS = Date.UTC(2026, 10, 25, 8);

export interface Opened {
  readonly sheet?: ValveSheet;
  readonly place?: 'bench' | 'line';
  readonly gear?: { readonly [R in GearRole]?: GearItem };
  readonly compiled?: Compiled;
}

/** One job as a test moves it. `job` is always the fold of `entries`. */
export interface JobRun {
  readonly entries: JobEntry[];
  job: Job;
  nowMs: number;
  /** Stands for what the log gives a signer to read; an act signs what it was shown. */
  shownDigest: string;
  /** The site's points, where a test wants others than those that the job's own locks make. */
  points: Surroundings['points'] | null;
  readonly compiled: Compiled;
}

export function openJob({
  sheet = aSheet(),
  place = 'line',
  gear,
  compiled = COMPILED,
}: Opened = {}): JobRun {
  const { definition } = compiled;
  const inputs = {
    id: 'job:1',
    tag: sheet.tag,
    sheet,
    sheetRevision: 1,
    gear: gear ?? gearFor(place),
    facts: factsOf(sheet, place),
    procedure: definition.id,
    procedureRevision: revisionOf(definition),
    definitionHash: 'hash',
  };
  const entry: JobEntry = {
    seq: 1,
    place: 1,
    at: new Date(OPENED_AT_MS).toISOString(),
    person: TECHNICIAN.id,
    kind: 'job-opened',
    inputs: plain(inputs),
    outcome: {},
    effects: plain({ to: definition.start, sets: knownAtOpening(factsOf(sheet, place)) }),
  };
  return {
    entries: [entry],
    job: evolve(NO_JOB, entry),
    nowMs: OPENED_AT_MS,
    shownDigest: 'digest',
    points: null,
    compiled,
  };
}

/** As it comes back from the log: what JSON cannot carry is gone. */
function plain(value: unknown): Json {
  return JSON.parse(JSON.stringify(value)) as Json;
}

/** The points as this job's locks leave them, with nobody else at the site. */
export function pointsOf(job: Job): Surroundings['points'] {
  const points = Object.entries(job.locks).map(([id, lock]): [string, PointState] => [
    id,
    {
      tag: lock.point,
      position: 'shut',
      locks: [{ lock: lock.lock, owner: lock.owner, job: job.id }],
    },
  ]);
  return Object.fromEntries(points) as { readonly [C in ConditionId]?: PointState };
}

export function around(run: JobRun, person: Person = TECHNICIAN): Surroundings {
  return {
    compiled: run.compiled,
    nowMs: run.nowMs,
    today: new Date(run.nowMs).toISOString().slice(0, 10),
    person,
    points: run.points ?? pointsOf(run.job),
    shownDigest: run.shownDigest,
  };
}

type WithoutPlace<A> = A extends unknown ? Omit<A, 'place' | 'step'> : never;
/** An act as a person means it: on the card that stands open now. */
export type Act = WithoutPlace<Action>;

export function act(run: JobRun, meant: Act, person: Person = TECHNICIAN): JobDraft {
  const action = { place: run.job.place, step: run.job.step, ...meant } as Action;
  return store(run, advance(run.job, action, around(run, person)), person);
}

/** Writes what was decided, as the log would, and folds it in. A minute passes. */
export function store(run: JobRun, draft: JobDraft, person: Person): JobDraft {
  const entry: JobEntry = {
    seq: run.entries.length + 1,
    place: run.job.place + 1,
    at: new Date(run.nowMs).toISOString(),
    person: person.id,
    kind: draft.kind,
    inputs: plain(draft.inputs),
    outcome: plain(draft.outcome),
    effects: plain(draft.effects),
  };
  run.entries.push(entry);
  run.job = evolve(run.job, entry);
  run.nowMs += 60_000;
  return draft;
}

export function answer(run: JobRun, given: Readonly<Record<string, string>> = {}, person?: Person): JobDraft {
  return act(run, { kind: 'answer', given }, person);
}

export function sign(run: JobRun, person: Person = SUPERVISOR): JobDraft {
  return act(run, { kind: 'sign', shownDigest: run.shownDigest }, person);
}

/** Answers the open card as the script says; a hold is signed, a wait is waited for. */
export function scripted(run: JobRun): JobDraft {
  const { step, sheet, tables } = run.job;
  if (SIGNED_STEPS.includes(step)) return sign(run);
  run.nowMs += (WAITED_STEPS[step] ?? 0) * 1000;
  return answer(run, textsAt(strokeScript(sheet), { step, row: (tables[step] ?? []).length }));
}

const ACTS_MAX = 120;

/** Plays the script until a step stands open, or to the end of the job. */
export function playTo(run: JobRun, step: string): JobRun {
  for (let acts = 0; run.job.step !== step; acts += 1) {
    if (acts > ACTS_MAX || run.job.status === 'closed')
      throw new Error(`the script came to ${run.job.step} and not to ${step}`);
    scripted(run);
  }
  return run;
}

/** A job that stands at a step, by the script. @example jobAt('turnStem').job.situation.states.signalAir // 'held' */
export function jobAt(step: string, opened: Opened = {}): JobRun {
  return playTo(openJob(opened), step);
}
