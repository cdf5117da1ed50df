import type { ActionClass } from '../../safety/action-classes.ts';
import { type ConditionId, LOCK_IDS } from '../../safety/conditions.ts';
import { proofAgeMs } from '../../safety/energies.ts';
import { type Lack, lacks } from '../../safety/interlock.ts';
import { applyEffects, type Effects, lapseOnly, type Situation } from '../../safety/situation.ts';
import { type MachineEvent, nextStep } from '../compile.ts';
import type { JobEffects } from '../evolve.ts';
import type { Job, JobLock, Words } from '../job.ts';
import { FIGURES, type FigureName } from '../quantities.ts';
import type { EndStep, OpenStep, Sets, Step } from '../vocabulary.ts';
import { targetUnder, waysOf } from '../ways.ts';
import type { Surroundings } from './action.ts';
import { exposed, goesOnElsewhere, noWay } from './refusals.ts';
import { checkOwnLocks, checkPoints } from './site-points.ts';

/** The open step, with its action class where it has one. */
function stepOf(job: Job, { compiled }: Surroundings): Step {
  const step = compiled.definition.steps[job.step];
  if (step === undefined)
    throw new Error(`job ${job.id} stands at ${job.step}, which its definition does not have`);
  return step;
}

export function openStepOf(job: Job, around: Surroundings): OpenStep {
  const step = stepOf(job, around);
  if (step.kind === 'end') throw noWay('This job has ended.', 'Open its record.');
  return step;
}

export function actionOf(step: Step): ActionClass | null {
  return step.kind === 'end' ? null : (step.action ?? null);
}

/** What the interlock sees: proofs older than their age count no more, where the energy can build up again. */
export function situationNow(job: Job, nowMs: number): Situation {
  const aged = (Object.keys(job.evidence) as ConditionId[]).filter((id) => {
    const at = job.evidence[id]?.at;
    const ageMs = proofAgeMs(id, job.situation.states[id]);
    return at !== undefined && ageMs !== null && nowMs - Date.parse(at) > ageMs;
  });
  const fresh = aged.filter((id) => job.situation.lapsed[id] === undefined);
  return lapseOnly(job.situation, { conditions: fresh, reason: 'age' });
}

/** What stands against an action of this job now. */
export function lacksOf(
  action: ActionClass | null,
  {
    job,
    situation,
    around,
  }: { readonly job: Job; readonly situation: Situation; readonly around: Surroundings },
): readonly Lack[] {
  if (action === null) return [];
  const { envelope } = job;
  return lacks(action, { job: job.id, situation, envelope, points: around.points, nowMs: around.nowMs });
}

/** Refuses to answer a card whose action may not be done now. */
export function checkMayAct(job: Job, around: Surroundings): void {
  const action = actionOf(stepOf(job, around));
  const found = lacksOf(action, { job, situation: situationNow(job, around.nowMs), around });
  if (action !== null && found.length > 0) throw exposed(action, found);
  checkOwnLocks(job, { action, around });
}

/**
 * Takes the machine's way for an event and works out what it sets. The machine is asked once; the way's
 * effects come from the definition, and the target that both name must be the same.
 */
export function move(
  job: Job,
  {
    event,
    words,
    around,
  }: { readonly event: Omit<MachineEvent, 'facts'>; readonly words: Words; readonly around: Surroundings },
): JobEffects {
  const to = nextStep(around.compiled, { step: job.step, event: { ...event, facts: job.facts } });
  if (to === null)
    throw noWay(
      `From this card "${event.outcome || event.type}" leads nowhere.`,
      'Answer the card as it stands.',
    );
  const step = stepOf(job, around);
  const way = waysOf(step).find(
    (one) => one.event === event.type && (one.outcome === null || one.outcome === event.outcome),
  );
  if (way !== undefined && targetUnder(way.way.to, job.facts) !== to)
    throw new Error(`machine and definition disagree at ${job.step}`);
  const sets = resolve(way?.way.sets ?? {}, words);
  const target = around.compiled.definition.steps[to];
  const ended = target?.kind === 'end' ? closing(target, around) : {};
  const changed = locksFrom(job, { sets, words, person: around.person.id });
  checkPoints(job, { locks: changed.locks, around });
  return { to, sets, ...changed, ...ended };
}

/** @throws Refusal HND-001 where another procedure goes on and is not opened by the same act */
function closing({ closes, handsOver }: EndStep, { goesOnAs }: Surroundings): Partial<JobEffects> {
  if (handsOver === undefined) return { status: 'closed', closedAs: closes };
  if (goesOnAs === undefined) throw goesOnElsewhere(handsOver.procedure);
  return { status: 'closed', closedAs: closes, goesOnAs };
}

/** Refuses a way into a step whose action would not be allowed there. */
export function checkMayEnter(
  job: Job,
  { effects, around }: { readonly effects: JobEffects; readonly around: Surroundings },
): void {
  const target = around.compiled.definition.steps[effects.to];
  const action = target === undefined ? null : actionOf(target);
  const situation = applyEffects(situationNow(job, around.nowMs), effects.sets ?? {});
  const envelope = effects.envelope === undefined ? job.envelope : effects.envelope;
  const after = { ...job, envelope };
  const found = lacksOf(action, { job: after, situation, around }).filter((lack) => lack.lapsed === null);
  if (action !== null && found.length > 0) throw exposed(action, found);
}

function resolve(sets: Sets, words: Words): Effects {
  const pairs = Object.entries(sets).map(([condition, set]) => {
    if (typeof set !== 'object') return [condition, set];
    const chosen = words[set.from] ?? '';
    if (!(set.among as readonly string[]).includes(chosen))
      throw new Error(`${condition} cannot be set to "${chosen}"`);
    return [condition, chosen];
  });
  return Object.fromEntries(pairs) as Effects;
}

const POINT_OF: { readonly [C in ConditionId]?: FigureName } = {
  supplyLock: 'supplyPoint',
  secondSupplyLock: 'secondSupplyPoint',
  inletLock: 'inletPoint',
  outletLock: 'outletPoint',
};

function locksFrom(
  job: Job,
  { sets, words, person }: { readonly sets: Effects; readonly words: Words; readonly person: string },
): Pick<JobEffects, 'locks'> {
  const changed = LOCK_IDS.filter((id) => sets[id] !== undefined);
  if (changed.length === 0) return {};
  const locks = changed.map((id): [string, JobLock | null] => {
    if (sets[id] === 'off') return [id, null];
    const point = POINT_OF[id];
    const tag = point === undefined ? null : FIGURES[point].of(job);
    const hung = job.locks[id];
    // A point that is locked again keeps the lock of whoever hung it, whoever writes it down.
    const owner = hung?.owner ?? person;
    const number = owner === person ? (words[`${id}Number`] ?? hung?.lock ?? '') : (hung?.lock ?? '');
    return [id, { lock: number, point: String(tag ?? ''), owner }];
  });
  return { locks: Object.fromEntries(locks) };
}
