import type { Cause } from '../cause.ts';
import { bothEnds, shuttingEnd } from '../senses.ts';
import { hasPositioner, signalOpens } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

/** Round the valve: line, drop and size. Effects: judgement. */
export const processCauses = {
  processBypassPasses: {
    words: 'The process bypass is open or passes',
    family: 'process',
    prior: 2.5,
    basis: BASIS.judgement,
    when: (v) => v.bypassLine,
    // Where it passes less than is wanted, the loop makes up the rest with the valve nearer its seat.
    shows: () => ({
      controllerOutput: { 'wound down': 0.45, 'near shut': 0.2 },
      trend: { offset: 0.4, sluggish: 0.25 },
      // Of a bypass that passes a fiftieth to a third of the rated flow; at half travel the valve passes a seventh.
      flowAgainstTravel: {
        pieces: [
          [0.6, 10, 80],
          [0.34, 80, 230],
        ],
      },
      // Seen at the valve it is not: with the bypass carrying the process it is open anyway.
      leakShut: { passes: 0.15, 'passes much': 0.2 },
      lineUp: { 'bypass passes': 0.85 },
    }),
  },
  lineThrottled: {
    words: 'A block valve is throttled or a strainer plugged',
    family: 'process',
    prior: 2.5,
    basis: BASIS.judgement,
    shows: () => ({
      controllerOutput: { 'wound up': 0.83 },
      trend: { offset: 0.5, 'sudden change': 0.3 },
      flowAgainstTravel: { less: 0.3 },
      lineUp: { 'block throttles': 0.8 },
      pressureDrop: { low: 0.94 },
    }),
  },
  thrustTooSmall: {
    words: 'The actuator is too weak for the pressure drop now over the valve',
    family: 'process',
    prior: 1.2,
    basis: BASIS.judgement,
    when: (v) => !v.balancedPlug,
    shows: (v) => {
      const cannotShut = v.flowTendsTo === 'open';
      const stuck = cannotShut ? shuttingEnd(v) : v.plugCloses === 'down' ? 'bottom' : 'top';
      const less = signalOpens(v) === cannotShut;
      // A positioner finds the force for any place but the seat; without one the stem stands off all the way.
      const held = hasPositioner(v);
      const off = held ? 0.3 : 0.85;
      return {
        // With more drop the loop comes to the flow that it wants nearer the seat, where it may swing.
        controllerOutput: {
          ...(cannotShut ? { 'wound down': 0.3 * off + 0.1 } : { 'wound up': 0.6 * off }),
          'near shut': 0.25,
          swings: 0.1,
        },
        trend: { offset: 0.4 * off + 0.05, 'fast swing': 0.1 },
        holdInManual: { stops: 0.1 },
        travelAgainstOutput: cannotShut
          ? { 'more open': off, 'less open': 0.05 }
          : { 'stays shut': 0.12 * off, 'less open': 0.8 * off, 'more open': 0.05 },
        smallStep: { 'no move': 0.2 * off },
        airAtTravel: {
          [less ? 'less than it should' : 'more than it should']: 0.66,
          [less ? 'more than it should' : 'less than it should']: 0.1,
        },
        ...bothEnds({ end: stuck, this: { full: 0.35 }, other: { empty: 0.35 } }),
        outputGauge: { 'without the stem': 0.2 },
        pressureDrop: { high: 0.94 },
        leakShut: cannotShut ? { passes: 0.2, 'passes much': 0.5 } : {},
        noise: { hiss: 0.1 },
      };
    },
  },
  tooLarge: {
    words: 'The valve is too large for the flow now wanted: it works near its seat',
    family: 'process',
    prior: 1.2,
    basis: BASIS.loops,
    shows: () => ({
      controllerOutput: { 'near shut': 0.55, 'wound down': 0.12, swings: 0.25 },
      trend: { 'fast swing': 0.25, sluggish: 0.35 },
      holdInManual: { stops: 0.25 },
      pressureDrop: { high: 0.2 },
      noise: { hiss: 0.15, gravel: 0.1 },
    }),
  },
  tooSmall: {
    words: 'The valve is too small for the flow now wanted: full open and not enough',
    family: 'process',
    prior: 1,
    basis: BASIS.judgement,
    shows: () => ({
      controllerOutput: { 'wound up': 0.9 },
      trend: { offset: 0.8 },
      pressureDrop: { high: 0.15, low: 0.25 },
    }),
  },
  fluidChanged: {
    words: 'The fluid is not what the valve was sized for: flashing, gas in it, thicker, lighter',
    family: 'process',
    prior: 0.8,
    basis: BASIS.judgement,
    // The loop opens a little further for it, and only at its limit does anybody see more than the flow.
    shows: () => ({
      controllerOutput: { 'wound up': 0.18, swings: 0.05 },
      trend: { offset: 0.15 },
      flowAgainstTravel: {
        pieces: [
          [0.72, -40, -8],
          [0.15, 8, 30],
        ],
      },
      noise: { gravel: 0.2 },
      pressureDrop: { high: 0.1, low: 0.1 },
    }),
  },
} as const satisfies Record<string, Cause>;
