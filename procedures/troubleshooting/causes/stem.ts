import type { Cause } from '../cause.ts';
import { bothEnds, signalFull, signalLost } from '../senses.ts';
import { hasPositioner, signalOpens, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const openingEnd = (v: ValveFacts) => (v.plugCloses === 'down' ? ('bottom' as const) : ('top' as const));

/**
 * Friction shifts the pressure at which the stem leaves its seat against the motion: more air where air lifts it off,
 * less where the spring does.
 */
function breakAway(v: ValveFacts, share: number) {
  return v.spring && !signalOpens(v) ? { low: share } : { high: share };
}

/** A positioner drives the stem to its place all the same; without one it stands off by half the width. */
function offByFriction(v: ValveFacts, shares: { readonly less: number; readonly more: number }) {
  const part = hasPositioner(v) ? 0.35 : 1;
  return { 'less open': shares.less * part, 'more open': shares.more * part };
}

/** A plug stopped on its way: the actuator stands full or empty according to where it is asked to go. */
function stopped(v: ValveFacts, of: { readonly full: number; readonly empty: number }) {
  return bothEnds({
    end: openingEnd(v),
    this: { full: of.full, empty: of.empty },
    other: { full: of.empty, empty: of.full },
  });
}

/** Stem, coupling, packing and stops. Effects: judgement. */
export const stemCauses = {
  packingTight: {
    words: 'The packing is too tight or dried out',
    family: 'packing',
    prior: 8,
    basis: BASIS.loops,
    inside: 'drawn down too far, dried and swollen by heat look alike',
    shows: (v) => ({
      controllerOutput: { swings: 0.73 },
      trend: { 'saw-tooth': 0.79, offset: 0.09 },
      travelAgainstOutput: offByFriction(v, { less: 0.22, more: 0.17 }),
      smallStep: { 'no move': 0.2, jumps: 0.78 },
      airAtTravel: {
        pieces: [
          [0.36, 6, 30],
          [0.31, -30, -6],
        ],
      },
      topPressure: { full: 0.14, empty: 0.13, low: 0.09 },
      bottomPressure: { full: 0.14, empty: 0.13, low: 0.09 },
      outputGauge: { 'without the stem': 0.6 },
      stemAndGland: { 'scored or bent': 0.06, 'gland tight': 0.67 },
      strokeByController: { 'in jumps': 0.89 },
      strokeOnTestAir: { 'in jumps': 0.89 },
      leavesSeatAt: breakAway(v, 0.78),
      upAgainstDown: {
        pieces: [
          [0.35, 8, 15],
          [0.4, 15, 30],
          [0.22, 30, 70],
        ],
      },
      handwheelFeel: { 'heavy all over': 0.9 },
      holdInManual: { stops: 0.78, 'goes on': 0.05 },
    }),
  },
  stemBent: {
    words: 'The stem is bent, scored or binds',
    family: 'stem',
    prior: 2.5,
    basis: BASIS.loops,
    shows: (v) => ({
      controllerOutput: { swings: 0.46, 'wound up': 0.04, 'wound down': 0.04, frozen: 0.03 },
      trend: { offset: 0.26, 'saw-tooth': 0.49 },
      travelAgainstOutput: {
        'stays part way': 0.26,
        ...offByFriction(v, { less: 0.2, more: 0.04 }),
      },
      smallStep: { 'no move': 0.26, jumps: 0.62 },
      airAtTravel: {
        pieces: [
          [0.46, 8, 45],
          [0.06, -30, -8],
        ],
        words: { 'does not build': 0.05 },
      },
      outputGauge: { 'without the stem': 0.55 },
      stemAndGland: { 'scored or bent': 0.87, 'gland tight': 0.03 },
      strokeByController: { 'short of shut': 0.15, 'in jumps': 0.74 },
      strokeOnTestAir: { 'short of shut': 0.15, 'in jumps': 0.74 },
      leavesSeatAt: breakAway(v, 0.36),
      upAgainstDown: { wide: 0.74, 'very wide': 0.16 },
      handwheelFeel: { 'heavy in one place': 0.9 },
      holdInManual: { stops: 0.42, 'goes on': 0.16 },
    }),
  },
  plugSeized: {
    words: 'The plug has seized or galled in its guide',
    family: 'trim',
    prior: 2,
    basis: BASIS.judgement,
    shows: (v) => ({
      controllerOutput: { 'wound up': 0.64, 'wound down': 0.27 },
      trend: { offset: 0.53, 'sudden change': 0.42 },
      travelAgainstOutput: { 'stays part way': 0.7, 'stays shut': 0.12, 'stays open': 0.08 },
      smallStep: { 'no move': 0.98 },
      airAtTravel: {
        pieces: [
          [0.64, 12, 110],
          [0.27, -75, -12],
        ],
      },
      ...stopped(v, { full: 0.52, empty: 0.41 }),
      outputGauge: { 'without the stem': 0.93 },
      strokeByController: { 'does not move': 0.96 },
      strokeOnTestAir: { 'does not move': 0.96 },
      leavesSeatAt: { never: 0.88 },
      upAgainstDown: { 'very wide': 0.95 },
      handwheelFeel: { fast: 0.95 },
      plugFollowsStem: { fast: 0.95 },
      openBody: { galled: 0.97 },
    }),
  },
  packingLeaks: {
    words: 'The packing leaks to the outside',
    family: 'packing',
    prior: 3.5,
    basis: BASIS.leaks,
    shows: () => ({
      fluidOutside: { gland: 0.98 },
      stemAndGland: { 'scored or bent': 0.27, 'gland tight': 0.06 },
    }),
  },
  couplingSlipped: {
    words: 'The stem coupling has slipped: indicator and plug no longer agree',
    family: 'stem',
    prior: 1.8,
    basis: BASIS.judgement,
    shows: (v) => ({
      // The positioner reads the actuator stem: it agrees with itself.
      travelAgainstOutput: hasPositioner(v)
        ? {}
        : {
            pieces: [
              [0.3, -30, -3],
              [0.3, 3, 30],
            ],
          },
      couplingMarks: { slipped: 0.97 },
      strokeByController: { 'short of open': 0.2, 'short of shut': 0.3 },
      strokeOnTestAir: { 'short of open': 0.2, 'short of shut': 0.3 },
      flowAgainstTravel: { more: 0.48, less: 0.48 },
      leakShut: { passes: 0.2, 'passes much': 0.43 },
      airAtTravel: {
        pieces: [
          [0.25, 8, 40],
          [0.25, -40, -8],
        ],
      },
    }),
  },
  stopEngaged: {
    words: 'The handwheel is engaged or a travel stop is wound in',
    family: 'actuator',
    prior: 2,
    basis: BASIS.judgement,
    shows: (v) => ({
      controllerOutput: { 'wound up': 0.51, 'wound down': 0.2 },
      trend: { offset: 0.64 },
      travelAgainstOutput: { 'stays part way': 0.46, 'less open': 0.36, 'more open': 0.12 },
      smallStep: { 'no move': 0.51, slow: 0.02 },
      airAtTravel: {
        pieces: [
          [0.53, 10, 100],
          [0.27, -75, -10],
        ],
      },
      ...stopped(v, { full: 0.35, empty: 0.2 }),
      outputGauge: { 'without the stem': 0.6 },
      handwheelAndStops: { engaged: 0.98 },
      strokeByController: { 'short of open': 0.57, 'short of shut': 0.32 },
      strokeOnTestAir: { 'short of open': 0.57, 'short of shut': 0.32 },
      leavesSeatAt: { high: 0.1, low: 0.08, never: 0.1 },
    }),
  },
  plugOff: {
    words: 'The plug is off its stem',
    family: 'stem',
    prior: 0.9,
    basis: BASIS.judgement,
    shows: () => ({
      controllerOutput: { 'wound up': 0.52, 'wound down': 0.31 },
      trend: { 'sudden change': 0.88 },
      upAgainstDown: { narrow: 0.3, wide: 0.04, 'very wide': 0.04 },
      leavesSeatAt: { low: 0.47 },
      handwheelFeel: { free: 0.7 },
      flowAgainstTravel: { 'does not follow': 0.95 },
      noise: { rattle: 0.52, gravel: 0.02, hiss: 0.02 },
      leakShut: { passes: 0.1, 'passes much': 0.5 },
      pressureDrop: { high: 0.41, low: 0.31 },
      plugFollowsStem: { 'nothing on it': 0.94 },
      openBody: { 'plug loose': 0.98 },
    }),
  },
  plugSetWrong: {
    words: 'The plug stem is screwed too far in or out, after an overhaul: no seat load',
    family: 'stem',
    prior: 1,
    basis: BASIS.judgement,
    shows: (v) => ({
      controllerOutput: { 'wound down': 0.2 },
      flowAgainstTravel: { more: 0.5, less: 0.15 },
      strokeByController: { 'short of shut': 0.55, 'short of open': 0.25 },
      strokeOnTestAir: { 'short of shut': 0.55, 'short of open': 0.25 },
      leakShut: { passes: 0.4, 'passes much': 0.4 },
      leavesSeatAt: { high: 0.15, low: 0.6 },
      noise: { hiss: 0.4 },
      travelAgainstOutput: hasPositioner(v) ? {} : { [signalLost(v).leans]: 0.1, [signalFull(v).leans]: 0.1 },
    }),
  },
} as const satisfies Record<string, Cause>;
