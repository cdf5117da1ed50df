/** What is done with plans: made, saved anew, withdrawn. Opening one is opening its job, see `jobs/open-job.ts`. */
import type { Json } from '../../procedures/json.ts';
import type { Plan } from '../../procedures/plans/plan.ts';
import { type PlanTexts, readPlan } from '../../procedures/plans/read-plan.ts';
import { procedureNamed } from '../../procedures/served.ts';
import { wrongFields } from '../http/fields.ts';
import type { EntryDraft, Read } from '../log/act.ts';
import { fingerprintOf } from '../log/chain.ts';
import type { SiteLog } from '../log/site-log.ts';
import { streamOf } from '../log/stream-kind.ts';
import type { By } from '../people/people.ts';
import { type Valve, valveKind } from '../valves/valve-stream.ts';
import { noSuchPlan, notPlanned, numberInUse, savedMeanwhile } from './plan-refusals.ts';
import { type PlanState, planKind } from './plan-stream.ts';

interface To {
  readonly log: SiteLog;
  readonly by: By;
}

/** @throws Refusal FRM-002 with every wrong field, PLN-002 if its number is in use */
export async function addPlan(to: To, texts: PlanTexts): Promise<string> {
  const typed = (texts.number ?? '').trim();
  const number = typed === '' ? await freeNumber(to.log) : typed;
  const plan = planOf({ ...texts, number });
  return await record(to, {
    plan,
    asks: { addPlan: { ...texts } },
    check: (state) => {
      if (state.plan !== null) throw numberInUse(plan.number);
    },
  });
}

/** @throws Refusal FRM-002, PLN-001, PLN-003 if somebody else saved it meanwhile, PLN-004 once it was opened */
export async function savePlan(
  to: To,
  {
    number,
    revision,
    texts,
  }: { readonly number: string; readonly revision: string; readonly texts: PlanTexts },
): Promise<string> {
  const plan = planOf({ ...texts, number });
  return await record(to, {
    plan,
    asks: { savePlan: number, revision, texts: { ...texts } },
    check: (state) => {
      if (state.plan === null) throw noSuchPlan(number);
      if (state.status === 'opened') throw notPlanned(number, state);
      if (String(state.revision) !== revision) throw savedMeanwhile(number);
    },
  });
}

/** @throws Refusal PLN-001, PLN-004 */
export async function withdrawPlan(
  { log, by }: To,
  { number, why }: { readonly number: string; readonly why: string },
): Promise<string> {
  const stream = streamOf(planKind.kind, number);
  const done = await log.act({
    ...by,
    fingerprint: fingerprintOf({ withdrawPlan: number, why }),
    streams: [stream],
    decide: (read: Read) => {
      const state = read.state(planKind, number);
      if (state.plan === null) throw noSuchPlan(number);
      if (state.status !== 'planned') throw notPlanned(number, state);
      return { entries: [{ stream, kind: 'plan-withdrawn', inputs: { why }, ...BARE }], answer: { number } };
    },
  });
  return done.number;
}

const BARE = { outcome: {}, effects: {} };

export function savedPlan(plan: Plan): EntryDraft {
  return {
    stream: streamOf(planKind.kind, plan.number),
    kind: 'plan-saved',
    inputs: { plan } as unknown as Json,
    ...BARE,
  };
}

/** A line of the job's own act: the plan that it was opened from. */
export function openedPlan(number: string, job: string): EntryDraft {
  return { stream: streamOf(planKind.kind, number), kind: 'plan-opened', inputs: { job }, ...BARE };
}

/** What the site has against a plan, by the name of its field; empty where nothing. */
export function againstPlan(
  { tag, procedure, place }: Plan,
  { sheet, retired }: Valve,
): Record<string, string> {
  if (sheet === null) return { tag: `There is no valve ${tag}.` };
  if (retired) return { tag: `${tag} is retired.` };
  const because = procedureNamed(procedure)?.whyNot(sheet, place) ?? null;
  return because === null ? {} : { procedure: because };
}

interface PlanAct {
  readonly plan: Plan;
  readonly asks: Json;
  /** @throws Refusal to have nothing written */
  check(state: PlanState): void;
}

async function record({ log, by }: To, { plan, asks, check }: PlanAct): Promise<string> {
  const done = await log.act({
    ...by,
    fingerprint: fingerprintOf(asks),
    streams: [streamOf(planKind.kind, plan.number), streamOf(valveKind.kind, plan.tag)],
    decide: (read: Read) => {
      check(read.state(planKind, plan.number));
      const against = againstPlan(plan, read.state(valveKind, plan.tag));
      if (Object.keys(against).length > 0) throw wrongFields(against);
      return { entries: [savedPlan(plan)], answer: { number: plan.number } };
    },
  });
  return done.number;
}

function planOf(texts: PlanTexts): Plan {
  const read = readPlan(texts);
  if (!read.ok) throw wrongFields(read.faults);
  return read.plan;
}

/** P-1, P-2, P-3; a number taken meanwhile is refused in the act itself. */
async function freeNumber(log: SiteLog): Promise<string> {
  const taken = (await log.summaries(planKind.kind)).map(({ id }) =>
    Number(/^P-(\d{1,9})$/.exec(id)?.[1] ?? 0),
  );
  return `P-${taken.reduce((most, each) => Math.max(most, each), 0) + 1}`;
}
