import { type CauseId, SOUND } from '../../troubleshooting/causes.ts';
import type { Hub } from '../../troubleshooting/check.ts';
import type { CheckId } from '../../troubleshooting/checks.ts';
import { believe, causeRanking } from '../../troubleshooting/engine/belief.ts';
import { decide } from '../../troubleshooting/engine/decide.ts';
import type { Evidence } from '../../troubleshooting/engine/evidence.ts';
import { modelOfValve } from '../../troubleshooting/engine/model-of-valve.ts';
import type { Standing } from '../../troubleshooting/engine/next-check.ts';
import { openingEvidence } from '../../troubleshooting/openings.ts';
import { type RepairId, repairFor } from '../../troubleshooting/repairs.ts';
import { LOOKED_ELSEWHERE } from '../../troubleshooting/steps/hub-choices.ts';
import { valveFactsOf } from '../../troubleshooting/valve-facts.ts';
import { evidence, seeCheck } from '../answer.ts';
import { preparing } from '../answers/prepare.ts';
import { atOnce } from '../in-steps.ts';
import { keptInSteps, lookRandom, type SimulatedValve } from '../simulated.ts';
import { complaining } from './complaint.ts';

/** One check of a search, with what it cost and how likely the truth was before and after it. */
export interface Told {
  readonly check: CheckId;
  readonly hub: Hub;
  readonly minutes: number;
  readonly item: Evidence;
  readonly beforeFraction: number;
  readonly afterFraction: number;
}

export interface Searched {
  readonly told: readonly Told[];
  readonly minutes: number;
  readonly cause: CauseId;
  readonly repair: RepairId;
}

const CHECKS_MOST = 40;

/** What is true of a valve with these faults. */
export function truthOf(valve: SimulatedValve): readonly CauseId[] {
  return valve.faults.length === 0 ? [SOUND] : valve.faults.map(({ cause }) => cause);
}

/**
 * How the engine would have gone about it: the same complaint, the same looks, each next check as it advises it, until
 * it advises to repair.
 */
export function searchByEngine(valve: SimulatedValve): Searched {
  return atOnce(searched(valve));
}

const SEARCHED = 'searched';

/**
 * The same in steps, of which none takes long; a search that was asked for before takes none.
 * @example for (const _ of searching(valve)) await turn()
 */
export function* searching(valve: SimulatedValve): Generator<void> {
  yield* searched(valve);
}

function* searched(valve: SimulatedValve): Generator<void, Searched> {
  return yield* keptInSteps(valve, { key: SEARCHED, steps: () => search(valve) });
}

function* search(valve: SimulatedValve): Generator<void, Searched> {
  const facts = valveFactsOf(valve.build.frame.sheet);
  const model = modelOfValve(facts);
  yield;
  const { opening } = yield* complaining(valve);
  const items: Evidence[] = [...openingEvidence(facts, opening)];
  let standing: Standing = {
    hub: 'in service',
    gaugesFitted: facts.gaugesFitted,
    consent: true,
    mayBypass: true,
    mayIsolate: true,
    testAir: true,
    coverMayOpen: true,
    without: LOOKED_ELSEWHERE,
  };
  const told: Told[] = [];
  let belief = believe(model, items);
  yield;
  for (;;) {
    const decision = decide(model, { belief, evidence: items, standing });
    yield;
    const next = decision.best === 'check' ? decision.check : null;
    if (next === null || told.length >= CHECKS_MOST) break;
    standing = { ...standing, hub: next.hub, gaugesFitted: [...standing.gaugesFitted, ...next.fit] };
    const { check, hub, minutes } = next;
    const looks = told.filter((one) => one.check === check).length;
    yield* preparing(valve, { check, hub });
    const said = seeCheck(valve, { check, hub, random: lookRandom(valve, `${check} ${looks}`) });
    const item = evidence(check, said);
    const beforeFraction = shareOf(truthOf(valve), causeRanking(model, belief));
    items.push(item);
    belief = believe(model, items);
    const afterFraction = shareOf(truthOf(valve), causeRanking(model, belief));
    yield;
    told.push({ check, hub, minutes, item, beforeFraction, afterFraction });
  }
  const cause = causeRanking(model, belief)[0]?.id ?? SOUND;
  const minutes = told.reduce((sum, one) => sum + one.minutes, 0);
  return { told, minutes, cause, repair: repairFor(cause) };
}

/** How likely the true causes are held to be; of two the one that is held less likely. */
export function shareOf(
  truth: readonly CauseId[],
  ranking: readonly { readonly id: CauseId; readonly probability: number }[],
): number {
  return Math.min(...truth.map((cause) => ranking.find(({ id }) => id === cause)?.probability ?? 0));
}
