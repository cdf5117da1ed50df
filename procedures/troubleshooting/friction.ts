import type { Piece, Shows } from './cause.ts';
import { hasPositioner, signalOpens, type ValveFacts } from './valve-facts.ts';

/**
 * Friction of the stem each way, as a share of what the actuator can do over its range: spring range times area, or,
 * double-acting, supply times area less what the relay keeps for itself.
 */
export interface Friction {
  readonly share: number;
  /** Share of the stroke where it is so; the rest moves as it should. */
  readonly where: number;
  /** Sitting still over moving. */
  readonly breakaway: number;
}

/** Force that a cylinder has left at its working point, of supply times area: judgement. */
const CYLINDER_USES = 0.65;
/** Packing of a sound valve where the sheet does not say: judgement. */
const USUAL_SHARE = 0.02;

/** What the packing of a sound valve costs, as the same share. */
export function usualFriction(v: ValveFacts): number {
  const { packingFrictionN, effectiveAreaM2 } = v.numbers;
  if (packingFrictionN === null) return USUAL_SHARE;
  return packingFrictionN / (effectiveAreaM2 * actuatorRangePa(v));
}

export function actuatorRangePa(v: ValveFacts): number {
  const { benchSetLowPa, benchSetHighPa, supplyPa, signalHighPa, signalLowPa } = v.numbers;
  if (v.spring) return benchSetHighPa - benchSetLowPa;
  return CYLINDER_USES * (supplyPa ?? signalHighPa - signalLowPa);
}

/** Difference of air up and down on the axis of its check: of the range, or of the supply of a cylinder. */
export function upDownPercent(v: ValveFacts, share: number): number {
  return 200 * share * (v.spring ? 1 : CYLINDER_USES);
}

/** A step of a twentieth, and what a person creeps on when nothing moves. */
const SMALL_STEP = 0.08;

/** A stem that sticks, in every check that moves it or reads its air. */
export function frictionShows(v: ValveFacts, friction: Friction): Shows {
  const { share, where, breakaway } = friction;
  const positioner = hasPositioner(v);
  const wide = upDownPercent(v, share);
  const still = Math.min(1, (2 * share * breakaway) / SMALL_STEP);
  const stroke = {
    'in jumps': 0.85 * where,
    ...(positioner ? { overshoots: 0.05 } : { 'short of open': 0.03 }),
  };
  return {
    // A positioner drives the stem to its place and past it, and hunts about it; without one the stem stands off.
    smallStep: positioner
      ? { jumps: 0.62 * where, swings: 0.2 * where, 'no move': 0.12 * where }
      : { 'no move': 0.55 * still * where, jumps: (0.94 - 0.55 * still) * where },
    travelAgainstOutput: positioner ? offEitherWay(1.5, 0.5 * where) : offEitherWay(100 * share, where),
    controllerOutput: { swings: 0.6 * where },
    trend: { 'saw-tooth': 0.5 * where, 'fast swing': 0.25 * where, offset: 0.06 * where, sluggish: 0.06 },
    holdInManual: { stops: 0.55 * where, 'goes on': (positioner ? 0.2 : 0.05) * where },
    strokeByController: stroke,
    strokeOnTestAir: stroke,
    upAgainstDown: { pieces: [[0.97 * where, 0.75 * wide, 1.25 * wide]] },
    cylinderGaugesOnStep: { swings: 0.3 * where, none: 0.1 * where, slow: 0.1 * where },
    outputGauge: { 'without the stem': 0.45 * where, swings: 0.2 * where, slow: 0.05 * where },
    nozzlePressure: { pulses: 0.25 * where },
    nozzlePressureTop: { pulses: 0.25 * where },
    nozzlePressureBottom: { pulses: 0.25 * where },
    ...airShows(v, friction),
  };
}

function offEitherWay(percent: number, share: number) {
  return {
    pieces: [
      [0.47 * share, -percent, -0.3 * percent],
      [0.47 * share, 0.3 * percent, percent],
    ] as const,
  };
}

/** Friction is against the motion: more air where air moves the stem, less where the spring does. */
function airShows(v: ValveFacts, { share, where, breakaway }: Friction): Shows {
  const extra = 100 * (share - usualFriction(v));
  if (!v.spring) return { leavesSeatAt: { high: 0.6 * Math.min(1, Math.max(0, (extra * breakaway) / 15)) } };
  const sign = signalOpens(v) ? 1 : -1;
  const both = (low: number, high: number, part: number): Piece => [
    part,
    Math.min(sign * low, sign * high),
    Math.max(sign * low, sign * high),
  ];
  const leaves = 100 * (breakaway * share - usualFriction(v));
  return {
    // Which way it came is not always known, and it may stand anywhere in between.
    airAtTravel: {
      pieces: [both(0.5 * extra, 1.2 * extra, 0.62 * where), both(-1.2 * extra, 0.5 * extra, 0.33 * where)],
    },
    leavesSeatAt: { pieces: [both(0.75 * leaves, 1.2 * leaves, 0.9 * where)] },
  };
}
