import type { Cause, Grade, Row, Shows } from '../cause.ts';
import { outputAtEnd, relayAtItsEnd, standsAtEnd, standsPartWay } from '../driven.ts';
import { endNozzle, endPressure, otherEnd, shuttingEnd, signalFull, signalLost } from '../senses.ts';
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

function outputStands(v: ValveFacts, high: boolean): Shows {
  const to = nozzleSends(v, high);
  const full = to.stays === signalFull(v).stays;
  return {
    ...standsAtEnd({ to, share: 0.96, atOnce: 0.7 }),
    ...outputAtEnd(v, { full, share: 0.96 }),
    nozzlePressure: { [high ? 'stuck high' : 'stuck low']: 0.96 },
  };
}

/** Stuck over to one side: the valve stands at that end, and the nozzle asks for the other in vain. */
function relayStands(v: ValveFacts, high: boolean): Shows {
  return {
    ...outputStands(v, high),
    nozzlePressure: { [high ? 'stuck low' : 'stuck high']: 0.8 },
    flapperByHand: { 'not at all': 0.85, 'one way': 0.1 },
    flapperAgainstGauges: { [high ? 'clear, high' : 'covered, low']: 0.9 },
    positionerBench: { 'relay sticks': 0.97 },
  };
}

/** Stuck about its middle: what stood there stands, or drifts. */
function relayAtBalance(): Shows {
  return {
    ...standsPartWay({ share: 0.85, atOnce: 0.6 }),
    cylinderGaugesOnStep: { none: 0.85 },
    outputGauge: { none: 0.85 },
    nozzlePressure: { 'stuck low': 0.25, 'stuck high': 0.25 },
    flapperByHand: { 'not at all': 0.89, 'one way': 0.04 },
    flapperAgainstGauges: { 'covered, low': 0.3, 'clear, high': 0.3 },
    positionerBench: { 'relay sticks': 0.97 },
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
      ...outputStands(v, false),
      flapperByHand: { 'one way': 0.3, 'not at all': 0.64 },
      listenExhaust: { 'no bleed': 0.6, loud: 0.06 },
      positionerExhaust: { nothing: 0.6 },
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
      ...outputStands(v, true),
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
    shows: () => ({}),
    grades: (v) => [
      { id: 'filling', share: 0.35, shows: relayStands(v, true) },
      { id: 'emptying', share: 0.4, shows: relayStands(v, false) },
      { id: 'at balance', share: 0.25, shows: relayAtBalance() },
    ],
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
    ...relayAtItsEnd(v, 0.9),
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

/** Stuck over to one side it is as a plugged restriction or nozzle of that end, but its own nozzle asks in vain. */
function stuckAt(end: CylinderEnd, v: ValveFacts): readonly Grade[] {
  const stuck = {
    flapperByHand: { 'one way': 0.86, 'not at all': 0.07 },
    positionerBench: { 'relay sticks': 0.97 },
  };
  return [
    {
      id: 'emptying',
      share: 0.38,
      shows: {
        ...restrictionAt(end, v),
        [endNozzle(end)]: { 'stuck high': 0.7 },
        pressBothPlungers: {},
        listenExhaust: {},
        ...stuck,
      },
    },
    {
      id: 'filling',
      share: 0.34,
      shows: { ...nozzleAt(end, v), [endNozzle(end)]: { 'stuck low': 0.7 }, listenExhaust: {}, ...stuck },
    },
    { id: 'at balance', share: 0.28, shows: { ...endAtBalance(end), ...stuck } },
  ];
}

/** Its end stays about half loaded; the other alone moves the stem, with half the force. */
function endAtBalance(end: CylinderEnd): Shows {
  return {
    trend: { offset: 0.15, sluggish: 0.3, 'sudden change': 0.2 },
    smallStep: { slow: 0.35, 'no move': 0.2 },
    cylinderGaugesOnStep: { none: 0.3, slow: 0.3 },
    strokeByController: { slow: 0.3, 'short of open': 0.12, 'short of shut': 0.12, 'does not move': 0.1 },
    [endPressure(otherEnd(end))]: { low: 0.15, full: 0.08, empty: 0.06 },
    bothFlappersAgainstGauges: { [`${end} covered, low`]: 0.25, [`${end} clear, high`]: 0.3 },
    leakShut: { passes: 0.2, 'passes much': 0.15 },
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
    shows: () => ({}),
    grades: (v: ValveFacts) => stuckAt('top', v),
    ...shared,
  },
  relayBottomSticks: {
    words: 'The relay that loads the bottom sticks',
    prior: 1,
    basis: BASIS.dirtyAir,
    inside: STICKS_INSIDE,
    shows: () => ({}),
    grades: (v: ValveFacts) => stuckAt('bottom', v),
    ...shared,
  },
} as const satisfies Record<string, Cause>;
