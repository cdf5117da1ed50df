import { scaleLinear } from 'd3-scale';
import { group, letters, round, shape } from './svg.ts';

interface Bar {
  readonly label: string;
  /** In the unit of the axis; null where it is not counted. */
  readonly value: number | null;
  /** Its number with unit, or why there is none. */
  readonly text: string;
  /** What the others add up to. */
  readonly isSum: boolean;
}

/** Forces at several ends of one travel, on one scale. */
export interface ForceBars {
  readonly axis: string;
  readonly ends: readonly { readonly title: string; readonly bars: readonly Bar[] }[];
  /** The same in one sentence; a table beside it carries the numbers. */
  readonly sentence: string;
}

const SIZE = { width: 440, left: 112, right: 432, top: 8 } as const;
const ROW = 26;
const BAR = 16;
/** Title above the bars of an end, and air below them. */
const TITLE = 30;
const BETWEEN = 14;
const AXIS = 44;

/** The number of a bar stands on the other side of the line of no force: that side keeps this part of the width. */
const ROOM_FOR_NUMBERS = 0.24;

/** Force to screen dots, with room for the numbers on both sides of the line of no force. */
function forceScale(ends: ForceBars['ends']) {
  const values = ends.flatMap(({ bars }) => bars.map(({ value }) => value ?? 0));
  const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
  const span = high - low || 1;
  const roomOf = (side: number) => Math.max(side, (span * ROOM_FOR_NUMBERS) / (1 - ROOM_FOR_NUMBERS));
  return scaleLinear([0 - roomOf(-low), roomOf(high)], [SIZE.left, SIZE.right]);
}

type Scale = ReturnType<typeof forceScale>;

function heightOf({ bars }: ForceBars['ends'][number]): number {
  return TITLE + bars.length * ROW + BETWEEN;
}

function grid(ticks: readonly number[], { x, bottom }: { readonly x: Scale; readonly bottom: number }) {
  const uprights = ticks.map((tick) => `M${round(x(tick))} ${SIZE.top}V${bottom}`).join('');
  return [
    shape('path', { d: uprights, 'stroke-width': 1, class: 'faint-line' }),
    ...ticks.map((tick) =>
      letters(
        { x: round(x(tick)), y: bottom + 18, 'text-anchor': 'middle', class: 't14 ink2-fill' },
        String(tick).replace('-', '\u2212'),
      ),
    ),
    shape('path', { d: `M${round(x(0))} ${SIZE.top}V${bottom}`, 'stroke-width': 1.6, class: 'ink-line' }),
  ];
}

function barOf({ value, text, label, isSum }: Bar, { x, y }: { readonly x: Scale; readonly y: number }) {
  const [zero, end] = [x(0), x(value ?? 0)];
  const isRight = (value ?? 0) >= 0;
  const weight = isSum ? ' bold' : '';
  const drawn = shape('rect', {
    x: Math.min(zero, end),
    y: y + (ROW - BAR) / 2,
    width: Math.abs(end - zero),
    height: BAR,
    'stroke-width': 1.6,
    class: isSum ? 'ink-line ink-fill' : 'ink-line tint-ground',
  });
  const baseline = y + ROW / 2 + 5;
  return [
    ...(value === null || value === 0 ? [] : [drawn]),
    letters({ x: 4, y: baseline, class: `t14 ink-fill${weight}` }, label),
    letters(
      {
        x: round(zero) + (isRight ? -6 : 6),
        y: baseline,
        'text-anchor': isRight ? 'end' : 'start',
        class: `t14 ink-fill halo${weight}`,
      },
      text,
    ),
  ];
}

/** Each force as a bar from the line of no force, right towards the seat; what they add up to is black. */
export function forceBars({ axis, ends, sentence }: ForceBars): string {
  const x = forceScale(ends);
  const bottom = SIZE.top + ends.reduce((sum, end) => sum + heightOf(end), 0);
  let top: number = SIZE.top;
  const drawn = ends.flatMap((end) => {
    const from = top;
    top += heightOf(end);
    return [
      letters({ x: 4, y: from + 19, class: 't14 bold ink-fill halo' }, end.title),
      ...end.bars.flatMap((bar, at) => barOf(bar, { x, y: from + TITLE + at * ROW })),
    ];
  });
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${SIZE.width} ${bottom + AXIS}`,
      role: 'img',
      'aria-label': sentence,
      class: 'plot',
    },
    [
      ...grid(x.ticks(5), { x, bottom }),
      ...drawn,
      letters({ x: SIZE.right, y: bottom + 38, 'text-anchor': 'end', class: 't14 ink2-fill' }, axis),
    ],
  );
}
