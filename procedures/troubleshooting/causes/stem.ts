import type { Cause, Shows } from '../cause.ts';
import { relayAtItsEnd } from '../driven.ts';
import { frictionGrades } from '../friction.ts';
import { bothEnds } from '../senses.ts';
import { stoppedAirShows, stoppedShareOf } from '../spring-map.ts';
import { gradesOf, leftOpen, TRUE_TRAVEL, travelShows, waysAsked } from '../travel-map.ts';
import { hasPositioner, signalOpens, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const openingEnd = (v: ValveFacts) => (v.plugCloses === 'down' ? ('bottom' as const) : ('top' as const));

/** A plug stopped on its way: the actuator stands full or empty according to where it is asked to go. */
function stopped(v: ValveFacts, of: { readonly full: number; readonly empty: number }) {
  return bothEnds({
    end: openingEnd(v),
    this: { full: of.full, empty: of.empty },
    other: { full: of.empty, empty: of.full },
  });
}

/** How far a plug sits too low on its actuator stem, as a share of the travel; below 0, too high. Judgement. */
const MOVED = [
  { id: 'far too short', by: -0.16, spreadFraction: 0.05, share: 0.2 },
  { id: 'too short', by: -0.07, spreadFraction: 0.04, share: 0.3 },
  { id: 'too long', by: 0.07, spreadFraction: 0.04, share: 0.3 },
  { id: 'far too long', by: 0.16, spreadFraction: 0.05, share: 0.2 },
] as const;

type Moved = Pick<(typeof MOVED)[number], 'by' | 'spreadFraction'>;

/** Trim of the usual shape passes so many times as much for the whole of its travel. Common practice, no source. */
const RANGEABILITY = 50;

const airSign = (v: ValveFacts) => (signalOpens(v) ? 1 : -1);

/**
 * The plug is not where the stem says. Too long, it meets its seat early: the stem stops short and the opening is
 * less than it looks. Too short, it never seats, and passes more than it looks.
 */
function plugMoved(v: ValveFacts, { by, spreadFraction }: Moved): Shows {
  const map = { ...TRUE_TRAVEL, low: Math.max(0, by) };
  const leaves = 100 * airSign(v) * by;
  const wide = 100 * spreadFraction;
  const flowAt = (moved: number) => 100 * (RANGEABILITY ** -moved - 1);
  const flow = [flowAt(by + spreadFraction), flowAt(by - spreadFraction)] as const;
  return {
    ...travelShows(map),
    ...stoppedAirShows(v, { map }),
    flowAgainstTravel: { pieces: [[0.94, ...flow]] },
    leakShut: leftOpen(-by),
    leavesSeatAt: by > 0 && v.spring ? { pieces: [[0.9, leaves - wide, leaves + wide]] } : {},
    noise: by > 0 ? {} : { hiss: 0.4 },
    controllerOutput: by > 0 ? {} : { 'wound down': 0.1 },
  };
}

/** Stem, coupling, packing and stops. Effects: judgement. */
export const stemCauses = {
  packingTight: {
    words: 'The packing is too tight or dried out',
    family: 'packing',
    prior: 8,
    basis: BASIS.loops,
    inside: 'drawn down too far, dried and swollen by heat look alike',
    shows: () => ({}),
    grades: (v) =>
      frictionGrades(v, {
        sizes: [0.08, 0.13, 0.22].map((share) => ({ share, where: 1, breakaway: 1.35 })),
        shows: {
          stemAndGland: { 'scored or bent': 0.06, 'gland tight': 0.67 },
          handwheelFeel: { 'heavy all over': 0.9 },
          // Apart from the actuator, what is left of the friction is the packing's.
          plugFollowsStem: { drags: 0.85 },
        },
      }),
  },
  stemBent: {
    words: 'The stem is bent, scored or binds',
    family: 'stem',
    prior: 2.5,
    basis: BASIS.loops,
    shows: () => ({}),
    // It binds in one place of the stroke: what is tried elsewhere moves as it should.
    grades: (v) =>
      frictionGrades(v, {
        sizes: [
          { share: 0.12, where: 0.6, breakaway: 1.2 },
          { share: 0.3, where: 0.7, breakaway: 1.2 },
        ],
        shows: {
          stemAndGland: { 'scored or bent': 0.87, 'gland tight': 0.03 },
          strokeByController: { 'in jumps': 0.5, slow: 0.12, 'short of shut': 0.06, 'short of open': 0.06 },
          strokeOnTestAir: { 'in jumps': 0.5, slow: 0.12, 'short of shut': 0.06, 'short of open': 0.06 },
          leavesSeatAt: {},
          handwheelFeel: { 'heavy in one place': 0.9 },
          plugFollowsStem: { drags: 0.6 },
        },
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
      cylinderGaugesOnStep: { 'without the stem': 0.65, none: 0.2, 'runs open': 0.05, 'runs shut': 0.05 },
      ...relayAtItsEnd(v, 0.85),
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
    shows: () => ({}),
    grades: (v) =>
      MOVED.map(({ id, by, spreadFraction, share }) => {
        const shows = plugMoved(v, { by, spreadFraction });
        const wide = 100 * spreadFraction;
        // The pointer hangs on the plug's side, the feedback of a positioner on the actuator's.
        const byPointer = hasPositioner(v)
          ? {}
          : {
              travelAgainstOutput: { pieces: [[0.9, -100 * by - wide, -100 * by + wide]] as const },
              airAtTravel: {
                pieces: [[0.9, 100 * airSign(v) * by - wide, 100 * airSign(v) * by + wide]] as const,
              },
              flowAgainstTravel: {},
            };
        return {
          id,
          share,
          shows: { ...shows, ...byPointer, couplingMarks: { slipped: 0.97 } },
        };
      }),
  },
  stopEngaged: {
    words: 'The handwheel is engaged or a travel stop is wound in',
    family: 'actuator',
    prior: 2,
    basis: BASIS.judgement,
    shows: () => ({}),
    grades: (v) =>
      gradesOf(
        [
          { low: 0, high: 0.8, share: 0.2 },
          { low: 0, high: 0.6, share: 0.25 },
          { low: 0, high: 0.4, share: 0.2 },
          { low: 0.15, high: 1, share: 0.15 },
          { low: 0.4, high: 1, share: 0.2 },
        ].flatMap(({ low, high, share }) =>
          waysAsked({ ...TRUE_TRAVEL, low, high }).map(({ id, part, asked }) => {
            const map = { ...TRUE_TRAVEL, low, high };
            const { wantsOpen, wantsShut } = stoppedShareOf(map, asked);
            return {
              id: `${low} ${high}${id}`,
              share: share * part,
              map,
              told: { asked },
              shows: {
                ...stopped(v, { full: wantsOpen, empty: wantsShut }),
                ...stoppedAirShows(v, { map, asked }),
                outputGauge: { 'without the stem': 0.35 * (wantsOpen + wantsShut), full: 0.25 * wantsOpen },
                cylinderGaugesOnStep: {
                  none: 0.4 * (wantsOpen + wantsShut),
                  'without the stem': 0.3 * (wantsOpen + wantsShut),
                },
                handwheelAndStops: { engaged: 0.98 },
                leavesSeatAt: low > 0 && v.spring ? { [signalOpens(v) ? 'high' : 'low']: 0.9 } : {},
              },
            };
          }),
        ),
      ),
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
    shows: () => ({}),
    grades: (v) => MOVED.map(({ id, share, ...moved }) => ({ id, share, shows: plugMoved(v, moved) })),
  },
} as const satisfies Record<string, Cause>;
