/** Every drawing in every state, for the style page and its tests; valves and strokes stand in `examples.ts`. */
import { type BoltCircle, boltCircle } from './bolt-circle.ts';
import { chanceBar, weightStrokes } from './chance-bar.ts';
import { energyTag } from './energy-tag.ts';
import { FLAPPER_SENTENCE, flapper } from './flapper.ts';
import { forceBars } from './force-bars.ts';
import { gauge } from './gauge.ts';
import { historyCurve } from './history-curve.ts';
import { jobScale, waitScale } from './job-scale.ts';
import { alertTriangle, ENERGY_STATES, energyMark, VERDICTS, verdictMark } from './marks.ts';
import { plot } from './plot.ts';
import { RELAY_SENTENCE, relay } from './relay.ts';
import { statechart } from './statechart.ts';

export interface DrawnState {
  readonly name: string;
  readonly svg: string;
  /** What is read out in its place; blank where it is hidden, since words beside it say the same. */
  readonly readAs: string;
}

interface Drawing {
  readonly name: string;
  readonly states: readonly DrawnState[];
}

function state(name: string, svg: string): DrawnState {
  return { name, svg, readAs: /^<svg[^>]* aria-label="([^"]*)"/.exec(svg)?.[1] ?? '' };
}

/** Equal parts of a circle, tightened one after the other across it. */
function bolts(count: number): BoltCircle['bolts'] {
  return Array.from({ length: count }, (_, at) => {
    const turn = (2 * Math.PI * at) / count;
    const half = count / 2;
    const rank = at < half ? 2 * at + 1 : 2 * (at - half) + 2;
    return { bolt: at + 1, rank, right: Math.sin(turn), up: Math.cos(turn) };
  });
}

const DAY_MS = 86_400_000;
const FROM_MS = Date.UTC(2024, 0, 1);
const OVER_YEARS = {
  title: 'Friction over the years',
  axis: 'friction, lbf',
  points: [0, 200, 400, 600].map((days, at) => ({
    timeMs: FROM_MS + days * DAY_MS,
    value: 30 + 6 * at,
    give: 3,
    isLeft: at === 1,
    isCounted: at > 0,
  })),
  expected: [{ value: 38, text: 'expected' }],
  limits: [{ value: 60, text: 'at most 60' }],
  line: [],
  sentence: 'Friction rises from 30 to 48 lbf in four readings; at most 60 is allowed.',
} as const;

const LINES = {
  title: 'Load on the seat',
  xAxis: 'turns',
  yAxis: 'load, lbf',
  lines: ['as found', 'as left', 'wanted', 'least'].map((name, at) => ({
    name,
    points: [0, 1, 2].map((x) => ({ x, y: 40 * x + 10 * at })),
  })),
  sentence: 'The load on the seat rises with the turns.',
};

const CHART = {
  boxes: [
    {
      number: 1,
      title: 'Read the air at zero',
      kind: 'step' as const,
      ways: [
        { label: 'shown', to: 2 },
        { label: 'not shown', to: 1 },
      ],
      makeSafe: 3,
    },
    {
      number: 2,
      title: 'Before the case is opened',
      kind: 'hold' as const,
      ways: [
        { label: 'signed', to: 3 },
        { label: 'sent back', to: 9 },
      ],
      makeSafe: 3,
    },
    { number: 3, title: 'The job is over', kind: 'end' as const, ways: [], makeSafe: null },
  ],
  sentence: 'Three steps and the ways between them.',
};

const TICKS = [
  { state: 'done' as const, phase: 'Get ready' },
  { state: 'done' as const },
  { state: 'current' as const, phase: 'Take off line' },
  { state: 'next' as const, hold: 'H1' },
  { state: 'next' as const, phase: 'Return' },
];

const FORCES = {
  axis: 'lbf, plus towards the seat',
  ends: [
    {
      title: 'shut',
      bars: [
        { label: 'spring', value: 300, text: '+300 lbf', isSum: false },
        { label: 'process', value: -79, text: '\u221279 lbf', isSum: false },
        { label: 'left', value: 221, text: '+221 lbf', isSum: true },
      ],
    },
    {
      title: 'open',
      bars: [
        { label: 'spring', value: 1500, text: '+1500 lbf', isSum: false },
        { label: 'process', value: null, text: 'not counted', isSum: false },
        { label: 'left', value: -300, text: '\u2212300 lbf', isSum: true },
      ],
    },
  ],
  sentence:
    'Shut: spring +300 lbf, process \u221279 lbf, left +221 lbf. Open: spring +1500 lbf, left \u2212300 lbf.',
};

const ON_GAUGE = { label: 'Supply gauge', from: '0', to: '30 psi' };

/** @example everyDrawing()[0]?.name // 'relay in section' */
export function everyDrawing(): readonly Drawing[] {
  return [
    {
      name: 'relay in section',
      states: [state('as it stands on a card', relay({ sentence: RELAY_SENTENCE }))],
    },
    {
      name: 'flapper and nozzle',
      states: [state('square and not square', flapper({ sentence: FLAPPER_SENTENCE }))],
    },
    {
      name: 'bolts in their order',
      states: [4, 8, 12, 32].map((count) =>
        state(
          count > 24 ? `${count}, the numbers in the list beside it` : `${count}`,
          boltCircle({ bolts: bolts(count), sentence: `${count} bolts from above, in their order.` }),
        ),
      ),
    },
    { name: 'gauge', states: gauges() },
    {
      name: 'lines over an axis',
      states: [
        state(
          'four lines, a mark and an upright',
          plot({
            ...LINES,
            marks: [{ x: 1, y: 50, text: 'here' }],
            uprights: [{ x: 1.5, text: '1.5 turns' }],
          }),
        ),
        state('one line', plot({ ...LINES, lines: LINES.lines.slice(0, 1) })),
      ],
    },
    { name: 'a quantity over the years', states: histories() },
    { name: 'forces on the stem', states: [state('at both ends of its travel', forceBars(FORCES))] },
    { name: 'steps of a phase', states: [state('step, hold and end', statechart(CHART))] },
    {
      name: 'travel of a job',
      states: [state('done, now and to come', jobScale({ ticks: TICKS, id: 'drawing' }))],
    },
    { name: 'minutes waited', states: [0, 25, 60].map((minutes) => state(`${minutes}`, waitScale(minutes))) },
    { name: 'how likely', states: [0, 0.05, 0.6, 1].map((chance) => state(`${chance}`, chanceBar(chance))) },
    { name: 'what it weighs', states: [1, 2, 3].map((weight) => state(`${weight}`, weightStrokes(weight))) },
    {
      name: 'energy tag',
      states: ENERGY_STATES.map((one) =>
        state(
          one,
          energyTag({ letter: 'B', name: 'Signal air', state: one, value: '9.0 psi', proof: 'T1 09:24' }),
        ),
      ),
    },
    {
      name: 'energy mark',
      states: ENERGY_STATES.map((one) => state(one, energyMark({ state: one, text: 'B' }))),
    },
    { name: 'verdict mark', states: VERDICTS.map((one) => state(one, verdictMark(one))) },
    { name: 'alert', states: [state('beside a signal word', alertTriangle())] },
  ];
}

function gauges(): readonly DrawnState[] {
  const one = (kind: 'dial' | 'scale', { fraction, text }: { fraction: number; text: string }) =>
    state(
      `${kind}, ${text}`,
      gauge({ ...ON_GAUGE, id: `drawing-${kind}-${text.replace(/\W/g, '')}`, kind, fraction, text }),
    );
  const readings = [
    { fraction: 0, text: '0.0 psi' },
    { fraction: 0.5, text: '15.0 psi' },
    { fraction: 1.3, text: '39.0 psi' },
  ];
  return [
    ...readings.map((reading) => one('dial', reading)),
    ...readings.map((reading) => one('scale', reading)),
  ];
}

function histories(): readonly DrawnState[] {
  const trend = [
    { timeMs: FROM_MS, value: 30 },
    { timeMs: FROM_MS + 600 * DAY_MS, value: 48 },
  ];
  return [
    state('with its trend', historyCurve({ ...OVER_YEARS, line: trend })),
    state('no trend yet', historyCurve({ ...OVER_YEARS, points: OVER_YEARS.points.slice(0, 2) })),
  ];
}
