import { PRACTICE, type Term, term } from '../term.ts';

/** Spring, seat and plug: what is set. */
export const SETTING_TERMS: readonly Term[] = [
  term('bench-set', {
    words: ['bench set', 'bench range', 'spring range', 'bench setting'],
    says: 'The two air pressures at which the actuator starts and ends its travel with no process flow on the plug.',
    numbers: ['benchSetLow', 'benchSetMid', 'benchSetHigh', 'travel'],
    source: 'S-06',
    calculation: 'bench-set',
  }),
  term('seating-turns', {
    words: ['seating turns', 'turns', 'how many turns', 'turns wanted', 'number of turns', 'stem turns'],
    says: 'The extra turns of the plug stem after seat contact. They load the seat, so the contact comes earlier in the stroke and a little lift is lost. A maker’s seating instruction outranks this number.',
    numbers: ['turnsWanted', 'turnsBecause', 'turnDirection', 'stemThread', 'signalShift', 'expectedContact'],
    source: 'S-07',
    calculation: 'seating-turns',
  }),
  term('direction', {
    words: [
      'which way',
      'direction',
      'turn direction',
      'which way to turn',
      'direction of turning',
      'in or out',
    ],
    says: 'The direction follows from how the plug closes, not from the air: closes moving down, the plug stem is screwed out and gets longer; closes moving up, in and shorter.',
    numbers: ['turnDirection', 'turnsWanted'],
    source: 'S-07',
    calculation: 'seating-turns',
  }),
  term('contact', {
    words: ['contact', 'seat contact', 'contact point', 'point of contact', 'where does it touch'],
    says: 'The signal at which the plug just leaves or just touches its seat. It is felt and seen at the stem, coming from one side.',
    numbers: ['contactFound', 'expectedContact'],
    source: PRACTICE,
    calculation: 'shut-end',
  }),
  term('seat-load', {
    words: ['seat load', 'seating force', 'seat force', 'shut off force'],
    says: 'The force that presses the plug on its seat at the shut end. Too little leaks, far too much damages the seat.',
    numbers: ['seatLoadExpected', 'seatLoadNeed'],
    source: 'S-06',
    calculation: 'seat-load-against-need',
  }),
  term('lift-left', {
    words: ['lift left', 'lost lift', 'lift', 'lost travel'],
    says: 'What remains of the travel after the seating turns: the plug meets its seat before the actuator meets its stop.',
    numbers: ['liftLeft', 'travel'],
    source: 'S-07',
    calculation: 'seating-travel',
  }),
  term('adjuster', {
    words: ['spring adjuster', 'adjuster', 'adjuster turns', 'adjusting screw', 'spring screw'],
    says: 'The screw that loads the spring. It moves both ends of the bench set by the same amount; it does not change the span. It is turned with the valve held, hands out of the yoke.',
    numbers: [
      'adjusterTurns',
      'adjusterDirection',
      { label: 'thread', sheet: 'adjusterThread', dimension: 'text' },
    ],
    source: 'S-06',
    calculation: 'adjuster-turns-wanted',
  }),
  term('spring-rate', {
    words: ['spring rate', 'spring constant', 'stiffness'],
    says: 'How much force the spring adds for each length of travel: the span of the bench set times the effective area, over the travel.',
    numbers: [
      { label: 'spring rate', sheet: 'springRateNPerM', dimension: 'forcePerLength' },
      'benchSetLow',
      'benchSetHigh',
      'travel',
    ],
    source: 'S-06',
    calculation: 'bench-set',
  }),
  term('effective-area', {
    words: ['effective area', 'diaphragm area', 'area of the diaphragm', 'area'],
    says: 'The area that turns air pressure into force on the stem.',
    numbers: [{ label: 'effective area', sheet: 'effectiveAreaM2', dimension: 'area' }],
    source: 'S-06',
    calculation: 'bench-set',
  }),
  term('installed-range', {
    words: ['installed range', 'range in the line', 'line range', 'range with flow'],
    says: 'The pressures at which the valve starts and ends its travel in the line. Flow pushes on the plug and shifts one end; without flow the bench set alone counts.',
    numbers: ['rangeMoved', 'rangeMovedBy'],
    source: 'S-06',
    calculation: 'installed-range',
  }),
  term('torque', {
    words: ['torque', 'bolt torque', 'tightening torque', 'how tight', 'gland torque'],
    says: 'No torque stands on a valve sheet here: the maker’s manual gives it, and it outranks any formula. For a bolt whose load is known, or a packing gland, it can be worked out.',
    source: PRACTICE,
    calculation: 'bolt-torque',
  }),
  term('stem-thread', {
    words: ['stem thread', 'thread', 'pitch', 'thread pitch'],
    says: 'Thread of the plug stem in the connector. One turn moves the plug by one pitch.',
    numbers: ['stemThread', { label: 'pitch', sheet: 'stemThreadPitchM', dimension: 'length' }],
    source: PRACTICE,
    calculation: 'stem-thread',
  }),
];
