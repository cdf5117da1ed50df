import type { Cause, Grade, Shows } from '../cause.ts';
import { relayAtItsEnd, SHUT_IN, standsPartWay } from '../driven.ts';
import { frictionGrades } from '../friction.ts';
import { looseJoint } from '../loose-joint.ts';
import { loading, otherEnd, signalLost } from '../senses.ts';
import type { ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const doubleActing = (v: ValveFacts) => !v.spring;

const WEAK_LOOK = {
  flapperAgainstGauges: { 'covered, low': 0.18 },
  bothFlappersAgainstGauges: { 'top covered, low': 0.09, 'bottom covered, low': 0.09 },
} as const;

/** Both ends where a leak of either is made good by little, and where it takes most of what the relay gives. */
const SUNK_A_LITTLE = {
  topPressure: { pieces: [[0.6, 35, 58]] },
  bottomPressure: { pieces: [[0.6, 35, 58]] },
} as const;
const SUNK_FAR = {
  topPressure: { pieces: [[0.88, 2, 40]] },
  bottomPressure: { pieces: [[0.88, 2, 40]] },
} as const;

/**
 * A leak on one output tube: at rest both ends sink together, for the forces must balance. Where the relay makes it good
 * nothing else is seen of it; a larger one leaves it little to move the stem with.
 */
function outputTube(end: 'top' | 'bottom', v: ValveFacts): readonly Grade[] {
  const soapOutputTubes = { [end]: 0.97 };
  return [
    {
      id: 'made good',
      share: 0.4,
      shows: { ...SUNK_A_LITTLE, listenExhaust: { loud: 0.1 }, soapOutputTubes },
    },
    {
      id: 'slow',
      share: 0.6,
      shows: {
        ...WEAK_LOOK,
        flapperAgainstGauges: { 'covered, low': 0.35 },
        // The end that leaks hardly rises, whichever way the relay stands.
        flapperByHand: { 'one way': 0.3 },
        travelAgainstOutput: { [loading(v, otherEnd(end)).leans]: 0.4 },
        smallStep: { slow: 0.65, swings: 0.1 },
        cylinderGaugesOnStep: { slow: 0.6 },
        strokeByController: { slow: 0.72 },
        ...SUNK_FAR,
        listenExhaust: { loud: 0.45, 'no bleed': 0.15 },
        soapOutputTubes,
        supplyDroop: { large: 0.42 },
      },
    },
  ];
}

/** The relays make good what goes across: it takes air, and shows in nothing else. */
const MADE_GOOD = {
  listenExhaust: { loud: 0.2 },
  positionerExhaust: { blows: 0.12 },
  supplyPressure: { pieces: [[0.15, -8, -3]] },
} as const;

/**
 * A leak from one end to the other, by the piston or by its equalising valve. One that the positioner makes good takes
 * air, and shows in nothing else; a larger one makes the stem slow.
 */
function leakAcross(of: {
  readonly leans: Readonly<Record<string, number>>;
  readonly shows: Shows;
}): readonly Grade[] {
  return [
    {
      id: 'made good',
      share: 0.5,
      shows: { ...MADE_GOOD, ...of.shows },
    },
    {
      id: 'slow',
      share: 0.5,
      shows: {
        ...WEAK_LOOK,
        trend: { sluggish: 0.55 },
        supplyDroop: { large: 0.55 },
        travelAgainstOutput: of.leans,
        smallStep: { slow: 0.77 },
        topPressure: { low: 0.44 },
        bottomPressure: { low: 0.44 },
        cylinderGaugesOnStep: { slow: 0.52 },
        listenExhaust: { loud: 0.5, 'no bleed': 0.04 },
        positionerExhaust: { blows: 0.53 },
        // At rest both ends stand about alike: shut in, hardly anything goes across.
        blockActuatorSide: { 'slow fall': 0.2, 'fast fall': 0.08 },
        strokeByController: { slow: 0.72 },
        strokeOnTestAir: { slow: 0.72 },
        ...of.shows,
      },
    },
  ];
}

const LATE_AND_SHORT = { slow: 0.45, 'short of open': 0.12, 'short of shut': 0.18 } as const;

const EQUALISER_STANDS_OPEN = {
  equaliser: { open: 0.99 },
  equaliserFeel: { part: 0.92 },
  crossLeak: { passes: 0.97 },
} as const;

/**
 * Both ends are one room. The stem has the force of the rod's area alone, and stays where packing and flow leave it;
 * the relay feeds the one end wide open and lets the other out, so that air runs through and the ends stand alike.
 */
function joinedEnds(v: ValveFacts): Shows {
  const drifts = v.balancedPlug ? 0.05 : 0.2;
  const flowOpens = v.flowTendsTo === 'open';
  const alike = { pieces: [[0.93, 18, 58]] } as const;
  return {
    ...standsPartWay({ share: 0.9, atOnce: 0.5 }),
    travelAgainstOutput: {
      'stays part way': 0.9 - drifts,
      [flowOpens ? 'stays open' : 'stays shut']: drifts,
    },
    topPressure: alike,
    bottomPressure: alike,
    cylinderGaugesOnStep: { none: 0.8, slow: 0.08 },
    listenExhaust: { loud: 0.75 },
    positionerExhaust: { blows: 0.78 },
    supplyPressure: { pieces: [[0.75, -22, -3]] },
    supplyDroop: { large: 0.3 },
    flapperByHand: { 'not at all': 0.5, creeps: 0.2, 'one way': 0.05 },
    flapperAgainstGauges: { 'covered, low': 0.45 },
    bothFlappersAgainstGauges: { 'top covered, low': 0.22, 'bottom covered, low': 0.22 },
    blockActuatorSide: { 'slow fall': 0.15, 'fast fall': 0.1 },
  };
}

/** Opened by a turn: the relay makes most of it good, what it gives the stem comes late, and little is left for the seat. */
function endsPartSlowly(): Shows {
  return {
    ...WEAK_LOOK,
    trend: { sluggish: 0.45 },
    travelAgainstOutput: { 'less open': 0.2, 'more open': 0.2 },
    smallStep: { slow: 0.65 },
    strokeByController: LATE_AND_SHORT,
    strokeOnTestAir: LATE_AND_SHORT,
    leakShut: { passes: 0.2, 'passes much': 0.2 },
    topPressure: { low: 0.3 },
    bottomPressure: { low: 0.3 },
    cylinderGaugesOnStep: { slow: 0.5 },
    listenExhaust: { loud: 0.5 },
    positionerExhaust: { blows: 0.5 },
    supplyPressure: { pieces: [[0.5, -12, -3]] },
    supplyDroop: { large: 0.4 },
    blockActuatorSide: { 'slow fall': 0.15, 'fast fall': 0.05 },
  };
}

/** The positioner drives at once, the actuator comes after. */
function narrowTube(): Shows {
  return {
    controllerOutput: { swings: 0.35 },
    holdInManual: { stops: 0.3, 'goes on': 0.05 },
    trend: { sluggish: 0.5, 'fast swing': 0.25 },
    smallStep: { slow: 0.7, swings: 0.12, 'no move': 0.1 },
    strokeByController: { slow: 0.85 },
    strokeOnTestAir: { slow: 0.85 },
    cylinderGaugesOnStep: { slow: 0.75 },
    outputGauge: { slow: 0.7, 'without the stem': 0.15 },
    flapperByHand: { creeps: 0.5, 'one way': 0.15, 'not at all': 0.2 },
    positionerExhaust: { nothing: 0.2 },
  };
}

/** A kink that costs nothing while little air goes through it. */
const KINKED: Shows = {
  trend: { sluggish: 0.1 },
  smallStep: { slow: 0.2 },
  strokeByController: { slow: 0.25 },
  strokeOnTestAir: { slow: 0.25 },
  cylinderGaugesOnStep: { slow: 0.4 },
  outputGauge: { slow: 0.4 },
  flapperByHand: { creeps: 0.4, 'not at all': 0.2 },
};

/** Nothing comes and nothing goes: what stood in the actuator stays, or leaks away. */
function shutTube(v: ValveFacts): Shows {
  return {
    ...standsPartWay({ share: 0.9, atOnce: 0.5 }),
    ...SHUT_IN,
    cylinderGaugesOnStep: { none: 0.85 },
    outputGauge: { none: 0.45, 'without the stem': 0.4 },
    flapperByHand: { 'not at all': 0.6, 'one way': 0.1 },
    flapperAgainstGauges: { 'covered, low': 0.4 },
    bothFlappersAgainstGauges: { 'top covered, low': 0.25, 'bottom covered, low': 0.25 },
    nozzlePressure: { 'stuck high': 0.4, 'stuck low': 0.4 },
    nozzlePressureTop: { 'stuck high': 0.4, 'stuck low': 0.4 },
    nozzlePressureBottom: { 'stuck high': 0.4, 'stuck low': 0.4 },
    ...relayAtItsEnd(v, 1),
  };
}

/** A cylinder with air on both sides. Effects: judgement, the direction by the forces. */
export const pistonCauses = {
  pistonSeals: {
    words: 'The piston seals leak from one end to the other',
    family: 'actuator',
    prior: 3,
    basis: BASIS.leaks,
    when: doubleActing,
    inside: 'a worn ring, a damaged bore and a piston gasket look alike until it is open',
    shows: () => ({}),
    grades: (v) =>
      leakAcross({
        leans: { [signalLost(v).leans]: 0.3 },
        shows: { crossLeak: { passes: 0.97 }, openActuator: { 'piston seal worn': 0.97 } },
      }),
  },
  rodSeal: {
    words: 'Rod seal or end cap of the cylinder leaks',
    family: 'actuator',
    prior: 2,
    basis: BASIS.leaks,
    when: (v) => v.actuator === 'piston',
    shows: () => ({}),
    // As of a tube that leaks: without a spring the other end goes down with it.
    grades: (v) => {
      const always = {
        soapCylinder: { bubbles: 0.97 },
        blockActuatorSide: { 'slow fall': 0.45, 'fast fall': 0.45 },
      };
      const [little, far] = v.spring ? [{}, {}] : [SUNK_A_LITTLE, SUNK_FAR];
      return [
        { id: 'made good', share: 0.6, shows: { ...little, listenExhaust: { loud: 0.2 }, ...always } },
        {
          id: 'slow',
          share: 0.4,
          shows: { ...far, smallStep: { slow: 0.6 }, listenExhaust: { loud: 0.6 }, ...always },
        },
      ];
    },
  },
  equaliserOpen: {
    words: 'The equalising valve of the cylinder was left open',
    family: 'actuator',
    prior: 1.5,
    basis: BASIS.judgement,
    when: doubleActing,
    shows: () => ({}),
    grades: (v) => [
      { id: 'wide', share: 0.6, shows: { ...joinedEnds(v), ...EQUALISER_STANDS_OPEN } },
      { id: 'cracked', share: 0.25, shows: { ...endsPartSlowly(), ...EQUALISER_STANDS_OPEN } },
      { id: 'made good', share: 0.15, shows: { ...MADE_GOOD, ...EQUALISER_STANDS_OPEN } },
    ],
  },
  equaliserPasses: {
    words: 'The equalising valve is shut but passes',
    family: 'actuator',
    prior: 0.6,
    basis: BASIS.judgement,
    when: doubleActing,
    shows: () => ({}),
    grades: () =>
      leakAcross({
        leans: {},
        shows: { crossLeak: { passes: 0.95 }, equaliserFeel: { part: 0.7 } },
      }),
  },
  topTubeLeaks: {
    words: 'The tube to the top of the cylinder leaks',
    family: 'actuator',
    prior: 1.5,
    basis: BASIS.leaks,
    when: doubleActing,
    shows: () => ({}),
    grades: (v) => outputTube('top', v),
  },
  bottomTubeLeaks: {
    words: 'The tube to the bottom of the cylinder leaks',
    family: 'actuator',
    prior: 1.5,
    basis: BASIS.leaks,
    when: doubleActing,
    shows: () => ({}),
    grades: (v) => outputTube('bottom', v),
  },
  outputTubeBlocked: {
    words: 'A tube from positioner to actuator is blocked or crushed',
    family: 'actuator',
    prior: 0.8,
    basis: BASIS.judgement,
    when: (v) => v.positioner !== 'none',
    shows: () => ({}),
    grades: (v) => [
      { id: 'kinked', share: 0.2, shows: { ...KINKED, traceTubing: { 'pinched behind': 0.82 } } },
      { id: 'narrow', share: 0.35, shows: { ...narrowTube(), traceTubing: { 'pinched behind': 0.82 } } },
      { id: 'shut', share: 0.45, shows: { ...shutTube(v), traceTubing: { 'pinched behind': 0.82 } } },
    ],
  },
  boreScored: {
    words: 'The cylinder bore is scored or rusty',
    family: 'actuator',
    prior: 1.2,
    basis: BASIS.loops,
    when: (v) => v.actuator === 'piston',
    inside: 'friction of the cylinder and of the packing add up in one pressure: only uncoupling parts them',
    shows: () => ({}),
    grades: (v) =>
      frictionGrades(v, {
        sizes: [0.08, 0.2].map((share) => ({ share, where: 0.95, breakaway: 1.35 })),
        shows: {
          benchSetUncoupled: { 'up and down apart': 0.85 },
          handwheelFeel: { 'heavy all over': 0.6, 'heavy in one place': 0.28 },
          openActuator: { 'bore scored': 0.97 },
        },
      }),
  },
  rodOff: {
    words: 'The piston rod nut is off, or the rod is broken inside the cylinder',
    family: 'actuator',
    prior: 0.5,
    basis: BASIS.judgement,
    when: doubleActing,
    shows: () => ({}),
    grades: (v) => looseJoint(v, { openActuator: { 'joint loose': 0.98 } }),
  },
} as const satisfies Record<string, Cause>;
