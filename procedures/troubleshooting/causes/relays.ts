import type { Cause, Row, Shows } from '../cause.ts';
import {
  bothEnds,
  endNozzle,
  endPressure,
  otherEnd,
  shuttingEnd,
  signalFull,
  signalLost,
} from '../senses.ts';
import type { CylinderEnd, ValveFacts } from '../valve-facts.ts';
import { deadEnd } from './positioner.ts';
import { BASIS } from './sources.ts';

const oneRelay = (v: ValveFacts) => v.positioner === 'pneumatic' && (v.spring || v.relays === 'one');
const relayAnEnd = (v: ValveFacts) => v.positioner === 'pneumatic' && !v.spring && v.relays === 'one an end';

/** Where a covered or a bare nozzle sends the valve, with one relay for both outputs. */
function nozzleSends(v: ValveFacts, high: boolean) {
  if (v.spring) return high ? signalFull(v) : signalLost(v);
  return deadEnd(v, { end: v.coveredNozzleLoads, full: high });
}

function outputStands(v: ValveFacts, of: { readonly high: boolean; readonly share: number }): Shows {
  const loaded = of.high ? v.coveredNozzleLoads : otherEnd(v.coveredNozzleLoads);
  const { stays, output, runs } = nozzleSends(v, of.high);
  return {
    controllerOutput: { [output]: 0.85 },
    travelAgainstOutput: { [stays]: 0.94 },
    ...bothEnds({ end: loaded, this: { full: of.share }, other: { empty: of.share } }),
    cylinderGaugesOnStep: { [runs]: 0.88, none: 0.08 },
    outputGauge: { [of.high ? 'full' : 'empty']: 0.88, none: 0.08 },
    nozzlePressure: { [of.high ? 'stuck high' : 'stuck low']: 0.96 },
    smallStep: { 'no move': 0.95 },
    strokeByController: { 'does not move': 0.93 },
    strokeOnTestAir: { 'does not move': 0.93 },
  };
}

/** One relay, with one output or two. Effects: judgement, the direction by the forces. */
export const oneRelayCauses = {
  relayRestriction: {
    words: 'The restriction of the relay is plugged',
    family: 'positioner',
    prior: 3,
    basis: BASIS.nozzles,
    when: oneRelay,
    shows: (v) => ({
      ...outputStands(v, { high: false, share: 0.94 }),
      trend: { 'sudden change': 0.62, sluggish: 0.22 },
      flapperByHand: { 'one way': 0.3, 'not at all': 0.64 },
      listenExhaust: { 'no bleed': 0.6, loud: 0.06 },
      positionerExhaust: { nothing: 0.6 },
      leavesSeatAt: v.spring && signalLost(v).stays === 'stays shut' ? { never: 0.9 } : { never: 0.5 },
      pressPlunger: { 'comes back': 0.82 },
      flapperAgainstGauges: { 'covered, low': 0.95 },
      positionerBench: { 'restriction plugged': 0.97 },
    }),
  },
  relayNozzle: {
    words: 'The nozzle of the positioner is plugged or dirty',
    family: 'positioner',
    prior: 2.5,
    basis: BASIS.nozzles,
    when: oneRelay,
    shows: (v) => ({
      ...outputStands(v, { high: true, share: 0.92 }),
      trend: { offset: 0.27, 'sudden change': 0.59 },
      flapperByHand: { 'one way': 0.37, 'not at all': 0.56 },
      listenExhaust: { 'no bleed': 0.5, loud: 0.08 },
      positionerExhaust: { nothing: 0.45 },
      flapperAgainstGauges: { 'clear, high': 0.9, askew: 0.06 },
      positionerBench: { 'nozzle dirty': 0.97 },
    }),
  },
  relaySticks: {
    words: 'The relay of the positioner sticks',
    family: 'positioner',
    prior: 2,
    basis: BASIS.dirtyAir,
    when: oneRelay,
    inside: 'dirt, rust, a torn relay diaphragm and a broken relay spring: told on the bench only',
    shows: (v) => ({
      controllerOutput: { 'wound up': 0.56, 'wound down': 0.31 },
      trend: { offset: 0.32, 'sudden change': 0.62 },
      travelAgainstOutput: v.spring
        ? { [signalLost(v).stays]: 0.4, [signalFull(v).stays]: 0.25, 'stays part way': 0.32 }
        : { 'stays shut': 0.2, 'stays open': 0.16, 'stays part way': 0.6 },
      smallStep: { 'no move': 0.94 },
      topPressure: { full: 0.25, empty: 0.2, low: 0.1 },
      bottomPressure: { full: 0.25, empty: 0.2, low: 0.1 },
      cylinderGaugesOnStep: { none: 0.92 },
      outputGauge: { none: 0.92 },
      nozzlePressure: { 'stuck low': 0.03, 'stuck high': 0.03 },
      flapperByHand: { 'not at all': 0.89, 'one way': 0.04 },
      strokeByController: { 'does not move': 0.92 },
      strokeOnTestAir: { 'does not move': 0.92 },
      leavesSeatAt: { never: 0.82 },
      flapperAgainstGauges: { 'covered, low': 0.5, 'clear, high': 0.36 },
      positionerBench: { 'relay sticks': 0.97 },
    }),
  },
} as const satisfies Record<string, Cause>;

/** At an end that cannot be loaded, or not unloaded, the valve lacks the force the end gives. */
function oneEndDead(v: ValveFacts, of: { readonly end: CylinderEnd; readonly full: boolean }): Shows {
  const { stays, leans, output, runs } = deadEnd(v, of);
  const cannot = deadEnd(v, { end: of.end, full: !of.full });
  // A dead shutting end leaves the plug off its seat, or on it without load.
  const seatless = (shuttingEnd(v) === of.end) !== of.full;
  const helpsAway = seatless === (v.flowTendsTo === 'open');
  return {
    controllerOutput: { [output]: 0.78, [cannot.output]: 0.04 },
    trend: { offset: 0.3, 'sudden change': 0.5, sluggish: 0.04 },
    travelAgainstOutput: {
      [stays]: helpsAway ? 0.48 : 0.3,
      [leans]: 0.36,
      'stays part way': 0.08,
    },
    smallStep: { 'no move': 0.65, jumps: 0.1, slow: 0.15 },
    cylinderGaugesOnStep: { none: 0.33, [runs]: 0.48, slow: 0.06 },
    strokeByController: { [cannot.short]: 0.55, 'does not move': 0.34, slow: 0.03 },
    strokeOnTestAir: { [cannot.short]: 0.55, 'does not move': 0.34, slow: 0.03 },
    flapperByHand: { 'one way': 0.9, 'not at all': 0.04 },
    leavesSeatAt: seatless ? { never: 0.2, low: of.full ? 0 : 0.1 } : { never: 0.55, high: 0.15 },
    leakShut: seatless ? { passes: 0.21, 'passes much': 0.45 } : {},
  };
}

function restrictionAt(end: CylinderEnd, v: ValveFacts): Shows {
  const other = otherEnd(end);
  return {
    ...oneEndDead(v, { end, full: false }),
    [endPressure(end)]: { empty: 0.97 },
    // While it asks for the dead end, the positioner unloads the other.
    [endPressure(other)]: { empty: 0.54, low: 0.3, full: 0.04 },
    [endNozzle(end)]: { 'stuck low': 0.96 },
    [endNozzle(other)]: { 'stuck low': 0.36 },
    listenExhaust: { 'no bleed': 0.38, loud: 0.06 },
    pressBothPlungers: { [`${end} comes back`]: 0.82 } as Row,
    bothFlappersAgainstGauges: { [`${end} covered, low`]: 0.93 },
    positionerBench: { 'restriction plugged': 0.97 },
  };
}

function nozzleAt(end: CylinderEnd, v: ValveFacts): Shows {
  const other = otherEnd(end);
  return {
    ...oneEndDead(v, { end, full: true }),
    [endPressure(end)]: { full: 0.95 },
    [endPressure(other)]: { full: 0.64, empty: 0.05, low: 0.07 },
    [endNozzle(end)]: { 'stuck high': 0.95 },
    [endNozzle(other)]: { 'stuck high': 0.4 },
    listenExhaust: { 'no bleed': 0.32, loud: 0.06 },
    bothFlappersAgainstGauges: { [`${end} clear, high`]: 0.9, askew: 0.05 },
    positionerBench: { 'nozzle dirty': 0.97 },
  };
}

function stuckAt(end: CylinderEnd): Shows {
  return {
    controllerOutput: { 'wound up': 0.43, 'wound down': 0.37 },
    trend: { offset: 0.35, 'sudden change': 0.5, sluggish: 0.03 },
    travelAgainstOutput: {
      'stays shut': 0.22,
      'stays open': 0.17,
      'stays part way': 0.24,
      'less open': 0.15,
      'more open': 0.13,
    },
    smallStep: { 'no move': 0.68, jumps: 0.09, slow: 0.11 },
    [endPressure(end)]: { full: 0.22, empty: 0.28, low: 0.12 },
    [endPressure(otherEnd(end))]: { full: 0.2, empty: 0.22, low: 0.16 },
    cylinderGaugesOnStep: { none: 0.43, 'runs open': 0.18, 'runs shut': 0.18, slow: 0.05 },
    [endNozzle(end)]: { 'stuck low': 0.07, 'stuck high': 0.07 },
    flapperByHand: { 'one way': 0.86, 'not at all': 0.07 },
    strokeByController: { 'short of open': 0.25, 'short of shut': 0.26, 'does not move': 0.38 },
    strokeOnTestAir: { 'short of open': 0.25, 'short of shut': 0.26, 'does not move': 0.38 },
    leavesSeatAt: { high: 0.06, low: 0.06, never: 0.45 },
    bothFlappersAgainstGauges: { [`${end} covered, low`]: 0.49, [`${end} clear, high`]: 0.34 },
    positionerBench: { 'relay sticks': 0.97 },
  };
}

const shared = { family: 'positioner', when: relayAnEnd } as const;
const STICKS_INSIDE = 'dirt, rust, a torn relay diaphragm and a broken relay spring: told on the bench only';

/** One relay for each end of the cylinder. Effects: judgement, the direction by the forces. */
export const relayAnEndCauses = {
  restrictionTop: {
    words: 'The restriction of the relay that loads the top is plugged',
    prior: 1.5,
    basis: BASIS.nozzles,
    shows: (v: ValveFacts) => restrictionAt('top', v),
    ...shared,
  },
  restrictionBottom: {
    words: 'The restriction of the relay that loads the bottom is plugged',
    prior: 1.5,
    basis: BASIS.nozzles,
    shows: (v: ValveFacts) => restrictionAt('bottom', v),
    ...shared,
  },
  nozzleTop: {
    words: 'The nozzle of the relay that loads the top is plugged',
    prior: 1.25,
    basis: BASIS.nozzles,
    shows: (v: ValveFacts) => nozzleAt('top', v),
    ...shared,
  },
  nozzleBottom: {
    words: 'The nozzle of the relay that loads the bottom is plugged',
    prior: 1.25,
    basis: BASIS.nozzles,
    shows: (v: ValveFacts) => nozzleAt('bottom', v),
    ...shared,
  },
  relayTopSticks: {
    words: 'The relay that loads the top sticks',
    prior: 1,
    basis: BASIS.dirtyAir,
    inside: STICKS_INSIDE,
    shows: () => stuckAt('top'),
    ...shared,
  },
  relayBottomSticks: {
    words: 'The relay that loads the bottom sticks',
    prior: 1,
    basis: BASIS.dirtyAir,
    inside: STICKS_INSIDE,
    shows: () => stuckAt('bottom'),
    ...shared,
  },
} as const satisfies Record<string, Cause>;
