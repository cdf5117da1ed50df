import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { loopCurrentState } from '../loop-current.ts';
import { AIR_ACTIONS, convertSignal, expectedTravel, percentOfRange } from '../signal-travel.ts';
import { choice, numbers, results, told } from '../specs.ts';
import { LIVE_ZERO, quantity, SPLIT_RANGE, valvesOn } from './signal-parts.ts';

const RANGE = {
  ...quantity('signal', { title: 'Signal', dimension: 'current' }),
  ...quantity('rangeLow', { title: 'Lower end of the range', dimension: 'current' }),
  ...quantity('rangeHigh', { title: 'Upper end of the range', dimension: 'current' }),
};
const STATE = 'The state of the current is that of a 4-20 mA device set to the usual failure levels.';

export const CURRENT_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'current-percent',
    title: 'Signal current in percent of its range',
    topic: 'signal and travel',
    inputs: { ...RANGE, reverse: { kind: 'yes-no', title: 'A rising signal means less' } },
    outputs: { ...results('percent', 'percentClamped'), ...told('word', 'currentState') },
    answers: ['percent', 'currentState'],
    equation: 'percent = 100 · (signal − low)/(high − low), from 100 down if reverse',
    validity: `${LIVE_ZERO} ${STATE}`,
    sources: ['S-02', 'S-03'],
    example: { signal: 0.0088, rangeLow: 0.004, rangeHigh: 0.02, reverse: false },
    run: (values) => ({ ...percentOfRange(values), currentState: loopCurrentState(values.signal) }),
  }),
  calculation({
    id: 'current-travel',
    title: 'Signal current and expected travel',
    topic: 'signal and travel',
    inputs: { ...RANGE, ...choice('airAction', AIR_ACTIONS), ...numbers('ratedTravelM') },
    outputs: {
      ...results('signalPercent', 'openPercent', 'openPercentClamped', 'travelM'),
      ...told('word', 'currentState'),
    },
    answers: ['openPercentClamped', 'travelM', 'currentState'],
    equation: 'percent = 100 · (signal − low)/(high − low); travel = open · rated travel',
    validity: `${LIVE_ZERO} ${STATE}`,
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
    id: 'current-to-air',
    title: 'Current to air: what the converter should put out',
    topic: 'signal and travel',
    inputs: {
      ...quantity('signal', { title: 'Current that goes in', dimension: 'current' }),
      ...quantity('inLow', { title: 'Current at 0 %', dimension: 'current' }),
      ...quantity('inHigh', { title: 'Current at 100 %', dimension: 'current' }),
      ...quantity('outLow', { title: 'Pressure at 0 %', dimension: 'pressure' }),
      ...quantity('outHigh', { title: 'Pressure at 100 %', dimension: 'pressure' }),
    },
    outputs: results('signalPa'),
    answers: ['signalPa'],
    equation: 'out = out low + (in − in low)/(in high − in low) · (out high − out low)',
    validity: `${LIVE_ZERO} Nothing is clamped.`,
    sources: ['S-02'],
    example: { signal: 0.0104, inLow: 0.004, inHigh: 0.02, outLow: 20000, outHigh: 100000 },
    run: (values) => ({ signalPa: convertSignal(values) }),
  }),
  calculation({
    ...SPLIT_RANGE,
    id: 'split-range-current',
    title: 'Valves on a split range of a current',
    inputs: { ...quantity('signal', { title: 'Signal', dimension: 'current' }), valves: valvesOn('current') },
    example: {
      signal: 0.008,
      valves: [
        { name: 'A', rangeLow: 0.004, rangeHigh: 0.012, airAction: 'air-to-close' },
        { name: 'B', rangeLow: 0.012, rangeHigh: 0.02, airAction: 'air-to-open' },
      ],
    },
  }),
];
