import type { Cause, Grade, Piece, Shows } from '../cause.ts';
import { relayAtItsEnd, SHUT_IN, signalAtEnd, signalReads, standsPartWay, trendOf } from '../driven.ts';
import { leakGrades } from '../leaks.ts';
import { signalFull, signalLost } from '../senses.ts';
import { OFF_BY, shareSeen, signalMap, travelShows } from '../travel-map.ts';
import { hasPositioner, hasSignalTube, signalOpens, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const transducer = (v: ValveFacts) => v.source === 'transducer';
const airSource = (v: ValveFacts) => hasSignalTube(v) && transducer(v);
const pneumaticController = (v: ValveFacts) => v.source === 'pneumatic controller';

/** The source gives nothing, or a little that takes minutes to fill what lies before it. */
function weakSource(v: ValveFacts): readonly Grade[] {
  const gone = signalAtEnd(v, { full: false, share: 0.97, atOnce: 0.6 });
  const slow = standsPartWay({ share: 0.55, atOnce: 0.3 });
  const { stays, leans } = signalLost(v);
  return [
    {
      id: 'nothing',
      share: 0.55,
      shows: {
        ...gone,
        ...signalReads(v, { full: false, share: 1 }),
        listenExhaust: { 'no bleed': 0.6 },
      },
    },
    {
      id: 'little',
      share: 0.45,
      shows: {
        ...slow,
        travelAgainstOutput: { 'stays part way': 0.35, [stays]: 0.25, [leans]: 0.35 },
        smallStep: { 'no move': 0.6, slow: 0.37 },
        strokeByController: { 'does not move': 0.5, slow: 0.25, [signalFull(v).short]: 0.2 },
        strokeOnTestAir: {},
        controllerOutput: { [signalLost(v).output]: 0.75, swings: 0.05 },
        trend: { offset: 0.45, sluggish: 0.3, 'sudden change': 0.2 },
        sourceOutlet: { pieces: [[0.95, -75, -8]] },
        valveAgainstCommand: { pieces: [[0.95, -75, -8]] },
        sourceFivePoints: { weak: 0.9, 'off by a zero or span': 0.08 },
        blockSourceSide: { 'stays low': 0.93 },
        leakShut: signalOpens(v) ? {} : { 'passes much': 0.5, passes: 0.1 },
        leavesSeatAt: { never: 0.5 },
        upAgainstDown: { 'very wide': 0.5 },
        cylinderGaugesOnStep: { none: 0.5, slow: 0.35 },
        outputGauge: { none: 0.5, slow: 0.35 },
        listenExhaust: { 'no bleed': 0.5 },
      },
    },
  ];
}

/** The source stands at its top: its nozzle is plugged. */
function sourceStuckHigh(v: ValveFacts): Shows {
  return {
    ...signalAtEnd(v, { full: true, share: 0.95, atOnce: 0.6 }),
    ...signalReads(v, { full: true, share: 1 }),
    listenExhaust: { 'no bleed': 0.45, loud: 0.06 },
  };
}

/** Lowest and highest signal that a source gives, as shares of the span: judgement. */
const NO_SIGNAL = -0.25;
const MOST_SIGNAL = 1.35;

/** A signal that arrives changed along a straight line; what reads it, and all that the travel then shows. */
function changedSignal(
  v: ValveFacts,
  of: {
    readonly factor: number;
    readonly shiftFraction: number;
    readonly spreadFraction?: number;
    readonly atOnce?: number;
  },
): Shows {
  const wide = 100 * (of.spreadFraction ?? 0);
  const sent = (asked: number) =>
    Math.min(MOST_SIGNAL, Math.max(NO_SIGNAL, of.factor * asked + of.shiftFraction)) - asked;
  const pieces = [0.35, 0.5, 0.65].map((asked): Piece => {
    const off = [-0.1, 0.1].map((by) => 100 * sent(asked + by));
    return [0.32, Math.min(...off) - wide, Math.max(...off) + wide];
  });
  const lowAtBlock = shareSeen(-sent(0.75), [0.02, 0.04]);
  const worst = Math.max(...[0, 0.5, 1].map((asked) => Math.abs(sent(asked))));
  const seen = 0.95 * shareSeen(worst, [0.015, 0.03]);
  return {
    ...travelShows(signalMap(v, of), of.atOnce === undefined ? {} : { atOnce: of.atOnce }),
    sourceOutlet: { pieces },
    valveAgainstCommand: { pieces },
    sourceFivePoints: { 'off by a zero or span': seen * 0.93, weak: seen * 0.04, 'stays high': seen * 0.03 },
    blockSourceSide: { 'stays low': 0.92 * lowAtBlock },
  };
}

function smallStepOf(v: ValveFacts, change: { readonly factor: number; readonly shiftFraction: number }) {
  const still = travelShows(signalMap(v, change)).smallStep ?? {};
  return change.factor > 1 ? { ...still, slow: 0.25 } : still;
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
      ...signalAtEnd(v, { full: false, share: 0.98, atOnce: 0.95 }),
      ...signalReads(v, { full: false, share: 1 }),
      loopCurrent: { none: 0.99 },
    }),
    hides: ['soapSignalTube'],
  },
  currentLow: {
    words: 'The signal current is low: leak to earth, extra load, bad joint',
    family: 'signal',
    prior: 1,
    basis: BASIS.judgement,
    when: transducer,
    shows: () => ({}),
    // The whole current is short, so that a quarter of the span is lost with it at its low end.
    grades: (v) =>
      [0.95, 0.88, 0.78].map((left) => {
        const change = { factor: left, shiftFraction: (left - 1) / 4, spreadFraction: 0.03 };
        return {
          id: `${left}`,
          share: 1 / 3,
          shows: {
            ...changedSignal(v, { ...change, atOnce: 0.2 }),
            loopCurrent: { pieces: [[0.97, -16 * (1 - left), -8 * (1 - left)]] },
          },
        };
      }),
  },
  transducerRestriction: {
    words: 'Restriction or inlet filter of the transducer is plugged',
    family: 'signal',
    prior: 3,
    basis: BASIS.nozzles,
    when: airSource,
    shows: () => ({}),
    grades: weakSource,
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
    shows: () => ({}),
    grades: (v) =>
      OFF_BY.flatMap(({ id, by, spreadFraction, share }) =>
        [-1, 1].flatMap((way) =>
          [
            { kind: 'zero', factor: 1, shiftFraction: way * by, spreadFraction },
            { kind: 'span', factor: 1 + 1.4 * way * by, shiftFraction: 0, spreadFraction },
          ].map(({ kind, ...change }) => ({
            id: `${kind} ${id} ${way < 0 ? 'low' : 'high'}`,
            share: share * (kind === 'zero' ? 0.3 : 0.2),
            shows: changedSignal(v, { ...change }),
          })),
        ),
      ),
  },
  controllerRestriction: {
    words: 'Restriction of the pneumatic controller is plugged',
    family: 'signal',
    prior: 3,
    basis: BASIS.nozzles,
    when: pneumaticController,
    shows: () => ({}),
    grades: weakSource,
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
    shows: () => ({}),
    // Half of a split range, either half, or a source of twice the range.
    grades: (v) =>
      [
        { id: 'lower half', share: 0.25, factor: 0.5, shiftFraction: 0 },
        { id: 'upper half', share: 0.25, factor: 0.5, shiftFraction: 0.5 },
        { id: 'twice', share: 0.25, factor: 2, shiftFraction: 0 },
        { id: 'twice from half', share: 0.25, factor: 2, shiftFraction: -1 },
      ].map(({ id, share, ...change }) => ({
        id,
        share,
        shows: {
          ...changedSignal(v, { ...change, atOnce: 0.7 }),
          // Twice the way takes twice the time; on half of it a small step is hardly one.
          smallStep: smallStepOf(v, change),
          ...(hasPositioner(v) ? { positionerMarks: { 'off the marks': 0.15 } } : {}),
        },
      })),
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
      holdInManual: { stops: 0.16 },
      trend: { 'sudden change': 0.25, sluggish: 0.35, offset: 0.3 },
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
      leavesSeatAt: { never: 0.55 },
      upAgainstDown: { 'very wide': 0.4 },
      supplyDroop: { pieces: [[0.55, -1, 2]] },
      topPressure: { full: 0.25, empty: 0.25 },
      bottomPressure: { full: 0.25, empty: 0.25 },
      valveAgainstCommand: { lower: 0.3, nothing: 0.16, higher: 0.27 },
      ...(hasPositioner(v)
        ? {
            cylinderGaugesOnStep: { none: 0.4, slow: 0.3, 'runs shut': 0.12, 'runs open': 0.12 },
            outputGauge: { none: 0.4, slow: 0.3, empty: 0.15, full: 0.08 },
            listenExhaust: { 'no bleed': 0.25 },
            positionerExhaust: { nothing: 0.25 },
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
      // One that sticks inside stands as it always does.
      accessories: { tripped: 0.9 },
      travelAgainstOutput: { 'stays part way': 0.85, [signalFull(v).leans]: 0.1 },
      ...SHUT_IN,
      ...(hasPositioner(v) ? {} : standsOff({ lower: 0.3, higher: 0.4 })),
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
      // It has let the actuator out: at rest nothing comes any more.
      listenExhaust: { loud: 0.35, 'no bleed': 0.3 },
      outputGauge: { empty: 0.5, 'without the stem': 0.3 },
      travelAgainstOutput: v.spring
        ? { [signalLost(v).stays]: 0.9 }
        : { [signalLost(v).stays]: 0.4, 'stays part way': 0.5 },
      ...(hasPositioner(v) ? {} : standsOff({ lower: 0.2, nothing: 0.65 })),
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
      holdInManual: { 'goes on': 0.25, stops: 0.15 },
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

/** Without a positioner the signal gauge at the valve sits behind it, and reads what it has left there. */
function standsOff(row: Readonly<Record<string, number>>): Shows {
  return { valveAgainstSource: row, valveAgainstCommand: row };
}

/** It stands between positioner and actuator: gauges on the actuator read what is behind it, whatever the positioner does. */
function accessoryShows(v: ValveFacts): Shows {
  return {
    controllerOutput: { [signalLost(v).output]: 0.7, [signalFull(v).output]: 0.1 },
    trend: trendOf({ share: 0.95, atOnce: 0.75 }),
    accessories: { tripped: 0.97 },
    smallStep: { 'no move': 0.96 },
    strokeByController: { 'does not move': 0.95 },
    strokeOnTestAir: { 'does not move': hasPositioner(v) ? 0.9 : 0.5 },
    ...relayAtItsEnd(v, 0.8),
    airAtTravel: { 'does not build': 0.6 },
    cylinderGaugesOnStep: { none: 0.85 },
    outputGauge: { none: 0.45, 'without the stem': 0.4 },
    flapperByHand: { 'not at all': 0.5, 'one way': 0.1 },
    topPressure: { full: 0.08, empty: 0.3, low: 0.1 },
    bottomPressure: { full: 0.08, empty: 0.3, low: 0.1 },
    flapperAgainstGauges: { 'covered, low': 0.34 },
    bothFlappersAgainstGauges: { 'top covered, low': 0.17, 'bottom covered, low': 0.17 },
    leavesSeatAt: { never: 0.5 },
  };
}
