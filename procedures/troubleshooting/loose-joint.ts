import type { Grade, Shows } from './cause.ts';
import { relayAtItsEnd, standsAtEnd, standsPartWay, trendOf } from './driven.ts';
import { signalFull, signalLost } from './senses.ts';
import { hasPositioner, type ValveFacts } from './valve-facts.ts';

/**
 * A joint inside the actuator that has come loose: with lost motion the stem follows late; let go altogether it stays
 * where plug and packing leave it, and the actuator goes from end to end without it.
 */
export function looseJoint(v: ValveFacts, always: Shows): readonly Grade[] {
  return [
    { id: 'lost motion', share: 0.5, shows: { ...lostMotion(v), ...always } },
    { id: 'off', share: 0.5, shows: { ...letGo(v), ...always } },
  ];
}

function lostMotion(v: ValveFacts): Shows {
  const stroke = { 'short of open': 0.4, 'short of shut': 0.45, 'in jumps': 0.08 };
  // A spring ties air to the place of the actuator; without one the play is crossed at the same pressures.
  const air = {
    pieces: [
      [0.4, -30, -4],
      [0.4, 4, 30],
    ],
  } as const;
  const byAir: Shows = v.spring
    ? { airAtTravel: air, leavesSeatAt: air, upAgainstDown: { pieces: [[0.9, 9, 55]] } }
    : { upAgainstDown: { narrow: 0.15 } };
  return {
    trend: { 'sudden change': 0.4, 'saw-tooth': 0.15, 'fast swing': 0.1, offset: 0.1 },
    holdInManual: { stops: 0.22, 'goes on': 0.05 },
    // The feedback hangs on the stem and makes up for most of it; without one a move within the play moves nothing.
    ...(hasPositioner(v)
      ? {
          controllerOutput: { swings: 0.25, 'wound up': 0.08, 'wound down': 0.08 },
          travelAgainstOutput: { 'less open': 0.12, 'more open': 0.12 },
          smallStep: { 'no move': 0.3, jumps: 0.25, swings: 0.15, slow: 0.05 },
        }
      : {
          controllerOutput: { swings: 0.25, 'wound up': 0.18, 'wound down': 0.18 },
          travelAgainstOutput: {
            pieces: [
              [0.32, -26, -3],
              [0.32, 3, 26],
            ],
            words: { 'stays part way': 0.25 },
          },
          smallStep: { 'no move': 0.7, jumps: 0.1 },
        }),
    strokeByController: stroke,
    strokeOnTestAir: stroke,
    ...byAir,
    leakShut: { passes: 0.1, 'passes much': 0.5 },
    outputGauge: { 'without the stem': 0.45 },
    cylinderGaugesOnStep: { 'without the stem': 0.15, slow: 0.1 },
    noise: { rattle: 0.15 },
    benchSetUncoupled: { 'span wrong': 0.5, 'up and down apart': 0.2 },
  };
}

function letGo(v: ValveFacts): Shows {
  const of = (share: number) => ({ share, atOnce: 0.85 });
  const stays = { part: 0.62, lost: 0.22, full: 0.14 };
  const ends = { full: 0.45, empty: 0.45 };
  return {
    ...standsAtEnd({ to: signalLost(v), ...of(0.97) }),
    ...standsPartWay(of(0.97)),
    trend: trendOf(of(0.95)),
    travelAgainstOutput: {
      'stays part way': stays.part,
      [signalLost(v).stays]: stays.lost,
      [signalFull(v).stays]: stays.full,
    },
    leakShut: { passes: 0.05, 'passes much': 0.65 },
    airAtTravel: {
      pieces: [
        [0.45, 12, 130],
        [0.35, -80, -12],
      ],
    },
    topPressure: ends,
    bottomPressure: ends,
    // Driven to an end by what it cannot move, it changes no more until it is asked the other way.
    cylinderGaugesOnStep: { 'without the stem': 0.45, none: 0.25, 'runs open': 0.12, 'runs shut': 0.11 },
    outputGauge: { 'without the stem': 0.4, full: 0.3, empty: 0.18, none: 0.08 },
    ...relayAtItsEnd(v, 0.85),
    handwheelFeel: { free: 0.64 },
    noise: { rattle: 0.3 },
    benchSetUncoupled: { 'does not stroke': 0.5, 'span wrong': 0.35 },
    upAgainstDown: { 'very wide': 0.6 },
    supplyDroop: {},
  };
}
