import type { ConditionId, Needs, StateOf } from './conditions.ts';

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
export interface ActionClassRow {
  readonly name: string;
  /** What goes wrong without the needs, as a technician would say it. */
  readonly danger: string;
  readonly needs: Needs;
  /** What the act itself makes worse, whatever comes of it: every answer to such a step records this. */
  readonly leaves?: Leaves;
  readonly source: string;
}

type Leaves = { readonly [C in ConditionId]?: StateOf<C> };

const PRACTICE = 'common practice, no source';

const A = { supplyAir: ['isolated', 'absent'] } as const satisfies Needs;
const T = { trappedAir: ['isolated', 'absent'] } as const satisfies Needs;
const P = {
  processInlet: ['isolated', 'absent'],
  processOutlet: ['isolated', 'absent'],
} as const satisfies Needs;
const D = { residue: ['cleared', 'absent'] } as const satisfies Needs;
const E = { electrical: ['isolated', 'absent'] } as const satisfies Needs;
const G = { weight: ['hung', 'absent'] } as const satisfies Needs;
const H = { temperature: ['safe', 'absent'] } as const satisfies Needs;
const B = { loop: ['manual', 'absent'], bypass: ['open', 'absent'] } as const satisfies Needs;
const NO_CASE_AIR = { signalAir: ['isolated', 'absent'] } as const satisfies Needs;
const SIGNED = { workSignOff: ['given'] } as const satisfies Needs;
const LINE_OFF = { controllerLine: ['capped', 'absent'] } as const satisfies Needs;
const SPRING_SHUT_IN = { spring: ['contained', 'released', 'absent'] } as const satisfies Needs;
const SPRING_FREE = { spring: ['released', 'absent'] } as const satisfies Needs;
const AIR_OFF = { ...A, ...T, ...NO_CASE_AIR } as const satisfies Needs;
/** One air source in the technician's hand and nothing else that can move the stem (EI-13, EI-53). */
const TEST_AIR_ONLY = {
  ...A,
  ...T,
  ...P,
  ...LINE_OFF,
  ...SPRING_SHUT_IN,
  ...SIGNED,
} as const satisfies Needs;

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
    name: 'break a tube joint of the signal line',
    danger: 'Venting moves the valve to its fail position; a tube end whips.',
    needs: { ...B, ...A, ...T, ...E },
    source: `EI-40, ${PRACTICE}`,
  },
  openElectricCover: {
    name: 'open the cover of an electric positioner or converter',
    danger: 'A live cover in a classified area can ignite; the valve can jump.',
    needs: { ...E, ...A },
    source: `EI-41, ${PRACTICE}`,
  },
  openPneumaticCover: {
    name: 'open the cover of a pneumatic positioner with air on',
    danger: 'A touched flapper makes the valve jump.',
    needs: { ...B, consent: ['given'] },
    source: `EI-41, ${PRACTICE}`,
  },
  connectTestAir: {
    name: 'connect test air to the case',
    danger: 'A second source or a live line moves the stem when nobody expects it.',
    needs: { ...TEST_AIR_ONLY, ...NO_CASE_AIR },
    leaves: { testAir: 'connected', signalAir: 'live' },
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
    needs: { ...TEST_AIR_ONLY, signalAir: ['held'], testAir: ['connected'], plug: ['off seat'] },
    leaves: { signalAir: 'live', plug: 'seat unknown' },
    source: PRACTICE,
  },
  windAdjusterOnTestAir: {
    name: 'wind the spring adjuster on held test air',
    danger: 'The spring moves the stem as the adjuster turns; air that changes moves it without warning.',
    needs: { ...TEST_AIR_ONLY, signalAir: ['held'], testAir: ['connected'] },
    leaves: { signalAir: 'live', plug: 'seat unknown' },
    source: `EI-42, ${PRACTICE}`,
  },
  backOffAdjuster: {
    name: 'back off the spring adjuster',
    danger: 'The spring was balancing the stem; the process can push it.',
    needs: { ...B, ...AIR_OFF, ...P, ...LINE_OFF, ...SIGNED },
    source: `EI-42, ${PRACTICE}`,
  },
  releaseStemConnector: {
    name: 'release the stem connector',
    danger: 'Stem or plug jumps or drops.',
    needs: { ...AIR_OFF, ...P, ...G, ...SPRING_SHUT_IN, ...SIGNED },
    source: `EI-43, ${PRACTICE}`,
  },
  loosenCaseBolts: {
    name: 'loosen the case bolts of a case with a spring adjuster',
    danger: 'A loaded spring throws the case cover.',
    needs: { ...B, ...AIR_OFF, ...LINE_OFF, ...SPRING_FREE, ...SIGNED },
    source: `EI-45, ${PRACTICE}`,
  },
  loosenCaseHoldingSpring: {
    name: 'loosen a case that itself holds the spring: short bolts first, long bolts evenly last',
    danger: 'A loaded spring throws the case cover.',
    needs: { ...B, ...AIR_OFF, ...LINE_OFF, ...SIGNED },
    source: 'EI-45: manuals of three diaphragm actuators, case as spring restraint',
  },
  openPistonCylinder: {
    name: 'open a piston cylinder',
    danger: 'The end cap is thrown.',
    needs: { ...AIR_OFF, ...SPRING_SHUT_IN, ...SIGNED },
    source: 'EI-46: manual of a spring-return actuator, appendix A',
  },
  liftActuator: {
    name: 'lift the actuator off the valve',
    danger: 'The packing may no longer be held down; the weight swings.',
    needs: { ...AIR_OFF, ...P, ...E, ...G, ...SPRING_SHUT_IN, ...SIGNED },
    source: `EI-47, ${PRACTICE}`,
  },
  removePacking: {
    name: 'loosen the gland or remove the packing',
    danger: 'The stem blows out; hot or toxic residue follows it.',
    needs: { ...AIR_OFF, ...P, ...D, ...H, ...SIGNED },
    source: `EI-49, ${PRACTICE}`,
  },
  breakBonnetJoint: {
    name: 'break the bonnet joint',
    danger: 'Trapped pressure throws the bonnet. Far side first, joint cracked before the nuts come off.',
    needs: { ...AIR_OFF, ...P, ...D, ...H, ...SPRING_SHUT_IN, ...SIGNED },
    source: `EI-50, ${PRACTICE}`,
  },
  removeTrim: {
    name: 'remove plug, cage, seat or bellows',
    danger: 'Pockets in cage and bellows keep pressure and residue.',
    needs: { ...AIR_OFF, ...P, ...D, ...H, ...SPRING_SHUT_IN, ...G, ...SIGNED },
    source: `EI-51, ${PRACTICE}`,
  },
  takeOutOfLine: {
    name: 'take the valve out of the line',
    danger: 'The pipe springs; the line is left without support.',
    needs: { ...AIR_OFF, ...P, ...D, ...H, ...G, ...E, ...SIGNED },
    source: `EI-52, ${PRACTICE}`,
  },
  ventCase: {
    name: 'vent the air from the case',
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
    danger: 'Two air sources on one case.',
    needs: { ...NO_CASE_AIR, testAir: ['off'], loop: ['manual', 'absent'] },
    source: `EI-10, ${PRACTICE}`,
  },
  restoreSupply: {
    name: 'take the lock off and open the supply air',
    danger: 'The valve moves as the air returns.',
    needs: {
      ...SPRING_SHUT_IN,
      testAir: ['off'],
      controllerLine: ['connected', 'absent'],
      loop: ['manual', 'absent'],
    },
    leaves: { supplyLock: 'off', supplyAir: 'live', signalAir: 'live' },
    source: 'EI-10: 29 CFR 1910.147(e)(1), (2)',
  },
  restoreProcess: {
    name: 'take the locks off and open the block valves',
    danger: 'Process returns to an unready valve.',
    needs: {
      ...SPRING_SHUT_IN,
      testAir: ['off'],
      controllerLine: ['connected', 'absent'],
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
