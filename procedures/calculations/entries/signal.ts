import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import {
  AIR_ACTIONS,
  expectedTravel,
  percentOfRange,
  relativeFlowCoefficient,
  signalAtPercent,
} from '../signal-travel.ts';
import { choice, numbers, results } from '../specs.ts';
import { UNITS, type UnitId } from '../unit-table.ts';
import { convert } from '../units.ts';
import { LIVE_ZERO, quantity, SPLIT_RANGE, valvesOn } from './signal-parts.ts';

const UNIT_IDS = Object.keys(UNITS) as UnitId[];

const RANGE = {
  ...quantity('rangeLow', { title: 'Lower end of the range', dimension: 'pressure' }),
  ...quantity('rangeHigh', { title: 'Upper end of the range', dimension: 'pressure' }),
};
const SIGNAL = quantity('signal', { title: 'Signal, gauge', dimension: 'pressure' });
const REVERSE = { reverse: { kind: 'yes-no', title: 'A rising signal means less' } } as const;

export const SIGNAL_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'convert-units',
    title: 'One unit in another',
    topic: 'units',
    inputs: { ...numbers('value'), ...choice('from', UNIT_IDS), ...choice('to', UNIT_IDS) },
    outputs: results('converted'),
    answers: ['converted'],
    equation: 'converted = value · factor(from)/factor(to), with the shift of °C and °F',
    validity: 'Both units measure the same thing. A gauge pressure stays gauge, an absolute one absolute.',
    sources: ['S-01'],
    example: { value: 100, from: 'in2', to: 'cm2' },
    run: (values) => ({ converted: convert(values) }),
  }),
  calculation({
    id: 'signal-percent',
    title: 'Signal pressure in percent of its range',
    topic: 'signal and travel',
    inputs: { ...SIGNAL, ...RANGE, ...REVERSE },
    outputs: results('percent', 'percentClamped'),
    answers: ['percent'],
    equation: 'percent = 100 · (signal − low)/(high − low), from 100 down if reverse',
    validity: `${LIVE_ZERO} Beyond the range the percent goes on; clamped it does not.`,
    sources: ['S-02'],
    example: { signal: 57456.3, rangeLow: 20684.272, rangeHigh: 103421.36, reverse: false },
    run: percentOfRange,
  }),
  calculation({
    id: 'signal-travel',
    title: 'Signal pressure and expected travel',
    topic: 'signal and travel',
    inputs: {
      ...SIGNAL,
      ...RANGE,
      ...choice('airAction', AIR_ACTIONS),
      ...numbers('ratedTravelM'),
    },
    outputs: results('signalPercent', 'openPercent', 'openPercentClamped', 'travelM'),
    answers: ['openPercentClamped', 'travelM'],
    equation: 'percent = 100 · (signal − low)/(high − low); travel = open · rated travel',
    validity: `${LIVE_ZERO} Stem travel in proportion to the signal; a lever or cam bends it.`,
    sources: ['S-02'],
    example: {
      signal: 60000,
      rangeLow: 20000,
      rangeHigh: 100000,
      airAction: 'air-to-open',
      ratedTravelM: 0.02,
    },
    run: expectedTravel,
  }),
  calculation({
    id: 'signal-at-percent',
    title: 'Signal pressure at a percent of its range',
    topic: 'signal and travel',
    inputs: {
      ...numbers('percent'),
      ...RANGE,
      ...REVERSE,
    },
    outputs: results('signalPa'),
    answers: ['signalPa'],
    equation: 'signal = low + percent/100 · (high − low), from high down if reverse',
    validity: LIVE_ZERO,
    sources: ['S-02'],
    example: { percent: 50, rangeLow: 20000, rangeHigh: 100000, reverse: false },
    run: (values) => ({ signalPa: signalAtPercent(values) }),
  }),
  calculation({
    ...SPLIT_RANGE,
    id: 'split-range',
    title: 'Valves on a split range',
    inputs: { ...SIGNAL, valves: valvesOn('pressure') },
    example: {
      signal: 60000,
      valves: [
        { name: 'A', rangeLow: 20000, rangeHigh: 60000, airAction: 'air-to-close' },
        { name: 'B', rangeLow: 60000, rangeHigh: 100000, airAction: 'air-to-open' },
      ],
    },
  }),
  calculation({
    id: 'inherent-characteristic',
    title: 'Inherent characteristic: lift to relative flow',
    topic: 'signal and travel',
    inputs: {
      ...choice('characteristic', ['linear', 'equal percentage']),
      ...numbers('rangeability', 'relativeTravel'),
    },
    outputs: results('relativeFlowCoefficient'),
    answers: ['relativeFlowCoefficient'],
    equation: 'linear: x; equal percentage: R^(x − 1)',
    validity:
      'Constant pressure drop. An equal-percentage trim shuts below 1/R, which the formula does not show.',
    sources: ['S-10'],
    example: { characteristic: 'equal percentage', rangeability: 50, relativeTravel: 0.5 },
    run: (values) => ({ relativeFlowCoefficient: relativeFlowCoefficient(values) }),
  }),
];
