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
  const air = {
    pieces: [
      [0.4, -30, -4],
      [0.4, 4, 30],
    ],
  } as const;
  return {
    trend: { 'sudden change': 0.4, 'saw-tooth': 0.15, 'fast swing': 0.1, offset: 0.1 },
    controllerOutput: { swings: 0.25, 'wound up': 0.08, 'wound down': 0.08 },
    holdInManual: { stops: 0.22, 'goes on': 0.05 },
    // The feedback hangs on the stem and makes up for most of it.
    travelAgainstOutput: hasPositioner(v)
      ? { 'less open': 0.12, 'more open': 0.12 }
      : {
          pieces: [
            [0.42, -26, -3],
            [0.42, 3, 26],
          ],
        },
    smallStep: { 'no move': 0.3, jumps: 0.25, swings: hasPositioner(v) ? 0.15 : 0, slow: 0.05 },
    strokeByController: stroke,
    strokeOnTestAir: stroke,
    airAtTravel: air,
    leavesSeatAt: air,
    leakShut: { passes: 0.1, 'passes much': 0.5 },
    upAgainstDown: { pieces: [[0.9, 9, 55]] },
    outputGauge: { 'without the stem': 0.45 },
    cylinderGaugesOnStep: { 'without the stem': 0.4 },
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
