import { group, letters, shape } from './svg.ts';

/** How an energy stands. `open` and `shut` are a bypass, which is a record and never an isolation. */
export const ENERGY_STATES = [
  'live',
  'loaded',
  'held',
  'locked',
  'capped',
  'contained',
  'released',
  'to-prove',
  'prove-again',
  'absent',
  'open',
  'shut',
  'hot',
  'free',
  'present',
  'armed',
  'safe',
  'hung',
  'cleared',
  'overridden',
] as const;
export type EnergyState = (typeof ENERGY_STATES)[number];

export const VERDICTS = [
  'inside',
  'outside',
  'too-close',
  'record',
  'sent-back',
  'off-path',
  'none',
] as const;
export type Verdict = (typeof VERDICTS)[number];

/** What can hurt as it stands: drawn solid in the colour of live energy. */
export const UNSAFE_STATES: readonly EnergyState[] = ['live', 'loaded', 'hot', 'free', 'present', 'armed'];

/** The state word in English, as it stands on the tag. */
export function stateWord(state: EnergyState): string {
  return state.replace('-', ' ').toUpperCase();
}

/**
 * The sign before a verdict word: tick inside, boxed cross outside, split box too close for the gauge,
 * dash a record, bent arrow sent back, stroke not on this path. Always stands beside the word, so hidden from readers.
 */
export function verdictMark(verdict: Verdict): string {
  const drawn = VERDICT_DRAWINGS[verdict];
  return group(
    { is: 'svg', width: 18, height: 18, viewBox: '0 0 18 18', 'aria-hidden': 'true', class: 'mark' },
    drawn,
  );
}

const line = (d: string, width = 2.4) => shape('path', { d, 'stroke-width': width, class: 'ink-line' });

const VERDICT_DRAWINGS: Readonly<Record<Verdict, readonly string[]>> = {
  inside: [line('M3 10l4 4.5L15.5 3.5')],
  outside: [
    shape('rect', { x: 2, y: 2, width: 14, height: 14, class: 'ink-fill' }),
    shape('path', { d: 'M5.8 5.8l6.4 6.4M12.2 5.8l-6.4 6.4', 'stroke-width': 2.2, class: 'sheet-line' }),
  ],
  'too-close': [line('M2.9 2.9h12.2v12.2H2.9zM9 3v12', 1.8)],
  record: [line('M4 9h10.5')],
  'sent-back': [line('M7 3.5L3 7.5l4 4M3.4 7.5h7.1a4 4 0 0 1 4 4V15', 1.9)],
  'off-path': [line('M4 15L14.5 3.5', 1.9)],
  none: [],
};

export interface EnergyMark {
  readonly state: EnergyState;
  /** Letter of the energy, or the number of the lock. Blank: the state's own sign. */
  readonly text?: string;
}

/** The small mark of one energy, 36 x 32. The state word or value stands beside it, so hidden from readers. */
export function energyMark({ state, text = '' }: EnergyMark): string {
  return group(
    { is: 'svg', width: 36, height: 32, viewBox: '0 0 36 32', 'aria-hidden': 'true', class: 'mark' },
    ENERGY_DRAWINGS[state](text),
  );
}

const TAG = 'M9 9H34V29H9L3 23V15Z';

function middle(text: string, className: string): string {
  return text === ''
    ? ''
    : letters({ x: 18.5, y: 24, 'text-anchor': 'middle', class: `mark-text ${className}` }, text);
}

function solidTag(text: string): string[] {
  return [shape('path', { d: TAG, class: 'live-fill' }), middle(text, 'onlive-fill')];
}

function heldTag(text: string): string[] {
  const strokes = [6, 12, 18, 24, 30, 36].map(
    (x) => `M${x} 9L${Math.max(3, x - 20)} ${x - 20 < 3 ? 9 + x - 3 : 29}`,
  );
  return [
    shape('path', { d: strokes.join(''), 'stroke-width': 2.4, class: 'live-line mark-hatch' }),
    shape('path', { d: TAG, 'stroke-width': 2, class: 'live-line' }),
    text === '' ? '' : shape('rect', { x: 12, y: 11, width: 13, height: 16, class: 'sheet-fill' }),
    middle(text, 'ink-fill'),
  ];
}

/** A padlock with its number or letter; the valve section draws the same one at the cock. */
function padlock(text: string): string[] {
  return [
    shape('path', { d: 'M11.5 14V9.5a7 7 0 0 1 14 0V14', 'stroke-width': 3, class: 'ink-line' }),
    shape('rect', { x: 5, y: 13, width: 27, height: 17, rx: 1.5, class: 'ink-fill' }),
    letters({ x: 18.5, y: 27, 'text-anchor': 'middle', class: 'mark-text sheet-fill' }, text),
  ];
}

function cappedMark(text: string): string[] {
  return text === ''
    ? [line('M4 18h9M23 18h9', 2.6), line('M14.5 10v16M21.5 10v16', 4.5)]
    : [line('M7.5 8v21M29.5 8v21', 4), middle(text, 'ink-fill')];
}

function containedMark(text: string): string[] {
  const brackets = line('M11 6.5H6V30.5h5M25 6.5h5V30.5h-5', 2.6);
  return [
    brackets,
    text === '' ? line('M13 10l10 3-10 3.6 10 3.8-10 3.6 10 3', 2) : middle(text, 'ink-fill'),
  ];
}

function releasedMark(text: string): string[] {
  return [
    line('M5 8h26M5 29.5h26', 2.6),
    text === '' ? line('M12 14l12 3-12 4 12 3', 1.8) : middle(text, 'ink-fill'),
  ];
}

function madeSafeMark(text: string): string[] {
  return [
    line('M11 6.5H6V30.5h5M25 6.5h5V30.5h-5', 2.6),
    text === '' ? line('M11.5 18.5l5 5.5L25 12', 2.6) : middle(text, 'ink-fill'),
  ];
}

function dashedTag(text: string): string[] {
  return [
    shape('path', { d: TAG, 'stroke-width': 2, 'stroke-dasharray': '5 3', class: 'ink-line' }),
    middle(text, 'ink-fill'),
  ];
}

function absentMark(text: string): string[] {
  return [
    shape('path', { d: `${TAG}M20 29L34 15`, 'stroke-width': 1.2, class: 'edge-line' }),
    middle(text, 'ink2-fill'),
  ];
}

function bowTie(className: string): (text: string) => string[] {
  return (text) => [
    text === ''
      ? shape('path', { d: 'M5 10L31 27V10L5 27Z', 'stroke-width': 2, class: className })
      : shape('path', { d: 'M3 9v20l8-10zM34 9v20l-8-10z', 'stroke-width': 2, class: className }),
    middle(text, 'ink-fill'),
  ];
}

const ENERGY_DRAWINGS: Readonly<Record<EnergyState, (text: string) => readonly string[]>> = {
  live: solidTag,
  loaded: solidTag,
  held: heldTag,
  locked: padlock,
  capped: cappedMark,
  contained: containedMark,
  released: releasedMark,
  'to-prove': dashedTag,
  'prove-again': dashedTag,
  absent: absentMark,
  open: bowTie('ink-line'),
  shut: bowTie('ink-line ink-fill'),
  hot: solidTag,
  free: solidTag,
  present: solidTag,
  armed: solidTag,
  safe: madeSafeMark,
  hung: madeSafeMark,
  cleared: madeSafeMark,
  overridden: madeSafeMark,
};

/** The alert triangle of the three words about injury, 24 x 22. */
export function alertTriangle(): string {
  return group(
    { is: 'svg', width: 26, height: 24, viewBox: '0 0 26 24', 'aria-hidden': 'true', class: 'alert' },
    [
      shape('path', { d: 'M13 1L25 23H1Z', class: 'alert-ground' }),
      shape('path', { d: 'M11.6 8.2h2.8l-.6 7.6h-1.6z', class: 'alert-sign' }),
      shape('circle', { cx: 13, cy: 18.8, r: 1.6, class: 'alert-sign' }),
    ],
  );
}
