import {
  type AnyState,
  CONDITION_IDS,
  CONDITIONS,
  type ConditionId,
  worstState,
} from '../safety/conditions.ts';
import type { Compiled } from './compile.ts';
import { proofUnder } from './compile.ts';
import { everyFacts, type FactName, type Facts, knownAtOpening } from './facts.ts';
import type { Job } from './job.ts';
import { isTakenOverUnder, standingUnder } from './standing.ts';
import type { Definition, EndStep, TakesOver } from './vocabulary.ts';

/** What goes along when another procedure goes on with a valve as it stands. */
export type Carried = Pick<
  Job,
  'goesOnFrom' | 'situation' | 'evidence' | 'locks' | 'readings' | 'words' | 'performers'
>;

/**
 * What a job that closes leaves to the one that goes on: isolations with their locks and how they were shown, and what
 * was read. No signature: the next procedure has holds of its own, and whoever worked before does not sign them.
 *
 * @param closed  the job after the line that closed it
 */
export function carriedFrom(closed: Job): Carried {
  const { id, situation, evidence, locks, readings, words, performers } = closed;
  return { goesOnFrom: id, situation, evidence: ofBefore(evidence), locks, readings, words, performers };
}

/** A place numbers the lines of one job: those of the job before are no lines of the next. */
function ofBefore(evidence: Job['evidence']): Job['evidence'] {
  return Object.fromEntries(Object.entries(evidence).map(([id, note]) => [id, { ...note, place: 0 }]));
}

type ById = ReadonlyMap<string, Compiled>;

/**
 * What is wrong between procedures that hand a valve on: the other one is not there, or does not take over in every
 * state in which this one may leave it; or one is named as the next that is not served.
 */
export function handingFaults(all: readonly Compiled[]): readonly string[] {
  const byId = new Map(all.map((compiled) => [compiled.definition.id, compiled]));
  return [...nextFaults(all, byId), ...handingOf(all, byId)];
}

/** Answers that name a procedure as the next one which nobody can open. */
function nextFaults(all: readonly Compiled[], byId: ById): readonly string[] {
  return all.flatMap(({ definition }) =>
    Object.entries(definition.steps).flatMap(([id, step]) =>
      (step.kind === 'question' ? Object.values(step.choices) : []).flatMap(({ comesNext }) =>
        comesNext === undefined || byId.has(comesNext)
          ? []
          : [`${definition.id}, ${id}: ${comesNext} is named as the next procedure, and is not served`],
      ),
    ),
  );
}

function handingOf(all: readonly Compiled[], byId: ById): readonly string[] {
  return all.flatMap((from) =>
    handingEnds(from.definition).flatMap(([id, { handsOver }]) => {
      const { procedure = '', as = '' } = handsOver ?? {};
      const to = byId.get(procedure)?.definition.takesOver?.[as];
      const what = `${from.definition.id}, ${id}: ${procedure}`;
      if (to === undefined) return [`${what} takes nothing over as ${as}`];
      return factsAtHanding(from, to).flatMap((facts) => untaken(from, { id, to, facts, what }));
    }),
  );
}

/** Every standing of the facts that either of them turns on, and of those only what the first is done under. */
function factsAtHanding({ definition, facts }: Compiled, to: TakesOver<string>): readonly Facts[] {
  const only = Object.entries(definition.onlyWhere ?? {});
  const names = new Set([
    ...facts,
    // What it is cut to counts though neither turns on it: else no standing would be left to look at.
    ...only.map(([name]) => name as FactName),
    ...(to.where ?? []).flatMap((one) => Object.keys(one.facts) as FactName[]),
    ...(Object.keys(to.onlyWhere ?? {}) as FactName[]),
  ]);
  return everyFacts([...names]).filter((each) => only.every(([name, is]) => each[name as FactName] === is));
}

function handingEnds({ steps }: Definition): readonly (readonly [string, EndStep])[] {
  return Object.entries(steps).flatMap(([id, step]) =>
    step.kind === 'end' && step.handsOver !== undefined ? [[id, step] as const] : [],
  );
}

interface Handing {
  readonly id: string;
  readonly to: TakesOver<string>;
  readonly facts: Facts;
  readonly what: string;
}

function untaken(from: Compiled, { id, to, facts, what }: Handing): readonly string[] {
  const reach = proofUnder(from, facts)?.reach;
  if (reach?.has(id) !== true) return [];
  if (!isTakenOverUnder(to, facts)) {
    const elsewhere = Object.keys(to.onlyWhere ?? {}).map((name) => facts[name as FactName]);
    return [`${what} does not take over at all with ${elsewhere.join(', ')}`];
  }
  const allowed = allowedUnder(to, facts);
  return CONDITION_IDS.flatMap((condition) =>
    reach
      .beyond(id, { condition, allowed: allowed(condition) })
      .map((state) => `${what} does not take over with ${CONDITIONS[condition].name} ${state}`),
  );
}

/** The states of each condition that are taken over under these facts. */
function allowedUnder(to: TakesOver<string>, facts: Facts): (condition: ConditionId) => readonly AnyState[] {
  const [standing, known] = [standingUnder(to, facts), knownAtOpening(facts)];
  return (condition) => standing[condition] ?? [known[condition] ?? worstState(condition)];
}

/** Conditions of a job that stand otherwise than the procedure takes over: a job on an older revision may come to that. */
export function notTakenOver(
  to: TakesOver<string>,
  { situation, facts }: Pick<Job, 'situation' | 'facts'>,
): readonly ConditionId[] {
  const allowed = allowedUnder(to, facts);
  return CONDITION_IDS.filter((condition) => !allowed(condition).includes(situation.states[condition]));
}
