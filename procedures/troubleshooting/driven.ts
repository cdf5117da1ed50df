import type { Shows } from './cause.ts';
import { bothEnds, endNozzle, otherEnd, type Senses, signalFull, signalLost } from './senses.ts';
import { balanceOf } from './spring-map.ts';
import { hasPositioner, type ValveFacts } from './valve-facts.ts';

/**
 * What the checks show on a stem that stands at an end of its stroke and stays there. A gauge or a stem that stood
 * there before the step does not change; whether somebody calls that "none" or names the end is a matter of words.
 */
export interface Driven {
  readonly to: Senses;
  /** Share of such faults in which it is so. */
  readonly share: number;
  /** Of them, those that came at one moment. */
  readonly atOnce: number;
}

export function standsAtEnd(of: Driven): Shows {
  const { share, to } = of;
  const open = to.stays === 'stays open';
  return {
    controllerOutput: { [to.output]: 0.86 * share, frozen: 0.04 * share },
    trend: trendOf({ share, atOnce: of.atOnce }),
    travelAgainstOutput: { [to.stays]: 0.97 * share },
    smallStep: { 'no move': 0.97 * share },
    strokeByController: { 'does not move': 0.96 * share },
    strokeOnTestAir: { 'does not move': 0.94 * share },
    leavesSeatAt: { never: (open ? 0.5 : 0.88) * share },
    // Nobody can come to half travel: most leave it, some write down what they see.
    upAgainstDown: { 'very wide': 0.3 * share },
    leakShut: open ? { passes: 0.03 * share, 'passes much': 0.9 * share } : {},
    flowAgainstTravel: {},
    supplyDroop: NO_AIR_USED(share),
  };
}

/** A loop that cannot come to its set point: at one moment, or found so. */
export function trendOf(of: { readonly share: number; readonly atOnce: number }) {
  return {
    'sudden change': 0.75 * of.share * of.atOnce,
    offset: 0.92 * of.share * (1 - 0.8 * of.atOnce),
    sluggish: 0.04 * of.share,
  };
}

/** Nothing strokes, so nothing is taken from the supply. */
const NO_AIR_USED = (share: number) => ({ pieces: [[0.9 * share, -1, 2]] as const });

/** Actuator air of a spring actuator whose stem stands at the end of full or of no air. */
export function airAtEnd(v: ValveFacts, of: { readonly full: boolean; readonly share: number }): Shows {
  if (!v.spring) return {};
  const { preloadFraction, mostAir, leastAir } = balanceOf(v);
  // Full air goes as far as the supply, or as a source goes beyond its range.
  const most = hasPositioner(v) ? mostAir : 1.25 * mostAir;
  const off = of.full ? 100 * (most - preloadFraction - 1) : -100 * preloadFraction;
  const top = of.full && !hasPositioner(v) ? 100 * (leastAir + 1 - preloadFraction - 1) : off;
  const [low, high] = [Math.min(off, top) - 6, Math.max(off, top) + 6];
  return {
    airAtTravel: {
      pieces: [[(of.full ? 0.95 : 0.5) * of.share, low, high]],
      words: of.full ? {} : { 'does not build': 0.45 * of.share },
    },
    blockActuatorSide: of.full ? {} : { 'fast fall': 0.3 * of.share },
  };
}

/** Output, cylinder and nozzle where the positioner itself is driven, or drives, all one way. */
export function outputAtEnd(v: ValveFacts, of: { readonly full: boolean; readonly share: number }): Shows {
  const { full, share } = of;
  const loaded = full ? v.risingLoads : otherEnd(v.risingLoads);
  const { runs } = full ? signalFull(v) : signalLost(v);
  return {
    ...bothEnds({ end: loaded, this: { full: 0.97 * share }, other: { empty: 0.97 * share } }),
    cylinderGaugesOnStep: { [runs]: 0.6 * share, none: 0.37 * share },
    outputGauge: { [full ? 'full' : 'empty']: 0.62 * share, none: 0.35 * share },
    ...relayAtItsEnd(v, share),
    ...airAtEnd(v, of),
  };
}

/**
 * A relay bleeds at balance, where it feeds and lets out by little at once. Driven to its end it does neither, and only
 * the nozzles go on: what is heard and felt grows less, most on a cylinder, whose relays bleed most. Judgement.
 */
export function relayAtItsEnd(v: ValveFacts, share: number): Shows {
  if (!hasPositioner(v)) return {};
  const silent = (v.spring ? 0.3 : 0.45) * share;
  return { listenExhaust: { 'no bleed': silent }, positionerExhaust: { nothing: silent } };
}

/** Nozzles as a signal at its end puts them. */
export function nozzlesAtEnd(v: ValveFacts, of: { readonly full: boolean; readonly share: number }): Shows {
  const { full, share } = of;
  const loaded = full ? v.risingLoads : otherEnd(v.risingLoads);
  const high = { 'stuck high': share };
  const low = { 'stuck low': share };
  return {
    nozzlePressure: (v.spring ? full : loaded === v.coveredNozzleLoads) ? high : low,
    [endNozzle(loaded)]: high,
    [endNozzle(otherEnd(loaded))]: low,
  };
}

/** The signal is gone or full: the positioner does as it is told, and the flapper does not move for want of change. */
export function signalAtEnd(
  v: ValveFacts,
  of: { readonly full: boolean; readonly share: number; readonly atOnce: number },
): Shows {
  const to = of.full ? signalFull(v) : signalLost(v);
  return {
    ...standsAtEnd({ to, share: of.share, atOnce: of.atOnce }),
    ...outputAtEnd(v, of),
    ...nozzlesAtEnd(v, of),
    flapperAgainstGauges: { 'does not follow': 0.92 * of.share },
    bothFlappersAgainstGauges: { 'does not follow': 0.92 * of.share },
  };
}

/** A stem that stays where it happens to stand, whatever the air does. */
export function standsPartWay(of: { readonly share: number; readonly atOnce: number }): Shows {
  const { share } = of;
  return {
    controllerOutput: { 'wound up': 0.5 * share, 'wound down': 0.38 * share, frozen: 0.05 * share },
    trend: trendOf(of),
    travelAgainstOutput: {
      'stays part way': 0.9 * share,
      'stays shut': 0.04 * share,
      'stays open': 0.04 * share,
    },
    smallStep: { 'no move': 0.97 * share },
    strokeByController: { 'does not move': 0.96 * share },
    strokeOnTestAir: { 'does not move': 0.95 * share },
    leavesSeatAt: { never: 0.8 * share },
    upAgainstDown: { 'very wide': 0.8 * share },
    leakShut: { 'passes much': 0.88 * share, passes: 0.03 * share },
    supplyDroop: NO_AIR_USED(share),
  };
}

/** Ends of a cylinder that is shut in: what stood there stays, or leaks away slowly. */
const LEFT_THERE = { full: 0.08, empty: 0.06, low: 0.16 } as const;
export const SHUT_IN = { topPressure: LEFT_THERE, bottomPressure: LEFT_THERE } as const satisfies Shows;

/** Signal as read at its source and at the valve, with none or all of it there; on the axes in percent of the span. */
export function signalReads(v: ValveFacts, of: { readonly full: boolean; readonly share: number }): Shows {
  const { signalLowPa, signalHighPa } = v.numbers;
  const zero = (-100 * signalLowPa) / (signalHighPa - signalLowPa);
  // Asked for anything between a fifth and nine tenths of the signal.
  const pieces = of.full
    ? ([[0.97 * of.share, 8, 110]] as const)
    : ([[0.97 * of.share, zero - 90, -18]] as const);
  return {
    sourceOutlet: { pieces },
    valveAgainstCommand: of.full
      ? { pieces }
      : { pieces: [[0.4 * of.share, zero - 90, -18]], words: { nothing: 0.57 * of.share } },
    sourceFivePoints: of.full ? { 'stays high': 0.95 * of.share } : { weak: 0.95 * of.share },
    blockSourceSide: of.full ? {} : { 'stays low': 0.93 * of.share },
  };
}
