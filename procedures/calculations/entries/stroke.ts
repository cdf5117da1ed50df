import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { analyseStroke } from '../cycle-analysis.ts';
import {
  deadBandPercent,
  hysteresisAlonePercent,
  ratedTravelDeviation,
  resolution,
} from '../performance-terms.ts';
import { AIR_ACTIONS } from '../signal-travel.ts';
import { choice, numbers, optionalNumbers, results, told, usualNumbers } from '../specs.ts';
import { firstOrderTimes, stepResponse, strokingTime } from '../step-response.ts';
import { strokeFriction } from '../stroke-friction.ts';
import { DIRECTION, TERMS, terms } from './cycle-parts.ts';

const STROKE_ROWS = {
  rows: {
    kind: 'rows',
    title: 'Up and down table, in the order read',
    columns: {
      ...numbers('signalPa', 'travelM'),
      ...DIRECTION,
    },
  },
} as const;

const EXAMPLE_ROWS = [
  { signalPa: 20000, travelM: 0, direction: 'up', cycle: 1 },
  { signalPa: 60000, travelM: 0.009, direction: 'up', cycle: 1 },
  { signalPa: 100000, travelM: 0.019, direction: 'up', cycle: 1 },
  { signalPa: 60000, travelM: 0.011, direction: 'down', cycle: 1 },
  { signalPa: 20000, travelM: 0.001, direction: 'down', cycle: 1 },
] as const;

export const STROKE_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'stroke-table',
    title: 'What an up and down table says about the stroke',
    topic: 'stroke table',
    inputs: {
      ...STROKE_ROWS,
      ...numbers('rangeLowPa', 'rangeHighPa', 'ratedTravelM'),
      ...choice('airAction', AIR_ACTIONS),
      ...optionalNumbers('contactPa'),
      ...usualNumbers({ contactMarginPa: 0 }),
    },
    outputs: {
      ...TERMS,
      rows: {
        kind: 'rows',
        title: 'Rows worked out',
        dimension: null,
        columns: {
          ...results('signalPercent', 'wantedPercent'),
          openPercent: { kind: 'number', title: 'Open, as read', dimension: 'percent' },
          ...results('errorPercent'),
          ...told('word', 'direction', 'leftOut'),
        },
      },
    },
    answers: [
      'errorMaxPercent',
      'errorMinPercent',
      'hysteresisPercent',
      'repeatabilityPercent',
      'independentPercent',
    ],
    equation:
      'error = travel − what the actual signal asks, both in percent; linearity by the smallest largest deviation',
    validity:
      'Up and down alone give hysteresis and dead band together. Rows on the seat are shown, but not judged.',
    sources: ['S-04'],
    example: {
      rows: EXAMPLE_ROWS,
      rangeLowPa: 20000,
      rangeHighPa: 100000,
      ratedTravelM: 0.02,
      airAction: 'air-to-open',
    },
    run: (values) => terms(analyseStroke(values)),
  }),
  calculation({
    id: 'stroke-friction',
    title: 'Friction and bench-set shift from the same table',
    topic: 'stroke table',
    inputs: {
      ...STROKE_ROWS,
      ...numbers('effectiveAreaM2', 'benchSetLowPa', 'benchSetHighPa', 'ratedTravelM'),
      ...choice('airAction', AIR_ACTIONS),
      ...numbers('gaugeUncertaintyPa', 'indicatorUncertaintyM'),
      ...optionalNumbers('contactPa'),
      ...usualNumbers({ contactMarginPa: 0 }),
    },
    outputs: {
      ...results('frictionN', 'frictionMinN', 'frictionMaxN', 'frictionUncertaintyN'),
      ...results(
        'benchSetShiftPa',
        'benchSetShiftUncertaintyPa',
        'benchSetFoundLowPa',
        'benchSetFoundHighPa',
      ),
      ...results('springRateNPerM'),
    },
    answers: ['frictionN', 'benchSetShiftPa'],
    equation:
      'friction = A · (up − down)/2 at one travel; the middle (up + down)/2 against the bench set gives the shift',
    validity:
      'The signal is the pressure in the case, the process is off the plug. Breakout friction is larger and needs its own test.',
    sources: ['S-06'],
    example: {
      rows: EXAMPLE_ROWS,
      effectiveAreaM2: 0.05,
      benchSetLowPa: 20000,
      benchSetHighPa: 100000,
      ratedTravelM: 0.02,
      airAction: 'air-to-open',
      gaugeUncertaintyPa: 500,
      indicatorUncertaintyM: 0.0001,
    },
    run: (values) => {
      const { benchSetFound, ...found } = strokeFriction(values);
      return {
        ...found,
        benchSetFoundLowPa: benchSetFound?.lowPa ?? null,
        benchSetFoundHighPa: benchSetFound?.highPa ?? null,
        springRateNPerM: benchSetFound?.springRateNPerM ?? null,
      };
    },
  }),
  calculation({
    id: 'dead-band',
    title: 'Dead band, and hysteresis by itself',
    topic: 'stroke table',
    inputs: {
      ...numbers('lastMovementUpPa', 'firstMovementDownPa', 'inputSpanPa'),
      ...optionalNumbers('hystereticErrorPercent'),
      ...usualNumbers({ slope: 1 }),
    },
    outputs: results('deadBandPercent', 'hysteresisAlonePercent'),
    answers: ['deadBandPercent', 'hysteresisAlonePercent'],
    equation: 'dead band = 100 · |last − first|/span; hysteresis = hysteretic error − slope · dead band',
    validity: 'A slow reversal test. Dead band is percent of input span, hysteresis percent of output span.',
    sources: ['S-04'],
    example: {
      lastMovementUpPa: 62500,
      firstMovementDownPa: 62000,
      inputSpanPa: 80000,
      hystereticErrorPercent: 1.2,
    },
    run: (values) => {
      const { lastMovementUpPa, firstMovementDownPa, inputSpanPa, hystereticErrorPercent, slope } = values;
      const deadBand = deadBandPercent({
        lastMovementUp: lastMovementUpPa,
        firstMovementDown: firstMovementDownPa,
        inputSpan: inputSpanPa,
      });
      return {
        deadBandPercent: deadBand,
        hysteresisAlonePercent:
          hystereticErrorPercent === null
            ? null
            : hysteresisAlonePercent({ hystereticErrorPercent, deadBandPercent: deadBand, slope }),
      };
    },
  }),
  calculation({
    id: 'resolution',
    title: 'Resolution: the smallest step that moves the stem',
    topic: 'stroke table',
    inputs: {
      steps: {
        kind: 'rows',
        title: 'Steps tried, one direction',
        columns: {
          step: { kind: 'number', title: 'Step', dimension: 'pressure' },
          moved: { kind: 'yes-no', title: 'The stem moved' },
        },
      },
      ...numbers('inputSpanPa'),
    },
    outputs: results('smallestMovedPercent', 'largestUnmovedPercent'),
    answers: ['smallestMovedPercent'],
    equation: 'percent = 100 · step/span',
    validity: 'Steps in one direction, each from rest.',
    sources: ['S-04'],
    example: {
      steps: [
        { step: 100, moved: false },
        { step: 250, moved: true },
      ],
      inputSpanPa: 80000,
    },
    run: ({ steps, inputSpanPa }) => resolution({ steps, inputSpan: inputSpanPa }),
  }),
  calculation({
    id: 'rated-travel',
    title: 'Stroke against the rated one',
    topic: 'stroke table',
    inputs: numbers('ratedTravelM', 'actualTravelM'),
    outputs: { ...results('percent'), ...told('yes-no', 'reachesRated') },
    answers: ['percent', 'reachesRated'],
    equation: 'percent = 100 · (actual − rated)/rated',
    validity: 'Between the stops. The stroke must not be shorter than the rated one.',
    sources: ['S-12'],
    example: { ratedTravelM: 0.038, actualTravelM: 0.0387 },
    run: ratedTravelDeviation,
  }),
  calculation({
    id: 'step-response',
    title: 'Step response from a record',
    topic: 'step response',
    inputs: {
      samples: { kind: 'rows', title: 'Samples', columns: numbers('timeS', 'travelPercent') },
      ...numbers('stepTimeS'),
      ...usualNumbers({ noisePercent: 0 }),
    },
    outputs: {
      ...results('initialPercent', 'finalPercent', 'stepPercent', 'deadTimeS', 't63S', 't86S'),
      ...results('peakPercent', 'overshootPercent'),
    },
    answers: ['deadTimeS', 't63S', 't86S', 'overshootPercent'],
    equation:
      'time at which the travel passes 63.2 % and 86.5 % of the step, counted from the input step; overshoot = 100 · (peak − final)/(final − initial)',
    validity:
      'The first sample is the start, the last the settled end. Times count from the input step and hold the dead time.',
    sources: ['S-05'],
    example: {
      samples: [
        { timeS: 0, travelPercent: 50 },
        { timeS: 1.2, travelPercent: 50 },
        { timeS: 2.2, travelPercent: 60 },
        { timeS: 4, travelPercent: 60 },
      ],
      stepTimeS: 1,
    },
    run: stepResponse,
  }),
  calculation({
    id: 'first-order-times',
    title: 'T63 and T86 of a lag behind a dead time',
    topic: 'step response',
    inputs: numbers('deadTimeS', 'timeConstantS'),
    outputs: results('t63S', 't86S'),
    answers: ['t63S', 't86S'],
    equation: 'T63 = dead time + τ; T86 = dead time + 2 τ',
    validity: 'A model to compare a record with; a sticky valve does not follow it.',
    sources: ['S-05'],
    example: { deadTimeS: 0.2, timeConstantS: 0.5 },
    run: firstOrderTimes,
  }),
  calculation({
    id: 'stroking-time',
    title: 'Stroking time',
    topic: 'step response',
    inputs: { ...numbers('travelM', 'strokeS'), ...optionalNumbers('strokeSMax') },
    outputs: { ...results('meanSpeedMPerS'), ...told('yes-no', 'withinLimit') },
    answers: ['meanSpeedMPerS', 'withinLimit'],
    equation: 'speed = travel/time',
    validity: 'From the order to move until the stop is reached, air supply as in service.',
    sources: ['S-05'],
    example: { travelM: 0.05, strokeS: 4, strokeSMax: 5 },
    run: strokingTime,
  }),
];
