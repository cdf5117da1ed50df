import { PRACTICE, type Term, term } from '../term.ts';

/** The stroke, and what is read off it. */
export const STROKE_TERMS: readonly Term[] = [
  term('travel', {
    words: ['travel', 'stroke', 'rated travel', 'stroke length', 'full travel'],
    says: 'How far the stem moves between shut and open. It is read at the stem, from the open end.',
    numbers: ['travel'],
    source: PRACTICE,
    calculation: 'signal-travel',
  }),
  term('signal', {
    words: ['signal', 'signal range', 'range', 'span'],
    says: 'The air pressure that tells the valve where to stand.',
    numbers: [
      { label: 'signal, low', sheet: 'signalLowPa', dimension: 'pressure' },
      { label: 'signal, high', sheet: 'signalHighPa', dimension: 'pressure' },
    ],
    source: 'S-02',
    calculation: 'signal-travel',
  }),
  term('mid-range', {
    words: ['mid range', 'middle', 'half travel', 'fifty percent', '50 percent'],
    says: 'The signal at half of the bench set. After seating turns it still stands for half the travel, because travel is counted from the open end.',
    numbers: ['benchSetMid'],
    source: 'S-07',
    calculation: 'signal-at-percent',
  }),
  term('hysteresis', {
    words: ['hysteresis', 'hysteresis and dead band', 'gap between up and down', 'up and down gap'],
    says: 'How far the travel going up and the travel coming down lie apart at the same signal. Friction and lost motion make it.',
    numbers: [{ label: 'at most', sheet: 'hysteresisTolerancePercent', dimension: 'percent' }],
    source: 'S-04',
    calculation: 'stroke-table',
  }),
  term('dead-band', {
    words: ['dead band', 'deadband', 'backlash', 'lost motion'],
    says: 'How far the signal can go back before the stem follows.',
    source: 'S-04',
    calculation: 'dead-band',
  }),
  term('error', {
    words: ['error', 'accuracy', 'measured error', 'linearity'],
    says: 'How far the travel lies from what the signal asks for, in percent of the travel.',
    numbers: [{ label: 'at most', sheet: 'errorTolerancePercent', dimension: 'percent' }],
    source: 'S-04',
    calculation: 'stroke-table',
  }),
  term('repeatability', {
    words: ['repeatability', 'repeat', 'repeatable'],
    says: 'How far the travels lie apart when the same signal is set again from the same side. What does not repeat cannot be adjusted.',
    numbers: [{ label: 'at most', sheet: 'repeatabilityTolerancePercent', dimension: 'percent' }],
    source: 'S-04',
    calculation: 'stroke-table',
  }),
  term('friction', {
    words: ['friction', 'packing friction', 'stem friction', 'sticking'],
    says: 'The force that holds the stem against moving: half the pressure between up and down at one travel, times the effective area.',
    numbers: [{ label: 'packing should cost', sheet: 'packingFrictionN', dimension: 'force' }],
    source: 'S-06',
    calculation: 'friction-two-pressures',
  }),
  term('as-found', {
    words: ['as found', 'as found readings'],
    says: 'How the valve behaves before anything is changed. It cannot be read later.',
    source: PRACTICE,
  }),
  term('as-left', {
    words: ['as left', 'as left readings'],
    says: 'How the valve behaves when the work is over.',
    source: PRACTICE,
  }),
  term('too-close', {
    words: ['too close', 'too close for this gauge', 'guard band', 'uncertainty'],
    says: 'The reading lies so near its limit that this gauge cannot tell inside from outside. A finer gauge may.',
    source: 'S-08',
    calculation: 'verdict',
  }),
];
