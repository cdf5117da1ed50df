import { PRACTICE, type Term, term } from '../term.ts';

/** The valve and its air. */
export const VALVE_TERMS: readonly Term[] = [
  term('air-action', {
    words: ['air action', 'air to open', 'air to close', 'action', 'direct or reverse', 'ato', 'atc'],
    says: 'What air does to the valve. Air to open: air lifts the valve open and the spring shuts it. Air to close: the other way round.',
    numbers: ['airAction', 'airMoves'],
    source: PRACTICE,
  }),
  term('fail-position', {
    words: [
      'fail position',
      'fail action',
      'fail open',
      'fail shut',
      'fail closed',
      'loss of air',
      'fail safe',
      'air fails',
      'loses its air',
      'fails',
    ],
    says: 'Where the spring drives the valve when the air is gone.',
    numbers: ['failPosition', 'airAction'],
    source: PRACTICE,
  }),
  term('test-air-limit', {
    words: [
      'test air',
      'test air limit',
      'how much air',
      'maximum air',
      'max air',
      'highest air',
      'air limit',
      'most air',
    ],
    says: 'The most air that is put on this case by hand: the case rating, or the highest signal and 5 psi, whichever is less. A blank case rating counts as 40 psi.',
    numbers: ['testAirLimit', 'testAirBecause'],
    source: PRACTICE,
  }),
  term('supply', {
    words: ['supply', 'supply air', 'supply pressure', 'air supply'],
    says: 'The air that feeds the valve, before any regulator or controller.',
    numbers: [
      { label: 'supply, low', sheet: 'supplyLowPa', dimension: 'pressure' },
      { label: 'supply, high', sheet: 'supplyHighPa', dimension: 'pressure' },
      'supplyPoint',
    ],
    source: PRACTICE,
    calculation: 'smallest-supply',
  }),
  term('positioner', {
    words: ['positioner'],
    says: 'A controller on the valve that compares stem and signal and gives the actuator the air that it needs.',
    numbers: [{ label: 'on this valve', sheet: 'positioner', dimension: 'text' }],
    source: PRACTICE,
  }),
  term('packing', {
    words: ['packing', 'gland', 'stuffing box', 'packing box'],
    says: 'The rings that seal the stem. Tight packing is friction; loose packing leaks.',
    numbers: [
      { label: 'kind', sheet: 'packingKind', dimension: 'text' },
      { label: 'friction expected', sheet: 'packingFrictionN', dimension: 'force' },
    ],
    source: PRACTICE,
    calculation: 'packing-friction',
  }),
  term('leakage-class', {
    words: [
      'leakage class',
      'leak class',
      'seat leakage',
      'shut off class',
      'class',
      'leak',
      'may it leak',
      'leakage',
    ],
    says: 'How much may pass the shut seat in its type test.',
    numbers: [{ label: 'class', sheet: 'leakageClass', dimension: 'text' }],
    source: PRACTICE,
    calculation: 'seat-leak-liquid',
  }),
  term('plug', {
    words: ['plug', 'trim', 'seat ring', 'seat'],
    says: 'Plug and seat close the flow; together with their guides they are the trim.',
    numbers: [
      { label: 'plug closes moving', sheet: 'plugCloses', dimension: 'text' },
      { label: 'port', sheet: 'portDiameterM', dimension: 'length' },
    ],
    source: PRACTICE,
    calculation: 'plug-force',
  }),
  term('flow-coefficient', {
    words: ['flow coefficient', 'kv', 'cv', 'capacity'],
    says: 'How much the open valve passes: the flow of water at a drop of one unit of pressure.',
    numbers: [{ label: 'rated', sheet: 'ratedKv', dimension: 'flowCoefficient' }],
    source: PRACTICE,
    calculation: 'liquid-flow',
  }),
  term('valve-sheet', {
    words: ['valve sheet', 'sheet', 'specification'],
    says: 'The specification of one valve: all numbers of the cards are worked out from it. A job stays on the sheet that it was opened with.',
    source: PRACTICE,
  }),
];
