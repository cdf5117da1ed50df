import type { Cause } from '../cause.ts';
import { loading, signalFull } from '../senses.ts';
import { hasPositioner } from '../valve-facts.ts';
import { BASIS } from './sources.ts';

/** The test gear. It counts only where a finding rests on it. Effects: judgement. */
export const rigCauses = {
  gaugeWrong: {
    words: 'A gauge that this rests on reads wrong or sticks',
    family: 'test rig',
    prior: (v) => (v.rigUsed ? 1.5 : 0.8),
    basis: BASIS.judgement,
    inside: 'an offset, a sticking pointer and a wrong range: only a second gauge over the range tells',
    shows: (v) => ({
      gaugeAgainstGauge: { pieces: [[0.97, 1.6, 15]] },
      sourceOutlet: {
        pieces: [
          [0.23, -20, -2],
          [0.23, 2, 20],
        ],
      },
      valveAgainstSource: {
        pieces: [
          [0.28, -20, -2],
          [0.28, 2, 20],
        ],
      },
      valveAgainstCommand: {
        pieces: [
          [0.38, -20, -2],
          [0.38, 2, 20],
        ],
      },
      supplyPressure: { low: 0.1, none: 0.04, high: 0.1 },
      airAtTravel: {
        pieces: [
          [0.33, -30, -6],
          [0.33, 6, 30],
        ],
      },
      leavesSeatAt: {
        pieces: [
          [0.3, -30, -6],
          [0.3, 6, 30],
        ],
      },
      topPressure: { full: 0.09, empty: 0.06, low: 0.12 },
      bottomPressure: { full: 0.09, empty: 0.06, low: 0.12 },
      upAgainstDown: { wide: 0.18, narrow: 0.03 },
      strokeOnTestAir: { 'short of open': 0.19, 'short of shut': 0.19 },
      benchSetUncoupled: { 'both high': 0.31, 'both low': 0.3 },
      blockSourceSide: { 'stays low': 0.28 },
      ...(hasPositioner(v) ? {} : { sourceFivePoints: { 'off by a zero or span': 0.45 } }),
    }),
  },
  rigLeaks: {
    words: 'The test rig leaks by itself',
    family: 'test rig',
    prior: 0.8,
    basis: BASIS.judgement,
    when: (v) => v.rigUsed,
    shows: (v) => ({
      rigHold: { falls: 0.98 },
      blockActuatorSide: { 'slow fall': 0.62, 'fast fall': 0.3 },
      strokeOnTestAir: { [signalFull(v).short]: 0.18 },
      blockSourceSide: { 'stays low': 0.2 },
      benchSetUncoupled: { 'both high': 0.1, 'span wrong': 0.03 },
    }),
  },
  rigDoesNotBleed: {
    words: 'The test regulator does not bleed down, which looks like hysteresis',
    family: 'test rig',
    prior: 0.8,
    basis: BASIS.judgement,
    when: (v) => v.rigUsed,
    shows: (v) => ({
      rigBleed: { 'stays up': 0.98 },
      strokeOnTestAir: { 'in jumps': 0.38, slow: 0.3, [loading(v, 'top').short]: 0.04 },
      upAgainstDown: { wide: 0.56, 'very wide': 0.27 },
      leavesSeatAt: { high: 0.1, low: 0.1 },
      benchSetUncoupled: { 'up and down apart': 0.6, 'span wrong': 0.1 },
    }),
  },
} as const satisfies Record<string, Cause>;
