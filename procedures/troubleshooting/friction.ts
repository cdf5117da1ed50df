import type { Grade, Piece, Shows } from './cause.ts';
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
  /** The positioner drives it past its place and back without end, in place of leaving it where it sticks. */
  readonly hunts?: boolean;
}

/** How often a positioner hunts about a stem that sticks: a spring holds it, the air of a cylinder gives way. Judgement. */
const HUNTS = { spring: 0.25, cylinder: 0.5 } as const;

/** Each size of friction as a grade; behind a positioner one that hunts and one that sticks and jumps. */
export function frictionGrades(
  v: ValveFacts,
  of: { readonly sizes: readonly Friction[]; readonly shows: Shows },
): readonly Grade[] {
  const hunting = hasPositioner(v) ? HUNTS[v.spring ? 'spring' : 'cylinder'] : 0;
  const ways = [
    { hunts: false, part: 1 - hunting },
    { hunts: true, part: hunting },
  ].filter(({ part }) => part > 0);
  return of.sizes.flatMap((size) =>
    ways.map(({ hunts, part }) => ({
      id: `${size.share}${hunts ? ' hunts' : ''}`,
      share: part / of.sizes.length,
      shows: { ...frictionShows(v, { ...size, hunts }), ...of.shows },
    })),
  );
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

function actuatorRangePa(v: ValveFacts): number {
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
function frictionShows(v: ValveFacts, friction: Friction): Shows {
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
      ? { jumps: 0.74 * where, swings: 0.05 * where, 'no move': 0.15 * where }
      : { 'no move': 0.55 * still * where, jumps: (0.94 - 0.55 * still) * where },
    travelAgainstOutput: positioner ? offEitherWay(1.5, 0.5 * where) : offEitherWay(100 * share, where),
    controllerOutput: { swings: 0.6 * where },
    trend: { 'saw-tooth': 0.5 * where, 'fast swing': 0.25 * where, offset: 0.06 * where, sluggish: 0.06 },
    holdInManual: { stops: 0.55 * where, 'goes on': (positioner ? 0.2 : 0.05) * where },
    strokeByController: stroke,
    strokeOnTestAir: stroke,
    upAgainstDown: { pieces: [[0.97 * where, 0.75 * wide, 1.25 * wide]] },
    cylinderGaugesOnStep: {
      'without the stem': 0.35 * where,
      swings: 0.15 * where,
      none: 0.05 * where,
      slow: 0.1 * where,
    },
    outputGauge: { 'without the stem': 0.5 * where, swings: 0.1 * where, slow: 0.05 * where },
    nozzlePressure: { pulses: 0.15 * where },
    nozzlePressureTop: { pulses: 0.15 * where },
    nozzlePressureBottom: { pulses: 0.15 * where },
    ...airShows(v, friction),
    ...(friction.hunts === true ? huntsAbout(where) : {}),
  };
}

/** Output and stem go round and round, and air is used all the time. */
function huntsAbout(where: number): Shows {
  const stroke = { 'in jumps': 0.35 * where, overshoots: 0.5 * where };
  const pulses = { pulses: 0.7 * where };
  return {
    smallStep: { swings: 0.75 * where, jumps: 0.15 * where },
    travelAgainstOutput: offEitherWay(5, 0.7 * where),
    controllerOutput: { swings: 0.65 * where },
    trend: { 'fast swing': 0.5 * where, 'saw-tooth': 0.25 * where, sluggish: 0.05 },
    holdInManual: { 'goes on': 0.6 * where, stops: 0.25 * where },
    strokeByController: stroke,
    strokeOnTestAir: stroke,
    cylinderGaugesOnStep: { swings: 0.75 * where, 'without the stem': 0.1 * where },
    outputGauge: { swings: 0.65 * where, 'without the stem': 0.2 * where },
    nozzlePressure: pulses,
    nozzlePressureTop: pulses,
    nozzlePressureBottom: pulses,
    listenExhaust: { loud: 0.3 * where },
    positionerExhaust: { blows: 0.3 * where },
    supplyPressure: { pieces: [[0.3 * where, -13, -3]] },
    supplyDroop: { pieces: [[0.3 * where, 10, 25]] },
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
  if (!v.spring) {
    // Where it sticks short of its place the positioner winds the ends apart.
    const apart = Math.min(0.2, Math.max(0, extra / 75)) * where;
    const end = { full: 0.6 * apart, empty: 0.4 * apart, low: 0.6 * apart };
    return {
      leavesSeatAt: { high: 0.6 * Math.min(1, Math.max(0, (extra * breakaway) / 15)) },
      topPressure: end,
      bottomPressure: end,
    };
  }
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
