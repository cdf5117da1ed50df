import type { Cause, Grade, Shows } from '../cause.ts';
import { leakGrades } from '../leaks.ts';
import { looseJoint } from '../loose-joint.ts';
import { signalFull, signalLost } from '../senses.ts';
import { type SpringSet, springAirShows, springMap } from '../spring-map.ts';
import { leftOpen, restsAt, travelShows } from '../travel-map.ts';
import { hasPositioner, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const diaphragm = (v: ValveFacts) => v.actuator === 'diaphragm';
const spring = (v: ValveFacts) => v.spring;

/** By how much of its range a bench set is wrong: judgement. */
const SET_WRONG = [
  { by: 0.08, spreadFraction: 0.03, share: 0.3 },
  { by: 0.16, spreadFraction: 0.05, share: 0.4 },
  { by: 0.3, spreadFraction: 0.1, share: 0.3 },
] as const;

/** All that a wrong spring force moves: the travel, and the air that it takes. */
function wrongForce(v: ValveFacts, set: SpringSet, atOnce: number): Shows {
  return { ...travelShows(springMap(v, set), { atOnce }), ...springAirShows(v, set) };
}

/** Less force onto the seat where a spring shuts it, more where air does. */
function seatLoad(
  v: ValveFacts,
  of: { readonly slack: boolean; readonly shares: Readonly<Record<string, number>> },
) {
  const springShuts = signalLost(v).stays === 'stays shut';
  return springShuts === of.slack ? of.shares : {};
}

/** Where the plug no longer comes to its seat it passes for that, else for the load that its seat lacks. */
function lostSeat(v: ValveFacts, set: SpringSet, unloaded: Readonly<Record<string, number>>) {
  const at = restsAt(springMap(v, set), -0.4);
  return at > 0.01 ? leftOpen(at) : seatLoad(v, { slack: set.shiftFraction < 0, shares: unloaded });
}

/** Wound too tight, 1, or slack, -1. What a seat lacks in load passes a little: more often where the spring shuts it. */
function wrongBenchSet(v: ValveFacts, way: 1 | -1): readonly Grade[] {
  const unloaded = way > 0 ? { passes: 0.4, 'passes much': 0.1 } : { passes: 0.65, 'passes much': 0.12 };
  return SET_WRONG.map(({ by, share, spreadFraction }) => {
    const set = { left: 1, rateFactor: 1, shiftFraction: way * by, spreadFraction };
    return {
      id: `${by}`,
      share,
      shows: {
        ...wrongForce(v, set, 0),
        benchSetUncoupled: { [way > 0 ? 'both high' : 'both low']: 0.97 },
        leakShut: lostSeat(v, set, unloaded),
      },
    };
  });
}

/** Actuators with a spring: a diaphragm, or a piston with air on one side. Effects: judgement, leaks by physics. */
export const springActuatorCauses = {
  diaphragmTorn: {
    words: 'The diaphragm is torn or split',
    family: 'actuator',
    prior: 4.5,
    basis: BASIS.rubber,
    when: diaphragm,
    inside:
      'a hole in the flex, a tear at the bolt circle and a joint at the plate all pass air to the spring side',
    shows: () => ({}),
    grades: (v) =>
      leakGrades(v, {
        place: 'actuator',
        shares: { medium: 0.3, large: 0.7 },
        always: {
          soapAdjuster: { bubbles: 0.87 },
          springSideVent: { 'air comes': 0.97 },
          openActuator: { 'diaphragm torn': 0.99 },
          benchSetUncoupled: { 'does not stroke': 0.5, 'span wrong': 0.08 },
        },
      }),
  },
  diaphragmPorous: {
    words: 'The diaphragm has a pinhole or is porous',
    family: 'actuator',
    prior: 4.5,
    basis: BASIS.rubber,
    when: diaphragm,
    inside: 'a pinhole, a porous sheet and a leaking centre joint look alike until it is open',
    shows: () => ({}),
    grades: (v) =>
      leakGrades(v, {
        place: 'actuator',
        shares: { small: 0.8, medium: 0.2 },
        always: {
          soapAdjuster: { bubbles: 0.55 },
          springSideVent: { 'air comes': 0.83 },
          openActuator: { 'diaphragm torn': 0.95 },
        },
      }),
  },
  caseJoint: {
    words: 'The joint of the diaphragm case leaks: nuts loose',
    family: 'actuator',
    prior: 2.5,
    basis: BASIS.leaks,
    when: diaphragm,
    shows: () => ({}),
    grades: (v) =>
      leakGrades(v, {
        place: 'actuator',
        shares: { small: 0.55, medium: 0.35, large: 0.1 },
        always: { soapCaseJoint: { bubbles: 0.97 } },
      }),
  },
  caseStemSeal: {
    words: 'The stem seal of the case that holds the air leaks',
    family: 'actuator',
    prior: 1.5,
    basis: BASIS.rubber,
    // Air above the diaphragm leaves the stem on the side without air: no seal there.
    when: (v) => diaphragm(v) && v.airMovesStem === 'up',
    shows: () => ({}),
    grades: (v) =>
      leakGrades(v, {
        place: 'actuator',
        shares: { small: 0.55, medium: 0.38, large: 0.07 },
        always: { soapStemSeal: { bubbles: 0.97 } },
      }),
  },
  pistonSealSpring: {
    words: 'The piston seal leaks to the spring side',
    family: 'actuator',
    prior: 4,
    basis: BASIS.leaks,
    when: (v) => v.actuator === 'piston' && v.spring,
    shows: () => ({}),
    grades: (v) =>
      leakGrades(v, {
        place: 'actuator',
        shares: { small: 0.4, medium: 0.45, large: 0.15 },
        always: {
          springSideVent: { 'air comes': 0.92 },
          openActuator: { 'piston seal worn': 0.97 },
        },
      }),
  },
  actuatorTubeLeaks: {
    words: 'The tube from positioner to actuator leaks',
    family: 'actuator',
    prior: 1.5,
    basis: BASIS.leaks,
    when: (v) => v.spring && hasPositioner(v),
    shows: () => ({}),
    grades: (v) =>
      leakGrades(v, {
        place: 'actuator',
        shares: { small: 0.4, medium: 0.4, large: 0.2 },
        always: { soapActuatorTube: { bubbles: 0.97 }, blockActuatorSide: { 'slow fall': 0.05 } },
      }),
  },
  springBroken: {
    words: 'The actuator spring is broken',
    family: 'actuator',
    prior: 1.8,
    basis: BASIS.judgement,
    when: spring,
    inside:
      'a cracked spring that still carries part of its load reads like a slack setting: its history or a look tells',
    shows: () => ({}),
    // Of a nest or a coil something is left; what is left of the coil is stiffer.
    grades: (v) =>
      [
        { left: 0.8, rateFactor: 1 },
        { left: 0.6, rateFactor: 1 },
        { left: 0.55, rateFactor: 0.85 },
        { left: 0.35, rateFactor: 1 },
      ].map((set) => ({
        id: `${set.left} ${set.rateFactor}`,
        share: 0.25,
        shows: {
          ...wrongForce(v, { ...set, shiftFraction: 0, spreadFraction: 0.06 }, 0.85),
          benchSetUncoupled: { 'both low': 0.4, 'span wrong': 0.56 },
          leakShut: seatLoad(v, { slack: true, shares: { passes: 0.45, 'passes much': 0.45 } }),
          noise: { rattle: 0.3 },
          openActuator: { 'spring broken': 0.99 },
        },
      })),
  },
  springTooTight: {
    words: 'The bench set is too high: the spring is wound too tight',
    family: 'actuator',
    prior: 2,
    basis: BASIS.judgement,
    when: (v) => v.spring && v.springHeldBy === 'adjuster',
    shows: () => ({}),
    grades: (v) => wrongBenchSet(v, 1),
  },
  springSlack: {
    words: 'The bench set is too low: the spring is slack',
    family: 'actuator',
    prior: 1.5,
    basis: BASIS.judgement,
    when: (v) => v.spring && v.springHeldBy === 'adjuster',
    shows: () => ({}),
    grades: (v) => wrongBenchSet(v, -1),
  },
  wrongSpring: {
    words: 'A spring of another rate is fitted, after an overhaul',
    family: 'actuator',
    prior: 0.4,
    basis: BASIS.judgement,
    when: spring,
    shows: () => ({}),
    grades: (v) =>
      [0.6, 0.8, 1.25, 1.55].map((rateFactor) => ({
        id: `${rateFactor}`,
        share: 0.25,
        shows: {
          ...wrongForce(v, { left: 1, rateFactor, shiftFraction: 0, spreadFraction: 0.07 }, 0),
          benchSetUncoupled: { 'span wrong': 0.96 },
          openActuator: { 'spring broken': 0.1 },
        },
      })),
  },
  springVentPlugged: {
    words: 'The vent of the spring case is plugged',
    family: 'actuator',
    prior: 1.2,
    basis: BASIS.judgement,
    when: spring,
    // The trapped air is a second spring until it has gone through what is left of the vent: against the motion at once,
    // for nothing a minute later.
    shows: (v) => {
      const late = hasPositioner(v) ? 0.06 : 0.36;
      const short = hasPositioner(v) ? 0.05 : 0.3;
      const stroke = { slow: 0.35, [signalFull(v).short]: short, [signalLost(v).short]: short / 2 };
      return {
        trend: { sluggish: 0.4, 'saw-tooth': 0.05 },
        travelAgainstOutput: {
          pieces: [
            [late, -14, -2],
            [late, 2, 14],
          ],
        },
        smallStep: { slow: 0.35 },
        airAtTravel: {
          pieces: [
            [0.32, 4, 35],
            [0.26, -35, -4],
          ],
        },
        leavesSeatAt: {
          pieces: [
            [0.2, 5, 25],
            [0.4, -35, -5],
          ],
        },
        springSideVent: { plugged: 0.96 },
        strokeByController: stroke,
        strokeOnTestAir: stroke,
        upAgainstDown: { wide: 0.35 },
      };
    },
  },
  plateLoose: {
    words: 'Diaphragm plate, piston nut or stem nut is loose inside',
    family: 'actuator',
    prior: 0.7,
    basis: BASIS.judgement,
    when: spring,
    shows: () => ({}),
    grades: (v) =>
      looseJoint(v, {
        soapAdjuster: { bubbles: 0.1 },
        springSideVent: { 'air comes': 0.1 },
        openActuator: { 'joint loose': 0.99 },
      }),
  },
} as const satisfies Record<string, Cause>;
