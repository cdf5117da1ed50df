import type { Cause, Piece, Shows } from '../cause.ts';
import { airAtEnd, signalReads, standsAtEnd, standsPartWay } from '../driven.ts';
import { signalLost } from '../senses.ts';
import { stoppedAirShows } from '../spring-map.ts';
import { shareSeen, TRUE_TRAVEL, travelShows } from '../travel-map.ts';
import { hasPositioner, signalOpens, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

/** Without air no bubble rises, nothing hisses and nothing falls: a second leak cannot be seen. */
const NEEDS_AIR = [
  'soapSignalTube',
  'soapCaseJoint',
  'soapAdjuster',
  'soapStemSeal',
  'soapActuatorTube',
  'soapCylinder',
  'soapOutputTubes',
  'springSideVent',
  'listenExhaust',
  'positionerExhaust',
] as const;

/** No air at the positioner: a spring takes the valve to its end, a piston stays about where it is. */
function noAirAtPositioner(v: ValveFacts): Shows {
  const none = { empty: 0.96 };
  const stem = v.spring
    ? {
        ...standsAtEnd({ to: signalLost(v), share: 0.98, atOnce: 0.75 }),
        ...airAtEnd(v, { full: false, share: 1 }),
      }
    : { ...standsPartWay({ share: 0.95, atOnce: 0.75 }), leavesSeatAt: { never: 0.9 } };
  return {
    ...stem,
    listenExhaust: { 'no bleed': 0.9 },
    positionerExhaust: { nothing: 0.93 },
    outputGauge: { none: 0.6, empty: 0.37 },
    topPressure: none,
    bottomPressure: none,
    cylinderGaugesOnStep: { none: 0.97 },
    nozzlePressure: { 'stuck low': 0.93 },
    nozzlePressureTop: { 'stuck low': 0.93 },
    nozzlePressureBottom: { 'stuck low': 0.93 },
    flapperByHand: { 'not at all': 0.97 },
  };
}

/** Supply of a source or positioner over a spring where the sheet has none: judgement. */
const USUAL_SUPPLY_FACTOR = 1.33;

/** No more air than the supply gives: the travel stops where the spring asks for more; a cylinder grows slow and weak. */
function lowSupply(v: ValveFacts, left: number): Shows {
  const { supplyPa, benchSetLowPa, benchSetHighPa, signalLowPa, signalHighPa } = v.numbers;
  const airPa = left * (supplyPa ?? USUAL_SUPPLY_FACTOR * benchSetHighPa);
  const supply = { supplyPressure: { pieces: [[0.98, 100 * left - 112, 100 * left - 88]] as const } };
  const starved = 1 - left;
  if (!v.spring)
    return {
      ...supply,
      trend: { sluggish: starved },
      smallStep: { slow: starved },
      cylinderGaugesOnStep: { slow: starved },
      strokeByController: { slow: starved },
      leakShut: { passes: 0.5 * starved },
    };
  const moved = Math.min(1, Math.max(0, (airPa - benchSetLowPa) / (benchSetHighPa - benchSetLowPa)));
  const opens = signalOpens(v);
  const map = opens ? { ...TRUE_TRAVEL, high: moved } : { ...TRUE_TRAVEL, low: 1 - moved };
  const spanPa = signalHighPa - signalLowPa;
  const most = (airPa - signalLowPa) / spanPa;
  // The source has no more to give than it gets: seen at its top only.
  const short = [0.4, 0.5, 0.6, 0.7].flatMap((asked): Piece[] =>
    most < asked - 0.02 ? [[0.24, 100 * (most - asked) - 3, 100 * (most - asked) + 3]] : [],
  );
  const travel = travelShows(map);
  return {
    ...travel,
    ...supply,
    ...stoppedAirShows(v, { map }),
    sourceOutlet: { pieces: short },
    valveAgainstCommand: { pieces: short },
    sourceFivePoints: { weak: most < 0.9 ? 0.5 : 0, 'off by a zero or span': most < 0.97 ? 0.45 : 0 },
    blockSourceSide: { 'stays low': 0.9 * shareSeen(0.75 - most, [0.02, 0.04]) },
    outputGauge: hasPositioner(v) ? { slow: 0.5 * starved, full: moved < 0.6 ? 0.4 : 0 } : {},
  };
}

/** The air set. Effects: judgement. */
export const airCauses = {
  supplyLost: {
    words: 'The air supply is lost: a cock shut, a line broken',
    family: 'air',
    prior: 2.5,
    basis: BASIS.dirtyAir,
    inside: 'header cock shut, line broken and regulator failed shut: followed upstream',
    hides: NEEDS_AIR,
    shows: (v) => ({
      ...noAirAtPositioner(v),
      supplyPressure: { none: 0.99 },
      // The source has no air either: no signal moves the flapper.
      flapperAgainstGauges: { 'does not follow': 0.6, 'covered, low': 0.25 },
      bothFlappersAgainstGauges: {
        'does not follow': 0.6,
        'top covered, low': 0.12,
        'bottom covered, low': 0.12,
      },
      traceTubing: { 'air shut off': 0.3 },
      ...signalReads(v, { full: false, share: 1 }),
      strokeOnTestAir: {},
    }),
  },
  positionerSupplyShut: {
    words: 'Air reaches the source but not the positioner: its own cock or filter is shut or plugged',
    family: 'positioner',
    prior: 1.2,
    basis: BASIS.dirtyAir,
    when: hasPositioner,
    hides: ['positionerExhaust', 'soapActuatorTube', 'soapOutputTubes', 'soapCylinder'],
    shows: (v) => ({
      ...noAirAtPositioner(v),
      // The gauge of the air set sits before or behind the stop.
      supplyPressure: { none: 0.35 },
      listenExhaust: { 'no bleed': 0.6 },
      // The signal moves the flapper, and nothing rises whichever nozzle it covers.
      flapperAgainstGauges: { 'covered, low': 0.85, 'does not follow': 0.05 },
      bothFlappersAgainstGauges: { 'top covered, low': 0.42, 'bottom covered, low': 0.42 },
      traceTubing: { 'air shut off': 0.75, pinched: 0.1 },
    }),
  },
  supplyLow: {
    words: 'The supply regulator is set or has drifted low',
    family: 'air',
    prior: 2.5,
    basis: BASIS.judgement,
    shows: () => ({}),
    grades: (v) =>
      [0.85, 0.65, 0.45].map((left) => ({ id: `${left}`, share: 1 / 3, shows: lowSupply(v, left) })),
  },
  supplyStarves: {
    words: 'Filter or regulator is clogged: right at rest, starving when air is used',
    family: 'air',
    prior: 2,
    basis: BASIS.dirtyAir,
    shows: (v) => ({
      trend: { sluggish: 0.5 },
      supplyDroop: { pieces: [[0.95, hasPositioner(v) ? 15 : 10, 65]] },
      // What the relays bleed all the time is enough to pull it down where much bleeds.
      supplyPressure: hasPositioner(v)
        ? { pieces: v.spring ? [[0.65, -35, -5]] : [[0.85, -65, -8]] }
        : { pieces: [[0.2, -15, -3]] },
      filterBowl: { dirt: 0.55, wet: 0.15 },
      smallStep: { slow: 0.5 },
      cylinderGaugesOnStep: { slow: 0.6 },
      outputGauge: { slow: 0.5 },
      strokeByController: { slow: 0.5 },
      blockSourceSide: { 'climbs to full': 0.08, 'stays low': 0.06 },
    }),
  },
  wetAir: {
    words: 'Wet or oily air fouls the pilot parts',
    family: 'air',
    prior: 3,
    basis: BASIS.dirtyAir,
    shows: () => ({
      trend: { sluggish: 0.6 },
      sourceOutlet: { wanders: 0.52, low: 0.03, high: 0.03 },
      sourceFivePoints: { weak: 0.15, 'off by a zero or span': 0.15 },
      filterBowl: { wet: 0.94 },
      smallStep: { slow: 0.4, swings: 0.2, jumps: 0.05 },
      strokeByController: { slow: 0.35, 'in jumps': 0.1, overshoots: 0.1 },
      cylinderGaugesOnStep: { slow: 0.4, swings: 0.2 },
      outputGauge: { slow: 0.35, swings: 0.25 },
      // The signal wanders, and the travel with it.
      travelAgainstOutput: {
        pieces: [
          [0.25, -6, -1.5],
          [0.25, 1.5, 6],
        ],
      },
      nozzlePressure: { pulses: 0.25, 'stuck low': 0.05, 'stuck high': 0.05 },
      nozzlePressureTop: { pulses: 0.25, 'stuck low': 0.05, 'stuck high': 0.05 },
      nozzlePressureBottom: { pulses: 0.25, 'stuck low': 0.05, 'stuck high': 0.05 },
      flapperByHand: { creeps: 0.73 },
      flapperAgainstGauges: { 'covered, low': 0.08, askew: 0.12 },
      bothFlappersAgainstGauges: { askew: 0.12 },
      pressPlunger: { 'comes back': 0.1 },
      pressBothPlungers: { 'top comes back': 0.05, 'bottom comes back': 0.05 },
      valveAgainstCommand: { lower: 0.2, higher: 0.2 },
    }),
  },
  supplyHigh: {
    words: 'The supply regulator creeps high',
    family: 'air',
    prior: 0.8,
    basis: BASIS.judgement,
    shows: (v) => ({
      supplyPressure: { high: 0.98 },
      ...(hasPositioner(v)
        ? {
            smallStep: { swings: 0.4 },
            cylinderGaugesOnStep: { swings: 0.3 },
            outputGauge: { swings: 0.3 },
            strokeByController: { overshoots: 0.35 },
          }
        : {}),
    }),
  },
} as const satisfies Record<string, Cause>;
