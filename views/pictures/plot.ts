import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { group, letters, round, shape } from './svg.ts';

export interface PlotPoint {
  readonly x: number;
  readonly y: number;
}

export interface PlotLine {
  readonly name: string;
  readonly points: readonly PlotPoint[];
}

/** Lines over one axis, as a drawing office plots them. Every value is in the unit that its axis names. */
export interface Plot {
  /** Names the picture and stands over it. */
  readonly title: string;
  readonly xAxis: string;
  readonly yAxis: string;
  /** Four at most: line styles tell them apart, not colours. */
  readonly lines: readonly PlotLine[];
  /** Where this calculation stands. */
  readonly marks?: readonly (PlotPoint & { readonly text: string })[];
  /** Dashed lines from axis to top, for example at a time. */
  readonly uprights?: readonly { readonly x: number; readonly text: string }[];
  /** The same in one sentence; a table beside it carries the numbers. */
  readonly sentence: string;
}

const SIZE = { width: 480, left: 58, right: 464, top: 64, bottom: 300 } as const;
const KEY_LINE = 22;

/** By line, first to last. */
const STYLES = [
  { 'stroke-width': 2.4 },
  { 'stroke-width': 2.4, 'stroke-dasharray': '8 4' },
  { 'stroke-width': 1.6, 'stroke-dasharray': '2 3' },
  { 'stroke-width': 1.6, 'stroke-dasharray': '12 3 3 3' },
] as const;

type Scale = ReturnType<typeof scaleLinear<number, number>>;
interface Scales {
  readonly x: Scale;
  readonly y: Scale;
}

/** Values closer than this are alike: between numbers as small there is no room for the marks of an axis. */
const ALIKE = 1e-200;

/** From the least to the most, with room where all are alike. */
function reach(values: readonly number[]): [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  if (low > high) return [0, 1];
  if (high - low > ALIKE) return [low, high];
  const tenth = Math.abs(low) / 10;
  const room = tenth > ALIKE ? tenth : 1;
  return [low - room, high + room];
}

/** The axes of a plot: round ends, zero among them where it is near. */
export function plotScales({ lines, marks = [], uprights = [] }: Plot): Scales {
  const points = [...lines.flatMap((each) => each.points), ...marks];
  const [low, high] = reach(points.map(({ y }) => y));
  const withZero = low > 0 && low < 0.4 * high ? 0 : low;
  const across = reach([...points.map(({ x }) => x), ...uprights.map(({ x }) => x)]);
  return {
    x: scaleLinear(across, [SIZE.left, SIZE.right]),
    y: scaleLinear([withZero, high], [SIZE.bottom, SIZE.top]).nice(5),
  };
}

function pathOf({ x, y }: Scales, points: readonly PlotPoint[]): string {
  const draw = line<PlotPoint>(
    (point) => round(x(point.x)),
    (point) => round(y(point.y)),
  );
  return draw(points) ?? '';
}

/** Plain digits: a sign between the thousands might be read as a decimal one. */
function tickText(tick: number): string {
  return String(Number(tick.toPrecision(10))).replace('-', '\u2212');
}

function grid(plot: Plot, { x, y }: Scales): string[] {
  const { left, right, top, bottom } = SIZE;
  const [xTicks, yTicks] = [x.ticks(6), y.ticks(5)];
  const across = yTicks.map((tick) => `M${left} ${round(y(tick))}H${right}`);
  const upright = xTicks.map((tick) => `M${round(x(tick))} ${top}V${bottom}`);
  return [
    shape('path', { d: [...across, ...upright].join(''), 'stroke-width': 1, class: 'faint-line' }),
    ...yTicks.map((tick) =>
      letters({ x: left - 7, y: y(tick) + 5, 'text-anchor': 'end', class: 't14 ink2-fill' }, tickText(tick)),
    ),
    ...xTicks.map((tick) =>
      letters(
        { x: x(tick), y: bottom + 19, 'text-anchor': 'middle', class: 't14 ink2-fill' },
        tickText(tick),
      ),
    ),
    letters({ x: 4, y: top - 14, class: 't14 ink2-fill' }, plot.yAxis),
    letters({ x: right, y: bottom + 38, 'text-anchor': 'end', class: 't14 ink2-fill' }, plot.xAxis),
    shape('path', { d: `M${left} ${top - 6}V${bottom}H${right}`, 'stroke-width': 1.6, class: 'ink-line' }),
  ];
}

/** Where zero lies inside the plot it is drawn: a force changes its side there. */
function zeroLine({ y }: Scales): string[] {
  const [low = 0, high = 0] = y.domain();
  if (!(low < 0 && high > 0)) return [];
  return [
    shape('path', { d: `M${SIZE.left} ${round(y(0))}H${SIZE.right}`, 'stroke-width': 1, class: 'edge-line' }),
  ];
}

/** Beside an upright line, on the side where there is room; the next one stands a line lower. */
function uprightLines({ uprights = [] }: Plot, { x }: Scales): string[] {
  return uprights.flatMap(({ x: at, text }, index) => {
    const place = round(x(at));
    const late = place > (SIZE.left + SIZE.right) / 2;
    return [
      shape('path', {
        d: `M${place} ${SIZE.top}V${SIZE.bottom}`,
        'stroke-width': 1.2,
        'stroke-dasharray': '2 3',
        class: 'ink2-line',
      }),
      letters(
        {
          x: late ? place - 6 : place + 6,
          y: SIZE.bottom - 10 - 18 * (index % 4),
          'text-anchor': late ? 'end' : 'start',
          class: 't14 bold ink-fill halo',
        },
        text,
      ),
    ];
  });
}

function markRings({ marks = [] }: Plot, { x, y }: Scales): string[] {
  return marks.flatMap((mark) => {
    const [cx, cy] = [round(x(mark.x)), round(y(mark.y))];
    const late = cx > (SIZE.left + SIZE.right) / 2;
    const high = cy < SIZE.top + 30;
    return [
      shape('circle', { cx, cy, r: 6, 'stroke-width': 2, class: 'ink-line sheet-ground' }),
      letters(
        {
          x: late ? cx - 12 : cx + 12,
          y: high ? cy + 20 : cy - 10,
          'text-anchor': late ? 'end' : 'start',
          class: 't14 bold ink-fill halo',
        },
        mark.text,
      ),
    ];
  });
}

/** What each line style stands for, below the plot. */
function key({ lines }: Plot): string[] {
  return lines.flatMap(({ name }, index) => {
    const y = SIZE.bottom + 64 + KEY_LINE * index;
    return [
      shape('path', { d: `M${SIZE.left} ${y - 5}h44`, ...STYLES[index % STYLES.length], class: 'ink-line' }),
      letters({ x: SIZE.left + 54, y, class: 't14 ink-fill' }, name),
    ];
  });
}

/** Lines over an axis with their marks; the key stands below, so that no name hides a line. */
export function plot(model: Plot): string {
  const scales = plotScales(model);
  const height = SIZE.bottom + 52 + KEY_LINE * model.lines.length;
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${SIZE.width} ${height}`,
      role: 'img',
      'aria-label': model.sentence,
      class: 'plot',
    },
    [
      letters({ x: 4, y: 22, class: 't16 bold ink-fill' }, model.title),
      ...grid(model, scales),
      ...zeroLine(scales),
      ...model.lines.map(({ points }, index) =>
        shape('path', { d: pathOf(scales, points), ...STYLES[index % STYLES.length], class: 'ink-line' }),
      ),
      ...uprightLines(model, scales),
      ...markRings(model, scales),
      ...key(model),
    ],
  );
}
