import type { Cause } from '../cause.ts';
import { bothEnds, shuttingEnd } from '../senses.ts';
import { stoppedAirShows, stoppedShareOf } from '../spring-map.ts';
import { gradesOf, TRUE_TRAVEL, waysAsked } from '../travel-map.ts';
import { hasPositioner, signalOpens, type ValveFacts } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

/** An object keeps it open: below it the stem does not go, above it everything is as it should be. */
function held(v: ValveFacts, of: { readonly low: number; readonly asked: readonly number[] }) {
  const { low, asked } = of;
  const map = { ...TRUE_TRAVEL, low };
  const { wantsShut } = stoppedShareOf(map, asked);
  const leaves = signalOpens(v) ? 100 * low : -100 * low;
  return {
    map,
    told: { atOnce: 0.5, asked },
    shows: {
      ...bothEnds({ end: shuttingEnd(v), this: { full: wantsShut }, other: { empty: wantsShut } }),
      ...stoppedAirShows(v, { map, asked }),
      // It leaves the object where spring and air would hold it there.
      leavesSeatAt: v.spring ? { pieces: [[0.95, leaves - 2, leaves + 2]] as const } : {},
      handwheelFeel: { 'heavy in one place': 0.53 },
      noise: { hiss: 0.54, gravel: 0.04, rattle: 0.04 },
      outputGauge: { 'without the stem': 0.5 * wantsShut },
      openBody: { object: 0.96 },
    },
  };
}

/** Per cent more flow at half travel for each whole of the rated flow that passes the seat: 100 times the root of 50. */
const MORE_AT_HALF = 707;

/** Trim, seat and joints of the body. Effects: judgement. */
export const trimCauses = {
  seatWorn: {
    words: 'Seat or plug is worn or wire-drawn',
    family: 'trim',
    prior: 4,
    basis: BASIS.judgement,
    inside: 'a worn seat, a worn plug and a loose seat ring read alike until the body is open',
    shows: () => ({}),
    // What passes when shut passes beside the plug as well: at half travel a trim of the usual shape lets a seventh through.
    grades: () =>
      [
        {
          id: 'a little',
          leak: [0.002, 0.02],
          passes: { passes: 0.93, 'passes much': 0.05 },
          windsDown: 0.1,
        },
        { id: 'much', leak: [0.02, 0.08], passes: { passes: 0.05, 'passes much': 0.93 }, windsDown: 0.4 },
      ].map(({ id, leak: [least = 0, most = 0], passes, windsDown }) => ({
        id,
        share: 0.5,
        shows: {
          controllerOutput: { 'wound down': windsDown },
          flowAgainstTravel: { pieces: [[0.95, least * MORE_AT_HALF, most * MORE_AT_HALF]] },
          leakShut: passes,
          noise: { hiss: 0.54, gravel: 0.04, rattle: 0.04 },
          openBody: { 'seat worn': 0.97 },
        },
      })),
  },
  objectInSeat: {
    words: 'Something lies between plug and seat',
    family: 'trim',
    prior: 1.8,
    basis: BASIS.judgement,
    shows: () => ({}),
    grades: (v) =>
      gradesOf(
        [0.06, 0.15, 0.3].flatMap((low) =>
          waysAsked({ ...TRUE_TRAVEL, low }).map(({ id, part, asked }) => ({
            id: `${low}${id}`,
            share: part,
            ...held(v, { low, asked }),
          })),
        ),
      ),
  },
  fouled: {
    words: 'Trim or body is plugged by scale or deposits',
    family: 'trim',
    prior: 2.5,
    basis: BASIS.judgement,
    shows: () => ({
      // The loop opens further for the same flow, until it can no more: then less flow leaves more drop.
      controllerOutput: { 'wound up': 0.5 },
      trend: { offset: 0.45 },
      flowAgainstTravel: { pieces: [[0.97, -65, -12]] },
      pressureDrop: { high: 0.3, low: 0.03 },
      smallStep: { jumps: 0.06 },
      openBody: { fouled: 0.97 },
    }),
  },
  cavitation: {
    words: 'Cavitation or flashing eats the trim',
    family: 'trim',
    prior: 1.5,
    basis: BASIS.judgement,
    shows: () => ({
      flowAgainstTravel: { less: 0.36, more: 0.05, 'does not follow': 0.04 },
      leakShut: { passes: 0.46, 'passes much': 0.15 },
      noise: { gravel: 0.97 },
      pressureDrop: { high: 0.74, low: 0.04 },
      openBody: { pitted: 0.93 },
    }),
  },
  turnedRound: {
    words: 'The body stands against its flow arrow',
    family: 'trim',
    prior: 0.6,
    basis: BASIS.judgement,
    // What a reversed body does depends on which way the flow was meant to push; without a positioner the stem gives way.
    shows: (v) => ({
      ...(v.flowTendsTo === 'open' && !v.balancedPlug
        ? {
            trend: { 'fast swing': 0.3, offset: 0.04, 'saw-tooth': 0.04 },
            // The plug is drawn to its seat and let go: no loop takes part in it.
            holdInManual: { 'goes on': 0.2, stops: 0.1 },
            smallStep: { jumps: 0.25, swings: 0.2 },
            noise: { rattle: 0.3 },
            leakShut: {},
          }
        : { smallStep: { jumps: 0.03, swings: 0.03 }, noise: { hiss: 0.05, rattle: 0.03 } }),
      ...(hasPositioner(v) || v.balancedPlug
        ? {}
        : {
            travelAgainstOutput: {
              pieces: [
                [0.35, -14, -2],
                [0.35, 2, 14],
              ] as const,
            },
          }),
      flowArrow: { 'turned round': 0.99 },
    }),
  },
  bonnetLeaks: {
    words: 'The bonnet or body joint leaks',
    family: 'trim',
    prior: 1.2,
    basis: BASIS.leaks,
    shows: () => ({ fluidOutside: { bonnet: 0.98 } }),
  },
  bellowsSealFailed: {
    words: 'The bellows seal of the bonnet has failed',
    family: 'trim',
    prior: 1,
    basis: BASIS.judgement,
    when: (v) => v.bellowsSeal,
    shows: () => ({ fluidOutside: { bellows: 0.85, gland: 0.1 } }),
  },
  balanceSeal: {
    words: 'The balance seal or a cage gasket is worn',
    family: 'trim',
    prior: 1.2,
    basis: BASIS.rubber,
    when: (v) => v.balancedPlug,
    inside: 'balance seal, cage gasket and seat-ring gasket look alike until the body is open',
    shows: () => ({
      flowAgainstTravel: { more: 0.42 },
      leakShut: { passes: 0.8, 'passes much': 0.13 },
      noise: { hiss: 0.48, gravel: 0.04, rattle: 0.04 },
      openBody: { 'seal worn': 0.97 },
    }),
  },
  wrongTrim: {
    words: 'Trim of another size or characteristic is fitted, after an overhaul',
    family: 'trim',
    prior: 0.4,
    basis: BASIS.judgement,
    shows: () => ({}),
    // Of another size the flow differs by a factor, and the loop comes to terms with it; of another shape it differs most
    // about half travel, and the gain with it. Sizes of trim stand a third to a half apart: common practice, no source.
    grades: () => [
      {
        id: 'larger',
        share: 0.4,
        shows: {
          controllerOutput: { 'near shut': 0.12, 'wound down': 0.04 },
          flowAgainstTravel: { pieces: [[0.95, 20, 140]] },
          openBody: { 'wrong trim': 0.9 },
        },
      },
      {
        id: 'smaller',
        share: 0.4,
        shows: {
          controllerOutput: { 'wound up': 0.3 },
          trend: { offset: 0.28 },
          flowAgainstTravel: { pieces: [[0.95, -60, -15]] },
          pressureDrop: { high: 0.15 },
          openBody: { 'wrong trim': 0.9 },
        },
      },
      {
        id: 'another shape',
        share: 0.2,
        shows: {
          controllerOutput: { swings: 0.35, 'near shut': 0.2 },
          holdInManual: { stops: 0.35 },
          trend: { 'fast swing': 0.4 },
          flowAgainstTravel: {
            pieces: [
              [0.6, 30, 250],
              [0.3, -75, -20],
            ],
          },
          openBody: { 'wrong trim': 0.9 },
        },
      },
    ],
  },
} as const satisfies Record<string, Cause>;
