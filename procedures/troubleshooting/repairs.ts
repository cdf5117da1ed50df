import type { ActionClass } from '../../safety/action-classes.ts';
import type { CauseId } from './causes.ts';
import type { Hub } from './check.ts';
import type { CheckId } from './checks.ts';
import type { ValveFacts } from './valve-facts.ts';

/**
 * What puts a cause right, and the check that proves it. Causes with one repair form one class: what tells them
 * apart changes nothing that anybody does. Minutes: judgement.
 */
export interface Repair {
  readonly words: string;
  readonly todo: string;
  readonly cures: readonly CauseId[];
  readonly minutes: number;
  readonly hub: Hub;
  readonly consent: boolean;
  readonly exposes: readonly ActionClass[];
  /** The first of these that the valve has proves it; none: it proves itself in service. */
  readonly proof: readonly CheckId[];
}

const operator = { hub: 'in service', consent: true, exposes: [] } as const;
const onBypass = { hub: 'bypassed', consent: true, exposes: [] } as const;
const airOffLine = { hub: 'bypassed', consent: true, exposes: ['breakSignalLine'] } as const;
const isolated = { hub: 'isolated', consent: true } as const;

export const REPAIRS = {
  leaveAlone: {
    words: 'Leave the valve alone',
    todo: 'Hand the finding to whoever complained; the valve goes back as it is.',
    cures: ['nothingWrong'],
    minutes: 5,
    hub: 'in service',
    consent: false,
    exposes: [],
    proof: ['smallStep'],
  },
  controllerBack: {
    words: 'Put the controller right',
    todo: 'Ask the control room to put mode, action or limits back.',
    cures: ['outputHeld', 'wrongAction'],
    minutes: 10,
    proof: ['controllerMode', 'trend'],
    ...operator,
  },
  tune: {
    words: 'Have the loop tuned',
    todo: 'Hand the loop over for tuning, with the trend.',
    cures: ['tunedTooTight'],
    minutes: 30,
    proof: ['holdInManual', 'trend'],
    ...operator,
  },
  findDisturbance: {
    words: 'Look for the swing elsewhere',
    todo: 'Hand the trend to the process engineer: the swing comes from another loop or machine.',
    cures: ['disturbance'],
    minutes: 30,
    proof: ['trend'],
    ...operator,
  },
  mendMeasurement: {
    words: 'Put transmitter or impulse line right',
    todo: 'Check the transmitter and its line; adjust or change it.',
    cures: ['measurementWrong'],
    minutes: 60,
    proof: ['secondMeasurement'],
    ...operator,
  },
  mendWiring: {
    words: 'Mend the signal wiring',
    todo: 'Find the open or leaking place from terminal to terminal and mend it.',
    cures: ['wiringOpen', 'currentLow'],
    minutes: 40,
    proof: ['loopCurrent'],
    ...onBypass,
  },
  cleanSource: {
    words: 'Clean or change the transducer or the pilot of the controller',
    todo: 'Isolate its air; clean restriction, nozzle and inlet filter, or change it.',
    cures: ['transducerRestriction', 'transducerNozzle', 'controllerRestriction', 'controllerNozzle'],
    minutes: 40,
    proof: ['sourceFivePoints', 'sourceOutlet'],
    ...airOffLine,
  },
  adjustSource: {
    words: 'Adjust the transducer',
    todo: 'Set zero, then span, at five points up and down.',
    cures: ['transducerOff', 'rangeMismatch'],
    minutes: 20,
    proof: ['sourceFivePoints', 'strokeByController'],
    ...onBypass,
  },
  tightenSignalTube: {
    words: 'Make the signal tube tight',
    todo: 'Air off the line and vented; tighten or change the fitting; air on, soap again.',
    cures: ['signalTubeLeaks'],
    minutes: 8,
    proof: ['soapSignalTube'],
    ...airOffLine,
  },
  clearSignalTube: {
    words: 'Clear or change the signal tube',
    todo: 'Air off and vented; blow it through or change it.',
    cures: ['signalTubeBlocked'],
    minutes: 25,
    proof: ['valveAgainstSource', 'smallStep'],
    ...airOffLine,
  },
  rearm: {
    words: 'Find why it tripped, then have it armed again',
    todo: 'Find the reason first. Then the operator arms solenoid or lock-up; change it where it sticks.',
    cures: ['lockUpShut', 'tripSolenoid', 'boosterSticks'],
    minutes: 15,
    proof: ['accessories', 'smallStep'],
    ...operator,
  },
  openSupply: {
    words: 'Give the air back',
    todo: 'Find why it was shut. Open the cock slowly, the operator told.',
    cures: ['supplyLost', 'positionerSupplyShut'],
    minutes: 8,
    proof: ['supplyPressure', 'smallStep'],
    ...operator,
  },
  setRegulator: {
    words: 'Set or change the supply regulator',
    todo: 'Set it to the pressure of the plate; change it where it does not hold.',
    cures: ['supplyLow', 'supplyHigh'],
    minutes: 5,
    proof: ['supplyPressure'],
    ...operator,
  },
  cleanAir: {
    words: 'Drain the bowl, change the filter',
    todo: 'Drain. On the bypass change the filter element; look where the water comes from.',
    cures: ['supplyStarves', 'wetAir'],
    minutes: 15,
    proof: ['supplyDroop', 'filterBowl'],
    ...onBypass,
  },
  pressPlunger: {
    words: 'Clean the relay restriction by its plunger',
    todo: 'Hands clear of the stem. Press the plunger; where it does not help, change the relay.',
    cures: ['relayRestriction', 'restrictionTop', 'restrictionBottom'],
    minutes: 5,
    proof: ['pressPlunger', 'pressBothPlungers', 'smallStep'],
    ...onBypass,
  },
  serviceRelay: {
    words: 'Clean or change nozzle, flapper and relay of the positioner',
    todo: 'Isolate; clean the nozzle, square the flapper, change the relay that sticks or leaks.',
    cures: [
      'relayNozzle',
      'nozzleTop',
      'nozzleBottom',
      'relaySticks',
      'relayTopSticks',
      'relayBottomSticks',
      'relayWorn',
      'flapperBent',
    ],
    minutes: 60,
    exposes: ['breakSignalLine'],
    proof: ['strokeByController'],
    ...isolated,
  },
  changePositioner: {
    words: 'Change bellows, range spring or the positioner itself',
    todo: 'Isolate; change the part or the positioner; set zero and span.',
    cures: ['bellowsRuptured', 'rangeSpringOff', 'electricPartDead'],
    minutes: 90,
    exposes: ['breakSignalLine'],
    proof: ['strokeByController'],
    ...isolated,
  },
  mendLinkage: {
    words: 'Mend the feedback linkage',
    todo: 'On the bypass, hands clear: connect or change it, set zero and span.',
    cures: ['linkageOff', 'linkageWorn'],
    minutes: 30,
    proof: ['strokeByController'],
    ...onBypass,
  },
  adjustPositioner: {
    words: 'Adjust the positioner',
    todo: 'Zero, then span; turn the liveliness back where it hunts.',
    cures: ['zeroOrSpanWrong', 'gainTooHigh'],
    minutes: 20,
    proof: ['strokeByController'],
    ...onBypass,
  },
  swapTubes: {
    words: 'Put the two output tubes on their own ports',
    todo: 'Air off and vented; exchange the tubes.',
    cures: ['tubesCrossed'],
    minutes: 15,
    proof: ['strokeByController'],
    ...airOffLine,
  },
  tightenOutputTube: {
    words: 'Make the tube to the actuator tight or clear',
    todo: 'Air off and vented; tighten, clear or change it; air on, soap again.',
    cures: ['topTubeLeaks', 'bottomTubeLeaks', 'actuatorTubeLeaks', 'outputTubeBlocked'],
    minutes: 12,
    proof: ['soapOutputTubes', 'soapActuatorTube'],
    ...airOffLine,
  },
  tightenCase: {
    words: 'Tighten the case nuts',
    todo: 'Air off and case vented. Crosswise, in small steps, to the torque stated; air on, soap again. Twice at most: then the joint face is damaged and it is opened, isolated, spring released.',
    cures: ['caseJoint'],
    minutes: 20,
    proof: ['soapCaseJoint'],
    ...onBypass,
  },
  changeDiaphragm: {
    words: 'Change the diaphragm',
    todo: 'Isolate, release the spring, open the case.',
    cures: ['diaphragmTorn', 'diaphragmPorous'],
    minutes: 150,
    exposes: ['loosenCaseBolts'],
    proof: ['blockActuatorSide', 'soapAdjuster'],
    ...isolated,
  },
  changeSeals: {
    words: 'Change the seals of the actuator',
    todo: 'Isolate; change stem, rod or piston seals, dress the bore.',
    cures: [
      'caseStemSeal',
      'pistonSealSpring',
      'pistonSeals',
      'rodSeal',
      'boreScored',
      'rodOff',
      'plateLoose',
    ],
    minutes: 180,
    exposes: ['openPistonCylinder'],
    proof: ['blockActuatorSide', 'strokeByController'],
    ...isolated,
  },
  changeSpring: {
    words: 'Change the spring',
    todo: 'Isolate; release it as its kind asks; fit the spring of the sheet.',
    cures: ['springBroken', 'wrongSpring'],
    minutes: 150,
    exposes: ['backOffAdjuster', 'loosenCaseBolts'],
    proof: ['airAtTravel', 'benchSetUncoupled'],
    ...isolated,
  },
  setSpring: {
    words: 'Set the bench set',
    todo: 'On held test air wind the adjuster to the bench set of the sheet.',
    cures: ['springTooTight', 'springSlack'],
    minutes: 30,
    exposes: ['windAdjusterOnTestAir'],
    proof: ['airAtTravel', 'benchSetUncoupled'],
    ...isolated,
  },
  clearVent: {
    words: 'Clear the vent',
    todo: 'Clear it and fit a vent cap.',
    cures: ['springVentPlugged'],
    minutes: 3,
    proof: ['springSideVent'],
    ...operator,
  },
  shutEqualiser: {
    words: 'Shut the equalising valve',
    todo: 'Hands clear of the stem; shut it. Where it still passes, change it.',
    cures: ['equaliserOpen', 'equaliserPasses'],
    minutes: 3,
    proof: ['equaliser', 'smallStep'],
    ...operator,
  },
  freeStop: {
    words: 'Put handwheel and stops back',
    todo: 'Hands clear of the stem; handwheel to neutral, stops to rated travel.',
    cures: ['stopEngaged'],
    minutes: 2,
    proof: ['handwheelAndStops', 'smallStep'],
    ...operator,
  },
  repack: {
    words: 'Ease or renew the packing',
    todo: 'Isolate, drain, clear. Ease the gland and work the stem; where that does not help, repack.',
    cures: ['packingTight'],
    minutes: 90,
    exposes: ['removePacking'],
    proof: ['upAgainstDown', 'smallStep'],
    ...isolated,
  },
  drawUpGland: {
    words: 'Draw the gland up',
    todo: 'On the bypass, from upwind, a flat at a time on both nuts, the stem kept working. Still leaking: isolate and repack.',
    cures: ['packingLeaks'],
    minutes: 15,
    proof: ['fluidOutside', 'smallStep'],
    ...onBypass,
  },
  setCoupling: {
    words: 'Set the stem coupling and the plug',
    todo: 'Isolate; set indicator, coupling and seating turns as the procedure says.',
    cures: ['couplingSlipped', 'plugSetWrong'],
    minutes: 45,
    exposes: ['releaseStemConnector'],
    proof: ['strokeByController', 'leakShut'],
    ...isolated,
  },
  openValve: {
    words: 'Open the body and renew what is worn',
    todo: 'Isolate, drain, clear; open; renew plug, seat, stem or seal; repack.',
    cures: [
      'plugSeized',
      'plugOff',
      'stemBent',
      'seatWorn',
      'objectInSeat',
      'fouled',
      'cavitation',
      'balanceSeal',
      'wrongTrim',
      'bellowsSealFailed',
      'turnedRound',
    ],
    minutes: 360,
    exposes: ['breakBonnetJoint', 'removeTrim'],
    proof: ['leakShut', 'strokeByController'],
    ...isolated,
  },
  tightenBonnet: {
    words: 'Renew the bonnet joint',
    todo: 'Isolate, drain, clear; renew the gasket.',
    cures: ['bonnetLeaks'],
    minutes: 180,
    exposes: ['breakBonnetJoint'],
    proof: ['fluidOutside'],
    ...isolated,
  },
  lineUpRight: {
    words: 'Have the line-up put right',
    todo: 'The operator puts bypass, block valves and strainer right.',
    cures: ['processBypassPasses', 'lineThrottled'],
    minutes: 5,
    proof: ['lineUp'],
    ...operator,
  },
  sizing: {
    words: 'Have the sizing looked at',
    todo: 'Hand the figures to the engineer: thrust, size or fluid no longer fit.',
    cures: ['thrustTooSmall', 'tooLarge', 'tooSmall', 'fluidChanged'],
    minutes: 30,
    proof: ['trend'],
    ...operator,
  },
  putRigRight: {
    words: 'Put the test gear right and repeat the finding',
    todo: 'Change the gauge or make the rig tight; take the reading again.',
    cures: ['gaugeWrong', 'rigLeaks', 'rigDoesNotBleed'],
    minutes: 10,
    hub: 'in service',
    consent: false,
    exposes: [],
    proof: ['gaugeAgainstGauge', 'rigHold', 'rigBleed'],
  },
} as const satisfies Record<string, Repair>;

export type RepairId = keyof typeof REPAIRS;

export const REPAIR_IDS = Object.keys(REPAIRS) as readonly RepairId[];

export function repairOf(id: RepairId): Repair {
  return REPAIRS[id];
}

/**
 * What a repair exposes people to on this valve: a case that holds its spring is opened another way, and so is a
 * cylinder.
 */
export function repairExposes(id: RepairId, v: ValveFacts): readonly ActionClass[] {
  const { exposes } = repairOf(id);
  const opensActuator = exposes.includes('loosenCaseBolts') || exposes.includes('openPistonCylinder');
  if (!opensActuator) return exposes;
  if (v.actuator === 'piston') return ['openPistonCylinder'];
  if (v.springHeldBy === 'adjuster') return ['backOffAdjuster', 'loosenCaseBolts'];
  return ['loosenShortCaseBolts', 'loosenLongCaseBolts'];
}

/** The repair that puts a cause right. */
export function repairFor(cause: CauseId): RepairId {
  const found = BY_CAUSE.get(cause);
  if (found === undefined) throw new Error(`no repair for ${cause}`);
  return found;
}

const BY_CAUSE: ReadonlyMap<CauseId, RepairId> = new Map(
  REPAIR_IDS.flatMap((id) => repairOf(id).cures.map((cause) => [cause, id] as const)),
);
