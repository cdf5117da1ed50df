import type { Figures, Job } from '../../job.ts';
import type { CauseId } from '../causes.ts';
import type { Hub } from '../check.ts';
import type { CheckId } from '../checks.ts';
import { type Alike, alikeFromOutside } from '../engine/alike.ts';
import { type Belief, believe, causeRanking, type Ranked } from '../engine/belief.ts';
import { type Decision, decide } from '../engine/decide.ts';
import type { Evidence } from '../engine/evidence.ts';
import type { Model } from '../engine/model.ts';
import { modelOfValve } from '../engine/model-of-valve.ts';
import type { Standing, Suggestion } from '../engine/next-check.ts';
import { type Surprise, surpriseOf } from '../engine/surprise.ts';
import { type RepairId, repairOf } from '../repairs.ts';
import { LOOKED_ELSEWHERE } from '../steps/hub-choices.ts';
import { GAUGE_POINTS, type GaugePoint, type ValveFacts } from '../valve-facts.ts';
import { evidenceOf, gaugesFittedIn, repairToProve } from './evidence-of-job.ts';
import { factsOfJob } from './facts-of-job.ts';

/** What the engine makes of a job at a hub. It ranks and prices; where the job stands is the machine's affair alone. */
export interface Advice {
  readonly facts: ValveFacts;
  readonly model: Model;
  readonly belief: Belief;
  readonly evidence: readonly Evidence[];
  readonly standing: Standing;
  readonly causes: readonly Ranked<CauseId>[];
  readonly surprise: Surprise;
  readonly alike: Alike | null;
  readonly checks: readonly Suggestion[];
  readonly decision: Decision;
  /** A repair was made, and this check proves it: it comes before all others. */
  readonly proofDue: { readonly repair: RepairId; readonly check: CheckId } | null;
}

const KNOWN = new WeakMap<object, Map<Hub, Advice>>();

/** The advice at a hub, from the answered cards of the job alone. */
export function adviceFor(job: Job, hub: Hub): Advice {
  const before = KNOWN.get(job.answers)?.get(hub);
  if (before !== undefined) return before;
  const advice = workOut(job, hub);
  KNOWN.set(job.answers, new Map(KNOWN.get(job.answers)).set(hub, advice));
  return advice;
}

function workOut(job: Job, hub: Hub): Advice {
  const facts = factsOfJob(job);
  const model = modelOfValve(facts);
  const evidence = evidenceOf(job, facts);
  const belief = believe(model, evidence);
  const standing = standingOf(job, { facts, hub });
  const decision = decide(model, { belief, evidence, standing });
  return {
    facts,
    model,
    belief,
    evidence,
    standing,
    causes: causeRanking(model, belief),
    surprise: surpriseOf(model, belief),
    alike: alikeFromOutside(model, { belief, evidence }),
    checks: decision.checks,
    decision,
    proofDue: proofDueIn(job, model),
  };
}

/** At a hub the operator has agreed; what the machine allows next is what stands on its ways. */
function standingOf(job: Job, of: { readonly facts: ValveFacts; readonly hub: Hub }): Standing {
  const fitted = gaugesFittedIn(job).filter((point): point is GaugePoint =>
    Object.hasOwn(GAUGE_POINTS, point),
  );
  return {
    hub: of.hub,
    gaugesFitted: [...new Set([...of.facts.gaugesFitted, ...fitted])],
    consent: true,
    mayBypass: true,
    mayIsolate: true,
    testAir: true,
    coverMayOpen: job.words.coverMay !== 'no',
    without: LOOKED_ELSEWHERE,
  };
}

function proofDueIn(job: Job, model: Model): Advice['proofDue'] {
  const repair = repairToProve(job);
  const check = repair === null ? undefined : repairOf(repair).proof.find((id) => model.checks.includes(id));
  return repair === null || check === undefined ? null : { repair, check };
}

/** What was advised, as the entry keeps it beside what was chosen. */
export function adviceFigures({ causes, decision, proofDue, surprise }: Advice): Figures {
  const [first, second, third] = causes;
  return {
    advised: proofDue?.check ?? decision.check?.check ?? null,
    advisedBest: proofDue === null ? decision.best : 'check',
    advisedMinutes: decision.check?.minutes ?? null,
    advisedBits: decision.check?.bits ?? null,
    advisedRepair: decision.repair.id,
    repairFraction: decision.repair.probability,
    repairNowMinutes: decision.repairNowMinutes,
    checkFirstMinutes: decision.checkFirstMinutes,
    cause1: first?.id ?? null,
    cause1Fraction: first?.probability ?? null,
    cause2: second?.id ?? null,
    cause2Fraction: second?.probability ?? null,
    cause3: third?.id ?? null,
    cause3Fraction: third?.probability ?? null,
    explainedFraction: surprise.chanceFraction,
  };
}
