import type { Cause, Grade, Shows } from '../cause.ts';
import { nozzlesAtEnd, outputAtEnd, signalAtEnd, standsAtEnd } from '../driven.ts';
import { bothEnds, endNozzle, loading, otherEnd, signalFull, signalLost } from '../senses.ts';
import { OFF_BY, signalMap, travelShows } from '../travel-map.ts';
import { hasPositioner, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

const pneumatic = (v: ValveFacts) => v.positioner === 'pneumatic';

/** The positioner drives all one way and stays there: the nozzle that loads that end is covered, another bare. */
function runsAway(v: ValveFacts, of: { readonly full: boolean; readonly share: number }): Shows {
  const to = of.full ? signalFull(v) : signalLost(v);
  return {
    ...standsAtEnd({ to, share: of.share, atOnce: 0.85 }),
    ...outputAtEnd(v, of),
    ...nozzlesAtEnd(v, of),
  };
}

/** Nothing tells the positioner where the stem is. */
function withoutFeedback(
  v: ValveFacts,
  of: {
    readonly shares: { readonly lost: number; readonly full: number; readonly flips: number };
    readonly shows: Shows;
  },
): readonly Grade[] {
  return [
    {
      id: 'lost',
      share: of.shares.lost,
      shows: { ...runsAway(v, { full: false, share: 0.95 }), ...of.shows },
    },
    {
      id: 'full',
      share: of.shares.full,
      shows: { ...runsAway(v, { full: true, share: 0.95 }), ...of.shows },
    },
    { id: 'flips', share: of.shares.flips, shows: { ...opensOrShuts(v), ...of.shows } },
  ];
}

/** Without feedback a signal above the middle drives it all the way one way, one below all the way the other. */
function opensOrShuts(v: ValveFacts): Shows {
  const stroke = { 'in jumps': 0.7, overshoots: 0.18 };
  const either = { full: 0.3, empty: 0.3, low: 0.06 };
  return {
    controllerOutput: { swings: 0.8, 'wound up': 0.06, 'wound down': 0.06 },
    trend: { 'fast swing': 0.55, 'saw-tooth': 0.15, 'sudden change': 0.2 },
    holdInManual: { stops: 0.75, 'goes on': 0.06 },
    travelAgainstOutput: {
      pieces: [
        [0.42, -55, -20],
        [0.42, 15, 55],
      ],
      words: { 'stays open': 0.05, 'stays shut': 0.05 },
    },
    smallStep: { jumps: 0.45, 'no move': 0.3, swings: 0.12 },
    strokeByController: stroke,
    strokeOnTestAir: stroke,
    topPressure: either,
    bottomPressure: either,
    cylinderGaugesOnStep: { 'runs open': 0.32, 'runs shut': 0.2, none: 0.15, swings: 0.1 },
    outputGauge: { full: 0.35, empty: 0.25, none: 0.15, swings: 0.1 },
    nozzlePressure: { 'stuck high': 0.2, 'stuck low': 0.2 },
    [endNozzle(v.risingLoads)]: { 'stuck high': 0.2, 'stuck low': 0.2 },
    [endNozzle(otherEnd(v.risingLoads))]: { 'stuck high': 0.2, 'stuck low': 0.2 },
  };
}

function wornRelay(v: ValveFacts): Shows {
  return {
    trend: { sluggish: 0.52 },
    supplyDroop: { large: 0.4 },
    supplyPressure: { pieces: [[0.45, -12, -3]] },
    // The leak pulls the output down, and the positioner stands off by what it needs to make it good.
    travelAgainstOutput: { [signalLost(v).leans]: 0.45 },
    smallStep: { slow: 0.4, swings: 0.15 },
    topPressure: { low: 0.3 },
    bottomPressure: { low: 0.3 },
    cylinderGaugesOnStep: { slow: 0.57 },
    outputGauge: { slow: 0.55 },
    listenExhaust: { loud: 0.92 },
    positionerExhaust: { blows: 0.96 },
    strokeByController: { slow: 0.58 },
    strokeOnTestAir: { slow: 0.55 },
    flapperAgainstGauges: { 'covered, low': 0.18 },
    bothFlappersAgainstGauges: { 'top covered, low': 0.09, 'bottom covered, low': 0.09 },
    positionerBench: { 'relay worn': 0.97 },
  };
}

/** Positioner, apart from its relays: input, linkage, adjustment. Effects: judgement. */
export const positionerCauses = {
  flapperBent: {
    words: 'The flapper is bent or out of square with its nozzle',
    family: 'positioner',
    prior: 1,
    basis: BASIS.judgement,
    when: pneumatic,
    shows: () => ({}),
    // Out of square it closes late or early: the zero moves, and the range of the nozzle is cut.
    grades: (v) =>
      [-0.11, -0.06, 0.06, 0.11].map((shiftFraction) => ({
        id: `${shiftFraction}`,
        share: 0.25,
        shows: {
          ...travelShows(signalMap(v, { factor: 1, shiftFraction, spreadFraction: 0.03 })),
          smallStep: { slow: 0.15, swings: 0.05, jumps: 0.05, 'no move': 0.04 },
          nozzlePressure: { 'stuck low': 0.12, 'stuck high': 0.04, pulses: 0.04 },
          nozzlePressureTop: { 'stuck low': 0.12, 'stuck high': 0.04, pulses: 0.04 },
          nozzlePressureBottom: { 'stuck low': 0.12, 'stuck high': 0.04, pulses: 0.04 },
          flapperByHand: { 'one way': 0.24 },
          positionerMarks: { 'off the marks': 0.5 },
          flapperAgainstGauges: { askew: 0.92 },
          bothFlappersAgainstGauges: { askew: 0.92 },
          positionerBench: { 'flapper bent': 0.97 },
        },
      })),
  },
  relayWorn: {
    words: 'The relay of the positioner is worn and leaks to exhaust',
    family: 'positioner',
    prior: 2,
    basis: BASIS.leaks,
    when: hasPositioner,
    shows: () => ({}),
    // One relay over a spring bleeds loudly. Of two ends, a worn exhaust seat lets both sink until little is left to blow.
    grades: (v) =>
      v.spring
        ? [{ id: 'blows', share: 1, shows: wornRelay(v) }]
        : [
            { id: 'blows', share: 0.5, shows: wornRelay(v) },
            {
              id: 'sinks',
              share: 0.5,
              shows: {
                ...wornRelay(v),
                topPressure: { low: 0.4, empty: 0.4 },
                bottomPressure: { low: 0.4, empty: 0.4 },
                listenExhaust: { loud: 0.35 },
                positionerExhaust: { blows: 0.4 },
                supplyPressure: { pieces: [[0.3, -10, -3]] },
                flapperAgainstGauges: { 'covered, low': 0.5 },
                bothFlappersAgainstGauges: { 'top covered, low': 0.25, 'bottom covered, low': 0.25 },
                flapperByHand: { 'one way': 0.3 },
              },
            },
          ],
  },
  bellowsRuptured: {
    words: 'The input bellows or capsule of the positioner is ruptured',
    family: 'positioner',
    prior: 1.2,
    basis: BASIS.judgement,
    when: pneumatic,
    shows: (v) => {
      return {
        ...signalAtEnd(v, { full: false, share: 0.95, atOnce: 0.9 }),
        valveAgainstSource: { pieces: [[0.72, -70, -4]], words: { nothing: 0.15 } },
        sourceOutlet: { pieces: [[0.5, -25, -3]] },
        valveAgainstCommand: { pieces: [[0.75, -80, -4]], words: { nothing: 0.1 } },
        sourceFivePoints: { 'off by a zero or span': 0.35, weak: 0.2 },
        positionerMarks: { 'off the marks': 0.3 },
        listenExhaust: { loud: 0.36, 'no bleed': 0.3 },
        positionerExhaust: { blows: 0.1, nothing: 0.35 },
        blockSourceSide: { 'climbs to full': 0.84, 'stays low': 0.02 },
        positionerBench: { 'bellows leaks': 0.97 },
        soapActuatorTube: {},
      };
    },
  },
  linkageOff: {
    words: 'The feedback linkage is broken or off',
    family: 'positioner',
    prior: 2,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: () => ({}),
    // The lever drops to either end, or hangs about its middle: then the positioner only says open or shut.
    grades: (v) =>
      withoutFeedback(v, {
        shares: { lost: 0.3, full: 0.3, flips: 0.4 },
        shows: { feedbackLinkage: { off: 0.97 }, positionerMarks: { 'off the marks': 0.5 } },
      }),
  },
  rangeSpringOff: {
    words: 'The range spring of the positioner is broken or off',
    family: 'positioner',
    prior: 0.7,
    basis: BASIS.judgement,
    when: pneumatic,
    shows: () => ({}),
    grades: (v) =>
      withoutFeedback(v, {
        shares: { lost: 0.3, full: 0.35, flips: 0.35 },
        shows: { positionerBench: { 'range spring off': 0.97 } },
      }),
  },
  linkageWorn: {
    words: 'Feedback linkage or cam is loose or worn',
    family: 'positioner',
    prior: 2,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: () => ({
      controllerOutput: { swings: 0.42 },
      // Play lets the loop swing, and at times the positioner by itself.
      holdInManual: { stops: 0.32, 'goes on': 0.1 },
      trend: { 'saw-tooth': 0.2, 'fast swing': 0.25, offset: 0.04, sluggish: 0.04 },
      travelAgainstOutput: {
        pieces: [
          [0.34, -14, -2],
          [0.34, 2, 14],
        ],
      },
      smallStep: { jumps: 0.36, swings: 0.3 },
      feedbackLinkage: { worn: 0.92, off: 0.02 },
      positionerMarks: { 'off the marks': 0.55 },
      strokeByController: { 'in jumps': 0.52 },
      strokeOnTestAir: { 'in jumps': 0.52 },
      upAgainstDown: { wide: 0.4 },
    }),
  },
  zeroOrSpanWrong: {
    words: 'Zero or span of the positioner is out of adjustment',
    family: 'positioner',
    prior: 3,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: () => ({}),
    grades: (v) =>
      OFF_BY.flatMap(({ id, by, spreadFraction, share }) =>
        [-1, 1].flatMap((way) =>
          [
            { kind: 'zero', factor: 1, shiftFraction: way * by, part: 0.3 },
            { kind: 'span', factor: 1 + 1.4 * way * by, shiftFraction: 0, part: 0.2 },
          ].map(({ kind, factor, shiftFraction, part }) => ({
            id: `${kind} ${id} ${way < 0 ? 'low' : 'high'}`,
            share: share * part,
            shows: {
              ...travelShows(signalMap(v, { factor, shiftFraction, spreadFraction })),
              positionerMarks: { 'off the marks': 0.62 },
              positionerBench: { 'zero or span wrong': 0.93 },
            },
          })),
        ),
      ),
  },
  gainTooHigh: {
    words: 'The positioner is set too lively and hunts',
    family: 'positioner',
    prior: 1.5,
    basis: BASIS.judgement,
    when: hasPositioner,
    shows: () => ({
      controllerOutput: { swings: 0.6 },
      trend: { 'fast swing': 0.85 },
      holdInManual: { 'goes on': 0.82, stops: 0.04 },
      smallStep: { swings: 0.94 },
      cylinderGaugesOnStep: { swings: 0.92 },
      outputGauge: { swings: 0.92 },
      nozzlePressure: { pulses: 0.9 },
      nozzlePressureTop: { pulses: 0.9 },
      nozzlePressureBottom: { pulses: 0.9 },
      travelAgainstOutput: {
        pieces: [
          [0.3, -6, -1.5],
          [0.3, 1.5, 6],
        ],
      },
      // It takes and throws away air all the time.
      listenExhaust: { loud: 0.5 },
      positionerExhaust: { blows: 0.5 },
      supplyPressure: { pieces: [[0.35, -13, -3]] },
      supplyDroop: { pieces: [[0.4, 10, 25]] },
      strokeByController: { overshoots: 0.88 },
      strokeOnTestAir: { overshoots: 0.88 },
    }),
  },
  electricPartDead: {
    words: 'The electric part of the positioner does not answer or drives it to one end',
    family: 'positioner',
    prior: 4,
    basis: BASIS.judgement,
    when: (v) => v.positioner === 'electropneumatic',
    shows: () => ({}),
    grades: (v) =>
      [
        { full: false, share: 0.85 },
        { full: true, share: 0.15 },
      ].map(({ full, share }) => ({
        id: full ? 'full' : 'none',
        share,
        shows: {
          ...runsAway(v, { full, share: 0.95 }),
          loopCurrent: { none: 0.05, low: 0.03 },
          strokeOnTestAir: {},
          positionerBench: { 'converter dead': 0.97 },
        },
      })),
  },
  tubesCrossed: {
    words: 'The two tubes to the cylinder are exchanged, after work',
    family: 'positioner',
    prior: 0.8,
    basis: BASIS.judgement,
    when: (v) => !v.spring,
    shows: (v) => {
      const [lost, full] = [signalLost(v), signalFull(v)];
      return {
        controllerOutput: { [lost.output]: 0.52, [full.output]: 0.42 },
        trend: { 'sudden change': 0.9 },
        travelAgainstOutput: { [lost.stays]: 0.42, [full.stays]: 0.44, 'other way': 0.12 },
        smallStep: { 'no move': 0.62, 'other way': 0.35 },
        ...bothEnds({
          end: v.risingLoads,
          this: { empty: 0.5, full: 0.46 },
          other: { full: 0.5, empty: 0.46 },
        }),
        cylinderGaugesOnStep: { [full.runs]: 0.2, [lost.runs]: 0.2, none: 0.2, 'other way': 0.38 },
        supplyDroop: { pieces: [[0.55, -1, 2]] },
        traceTubing: { crossed: 0.98 },
        strokeByController: { 'does not move': 0.45, 'other way': 0.52 },
        strokeOnTestAir: { 'does not move': 0.45, 'other way': 0.52 },
        flapperAgainstGauges: { 'covered, low': 0.45, 'clear, high': 0.4 },
        bothFlappersAgainstGauges: {
          'top covered, low': 0.23,
          'bottom covered, low': 0.23,
          'top clear, high': 0.2,
          'bottom clear, high': 0.2,
        },
      };
    },
  },
} as const satisfies Record<string, Cause>;

/** Where the valve goes when the end that a nozzle loads stays empty or full. */
export function deadEnd(v: ValveFacts, of: { readonly end: 'top' | 'bottom'; readonly full: boolean }) {
  return loading(v, of.full ? of.end : otherEnd(of.end));
}
