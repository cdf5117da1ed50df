import { COMMISSIONING_ACTIONS } from './commissioning-actions.ts';
import type { Needs } from './conditions.ts';
import {
  A,
  type ActionClassRow,
  AIR_MOVED,
  AIR_OFF,
  B,
  BACK_TOGETHER,
  BY_ADJUSTER,
  D,
  E,
  G,
  H,
  HELD,
  type Leaves,
  LINE_OFF,
  NO_CASE_AIR,
  OPENS,
  P,
  P_TO_OPEN,
  PRACTICE,
  SIGNED,
  SPRING_FREE,
  SPRING_SHUT_IN,
  T,
  TEST_AIR_ONLY,
} from './need-sets.ts';
import { OVERHAUL_ACTIONS } from './overhaul-actions.ts';
import { REPAIR_ACTIONS } from './repair-actions.ts';

export type { ActionClassRow } from './need-sets.ts';

/**
 * Table D: which physical action may be done in which states. Data: a step names its class, and what must be
 * shown before follows from here, so that a procedure's author can neither forget nor soften it.
 *
 * Rows with an EI id come from the table of the trade (energy isolation, table D); their order and needs are
 * `common practice, no source` unless `source` says otherwise. The maker's manual for the valve on the bench
 * outranks every row.
 *
 * Short letters used there: A supply air, T trapped air, P process both sides, D drained and cleared, S spring,
 * E electrical, G weight, H temperature, B process set up for the valve to move.
 */
export const ACTION_CLASSES = {
  setProcessForMovement: {
    name: 'set the process up for the valve to move',
    danger: 'The process is upset when the valve moves.',
    needs: { consent: ['given'] },
    source: `EI-04, ${PRACTICE}`,
  },
  shutSupply: {
    name: 'shut off the supply air',
    danger: 'Without air the valve goes to its fail position.',
    needs: { ...B },
    source: `EI-05, ${PRACTICE}`,
  },
  shutBlockValves: {
    name: 'shut the block valves',
    danger: 'The process loses its flow when the valve is blocked in before the bypass carries it.',
    needs: { ...B },
    source: `EI-05, ${PRACTICE}`,
  },
  drainProcess: {
    name: 'drain the body',
    danger: 'An open drain on an unlocked line floods hot or toxic fluid.',
    needs: { ...B, inletLock: ['on'], outletLock: ['on'] },
    source: 'EI-02, EI-07: 29 CFR 1910.147(d)(3) to (5), order of lock and relief',
  },
  breakSignalLine: {
    name: 'break a tube joint of the air lines, or take regulator or positioner off',
    danger: 'Venting moves the valve to its fail position; a tube end whips.',
    needs: { ...B, ...A, ...T, ...E },
    leaves: { clear: 'not looked at' },
    source: `EI-40, ${PRACTICE}`,
  },
  openElectricCover: {
    name: 'open the cover of an electric positioner or converter',
    danger: 'A live cover in a classified area can ignite; the valve can jump.',
    needs: { ...E, ...A },
    electricalRule: '29 CFR 1910 subpart S, and the class of the area',
    source: `EI-41, ${PRACTICE}`,
  },
  openPneumaticCover: {
    name: 'open the cover of a pneumatic positioner with air on',
    danger: 'A touched flapper makes the valve jump: hands out of the yoke.',
    needs: { ...B, consent: ['given'] },
    source: `EI-41, ${PRACTICE}`,
  },
  readGauge: {
    name: 'read a gauge that is there',
    danger: 'None: nothing is opened.',
    needs: {},
    source: PRACTICE,
  },
  fitGaugeIntoLiveLine: {
    name: 'fit a gauge into a live air line',
    danger: 'The joint blows off in the hand, and the valve jumps as its air is lost.',
    needs: { ...B, consent: ['given'] },
    source: PRACTICE,
  },
  tightenLiveGland: {
    name: 'tighten the gland of a valve under pressure',
    danger: 'A stud that breaks lets the packing blow out; the stem sticks and then jumps.',
    // A valve that is locked out is never on this way: its own locks would be on.
    needs: { consent: ['given'], inletLock: ['off'], outletLock: ['off'], workSignOff: ['none'] },
    source: `EI-48, ${PRACTICE}`,
  },
  connectTestAir: {
    name: 'connect test air to the actuator',
    danger: 'A second source or a live line moves the stem when nobody expects it.',
    needs: { ...TEST_AIR_ONLY, ...NO_CASE_AIR },
    leaves: { testAir: 'connected', signalAir: 'live', clear: 'not looked at' },
    source: `EI-53, ${PRACTICE}`,
  },
  strokeByTestAir: {
    name: 'stroke the valve by test air, hands clear',
    danger: 'The stem moves; a finger in the yoke is crushed.',
    needs: { ...TEST_AIR_ONLY, testAir: ['connected'] },
    source: 'EI-13, EI-53: 29 CFR 1910.147(f)(1)',
  },
  turnPlugStem: {
    name: 'turn the plug stem',
    danger: 'Air that changes drives the connector into the hand; a plug on its seat is scored.',
    needs: { ...HELD, plug: ['off seat'] },
    leaves: AIR_MOVED,
    source: PRACTICE,
  },
  windAdjusterOnTestAir: {
    name: 'wind the spring adjuster on held test air',
    danger: 'The spring moves the stem as the adjuster turns; air that changes moves it without warning.',
    needs: { ...HELD, ...BY_ADJUSTER },
    leaves: AIR_MOVED,
    source: `EI-42, ${PRACTICE}`,
  },
  setIndicatorOnTestAir: {
    name: 'set the travel indicator on held test air',
    danger: 'Air that changes drives the stem past the fingers at the pointer.',
    needs: HELD,
    leaves: AIR_MOVED,
    source: PRACTICE,
  },
  undoYokeNut: {
    name: 'undo the yoke nut under a preloaded spring, part signal held by hand',
    danger:
      'The stem is driven out as the nut comes off. The air is let off again before anything is lifted.',
    needs: { ...HELD, ...E, ...G },
    leaves: { ...AIR_MOVED, ...OPENS },
    source: 'EI-44: manuals of two diaphragm actuators with a preloaded spring',
  },
  backOffAdjuster: {
    name: 'back off the spring adjuster',
    danger: 'The spring was balancing the stem; the process can push it.',
    needs: { ...B, ...AIR_OFF, ...P, ...LINE_OFF, ...SIGNED, ...BY_ADJUSTER },
    // The case stays shut: nothing of it is loosened by this act.
    source: `EI-42, ${PRACTICE}`,
  },
  releaseStemConnector: {
    name: 'release the stem connector',
    danger: 'Stem or plug jumps or drops.',
    // One that its case holds would drive its stem to the stop: that connector comes off on held air.
    needs: { ...AIR_OFF, ...P, ...G, ...SPRING_FREE, ...SIGNED },
    source: `EI-43, ${PRACTICE}`,
  },
  releaseHeldConnector: {
    name: 'release the stem connector of a preloaded spring, its load taken by held test air',
    danger: 'A connector that carries the spring lets the stem shoot to its stop; the plug drops.',
    needs: { ...HELD, ...E, ...G, plug: ['off seat'] },
    leaves: AIR_MOVED,
    source: 'EI-44: manuals of two diaphragm actuators with a preloaded spring',
  },
  loosenCaseBolts: {
    name: 'loosen the case bolts of a case with a spring adjuster',
    danger: 'A loaded spring throws the case cover.',
    // Only backing the adjuster off frees the spring: contained is not enough here.
    needs: { ...B, ...AIR_OFF, ...LINE_OFF, ...SPRING_FREE, ...SIGNED, ...BY_ADJUSTER },
    leaves: OPENS,
    source: `EI-45, ${PRACTICE}`,
  },
  loosenShortCaseBolts: {
    name: 'loosen the short bolts of a case that itself holds the spring',
    danger: 'A loaded spring throws the case cover: the long bolts stay as they are.',
    needs: { ...B, ...AIR_OFF, ...LINE_OFF, ...SIGNED, springHolder: ['case'] },
    leaves: { ...OPENS, shortBolts: 'out' },
    source: 'EI-45: manuals of three diaphragm actuators, case as spring restraint',
  },
  loosenLongCaseBolts: {
    name: 'let the long bolts of a case that itself holds the spring off evenly',
    danger: 'A cover let off on one side is thrown by the spring.',
    needs: {
      ...B,
      ...AIR_OFF,
      ...LINE_OFF,
      ...SIGNED,
      springHolder: ['case'],
      shortBolts: ['out'],
    },
    leaves: OPENS,
    source: 'EI-45: manuals of three diaphragm actuators, case as spring restraint',
  },
  openPistonCylinder: {
    name: 'open a piston cylinder',
    danger: 'The end cap is thrown.',
    needs: { ...AIR_OFF, ...SPRING_SHUT_IN, ...SIGNED },
    leaves: OPENS,
    source: 'EI-46: manual of a spring-return actuator, appendix A',
  },
  liftActuator: {
    name: 'lift the actuator off the valve',
    danger: 'The packing may no longer be held down; the weight swings.',
    needs: { ...AIR_OFF, ...P, ...E, ...G, ...SPRING_SHUT_IN, ...SIGNED },
    leaves: OPENS,
    source: `EI-47, ${PRACTICE}`,
  },
  removePacking: {
    name: 'loosen the gland or remove the packing',
    danger: 'The stem blows out; hot or toxic residue follows it.',
    needs: { ...AIR_OFF, ...P_TO_OPEN, ...D, ...H, ...SIGNED },
    leaves: OPENS,
    source: `EI-49, ${PRACTICE}`,
  },
  breakBonnetJoint: {
    name: 'break the bonnet joint',
    danger: 'Trapped pressure throws the bonnet. Far side first, joint cracked before the nuts come off.',
    needs: { ...AIR_OFF, ...P_TO_OPEN, ...D, ...H, ...SPRING_SHUT_IN, ...SIGNED },
    leaves: OPENS,
    source: `EI-50, ${PRACTICE}`,
  },
  removeTrim: {
    name: 'remove plug, cage, seat or bellows',
    danger: 'Pockets in cage and bellows keep pressure and residue.',
    needs: {
      ...AIR_OFF,
      ...P_TO_OPEN,
      ...D,
      ...H,
      ...SPRING_SHUT_IN,
      ...G,
      ...SIGNED,
      gasTest: ['fresh', 'absent'],
    },
    leaves: OPENS,
    source: `EI-51, ${PRACTICE}`,
  },
  takeOutOfLine: {
    name: 'take the valve out of the line',
    danger: 'The pipe springs; the line is left without support.',
    needs: { ...AIR_OFF, ...P_TO_OPEN, ...D, ...H, ...G, ...E, ...SIGNED },
    leaves: OPENS,
    source: `EI-52, ${PRACTICE}`,
  },
  pressTest: {
    name: 'put test pressure on body or seat',
    danger: 'A joint that is not tight blows out; the block valves hold the test in.',
    needs: { ...TEST_AIR_ONLY, ...B },
    leaves: { processInlet: 'live' },
    source: `EI-54, ${PRACTICE}`,
  },
  ventCase: {
    name: 'vent the air from the actuator',
    danger: 'The stem moves as the air leaves. Never held back: this is the way to safe.',
    needs: {},
    source: PRACTICE,
  },
  disconnectTestAir: {
    name: 'disconnect the test air',
    danger: 'A hose end under pressure whips.',
    needs: { ...NO_CASE_AIR },
    source: PRACTICE,
  },
  reconnectSignalLine: {
    name: 'reconnect the controller line',
    danger: 'Two air sources on one actuator.',
    needs: { ...NO_CASE_AIR, testAir: ['off'], loop: ['manual', 'absent'] },
    source: `EI-10, ${PRACTICE}`,
  },
  restoreSupply: {
    name: 'take the lock off and open the supply air',
    danger: 'The valve moves as the air returns.',
    needs: { ...BACK_TOGETHER, loop: ['manual', 'absent'] },
    leaves: { supplyLock: 'off', supplyAir: 'live', signalAir: 'live' },
    source: 'EI-10: 29 CFR 1910.147(e)(1), (2)',
  },
  restoreSecondSupply: {
    name: 'take the lock off and open the second air feed',
    danger: 'The valve moves as the air returns.',
    needs: { ...BACK_TOGETHER, loop: ['manual', 'absent'] },
    leaves: { secondSupplyLock: 'off', secondSupply: 'live', signalAir: 'live' },
    source: 'EI-10: 29 CFR 1910.147(e)(1), (2)',
  },
  unlockProcess: {
    name: 'take the locks off the block valves, and leave them shut',
    danger: 'Anybody can open what is not locked.',
    needs: { ...BACK_TOGETHER, returnSignOff: ['given'] },
    leaves: {
      inletLock: 'off',
      outletLock: 'off',
      processInlet: 'live',
      processOutlet: 'live',
      told: 'nobody',
    },
    source: 'EI-10, EI-11: 29 CFR 1910.147(e)(1), (2)',
  },
  restoreProcess: {
    name: 'open the block valves',
    danger: 'Process returns to an unready valve.',
    needs: {
      ...BACK_TOGETHER,
      inletLock: ['off'],
      outletLock: ['off'],
      told: ['told'],
      returnSignOff: ['given'],
    },
    leaves: { processInlet: 'live', processOutlet: 'live' },
    source: `EI-55, ${PRACTICE}`,
  },
  shutBypass: {
    name: 'shut the bypass',
    danger: 'The process loses its flow when the valve does not carry it yet.',
    needs: {
      inletLock: ['off'],
      outletLock: ['off'],
      processInlet: ['live', 'absent'],
      processOutlet: ['live', 'absent'],
    },
    source: `EI-55, ${PRACTICE}`,
  },
  ...OVERHAUL_ACTIONS,
  ...COMMISSIONING_ACTIONS,
  ...REPAIR_ACTIONS,
} as const satisfies Record<string, ActionClassRow>;

export type ActionClass = keyof typeof ACTION_CLASSES;

/** @example leavesOf('turnPlugStem').signalAir // 'live': held air ends with the turning */
export function leavesOf(action: ActionClass): Leaves {
  const row: ActionClassRow = ACTION_CLASSES[action];
  return row.leaves ?? {};
}

/** @example needsOf('turnPlugStem').signalAir // ['held'] */
export function needsOf(action: ActionClass): Needs {
  return ACTION_CLASSES[action].needs;
}
