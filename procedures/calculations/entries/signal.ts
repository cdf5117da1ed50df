import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { loopCurrentState } from '../loop-current.ts';
import {
  AIR_ACTIONS,
  convertSignal,
  expectedTravel,
  relativeFlowCoefficient,
  signalAtPercent,
  splitRange,
} from '../signal-travel.ts';
import { choice, numbers, results, told } from '../specs.ts';
import { UNITS, type UnitId } from '../unit-table.ts';
import { convert } from '../units.ts';

const UNIT_IDS = Object.keys(UNITS) as UnitId[];
const LINEAR = 'Linear signals with a live zero. 3-15 psi is not 20-100 kPa.';

/** A number whose dimension is not in its name. */
const pressure = <const N extends string>(name: N, title: string) =>
  ({ [name]: { kind: 'number', title, dimension: 'pressure' } }) as Record<
    N,
    { kind: 'number'; title: string; dimension: 'pressure' }
  >;
const current = <const N extends string>(name: N, title: string) =>
  ({ [name]: { kind: 'number', title, dimension: 'current' } }) as Record<
    N,
    { kind: 'number'; title: string; dimension: 'current' }
  >;

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
    id: 'signal-travel',
    title: 'Signal pressure and expected travel',
    topic: 'signal and travel',
    inputs: {
      ...pressure('signal', 'Signal, gauge'),
      ...pressure('rangeLow', 'Lower end of the range'),
      ...pressure('rangeHigh', 'Upper end of the range'),
      ...choice('airAction', AIR_ACTIONS),
      ...numbers('ratedTravelM'),
    },
    outputs: results('signalPercent', 'openPercent', 'openPercentClamped', 'travelM'),
    answers: ['openPercentClamped', 'travelM'],
    equation: 'percent = 100 · (signal − low)/(high − low); travel = open · rated travel',
    validity: `${LINEAR} Stem travel in proportion to the signal; a lever or cam bends it.`,
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
    id: 'current-travel',
    title: 'Signal current and expected travel',
    topic: 'signal and travel',
    inputs: {
      ...current('signal', 'Signal'),
      ...current('rangeLow', 'Lower end of the range'),
      ...current('rangeHigh', 'Upper end of the range'),
      ...choice('airAction', AIR_ACTIONS),
      ...numbers('ratedTravelM'),
    },
    outputs: {
      ...results('signalPercent', 'openPercent', 'openPercentClamped', 'travelM'),
      ...told('word', 'currentState'),
    },
    answers: ['openPercentClamped', 'travelM', 'currentState'],
    equation: 'percent = 100 · (signal − low)/(high − low); travel = open · rated travel',
    validity: `${LINEAR} The state of the current is that of a 4-20 mA device set to the usual failure levels.`,
    sources: ['S-02', 'S-03'],
    example: {
      signal: 0.012,
      rangeLow: 0.004,
      rangeHigh: 0.02,
      airAction: 'air-to-open',
      ratedTravelM: 0.02,
    },
    run: (values) => ({ ...expectedTravel(values), currentState: loopCurrentState(values.signal) }),
  }),
  calculation({
    id: 'signal-at-percent',
    title: 'Signal pressure at a percent of its range',
    topic: 'signal and travel',
    inputs: {
      ...numbers('percent'),
      ...pressure('rangeLow', 'Lower end of the range'),
      ...pressure('rangeHigh', 'Upper end of the range'),
      reverse: { kind: 'yes-no', title: 'A rising signal means less' },
    },
    outputs: results('signalPa'),
    answers: ['signalPa'],
    equation: 'signal = low + percent/100 · (high − low), from high down if reverse',
    validity: LINEAR,
    sources: ['S-02'],
    example: { percent: 50, rangeLow: 20000, rangeHigh: 100000, reverse: false },
    run: (values) => ({ signalPa: signalAtPercent(values) }),
  }),
  calculation({
    id: 'current-to-air',
    title: 'Current to air: what the converter should put out',
    topic: 'signal and travel',
    inputs: {
      ...current('signal', 'Current that goes in'),
      ...current('inLow', 'Current at 0 %'),
      ...current('inHigh', 'Current at 100 %'),
      ...pressure('outLow', 'Pressure at 0 %'),
      ...pressure('outHigh', 'Pressure at 100 %'),
    },
    outputs: results('signalPa'),
    answers: ['signalPa'],
    equation: 'out = out low + (in − in low)/(in high − in low) · (out high − out low)',
    validity: `${LINEAR} Nothing is clamped.`,
    sources: ['S-02'],
    example: { signal: 0.0104, inLow: 0.004, inHigh: 0.02, outLow: 20000, outHigh: 100000 },
    run: (values) => ({ signalPa: convertSignal(values) }),
  }),
  calculation({
    id: 'split-range',
    title: 'Valves on a split range',
    topic: 'signal and travel',
    inputs: {
      ...pressure('signal', 'Signal, gauge'),
      valves: {
        kind: 'rows',
        title: 'Valves',
        columns: {
          name: { kind: 'text', title: 'Valve' },
          ...pressure('rangeLow', 'Lower end of its part'),
          ...pressure('rangeHigh', 'Upper end of its part'),
          ...choice('airAction', AIR_ACTIONS),
        },
      },
    },
    outputs: {
      valves: {
        kind: 'rows',
        title: 'Valves',
        dimension: null,
        columns: { ...told('word', 'name'), ...results('openPercent', 'openPercentClamped') },
      },
    },
    answers: ['valves'],
    equation: 'percent = 100 · (signal − low)/(high − low) of each valve’s own part',
    validity: 'Each valve stands still outside its own part of the signal.',
    sources: ['S-02'],
    example: {
      signal: 60000,
      valves: [
        { name: 'A', rangeLow: 20000, rangeHigh: 60000, airAction: 'air-to-close' },
        { name: 'B', rangeLow: 60000, rangeHigh: 100000, airAction: 'air-to-open' },
      ],
    },
    run: (values) => ({ valves: splitRange(values) }),
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
