import { calculation } from '../calculation.ts';
import type { Calculation, OutputSpec } from '../calculation-types.ts';
import { ABOVE_ZERO, refuseCount, refuseOutside } from '../checks.ts';
import { analyseCycle } from '../cycle-analysis.ts';
import { AIR_ACTIONS, percentOfRange } from '../signal-travel.ts';
import { choice, numbers, results, usualNumbers } from '../specs.ts';
import { zeroAndSpan } from '../zero-and-span.ts';
import { DIRECTION, TERMS, terms } from './cycle-parts.ts';
import { quantity } from './signal-parts.ts';

const CYCLE_TERMS: Readonly<Record<string, OutputSpec>> = {
  ...TERMS,
  averageCurve: {
    kind: 'rows',
    title: 'Average curve',
    dimension: null,
    columns: results('inputPercent', 'upPercent', 'downPercent', 'averagePercent'),
  },
};
const ASKED = [
  'errorMaxPercent',
  'errorMinPercent',
  'hysteresisPercent',
  'repeatabilityPercent',
  'independentPercent',
  'terminalPercent',
  'zeroBasedPercent',
];
const EQUATION =
  'error = output − what the actual input asks; hysteresis and dead band = largest |down − up| within a cycle; linearity by the smallest largest deviation';
const VALIDITY =
  'Up and down alone give hysteresis and dead band together. Leave out rows that a seat or a stop held.';

export const CYCLE_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'cycle-percent',
    title: 'What an up and down table in percent says',
    topic: 'stroke table',
    inputs: {
      points: {
        kind: 'rows',
        title: 'Readings',
        columns: { ...numbers('inputPercent', 'outputPercent'), ...DIRECTION },
      },
      reverse: { kind: 'yes-no', title: 'The output falls as the input rises' },
    },
    outputs: CYCLE_TERMS,
    answers: ASKED,
    equation: EQUATION,
    validity: VALIDITY,
    sources: ['S-04'],
    example: {
      points: [
        { inputPercent: 0, outputPercent: 0.3, direction: 'up', cycle: 1 },
        { inputPercent: 50, outputPercent: 49.2, direction: 'up', cycle: 1 },
        { inputPercent: 100, outputPercent: 99.6, direction: 'up', cycle: 1 },
        { inputPercent: 50, outputPercent: 50.7, direction: 'down', cycle: 1 },
        { inputPercent: 0, outputPercent: 0.5, direction: 'down', cycle: 1 },
      ],
      reverse: false,
    },
    run: (values) => terms(analyseCycle(values)),
  }),
  calculation({
    id: 'cycle-current',
    title: 'What an up and down table of a current signal says',
    topic: 'stroke table',
    inputs: {
      rows: {
        kind: 'rows',
        title: 'Up and down table, in the order read',
        columns: {
          ...quantity('signal', { title: 'Signal', dimension: 'current' }),
          ...numbers('travelM'),
          ...DIRECTION,
        },
      },
      ...quantity('rangeLow', { title: 'Lower end of the range', dimension: 'current' }),
      ...quantity('rangeHigh', { title: 'Upper end of the range', dimension: 'current' }),
      ...numbers('ratedTravelM'),
      ...choice('airAction', AIR_ACTIONS),
    },
    outputs: CYCLE_TERMS,
    answers: ASKED,
    equation: EQUATION,
    validity: VALIDITY,
    sources: ['S-02', 'S-04'],
    example: {
      rows: [
        { signal: 0.004, travelM: 0, direction: 'up', cycle: 1 },
        { signal: 0.012, travelM: 0.0098, direction: 'up', cycle: 1 },
        { signal: 0.02, travelM: 0.0199, direction: 'up', cycle: 1 },
        { signal: 0.012, travelM: 0.0101, direction: 'down', cycle: 1 },
        { signal: 0.004, travelM: 0.0001, direction: 'down', cycle: 1 },
      ],
      rangeLow: 0.004,
      rangeHigh: 0.02,
      ratedTravelM: 0.02,
      airAction: 'air-to-open',
    },
    run: ({ rows, rangeLow, rangeHigh, ratedTravelM, airAction }) => {
      refuseOutside({ ratedTravelM }, ABOVE_ZERO);
      const points = rows.map(({ signal, travelM, direction, cycle }) => ({
        inputPercent: percentOfRange({ signal, rangeLow, rangeHigh }).percent,
        outputPercent: (100 * travelM) / ratedTravelM,
        direction,
        cycle,
      }));
      if (points.length === 0) throw refuseCount({ name: 'rows', value: 0, range: 'at least 1 row' });
      return terms(analyseCycle({ points, reverse: airAction === 'air-to-close' }));
    },
  }),
  calculation({
    id: 'zero-and-span',
    title: 'Zero and span of a stroke, each by itself',
    topic: 'stroke table',
    inputs: {
      points: { kind: 'rows', title: 'Average curve', columns: numbers('inputPercent', 'outputPercent') },
      reverse: { kind: 'yes-no', title: 'The output falls as the input rises' },
      ...usualNumbers({ heldPercent: 0 }),
    },
    outputs: results('zeroErrorPercent', 'spanErrorPercent', 'terminalPercent', 'pointsUsed'),
    answers: ['zeroErrorPercent', 'spanErrorPercent', 'terminalPercent'],
    equation: 'zero = line at the low end − ideal; span = 100 · slope of the line − 100',
    validity: 'The line through the outermost points that neither seat nor stop holds.',
    sources: ['S-04'],
    example: {
      points: [
        { inputPercent: 0, outputPercent: 0 },
        { inputPercent: 25, outputPercent: 22 },
        { inputPercent: 50, outputPercent: 47 },
        { inputPercent: 75, outputPercent: 72 },
        { inputPercent: 100, outputPercent: 97 },
      ],
      reverse: false,
      heldPercent: 0.5,
    },
    run: zeroAndSpan,
  }),
];
