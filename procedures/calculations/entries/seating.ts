import { calculation } from '../calculation.ts';
import type { Calculation } from '../calculation-types.ts';
import { packingFriction, packingFrictionByStress } from '../packing-friction.ts';
import { seatLoadAgainstNeed } from '../seat-load.ts';
import {
  type LeakageClass,
  SEAT_LOAD_TABLES,
  type SeatLoadTableId,
  seatLoadNeed,
} from '../seat-load-tables.ts';
import { seatingObstacles, seatingTurnsForNeed } from '../seating-fit.ts';
import { seatingTurns, travelAfterSeating } from '../seating-turns.ts';
import { AIR_ACTIONS } from '../signal-travel.ts';
import { choice, numbers, optionalNumbers, results, told } from '../specs.ts';
import { threadAreas, threadFromText } from '../threads.ts';

const CLASSES: readonly LeakageClass[] = ['I', 'II', 'III', 'IV', 'V', 'VI'];
const SEAT_LOAD_TABLE_IDS = Object.keys(SEAT_LOAD_TABLES) as SeatLoadTableId[];
const CLOSES = choice('plugCloses', ['down', 'up']);
const MAKERS = 'A figure of one maker: the valve sheet chooses the table, or states a figure of its own.';

export const SEATING_CALCULATIONS: readonly Calculation[] = [
  calculation({
    id: 'seating-turns',
    title: 'What seating turns do',
    topic: 'seating',
    inputs: {
      ...CLOSES,
      ...choice('airAction', AIR_ACTIONS),
      ...numbers('effectiveAreaM2', 'benchSetLowPa', 'benchSetHighPa', 'travelM'),
      ...optionalNumbers('springRateNPerM'),
      ...numbers('threadPitchM', 'turns'),
    },
    outputs: {
      ...told('word', 'screwPlugStem', 'stemGets'),
      ...results('springRateNPerM', 'plugShiftM', 'seatLoadGainN', 'signalShiftPa', 'contactPa'),
      ...results('liftLeftM', 'liftLostPercent'),
    },
    answers: ['screwPlugStem', 'stemGets', 'seatLoadGainN', 'contactPa', 'liftLostPercent'],
    equation: 'shift = turns · pitch; gain = k · shift; signal shift = gain/A',
    validity:
      'Bench set without process. The plug is held off its seat by the test air while it is turned; a maker’s seating instruction outranks the rule.',
    sources: ['S-07'],
    example: {
      plugCloses: 'down',
      airAction: 'air-to-open',
      effectiveAreaM2: 0.064516,
      benchSetLowPa: 20684.272,
      benchSetHighPa: 103421.36,
      travelM: 0.01905,
      threadPitchM: 0.00127,
      turns: 2,
    },
    run: seatingTurns,
  }),
  calculation({
    id: 'seating-travel',
    title: 'What the indicator shows after seating turns',
    topic: 'seating',
    inputs: {
      signal: { kind: 'number', title: 'Signal, gauge', dimension: 'pressure' },
      rangeLow: { kind: 'number', title: 'Lower end of the range', dimension: 'pressure' },
      rangeHigh: { kind: 'number', title: 'Upper end of the range', dimension: 'pressure' },
      ...choice('airAction', AIR_ACTIONS),
      ...numbers('ratedTravelM', 'liftLostPercent'),
    },
    outputs: { ...results('openPercent', 'travelM'), ...told('yes-no', 'onSeat') },
    answers: ['openPercent', 'travelM', 'onSeat'],
    equation: 'travel counts from the open end; the seat stops the stem where the lift lost begins',
    validity: 'Travel is counted from the open end: mid signal stays 50 %. Without friction and process.',
    sources: ['S-07'],
    example: {
      signal: 20000,
      rangeLow: 20000,
      rangeHigh: 100000,
      airAction: 'air-to-open',
      ratedTravelM: 0.02,
      liftLostPercent: 13,
    },
    run: travelAfterSeating,
  }),
  calculation({
    id: 'seating-turns-wanted',
    title: 'Seating turns that a seat load wants',
    topic: 'seating',
    inputs: numbers(
      'portDiameterM',
      'seatLoadBeforeN',
      'seatLoadNeedNPerM',
      'springRateNPerM',
      'threadPitchM',
    ),
    outputs: results('neededN', 'missingN', 'turns', 'turnsToQuarter'),
    answers: ['turnsToQuarter'],
    equation: 'turns = (need · π · d − load before)/(k · pitch), never below 0',
    validity: 'Whether the lift lost is bearable is for the seating turns themselves to say.',
    sources: ['S-07'],
    example: {
      portDiameterM: 0.05,
      seatLoadBeforeN: 2000,
      seatLoadNeedNPerM: 14000,
      springRateNPerM: 280000,
      threadPitchM: 0.00127,
    },
    run: seatingTurnsForNeed,
  }),
  calculation({
    id: 'seating-obstacles',
    title: 'Whether this plug stem may be turned',
    topic: 'seating',
    inputs: {
      ...CLOSES,
      bellowsSeal: { kind: 'yes-no', title: 'Bellows seal' },
      stemPinned: { kind: 'yes-no', title: 'Stem pinned' },
      ...optionalNumbers('threadEngagedM', 'threadEngagedMinM'),
      ...numbers('threadPitchM', 'turns'),
    },
    outputs: {
      ...told('yes-no', 'mayTurn'),
      ...told('list', 'obstacles', 'unknown'),
      ...results('threadLeftM'),
    },
    answers: ['mayTurn', 'obstacles', 'unknown'],
    equation: 'thread left = thread that grips − turns · pitch where the stem is screwed out',
    validity:
      'Only what is given is judged. What was not measured is listed as unknown, never taken as good.',
    sources: ['S-07'],
    example: {
      plugCloses: 'down',
      bellowsSeal: false,
      stemPinned: false,
      threadEngagedM: 0.02,
      threadEngagedMinM: 0.0127,
      threadPitchM: 0.00127,
      turns: 2,
    },
    run: (values) => {
      const { mayTurn, ...found } = seatingObstacles(values);
      // Nothing that was looked at forbids it, but not everything was looked at: that is no yes.
      return { mayTurn: mayTurn && found.unknown.length > 0 ? null : mayTurn, ...found };
    },
  }),
  calculation({
    id: 'seat-load-against-need',
    title: 'Seat load for each length of port, after the turns',
    topic: 'seating',
    inputs: numbers('portDiameterM', 'seatLoadBeforeN', 'seatLoadGainN', 'seatLoadNeedNPerM'),
    outputs: {
      ...results('portCircumferenceM', 'seatLoadN', 'seatLoadNPerM', 'marginNPerM'),
      ...told('yes-no', 'enough'),
    },
    answers: ['seatLoadNPerM', 'marginNPerM', 'enough'],
    equation: 'load for each length = (before + gain)/(π · port diameter)',
    validity: 'Load by circumference, not by area. A negative load is reported as such.',
    sources: ['S-06'],
    example: { portDiameterM: 0.05, seatLoadBeforeN: 2000, seatLoadGainN: 700, seatLoadNeedNPerM: 14000 },
    run: seatLoadAgainstNeed,
  }),
  calculation({
    id: 'seat-load-need',
    title: 'Seat load that a leakage class needs, by a table',
    topic: 'seating',
    inputs: {
      ...choice('table', SEAT_LOAD_TABLE_IDS),
      ...choice('leakageClass', CLASSES),
      ...numbers('portDiameterM'),
    },
    outputs: {
      ...results('seatLoadNeedNPerM', 'seatLoadNeedN', 'printedLbfPerIn'),
      ...told('word', 'table', 'source'),
    },
    answers: ['seatLoadNeedNPerM', 'seatLoadNeedN'],
    equation: 'load = figure of the table · π · port diameter',
    validity: MAKERS,
    sources: ['S-13', 'S-16'],
    example: { table: 'sizing-guide-2008', leakageClass: 'IV', portDiameterM: 0.05 },
    run: seatLoadNeed,
  }),
  calculation({
    id: 'packing-friction',
    title: 'Typical packing friction, by a table',
    topic: 'seating',
    inputs: {
      ...choice('table', ['reference-manual']),
      ...numbers('stemDiameterM'),
      ...choice('packing', ['ptfe-single', 'ptfe-double', 'graphite']),
      pressureClass: {
        kind: 'choice',
        title: 'Pressure class',
        choices: ['150', '300', '600', '900', '1500', '2500'],
        optional: true,
      },
    },
    outputs: { ...results('frictionN', 'printedLbf'), ...told('word', 'table', 'source') },
    answers: ['frictionN'],
    equation: 'read from the table named; nothing is interpolated',
    validity: `Stem sizes of the table only; a typical figure, not a limit. ${MAKERS}`,
    sources: ['S-14'],
    example: { table: 'reference-manual', stemDiameterM: 0.0127, packing: 'graphite', pressureClass: '300' },
    run: packingFriction,
  }),
  calculation({
    id: 'packing-friction-by-stress',
    title: 'Packing friction from the stress in the packing',
    topic: 'seating',
    inputs: numbers(
      'stemDiameterM',
      'packingHeightM',
      'packingStressPa',
      'frictionFactor',
      'radialToAxialRatio',
    ),
    outputs: results('frictionN'),
    answers: ['frictionN'],
    equation: 'F = π · d · H · S · μ · Y',
    validity: 'Rings set, even stress over the height. The ratio of radial to axial stress is commonly 0.5.',
    sources: ['S-15'],
    example: {
      stemDiameterM: 0.0127,
      packingHeightM: 0.03,
      packingStressPa: 1e7,
      frictionFactor: 0.1,
      radialToAxialRatio: 0.5,
    },
    run: (values) => ({ frictionN: packingFrictionByStress(values) }),
  }),
  calculation({
    id: 'stem-thread',
    title: 'Pitch and areas of an inch thread',
    topic: 'seating',
    inputs: { thread: { kind: 'text', title: 'Thread, as in 1/2-20' } },
    outputs: {
      ...results('diameterM', 'threadsPerInch', 'pitchM', 'stressAreaM2', 'rootDiameterM', 'rootAreaM2'),
      ...told('word', 'series'),
    },
    answers: ['pitchM', 'stressAreaM2'],
    equation: 'pitch = 1 in/threads; As = π/4 · (D − 0.9743 p)²; root = D − 1.29904 p',
    validity: 'Single-start unified threads. 1-14 is UNS, not UNF: read the actual part.',
    sources: ['S-17'],
    example: { thread: '1/2-20' },
    run: ({ thread }) => {
      const found = threadFromText(thread);
      return { ...found, ...threadAreas(found) };
    },
  }),
];
