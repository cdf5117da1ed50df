import { type CauseId, SOUND } from '../../../procedures/troubleshooting/causes.ts';
import { moveMinutes } from '../../../procedures/troubleshooting/check.ts';
import { checkOf } from '../../../procedures/troubleshooting/checks.ts';
import { believe } from '../../../procedures/troubleshooting/engine/belief.ts';
import { decide } from '../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { questionOf } from '../../../procedures/troubleshooting/engine/information.ts';
import type { Hypothesis, Model } from '../../../procedures/troubleshooting/engine/model.ts';
import {
  type Standing,
  type Suggestion,
  suggestions,
} from '../../../procedures/troubleshooting/engine/next-check.ts';
import { MENDED_HERE } from '../../../procedures/troubleshooting/repair-procedures.ts';
import { type RepairId, repairFor, repairOf } from '../../../procedures/troubleshooting/repairs.ts';
import { hiddenValve } from './hidden-valve.ts';
import { fixedOrder, standingAtStart } from './simulate.ts';

/** How a job is led: what is done next, a check or a repair. */
export type Lead = (
  model: Model,
  of: { readonly evidence: readonly Evidence[]; readonly standing: Standing },
) => { readonly check: Suggestion } | { readonly repair: RepairId };

export const byExpectedCost: Lead = (model, { evidence, standing }) => {
  const decision = decide(model, { belief: believe(model, evidence), evidence, standing });
  return decision.best === 'check' && decision.check !== null
    ? { check: decision.check }
    : { repair: decision.repair.id };
};

/** Round the valve in the order of the list until one repair is sure enough. */
export const checklist: Lead = (model, { evidence, standing }) => {
  const belief = believe(model, evidence);
  const question = questionOf(model, belief);
  const top = Math.max(...question.shares);
  const all = top >= 0.9 ? [] : suggestions(model, { question, evidence, standing });
  const next = fixedOrder(model, { belief, all });
  return next === undefined
    ? { repair: question.classes[question.shares.indexOf(top)] ?? repairFor(SOUND) }
    : { check: next };
};

/** No looking: the likeliest repair first, each with its proof. */
export const likeliestRepair: Lead = (model, { evidence }) => {
  const question = questionOf(model, believe(model, evidence));
  const top = Math.max(...question.shares);
  return { repair: question.classes[question.shares.indexOf(top)] ?? repairFor(SOUND) };
};

export interface Cure {
  readonly minutes: number;
  readonly checks: number;
  readonly repairs: number;
  readonly firstRepairRight: boolean;
}

const REPAIR_TAKES = 0.95;
const COMES_BACK_MINUTES = 240;
const LOOKED_AT_ANEW_MINUTES = 120;
const ROUNDS_MOST = 150;

/** From the first look to a valve that is cured, wrong repairs and second visits counted. */
export function cure(
  model: Model,
  of: { readonly truth: Hypothesis; readonly chance: () => number; readonly lead: Lead },
): Cure {
  let causes: readonly CauseId[] = of.truth.causes.filter((id) => id !== SOUND);
  let answer = hiddenValve(model, of);
  let standing = standingAtStart(model);
  const evidence: Evidence[] = [];
  let [minutes, checks, repairs] = [0, 0, 0];
  let firstRepairRight: boolean | null = null;
  for (let round = 0; round < ROUNDS_MOST; round++) {
    const next = of.lead(model, { evidence, standing });
    if ('check' in next) {
      minutes += next.check.minutes;
      checks += 1;
      standing = {
        ...standing,
        hub: next.check.hub,
        gaugesFitted: [...standing.gaugesFitted, ...next.check.fit],
      };
      evidence.push({
        kind: 'answer',
        check: next.check.check,
        ...answer(next.check.check),
        gaugeAlive: true,
      });
      continue;
    }
    const repair = repairOf(next.repair);
    const [proof] = repair.proof;
    minutes += moveMinutes({ from: standing.hub, to: repair.hub }) + repair.minutes;
    minutes += proof === undefined ? 0 : checkOf(proof).minutes;
    repairs += 1;
    standing = { ...standing, hub: repair.hub };
    const wanted =
      causes.length === 0 ? next.repair === repairFor(SOUND) : causes.some((id) => repair.cures.includes(id));
    firstRepairRight ??= wanted;
    if (of.chance() < REPAIR_TAKES) causes = causes.filter((id) => !repair.cures.includes(id));
    if (causes.length === 0 && (wanted || next.repair === repairFor(SOUND))) break;
    if (next.repair === repairFor(SOUND)) minutes += COMES_BACK_MINUTES;
    else if (!MENDED_HERE.includes(next.repair)) minutes += LOOKED_AT_ANEW_MINUTES;
    const rows =
      causes.length === 0 ? [model.soundRow] : causes.map((id) => model.rowOf.get(id) ?? model.soundRow);
    if (wanted) answer = hiddenValve(model, { truth: { rows }, chance: of.chance });
    evidence.push({ kind: 'repaired', repair: next.repair, cured: false });
  }
  return { minutes, checks, repairs, firstRepairRight: firstRepairRight ?? false };
}
