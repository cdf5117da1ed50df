import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { group, letters, round, shape } from './svg.ts';

/** One signal over the time of a record, in the unit that its axis names. */
export interface LoopTrace {
  readonly name: string;
  readonly values: readonly number[];
}

export interface LoopTrend {
  readonly title: string;
  readonly timesS: readonly number[];
  /** Stacked one above the other, each on an axis of its own; a second trace of a band is drawn in strokes. */
  readonly bands: readonly { readonly axis: string; readonly traces: readonly LoopTrace[] }[];
  readonly sentence: string;
}

export interface LoopOrbit {
  readonly title: string;
  readonly across: LoopTrace;
  readonly up: LoopTrace;
  readonly sentence: string;
}

const TREND = { width: 480, left: 58, right: 464, top: 44, band: 116, gap: 30 } as const;
const ORBIT = { width: 344, left: 58, right: 328, top: 58, bottom: 300, height: 346 } as const;
/** Dots of a line that a screen can show: of more, each stretch keeps its lowest and its highest. */
const DOTS = 300;

/** Line style and not colour tells two traces of a band apart. */
const STROKES = [
  { 'stroke-width': 1.8, class: 'ink-line' },
  { 'stroke-width': 1.4, 'stroke-dasharray': '5 4', class: 'ink2-line' },
] as const;

/** Output, process value and position over time, each in a band of its own. */
export function loopTrend(trend: LoopTrend): string {
  const { left, right, top, band, gap, width } = TREND;
  const bottom = top + trend.bands.length * (band + gap);
  const x = scaleLinear([0, Math.max(1, trend.timesS.at(-1) ?? 1)], [left, right]);
  const ticks = x.ticks(5);
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${width} ${bottom + 34}`,
      role: 'img',
      'aria-label': trend.sentence,
      class: 'curve',
    },
    [
      letters({ x: 4, y: 20, class: 't16 bold ink-fill' }, trend.title),
      shape('path', {
        d: ticks.map((tick) => `M${round(x(tick))} ${top + gap}V${bottom}`).join(''),
        'stroke-width': 1,
        class: 'faint-line',
      }),
      ...trend.bands.flatMap((one, at) => bandOf(one, { trend, x, top: top + at * (band + gap) + gap })),
      ...ticks.map((tick) =>
        letters(
          { x: x(tick), y: bottom + 17, 'text-anchor': 'middle', class: 't14 ink2-fill' },
          String(tick),
        ),
      ),
      letters({ x: right, y: bottom + 31, 'text-anchor': 'end', class: 't14 ink2-fill' }, 'seconds'),
    ],
  );
}

type Scale = ReturnType<typeof scaleLinear<number, number>>;

function bandOf(
  { axis, traces }: LoopTrend['bands'][number],
  of: { readonly trend: LoopTrend; readonly x: Scale; readonly top: number },
): readonly string[] {
  const { left, right, band } = TREND;
  const bottom = of.top + band;
  const y = scaleLinear(reach(traces.flatMap(({ values }) => values)), [bottom, of.top]).nice(3);
  const draw = line<number>(
    (at) => round(of.x(of.trend.timesS[at] ?? 0)),
    () => 0,
  );
  return [
    letters({ x: 4, y: of.top - 9, class: 't14 ink2-fill' }, axis),
    ...y
      .ticks(3)
      .flatMap((tick) => [
        shape('path', { d: `M${left} ${round(y(tick))}H${right}`, 'stroke-width': 1, class: 'faint-line' }),
        letters({ x: left - 7, y: y(tick) + 5, 'text-anchor': 'end', class: 't14 ink2-fill' }, sayTick(tick)),
      ]),
    shape('path', { d: `M${left} ${of.top}V${bottom}H${right}`, 'stroke-width': 1.2, class: 'ink-line' }),
    ...traces.map(({ values }, at) =>
      shape('path', {
        d: draw.y((n) => round(y(values[n] ?? 0)))(kept(values)) ?? '',
        ...STROKES[Math.min(at, 1)],
      }),
    ),
  ];
}

/** Output against what it moves: a valve that follows draws a thin line, one that sticks goes round a box. */
export function loopOrbit({ title, across, up, sentence }: LoopOrbit): string {
  const { width, height, left, right, top, bottom } = ORBIT;
  const x = scaleLinear(reach(across.values), [left, right]).nice(4);
  const y = scaleLinear(reach(up.values), [bottom, top]).nice(4);
  const [xTicks, yTicks] = [x.ticks(4), y.ticks(4)];
  const draw = line<number>(
    (at) => round(x(across.values[at] ?? 0)),
    (at) => round(y(up.values[at] ?? 0)),
  );
  const grid = [
    ...yTicks.map((tick) => `M${left} ${round(y(tick))}H${right}`),
    ...xTicks.map((tick) => `M${round(x(tick))} ${top}V${bottom}`),
  ];
  return group(
    { is: 'svg', viewBox: `0 0 ${width} ${height}`, role: 'img', 'aria-label': sentence, class: 'curve' },
    [
      letters({ x: 4, y: 20, class: 't16 bold ink-fill' }, title),
      letters({ x: 4, y: top - 12, class: 't14 ink2-fill' }, up.name),
      shape('path', { d: grid.join(''), 'stroke-width': 1, class: 'faint-line' }),
      shape('path', { d: `M${left} ${top - 4}V${bottom}H${right}`, 'stroke-width': 1.2, class: 'ink-line' }),
      ...yTicks.map((tick) =>
        letters({ x: left - 7, y: y(tick) + 5, 'text-anchor': 'end', class: 't14 ink2-fill' }, sayTick(tick)),
      ),
      ...xTicks.map((tick) =>
        letters(
          { x: x(tick), y: bottom + 18, 'text-anchor': 'middle', class: 't14 ink2-fill' },
          sayTick(tick),
        ),
      ),
      letters({ x: right, y: bottom + 38, 'text-anchor': 'end', class: 't14 ink2-fill' }, across.name),
      shape('path', { d: draw(kept(across.values)) ?? '', 'stroke-width': 1.4, class: 'ink-line' }),
    ],
  );
}

function sayTick(tick: number): string {
  return String(Number(tick.toPrecision(6))).replace('-', '\u2212');
}

function reach(values: readonly number[]): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return high > low ? [low, high] : [low - 1, low + 1];
}

/** The samples that are drawn: all of a short record, of a long one the ends of each stretch. */
function kept(values: readonly number[]): readonly number[] {
  const every = Math.max(1, Math.ceil((2 * values.length) / DOTS));
  if (every < 3) return values.map((_, at) => at);
  const shown: number[] = [];
  for (let from = 0; from < values.length; from += every) {
    let [lowest, highest] = [from, from];
    for (let at = from; at < Math.min(values.length, from + every); at++) {
      if ((values[at] ?? 0) < (values[lowest] ?? 0)) lowest = at;
      if ((values[at] ?? 0) > (values[highest] ?? 0)) highest = at;
    }
    shown.push(...(lowest === highest ? [lowest] : [lowest, highest].sort((a, b) => a - b)));
  }
  return shown;
}
