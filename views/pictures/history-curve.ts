import { scaleLinear, scaleUtc } from 'd3-scale';
import { group, letters, round, shape } from './svg.ts';

/** Readings of one quantity over the years, in the unit that the axis names. */
export interface HistoryCurve {
  readonly title: string;
  readonly axis: string;
  readonly points: readonly {
    readonly timeMs: number;
    readonly value: number;
    readonly give: number;
    readonly isLeft: boolean;
    readonly isCounted: boolean;
  }[];
  readonly limits: readonly { readonly value: number; readonly text: string }[];
  /** What is expected, thinner than a limit: a reading beyond it breaks nothing. */
  readonly expected: readonly { readonly value: number; readonly text: string }[];
  /** The ends of the fitted line; none where there is no trend. */
  readonly line: readonly { readonly timeMs: number; readonly value: number }[];
  /** The same in one sentence; a table beside it carries the numbers. */
  readonly sentence: string;
}

const SIZE = { width: 480, left: 58, right: 464, top: 64, bottom: 264, height: 352 } as const;
const DAY_MS = 24 * 3600 * 1000;
const ROOM_MS = 45 * DAY_MS;

/** Time and value to screen dots; limits are always in sight, and half the give of each reading. */
function historyScales({
  points,
  limits,
  expected,
  line,
}: Omit<HistoryCurve, 'title' | 'sentence' | 'axis'>) {
  const times = points.map(({ timeMs }) => timeMs);
  const values = [
    ...points.flatMap(({ value, give }) => [value - give, value + give]),
    ...[...limits, ...expected].map(({ value }) => value),
    ...line.map(({ value }) => value),
    0,
  ];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  return {
    x: scaleUtc([Math.min(...times) - ROOM_MS, Math.max(...times) + ROOM_MS], [SIZE.left, SIZE.right]),
    y: scaleLinear([low, high > low ? high : low + 1], [SIZE.bottom, SIZE.top]).nice(5),
  };
}

type Scales = ReturnType<typeof historyScales>;

function grid({ axis }: HistoryCurve, { x, y }: Scales): string[] {
  const { left, right, top, bottom } = SIZE;
  const [xTicks, yTicks] = [x.ticks(4), y.ticks(5)];
  const across = yTicks.map((tick) => `M${left} ${round(y(tick))}H${right}`);
  const upright = xTicks.map((tick) => `M${round(x(tick))} ${top}V${bottom}`);
  return [
    shape('path', { d: [...across, ...upright].join(''), 'stroke-width': 1, class: 'faint-line' }),
    ...yTicks.map((tick) =>
      letters(
        { x: left - 7, y: y(tick) + 5, 'text-anchor': 'end', class: 't14 ink2-fill' },
        String(tick).replace('-', '\u2212'),
      ),
    ),
    ...xTicks.map((tick) =>
      letters(
        { x: x(tick), y: bottom + 19, 'text-anchor': 'middle', class: 't14 ink2-fill' },
        tick.toISOString().slice(0, 7),
      ),
    ),
    letters({ x: 4, y: top - 14, class: 't14 ink2-fill' }, axis),
    shape('path', { d: `M${left} ${top - 6}V${bottom}H${right}`, 'stroke-width': 1.6, class: 'ink-line' }),
  ];
}

function limitLines({ limits, expected }: HistoryCurve, { y }: Scales): string[] {
  const across = (value: number) => `M${SIZE.left} ${round(y(value))}H${SIZE.right}`;
  return [
    ...expected.flatMap(({ value, text }) => [
      shape('path', {
        d: across(value),
        'stroke-width': 1.2,
        'stroke-dasharray': '2 4',
        class: 'ink2-line',
      }),
      letters({ x: SIZE.left + 4, y: y(value) - 6, class: 't14 ink2-fill halo' }, text),
    ]),
    ...limits.flatMap(({ value, text }) => [
      shape('path', {
        d: across(value),
        'stroke-width': 1.6,
        'stroke-dasharray': '12 3 3 3',
        class: 'ink-line',
      }),
      letters({ x: SIZE.right - 4, y: y(value) - 6, 'text-anchor': 'end', class: 't14 ink-fill halo' }, text),
    ]),
  ];
}

/** Each reading with its uncertainty as an upright. As left is hollow; what no trend counts is thin. */
function marks({ points }: HistoryCurve, { x, y }: Scales): string[] {
  return points.flatMap(({ timeMs, value, give, isLeft, isCounted }) => {
    const [cx, cy] = [round(x(timeMs)), round(y(value))];
    const line = isCounted ? 'ink-line' : 'ink2-line';
    const fill = isLeft || !isCounted ? 'sheet-ground' : 'ink-fill';
    const width = isCounted ? 2 : 1.2;
    return [
      shape('path', {
        d: `M${cx} ${round(y(value - give))}V${round(y(value + give))}`,
        'stroke-width': 1.2,
        class: line,
      }),
      isLeft
        ? shape('rect', {
            x: cx - 5,
            y: cy - 5,
            width: 10,
            height: 10,
            'stroke-width': width,
            class: `${line} ${fill}`,
          })
        : shape('circle', { cx, cy, r: 5, 'stroke-width': width, class: `${line} ${fill}` }),
    ];
  });
}

function key(): string[] {
  const y = SIZE.bottom + 52;
  const { left } = SIZE;
  return [
    shape('circle', { cx: left + 8, cy: y - 5, r: 5, 'stroke-width': 2, class: 'ink-line ink-fill' }),
    letters({ x: left + 20, y, class: 't14 ink-fill' }, 'as found'),
    shape('rect', {
      x: left + 150,
      y: y - 10,
      width: 10,
      height: 10,
      'stroke-width': 2,
      class: 'ink-line sheet-ground',
    }),
    letters({ x: left + 167, y, class: 't14 ink-fill' }, 'as left'),
    shape('circle', {
      cx: left + 8,
      cy: y + 15,
      r: 5,
      'stroke-width': 1.2,
      class: 'ink2-line sheet-ground',
    }),
    letters({ x: left + 20, y: y + 20, class: 't14 ink-fill' }, 'before it was last set'),
  ];
}

/** A quantity over the years with its limits, its trend, and the uncertainty of each reading. */
export function historyCurve(curve: HistoryCurve): string {
  if (curve.points.length === 0) return '';
  const scales = historyScales(curve);
  const [from, to] = [curve.line[0], curve.line[1]];
  const { x, y } = scales;
  const trend =
    from === undefined || to === undefined
      ? []
      : [
          shape('path', {
            d: `M${round(x(from.timeMs))} ${round(y(from.value))}L${round(x(to.timeMs))} ${round(y(to.value))}`,
            'stroke-width': 2.4,
            'stroke-dasharray': '8 4',
            class: 'ink-line',
          }),
        ];
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${SIZE.width} ${SIZE.height}`,
      role: 'img',
      'aria-label': curve.sentence,
      class: 'plot',
    },
    [
      letters({ x: 4, y: 22, class: 't16 bold ink-fill' }, curve.title),
      ...grid(curve, scales),
      ...limitLines(curve, scales),
      ...trend,
      ...marks(curve, scales),
      ...key(),
    ],
  );
}
