import type { Cause, Shows } from '../cause.ts';
import { leakGrades } from '../leaks.ts';
import { positionerDriven, signalFull, signalLost } from '../senses.ts';
import { hasPositioner, hasSignalTube, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const transducer = (v: ValveFacts) => v.source === 'transducer';
const airSource = (v: ValveFacts) => hasSignalTube(v) && transducer(v);
const pneumaticController = (v: ValveFacts) => v.source === 'pneumatic controller';

/** The source gives too little or nothing: its restriction or filter is plugged. */
function weakSource(v: ValveFacts): Shows {
  const { stays, leans, output } = signalLost(v);
  return {
    ...positionerDriven(v, { full: false, share: 0.52 }),
    controllerOutput: { [output]: 0.8 },
    trend: { 'sudden change': 0.42, sluggish: 0.44 },
    sourceOutlet: {
      pieces: [
        [0.55, -110, -70],
        [0.42, -70, -6],
      ],
    },
    sourceFivePoints: { weak: 0.97 },
    travelAgainstOutput: { [stays]: 0.62, [leans]: 0.36 },
    smallStep: { 'no move': 0.57, slow: 0.41 },
    strokeByController: { 'does not move': 0.55, slow: 0.25, [signalFull(v).short]: 0.17 },
    airAtTravel: { 'does not build': 0.1 },
    listenExhaust: { loud: 0.12, 'no bleed': 0.4 },
    blockSourceSide: { 'stays low': 0.93 },
    valveAgainstCommand: { lower: 0.58, nothing: 0.39 },
  };
}

/** The source stands at its top: its nozzle is plugged. */
function sourceStuckHigh(v: ValveFacts): Shows {
  const { stays, output } = signalFull(v);
  return {
    ...positionerDriven(v, { full: true, share: 0.88 }),
    controllerOutput: { [output]: 0.84 },
    trend: { offset: 0.34, 'sudden change': 0.54 },
    sourceOutlet: { high: 0.97 },
    sourceFivePoints: { 'stays high': 0.97 },
    travelAgainstOutput: { [stays]: 0.92 },
    smallStep: { 'no move': 0.86 },
    strokeByController: { 'does not move': 0.9 },
    listenExhaust: { 'no bleed': 0.45, loud: 0.08 },
    valveAgainstCommand: { higher: 0.96 },
  };
}

/** From the controller's terminals to the inlet of valve or positioner. Effects: judgement, leaks by physics. */
export const signalCauses = {
  wiringOpen: {
    words: 'The signal wiring is open, a fuse or an output card is dead',
    family: 'signal',
    prior: 2,
    basis: BASIS.judgement,
    when: transducer,
    shows: (v) => ({
      ...positionerDriven(v, { full: false, share: 0.92 }),
      controllerOutput: { [signalLost(v).output]: 0.88 },
      trend: { 'sudden change': 0.88 },
      loopCurrent: { none: 0.99 },
      travelAgainstOutput: { [signalLost(v).stays]: 0.98 },
      smallStep: { 'no move': 0.97 },
      strokeByController: { 'does not move': 0.96 },
      blockSourceSide: { 'stays low': 0.93 },
      valveAgainstCommand: { lower: 0.35, nothing: 0.63 },
    }),
    hides: ['soapSignalTube'],
  },
  currentLow: {
    words: 'The signal current is low: leak to earth, extra load, bad joint',
    family: 'signal',
    prior: 1,
    basis: BASIS.judgement,
    when: transducer,
    shows: (v) => ({
      controllerOutput: { [signalLost(v).output]: 0.36 },
      trend: { offset: 0.38 },
      loopCurrent: { low: 0.96 },
      travelAgainstOutput: { [signalLost(v).leans]: 0.95 },
      strokeByController: { [signalFull(v).short]: 0.8 },
      blockSourceSide: { 'stays low': 0.68 },
      valveAgainstCommand: { lower: 0.96 },
    }),
  },
  transducerRestriction: {
    words: 'Restriction or inlet filter of the transducer is plugged',
    family: 'signal',
    prior: 3,
    basis: BASIS.nozzles,
    when: airSource,
    shows: weakSource,
  },
  transducerNozzle: {
    words: 'Nozzle of the transducer is plugged',
    family: 'signal',
    prior: 1.2,
    basis: BASIS.nozzles,
    when: airSource,
    shows: sourceStuckHigh,
  },
  transducerOff: {
    words: 'The transducer is out of calibration',
    family: 'signal',
    prior: 2.5,
    basis: BASIS.judgement,
    when: airSource,
    inside: 'a moved zero, a shifted span and a changed supply look alike until five points are taken',
    shows: (v) => ({
      trend: { offset: 0.12 },
      sourceOutlet: {
        pieces: [
          [0.52, -25, -2.5],
          [0.44, 2.5, 25],
        ],
      },
      sourceFivePoints: { 'off by a zero or span': 0.97 },
      travelAgainstOutput: { [signalLost(v).leans]: 0.5, [signalFull(v).leans]: 0.43 },
      strokeByController: { [signalFull(v).short]: 0.4, [signalLost(v).short]: 0.4 },
      blockSourceSide: { 'stays low': 0.42 },
      valveAgainstCommand: {
        pieces: [
          [0.52, -25, -2.5],
          [0.44, 2.5, 25],
        ],
      },
    }),
  },
  controllerRestriction: {
    words: 'Restriction of the pneumatic controller is plugged',
    family: 'signal',
    prior: 3,
    basis: BASIS.nozzles,
    when: pneumaticController,
    shows: weakSource,
  },
  controllerNozzle: {
    words: 'Nozzle of the pneumatic controller is plugged',
    family: 'signal',
    prior: 1.5,
    basis: BASIS.nozzles,
    when: pneumaticController,
    shows: sourceStuckHigh,
  },
  rangeMismatch: {
    words: 'Signal range and valve do not belong together, after a change (split range, wrong transducer)',
    family: 'signal',
    prior: 0.8,
    basis: BASIS.judgement,
    when: hasSignalTube,
    shows: (v) => ({
      controllerOutput: { 'wound up': 0.25, 'wound down': 0.2 },
      trend: { offset: 0.35 },
      sourceFivePoints: { 'off by a zero or span': 0.5 },
      travelAgainstOutput: { 'less open': 0.42, 'more open': 0.42 },
      strokeByController: { 'short of open': 0.42, 'short of shut': 0.42 },
      valveAgainstCommand: { lower: 0.35, higher: 0.3 },
      sourceOutlet: { low: 0.3, high: 0.3 },
      ...(hasPositioner(v) ? { positionerMarks: { 'off the marks': 0.15 } } : {}),
    }),
  },
  signalTubeLeaks: {
    words: 'The signal tube or a fitting leaks',
    family: 'signal',
    prior: 3,
    basis: BASIS.leaks,
    when: hasSignalTube,
    shows: () => ({ soapSignalTube: { bubbles: 0.97 } }),
    grades: (v) =>
      leakGrades(v, {
        place: 'signal tube',
        shares: { small: 0.25, medium: 0.45, large: 0.3 },
        always: { soapSignalTube: { bubbles: 0.97 } },
      }),
  },
  signalTubeBlocked: {
    words: 'The signal tube is blocked, crushed or frozen',
    family: 'signal',
    prior: 1,
    basis: BASIS.judgement,
    when: hasSignalTube,
    shows: (v) => ({
      controllerOutput: { 'wound up': 0.46, 'wound down': 0.18, swings: 0.18 },
      trend: { 'sudden change': 0.37, sluggish: 0.55 },
      // A narrow open tube comes up to equal; one blocked right through stands where it was, low or high.
      valveAgainstSource: {
        pieces: [
          [0.28, -80, -4],
          [0.28, 4, 60],
        ],
        words: { nothing: 0.16 },
      },
      travelAgainstOutput: {
        [signalLost(v).stays]: 0.17,
        'stays part way': 0.31,
        [signalLost(v).leans]: 0.25,
        [signalFull(v).leans]: 0.17,
      },
      smallStep: { 'no move': 0.57, slow: 0.41 },
      strokeByController: { 'does not move': 0.55, slow: 0.42 },
      traceTubing: { pinched: 0.82 },
      blockSourceSide: { 'stays low': 0.5 },
      valveAgainstCommand: { lower: 0.3, nothing: 0.16, higher: 0.27 },
      ...(hasPositioner(v)
        ? {
            cylinderGaugesOnStep: { none: 0.54, slow: 0.38 },
            outputGauge: { none: 0.54, slow: 0.38 },
            flapperAgainstGauges: { 'does not follow': 0.52 },
            bothFlappersAgainstGauges: { 'does not follow': 0.52 },
          }
        : {}),
    }),
  },
  lockUpShut: {
    words: 'The lock-up relay has shut the air in, or sticks',
    family: 'signal',
    prior: 1.5,
    basis: BASIS.dirtyAir,
    when: (v) => v.lockUp,
    shows: (v) => ({
      ...accessoryShows(v),
      travelAgainstOutput: { 'stays part way': 0.85, [signalFull(v).leans]: 0.1 },
      ...(hasPositioner(v) ? {} : { valveAgainstSource: { lower: 0.3, higher: 0.4 } }),
    }),
  },
  tripSolenoid: {
    words: 'The trip solenoid has tripped or sticks',
    family: 'signal',
    prior: 2,
    basis: BASIS.dirtyAir,
    when: (v) => v.trip,
    shows: (v) => ({
      ...accessoryShows(v),
      listenExhaust: { loud: 0.42, 'no bleed': 0.12 },
      travelAgainstOutput: v.spring
        ? { [signalLost(v).stays]: 0.9 }
        : { [signalLost(v).stays]: 0.4, 'stays part way': 0.5 },
      ...(hasPositioner(v) ? {} : { valveAgainstSource: { lower: 0.2, nothing: 0.65 } }),
    }),
  },
  boosterSticks: {
    words: 'Booster or quick exhaust sticks, vents or hunts',
    family: 'signal',
    prior: 1.2,
    basis: BASIS.dirtyAir,
    when: (v) => v.booster,
    shows: (v) => ({
      controllerOutput: { [signalLost(v).output]: 0.3, swings: 0.4 },
      trend: { 'fast swing': 0.35, sluggish: 0.3, 'sudden change': 0.2 },
      smallStep: { swings: 0.4, slow: 0.3, 'no move': 0.15 },
      strokeByController: { overshoots: 0.4, slow: 0.35, [signalFull(v).short]: 0.12 },
      strokeOnTestAir: { overshoots: 0.35, slow: 0.3 },
      listenExhaust: { loud: 0.55 },
      accessories: { tripped: 0.9 },
      supplyDroop: { large: 0.3 },
      travelAgainstOutput: { [signalLost(v).leans]: 0.25, [signalLost(v).stays]: 0.1 },
    }),
  },
} as const satisfies Record<string, Cause>;

function accessoryShows(v: ValveFacts): Shows {
  return {
    controllerOutput: { [signalLost(v).output]: 0.7, [signalFull(v).output]: 0.1 },
    trend: { 'sudden change': 0.9 },
    accessories: { tripped: 0.97 },
    smallStep: { 'no move': 0.96 },
    strokeByController: { 'does not move': 0.95 },
    strokeOnTestAir: { 'does not move': hasPositioner(v) ? 0.9 : 0.5 },
    airAtTravel: { 'does not build': 0.6 },
    cylinderGaugesOnStep: { none: 0.35 },
    outputGauge: { 'without the stem': 0.6 },
    topPressure: { full: 0.08, empty: 0.3, low: 0.1 },
    bottomPressure: { full: 0.08, empty: 0.3, low: 0.1 },
    flapperAgainstGauges: { 'covered, low': 0.34 },
    bothFlappersAgainstGauges: { 'top covered, low': 0.17, 'bottom covered, low': 0.17 },
    leavesSeatAt: { never: 0.5 },
  };
}
