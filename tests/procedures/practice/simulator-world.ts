import { answerCheck } from '../../../procedures/practice/answer.ts';
import type { Given } from '../../../procedures/practice/faults.ts';
import { seeded } from '../../../procedures/practice/random.ts';
import { simulatedValve } from '../../../procedures/practice/simulated.ts';
import { type CauseId, SOUND } from '../../../procedures/troubleshooting/causes.ts';
import type { CheckId } from '../../../procedures/troubleshooting/checks.ts';
import { believe, causeRanking } from '../../../procedures/troubleshooting/engine/belief.ts';
import { decide, isSure } from '../../../procedures/troubleshooting/engine/decide.ts';
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
import { alikeWith, standingAtStart } from '../troubleshooting/simulate.ts';

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

const CHECKS_MOST = 60;

export type Order = 'engine' | 'textbook';

/** One search on a simulated valve. */
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
 * The engine goes on while it advises a check, and stops where it says that to repair costs less. A textbook has each
 * check once, until one repair is sure.
 */
function nextOf(
  model: Model,
  of: { readonly evidence: readonly Evidence[]; readonly standing: Standing; readonly order: Order },
): Suggestion | undefined {
  const belief = believe(model, of.evidence);
  if (of.order === 'engine') {
    const { best, check } = decide(model, { ...of, belief });
    return best === 'check' ? (check ?? undefined) : undefined;
  }
  const question = questionOf(model, belief);
  if (isSure(question)) return undefined;
  const place = ({ check, moveMinutes }: Suggestion) => {
    const at = TEXTBOOK.indexOf(check);
    return (at < 0 ? 100 : at) + (moveMinutes > 0 ? 1000 : 0) + (moveMinutes > 30 ? 1000 : 0);
  };
  return suggestions(model, { ...of, question })
    .filter(({ again }) => !again)
    .sort((a, b) => place(a) - place(b))[0];
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
    first: sameRepair || truth.some((cause) => alikeWith(model, cause).includes(named)),
    sameRepair,
    threeHoldAll: truth.every((cause) => three.has(repairFor(cause))),
    named,
  };
}
