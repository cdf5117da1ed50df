import type { Cause } from '../cause.ts';
import { BASIS } from './sources.ts';

/** Nothing at the valve: controller, measurement, disturbance. Effects: judgement. */
export const controllerCauses = {
  nothingWrong: {
    words: 'Nothing is wrong with the valve',
    family: 'sound',
    prior: 8,
    basis: BASIS.loops,
    shows: () => ({}),
  },
  outputHeld: {
    words: 'The controller is in manual, tracking, or its output is held',
    family: 'controller',
    prior: 3,
    basis: BASIS.judgement,
    shows: () => ({
      controllerOutput: { frozen: 0.92 },
      controllerMode: { held: 0.97 },
      trend: { offset: 0.55, sluggish: 0.2 },
    }),
  },
  wrongAction: {
    words: 'The controller acts the wrong way, or its output is limited, after a change',
    family: 'controller',
    prior: 1.5,
    basis: BASIS.judgement,
    shows: () => ({
      controllerOutput: { 'wound up': 0.53, 'wound down': 0.41 },
      controllerMode: { held: 0.05 },
      trend: { offset: 0.55, 'sudden change': 0.38 },
    }),
  },
  tunedTooTight: {
    words: 'The controller is tuned too tight',
    family: 'controller',
    prior: 5,
    basis: BASIS.loops,
    shows: () => ({
      controllerOutput: { swings: 0.93 },
      trend: { 'fast swing': 0.88, 'saw-tooth': 0.04 },
      holdInManual: { stops: 0.93 },
      // The output moves on while somebody reads.
      travelAgainstOutput: {
        pieces: [
          [0.3, -5, -1.5],
          [0.3, 1.5, 5],
        ],
      },
    }),
  },
  disturbance: {
    words: 'Something else in the plant swings and this loop follows it',
    family: 'process',
    prior: 4,
    basis: BASIS.loops,
    shows: () => ({
      // A controller that is set slack hardly answers a swing that comes from elsewhere.
      controllerOutput: { swings: 0.6 },
      trend: { 'fast swing': 0.82 },
      holdInManual: { 'goes on': 0.92 },
    }),
  },
  measurementWrong: {
    words: 'The transmitter or its impulse line reads wrong',
    family: 'controller',
    prior: 4,
    basis: BASIS.loops,
    inside: 'transmitter, impulse line and wrong range look alike from here',
    shows: () => ({}),
    // While it still reads, the loop holds the false value as if nothing were wrong: only a second look tells.
    grades: () => [
      {
        id: 'off',
        share: 0.6,
        shows: {
          controllerMode: { 'bad input': 0.15 },
          trend: { offset: 0.06, 'sudden change': 0.05 },
          secondMeasurement: { pieces: [[0.97, 2, 16]] },
          flowAgainstTravel: {
            pieces: [
              [0.35, -25, -5],
              [0.35, 5, 25],
            ],
          },
        },
      },
      {
        id: 'dead',
        share: 0.4,
        shows: {
          controllerOutput: { 'wound up': 0.45, 'wound down': 0.36, swings: 0.04, frozen: 0.06 },
          controllerMode: { 'bad input': 0.45, held: 0.3 },
          trend: { offset: 0.5, 'sudden change': 0.3, sluggish: 0.04 },
          secondMeasurement: { differs: 0.96 },
          flowAgainstTravel: { more: 0.25, less: 0.25, 'does not follow': 0.4 },
        },
      },
    ],
  },
} as const satisfies Record<string, Cause>;
