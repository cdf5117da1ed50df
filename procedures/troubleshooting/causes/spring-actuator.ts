import type { Cause, Shows } from '../cause.ts';
import { leakGrades } from '../leaks.ts';
import { signalFull, signalLost } from '../senses.ts';
import { hasPositioner, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const diaphragm = (v: ValveFacts) => v.actuator === 'diaphragm';
const spring = (v: ValveFacts) => v.spring;

/** Spring force that is missing or too much: travel without a positioner, only actuator air with one. */
function springForce(v: ValveFacts, of: { readonly tooMuch: boolean; readonly shows: number }): Shows {
  const leans = of.tooMuch ? signalLost(v).leans : signalFull(v).leans;
  return hasPositioner(v)
    ? { travelAgainstOutput: { [leans]: 0.05 } }
    : { travelAgainstOutput: { [leans]: of.shows } };
}

/** Less force onto the seat where a spring shuts it, more where air does. */
function seatLoad(
  v: ValveFacts,
  of: { readonly slack: boolean; readonly shares: Readonly<Record<string, number>> },
) {
  const springShuts = signalLost(v).stays === 'stays shut';
  return springShuts === of.slack ? of.shares : {};
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
    shows: (v) => ({
      ...springForce(v, { tooMuch: false, shows: 0.8 }),
      controllerOutput: {
        [signalFull(v).output]: hasPositioner(v) ? 0.15 : 0.52,
        swings: 0.04,
        frozen: 0.03,
      },
      trend: { offset: hasPositioner(v) ? 0.05 : 0.2, 'sudden change': 0.5 },
      airAtTravel: { pieces: [[0.93, -75, -12]] },
      strokeByController: { [signalLost(v).short]: 0.7 },
      strokeOnTestAir: { [signalLost(v).short]: 0.72 },
      leavesSeatAt: { low: 0.78, never: 0.08 },
      benchSetUncoupled: { 'both low': 0.52, 'span wrong': 0.44 },
      leakShut: seatLoad(v, { slack: true, shares: { passes: 0.4, 'passes much': 0.5 } }),
      noise: { rattle: 0.3 },
      openActuator: { 'spring broken': 0.99 },
    }),
  },
  springTooTight: {
    words: 'The bench set is too high: the spring is wound too tight',
    family: 'actuator',
    prior: 2,
    basis: BASIS.judgement,
    when: (v) => v.spring && v.springHeldBy === 'adjuster',
    shows: (v) => ({
      ...springForce(v, { tooMuch: true, shows: 0.9 }),
      controllerOutput: { [signalLost(v).output]: hasPositioner(v) ? 0.1 : 0.36 },
      airAtTravel: { pieces: [[0.95, 8, 40]] },
      strokeByController: { [signalFull(v).short]: hasPositioner(v) ? 0.35 : 0.82 },
      strokeOnTestAir: { [signalFull(v).short]: hasPositioner(v) ? 0.35 : 0.82 },
      leavesSeatAt: { pieces: [[0.93, 8, 40]] },
      benchSetUncoupled: { 'both high': 0.97 },
      leakShut: seatLoad(v, { slack: false, shares: { passes: 0.5, 'passes much': 0.2 } }),
    }),
  },
  springSlack: {
    words: 'The bench set is too low: the spring is slack',
    family: 'actuator',
    prior: 1.5,
    basis: BASIS.judgement,
    when: (v) => v.spring && v.springHeldBy === 'adjuster',
    shows: (v) => ({
      ...springForce(v, { tooMuch: false, shows: 0.85 }),
      airAtTravel: { pieces: [[0.95, -40, -8]] },
      strokeByController: { [signalLost(v).short]: 0.45 },
      strokeOnTestAir: { [signalLost(v).short]: 0.45 },
      leavesSeatAt: { pieces: [[0.93, -40, -8]] },
      benchSetUncoupled: { 'both low': 0.97 },
      leakShut: seatLoad(v, { slack: true, shares: { passes: 0.72, 'passes much': 0.08 } }),
    }),
  },
  wrongSpring: {
    words: 'A spring of another rate is fitted, after an overhaul',
    family: 'actuator',
    prior: 0.4,
    basis: BASIS.judgement,
    when: spring,
    shows: (v) => ({
      travelAgainstOutput: hasPositioner(v) ? {} : { 'less open': 0.42, 'more open': 0.42 },
      airAtTravel: {
        pieces: [
          [0.45, -40, -8],
          [0.45, 8, 50],
        ],
      },
      strokeByController: { [signalFull(v).short]: 0.4, [signalLost(v).short]: 0.2 },
      strokeOnTestAir: { [signalFull(v).short]: 0.4, [signalLost(v).short]: 0.2 },
      benchSetUncoupled: { 'span wrong': 0.96 },
      openActuator: { 'spring broken': 0.1 },
    }),
  },
  springVentPlugged: {
    words: 'The vent of the spring case is plugged',
    family: 'actuator',
    prior: 1.2,
    basis: BASIS.judgement,
    when: spring,
    // The trapped air is a second spring: a small step comes, a large one falls short and creeps.
    shows: (v) => ({
      trend: { sluggish: 0.78 },
      travelAgainstOutput: { [signalLost(v).leans]: hasPositioner(v) ? 0.1 : 0.45 },
      smallStep: { slow: 0.47 },
      airAtTravel: { 'more than it should': 0.55 },
      springSideVent: { plugged: 0.96 },
      strokeByController: { [signalFull(v).short]: 0.32, slow: 0.62 },
      strokeOnTestAir: { [signalFull(v).short]: 0.32, slow: 0.62 },
      upAgainstDown: { wide: 0.35 },
    }),
  },
  plateLoose: {
    words: 'Diaphragm plate, piston nut or stem nut is loose inside',
    family: 'actuator',
    prior: 0.7,
    basis: BASIS.judgement,
    when: spring,
    shows: (v) => ({
      controllerOutput: { [signalLost(v).output]: 0.64 },
      trend: { 'sudden change': 0.64 },
      travelAgainstOutput: { [signalLost(v).stays]: 0.57, [signalLost(v).leans]: 0.36 },
      smallStep: { 'no move': 0.63, jumps: 0.32 },
      airAtTravel: { 'more than it should': 0.77 },
      strokeByController: { [signalFull(v).short]: 0.47, 'does not move': 0.48 },
      strokeOnTestAir: { [signalFull(v).short]: 0.47, 'does not move': 0.48 },
      leavesSeatAt: { high: 0.47, never: 0.48 },
      upAgainstDown: { wide: 0.31, 'very wide': 0.5, narrow: 0.05 },
      benchSetUncoupled: { 'span wrong': 0.42, 'does not stroke': 0.42 },
      noise: { rattle: 0.3 },
      soapAdjuster: { bubbles: 0.18 },
      springSideVent: { 'air comes': 0.2 },
      outputGauge: { 'without the stem': 0.85 },
      openActuator: { 'joint loose': 0.99 },
    }),
  },
} as const satisfies Record<string, Cause>;
