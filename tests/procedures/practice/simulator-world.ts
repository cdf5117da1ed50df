import { answerCheck } from '../../../procedures/practice/answer.ts';
import type { Given } from '../../../procedures/practice/faults.ts';
import { seeded } from '../../../procedures/practice/random.ts';
import { simulatedValve } from '../../../procedures/practice/simulated.ts';
import { type CauseId, SOUND } from '../../../procedures/troubleshooting/causes.ts';
import type { CheckId } from '../../../procedures/troubleshooting/checks.ts';
import { fromOutside, groupsAlike } from '../../../procedures/troubleshooting/engine/alike.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import { isSure, lookThatPays } from '../../../procedures/troubleshooting/engine/decide.ts';
import type { Evidence } from '../../../procedures/troubleshooting/engine/evidence.ts';
import { questionOf } from '../../../procedures/troubleshooting/engine/information.ts';
import type { Model } from '../../../procedures/troubleshooting/engine/model.ts';
import {
  type Standing,
  type Suggestion,
  suggestions,
} from '../../../procedures/troubleshooting/engine/next-check.ts';
import { repairFor } from '../../../procedures/troubleshooting/repairs.ts';
import type { ValveSheet } from '../../../procedures/valve-sheet/sheet.ts';
import { standingAtStart } from '../troubleshooting/simulate.ts';

/** From the control room to the valve and into it, as a textbook goes through a valve. Common practice, no source. */
const TEXTBOOK: readonly CheckId[] = [
  'controllerMode',
  'controllerOutput',
  'trend',
  'secondMeasurement',
  'supplyPressure',
  'supplyDroop',
  'filterBowl',
  'loopCurrent',
  'sourceOutlet',
  'valveAgainstSource',
  'traceTubing',
  'accessories',
  'soapSignalTube',
  'travelAgainstOutput',
  'smallStep',
  'handwheelAndStops',
  'stemAndGland',
  'couplingMarks',
  'equaliser',
  'feedbackLinkage',
  'positionerMarks',
  'outputGauge',
  'topPressure',
  'bottomPressure',
  'cylinderGaugesOnStep',
  'listenExhaust',
  'positionerExhaust',
  'airAtTravel',
  'springSideVent',
  'soapCaseJoint',
  'soapAdjuster',
  'soapStemSeal',
  'soapActuatorTube',
  'soapCylinder',
  'soapOutputTubes',
  'fluidOutside',
  'flowArrow',
  'lineUp',
  'pressureDrop',
  'flowAgainstTravel',
  'noise',
  'holdInManual',
  'gaugeAgainstGauge',
];

export interface Look {
  readonly minutes: number;
  readonly checks: number;
  /** The cause named first is there, or one that no look from outside tells from it, or one with the same repair. */
  readonly first: boolean;
  readonly sameRepair: boolean;
  readonly threeHoldAll: boolean;
  readonly named: CauseId;
}

/** A check that tells less is not worth the way to it. */
const TELLS_BITS = 0.002;
const CHECKS_MOST = 60;

export type Order = 'engine' | 'textbook';

/** One search on a simulated valve, until a repair is sure or nothing is left to look at. */
export function searchSimulated(
  model: Model,
  of: {
    readonly sheet: ValveSheet;
    readonly faults: readonly Given[];
    readonly seed: number;
    readonly order: Order;
  },
): Look {
  const valve = simulatedValve(of.sheet, of);
  const random = seeded(of.seed + 77);
  const evidence: Evidence[] = [];
  let standing: Standing = standingAtStart(model);
  let [minutes, checks] = [0, 0];
  while (checks < CHECKS_MOST) {
    const next = nextOf(model, { evidence, standing, order: of.order });
    if (next === undefined) break;
    minutes += next.minutes;
    checks += 1;
    standing = { ...standing, hub: next.hub, gaugesFitted: [...standing.gaugesFitted, ...next.fit] };
    evidence.push(answerCheck(valve, { check: next.check, hub: next.hub, random }));
  }
  return told(model, { ...of, evidence, minutes, checks });
}

/**
 * Both orders check on until one repair is sure, or the valve surely sound. The engine leaves what tells next to nothing,
 * and looks once more at a reading on which all hangs; a textbook has each check once.
 */
function nextOf(
  model: Model,
  of: { readonly evidence: readonly Evidence[]; readonly standing: Standing; readonly order: Order },
): Suggestion | undefined {
  const question = questionOf(model, believe(model, of.evidence));
  const sure = isSure(question);
  if (sure && of.order === 'textbook') return undefined;
  const all = suggestions(model, { ...of, question });
  if (sure) return lookThatPays(model, { ...of, question, all }) ?? undefined;
  if (of.order === 'engine') return all.find(({ bits }) => bits >= TELLS_BITS);
  const place = ({ check, moveMinutes }: Suggestion) => {
    const at = TEXTBOOK.indexOf(check);
    return (at < 0 ? 100 : at) + (moveMinutes > 0 ? 1000 : 0) + (moveMinutes > 30 ? 1000 : 0);
  };
  return all.filter(({ again }) => !again).sort((a, b) => place(a) - place(b))[0];
}

function told(
  model: Model,
  of: {
    readonly faults: readonly Given[];
    readonly evidence: readonly Evidence[];
    readonly minutes: number;
    readonly checks: number;
  },
): Look {
  const ranking = causeRanking(model, believe(model, of.evidence));
  const named = ranking[0]?.id ?? SOUND;
  const truth = of.faults.length === 0 ? [SOUND] : of.faults.map(({ cause }) => cause);
  const three = new Set(ranking.slice(0, 3).map(({ id }) => repairFor(id)));
  const sameRepair = truth.some((cause) => repairFor(cause) === repairFor(named));
  return {
    minutes: of.minutes,
    checks: of.checks,
    first: sameRepair || truth.some((cause) => homeOf(model, cause).includes(named)),
    sameRepair,
    threeHoldAll: truth.every((cause) => three.has(repairFor(cause))),
    named,
  };
}

const GROUPS = new WeakMap<Model, readonly (readonly CauseId[])[]>();

/** The causes that no look from outside tells from this one. */
function homeOf(model: Model, cause: CauseId): readonly CauseId[] {
  const groups =
    GROUPS.get(model) ??
    groupsAlike(
      model,
      model.checks.filter((id) => fromOutside(model, id)),
    );
  GROUPS.set(model, groups);
  return groups.find((group) => group.includes(cause)) ?? [cause];
}
