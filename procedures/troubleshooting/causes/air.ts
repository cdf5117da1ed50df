import type { Cause, Shows } from '../cause.ts';
import { signalFull, signalLost } from '../senses.ts';
import { hasPositioner, type ValveFacts } from '../valve-facts.ts';
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
  const { stays, output } = signalLost(v);
  const driftsShut = { 'stays shut': 0.2, 'stays part way': 0.72 };
  return {
    controllerOutput: { [v.spring ? output : 'wound up']: 0.84 },
    trend: { 'sudden change': 0.88 },
    travelAgainstOutput: v.spring ? { [stays]: 0.97 } : driftsShut,
    smallStep: { 'no move': 0.98 },
    strokeByController: { 'does not move': 0.97 },
    listenExhaust: { 'no bleed': 0.9 },
    positionerExhaust: { nothing: 0.93 },
    airAtTravel: { 'does not build': 0.4 },
    outputGauge: { none: 0.95 },
    topPressure: { empty: 0.96 },
    bottomPressure: { empty: 0.96 },
    cylinderGaugesOnStep: { none: 0.97 },
    nozzlePressure: { 'stuck low': 0.93 },
    nozzlePressureTop: { 'stuck low': 0.93 },
    nozzlePressureBottom: { 'stuck low': 0.93 },
    flapperByHand: { 'not at all': 0.97 },
    flapperAgainstGauges: { 'covered, low': 0.58 },
    bothFlappersAgainstGauges: { 'top covered, low': 0.3, 'bottom covered, low': 0.3 },
    leavesSeatAt: { never: 0.9 },
    leakShut: v.spring && stays === 'stays shut' ? {} : { passes: 0.15, 'passes much': 0.65 },
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
      sourceOutlet: { pieces: [[0.97, -110, -70]] },
      sourceFivePoints: { weak: 0.97 },
      blockSourceSide: { 'stays low': 0.97 },
      valveAgainstCommand: { lower: 0.08, nothing: 0.88 },
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
      traceTubing: { pinched: 0.15 },
    }),
  },
  supplyLow: {
    words: 'The supply regulator is set or has drifted low',
    family: 'air',
    prior: 2.5,
    basis: BASIS.judgement,
    shows: (v) => {
      const starves = hasPositioner(v);
      return {
        controllerOutput: { [v.spring ? signalLost(v).output : 'wound up']: 0.42 },
        trend: { offset: 0.32, sluggish: 0.25 },
        supplyPressure: { low: 0.98 },
        // The source has no more to give than it gets: seen at its top only.
        sourceOutlet: starves ? { low: 0.1 } : { pieces: [[0.46, -60, -4]] },
        sourceFivePoints: { weak: starves ? 0.1 : 0.4 },
        travelAgainstOutput: { [signalLost(v).leans]: 0.56 },
        smallStep: { slow: starves ? 0.6 : 0.05 },
        strokeByController: { [signalFull(v).short]: starves ? 0.38 : 0.6, slow: starves ? 0.5 : 0 },
        blockSourceSide: { 'stays low': 0.42 },
        topPressure: { low: 0.3 },
        bottomPressure: { low: 0.3 },
        valveAgainstCommand: starves ? { lower: 0.1 } : { lower: 0.46 },
        leakShut: signalLost(v).stays === 'stays open' ? { passes: 0.25, 'passes much': 0.1 } : {},
      };
    },
  },
  supplyStarves: {
    words: 'Filter or regulator is clogged: right at rest, starving when air is used',
    family: 'air',
    prior: 2,
    basis: BASIS.dirtyAir,
    shows: () => ({
      trend: { sluggish: 0.85 },
      supplyDroop: { pieces: [[0.97, 18, 70]] },
      filterBowl: { dirt: 0.5, wet: 0.2 },
      smallStep: { slow: 0.88 },
      cylinderGaugesOnStep: { slow: 0.85 },
      outputGauge: { slow: 0.85 },
      strokeByController: { slow: 0.88 },
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
      smallStep: { slow: 0.62, swings: 0.14 },
      strokeByController: { slow: 0.55 },
      cylinderGaugesOnStep: { slow: 0.63 },
      outputGauge: { slow: 0.6 },
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
