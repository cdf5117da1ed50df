import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import { group, letters, round, shape } from './svg.ts';

/** One point of a stroke: what was put on and where the stem stood, both in the units of the axes. */
export interface CurvePoint {
  readonly signal: number;
  readonly travel: number;
}

export interface StrokeCurve {
  /** Names the picture and stands over it. */
  readonly title: string;
  /** In the order that they were read. */
  readonly goingUp: readonly CurvePoint[];
  readonly comingDown: readonly CurvePoint[];
  /** Understood, not counted yet. */
  readonly uncounted?: CurvePoint & { readonly direction: 'up' | 'down'; readonly text: string };
  /** Wanted travel at both ends of the signal. */
  readonly wanted: readonly [CurvePoint, CurvePoint];
  /** Half the width of the tolerance band, in travel. */
  readonly band: number;
  readonly signalTicks: readonly number[];
  readonly travelTicks: readonly number[];
  /** Between the two curves at one travel: what friction costs, as a signal. */
  readonly friction?: {
    readonly travel: number;
    readonly fromSignal: number;
    readonly toSignal: number;
    readonly value: string;
    readonly word: string;
  };
  /** Below this travel the plug stands on its seat and nothing is judged. */
  readonly seat?: { readonly travel: number; readonly untilSignal: number; readonly word: string };
  readonly words: {
    readonly signalAxis: string;
    readonly travelAxis: string;
    readonly band: string;
    readonly goingUp: string;
    readonly comingDown: string;
  };
  /** The same in one sentence; the table beside it carries every number. */
  readonly sentence: string;
}

export const CURVE = { width: 344, height: 330, left: 42, right: 332, top: 62, bottom: 286 } as const;

/** Signal and travel to screen dots. The travel axis reaches as far as the band does, so that it is never cut. */
export function curveScales(
  curve: Pick<StrokeCurve, 'signalTicks' | 'travelTicks' | 'goingUp' | 'comingDown'>,
) {
  const points = [...curve.goingUp, ...curve.comingDown];
  const reach = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];
  const signals = reach([...curve.signalTicks, ...points.map((point) => point.signal)]);
  const travels = reach([...curve.travelTicks, ...points.map((point) => point.travel)]);
  return {
    x: scaleLinear(signals, [CURVE.left, CURVE.right]),
    y: scaleLinear(travels, [CURVE.bottom, CURVE.top]),
  };
}

type Scales = ReturnType<typeof curveScales>;

function pathOf({ x, y }: Scales, points: readonly CurvePoint[]): string {
  const draw = line<CurvePoint>(
    (point) => round(x(point.signal)),
    (point) => round(y(point.travel)),
  );
  return draw(points) ?? '';
}

function grid(curve: StrokeCurve, { x, y }: Scales): string[] {
  const { left, right, top, bottom } = CURVE;
  const across = curve.travelTicks.map((travel) => `M${left} ${round(y(travel))}H${right}`);
  const upright = curve.signalTicks.map((signal) => `M${round(x(signal))} ${top}V${bottom}`);
  return [
    shape('path', { d: [...across, ...upright].join(''), 'stroke-width': 1, class: 'faint-line' }),
    ...curve.travelTicks.map((travel) =>
      letters(
        { x: left - 7, y: y(travel) + 5, 'text-anchor': 'end', class: 't14 ink2-fill' },
        String(travel),
      ),
    ),
    ...curve.signalTicks.map((signal) =>
      letters(
        { x: x(signal), y: bottom + 19, 'text-anchor': 'middle', class: 't14 ink2-fill' },
        String(signal),
      ),
    ),
    letters({ x: 4, y: top - 12, class: 't14 ink2-fill' }, curve.words.travelAxis),
    letters(
      { x: right, y: bottom + 38, 'text-anchor': 'end', class: 't14 ink2-fill' },
      curve.words.signalAxis,
    ),
  ];
}

/** The band cut to the plot: it runs along the wanted line, half its width to each side. */
function tolerance(curve: StrokeCurve, scales: Scales): string[] {
  const shifted = (by: number) => curve.wanted.map(({ signal, travel }) => ({ signal, travel: travel + by }));
  const upper = pathOf(scales, shifted(curve.band));
  const lower = pathOf(scales, shifted(-curve.band).reverse());
  return [
    shape('path', { d: `${upper}${lower.replace('M', 'L')}Z`, class: 'tint-fill' }),
    shape('path', { d: upper + lower, 'stroke-width': 1, class: 'edge-line' }),
    shape('path', {
      d: pathOf(scales, curve.wanted),
      'stroke-width': 1,
      'stroke-dasharray': '10 3 3 3',
      class: 'edge-line',
    }),
  ];
}

function triangle(scales: Scales, mark: { point: CurvePoint; direction: 'up' | 'down' }): string {
  const x = round(scales.x(mark.point.signal));
  const y = round(scales.y(mark.point.travel));
  return mark.direction === 'up'
    ? shape('path', { d: `M${x} ${y - 6}l6 10h-12z`, class: 'ink-fill' })
    : shape('path', {
        d: `M${x} ${y + 6.5}l6.5 -11h-13z`,
        'stroke-width': 1.8,
        class: 'ink-line sheet-ground',
      });
}

function strokes(curve: StrokeCurve, scales: Scales): string[] {
  return [
    shape('path', { d: pathOf(scales, curve.goingUp), 'stroke-width': 2.4, class: 'ink-line' }),
    shape('path', {
      d: pathOf(scales, curve.comingDown),
      'stroke-width': 2.4,
      'stroke-dasharray': '8 4',
      class: 'ink-line',
    }),
    ...curve.goingUp.map((point) => triangle(scales, { point, direction: 'up' })),
    ...curve.comingDown.map((point) => triangle(scales, { point, direction: 'down' })),
  ];
}

/** Where the name of a curve stands: beside its middle, on the side away from the other curve. */
function name(at: {
  points: readonly CurvePoint[];
  scales: Scales;
  text: string;
  side: 'left' | 'right';
}): string {
  const { points, scales, text, side } = at;
  const middle = points[Math.floor(points.length / (side === 'left' ? 1.6 : 3))] ?? points[0];
  if (middle === undefined) return '';
  const x = scales.x(middle.signal) + (side === 'left' ? -14 : 12);
  const y = scales.y(middle.travel) + (side === 'left' ? -8 : 14);
  return letters(
    { x, y, 'text-anchor': side === 'left' ? 'end' : 'start', class: 't14 bold ink-fill halo' },
    text,
  );
}

function frictionLine(friction: NonNullable<StrokeCurve['friction']>, { x, y }: Scales): string[] {
  const at = round(y(friction.travel));
  const [from, to] = [round(x(friction.fromSignal)), round(x(friction.toSignal))];
  const label = {
    x: Math.min(CURVE.right - 52, Math.max(from, to) + 8),
    y: Math.min(CURVE.bottom - 26, at + 46),
  };
  return [
    shape('path', {
      d: `M${from} ${at}H${to}M${from} ${at - 6}V${at + 6}M${to} ${at - 6}V${at + 6}`,
      'stroke-width': 1.4,
      class: 'ink-line',
    }),
    shape('path', {
      d: `M${round((from + to) / 2)} ${at}L${label.x + 6} ${label.y - 13}`,
      'stroke-width': 0.9,
      class: 'edge-line',
    }),
    letters({ ...label, class: 't14 bold ink-fill halo' }, friction.value),
    letters({ x: label.x, y: label.y + 17, class: 't14 ink2-fill halo' }, friction.word),
  ];
}

function uncounted(point: NonNullable<StrokeCurve['uncounted']>, scales: Scales): string[] {
  const [cx, cy] = [round(scales.x(point.signal)), round(scales.y(point.travel))];
  return [
    triangle(scales, { point, direction: point.direction }),
    shape('circle', { cx, cy, r: 10, 'stroke-width': 1.8, 'stroke-dasharray': '2 3', class: 'ink-line' }),
    letters({ x: cx - 14, y: cy - 8, 'text-anchor': 'end', class: 't14 bold ink-fill halo' }, point.text),
  ];
}

function seatContact(seat: NonNullable<StrokeCurve['seat']>, { x, y }: Scales): string[] {
  const [to, at] = [round(x(seat.untilSignal)), round(y(seat.travel))];
  return [
    shape('path', {
      d: `M${to} ${at - 7}V${CURVE.bottom}`,
      'stroke-width': 1,
      'stroke-dasharray': '2 3',
      class: 'ink2-line',
    }),
    letters({ x: CURVE.left + 8, y: at - 13, class: 't14 ink2-fill halo' }, seat.word),
  ];
}

/**
 * Travel over signal, going up and coming down, with the tolerance band, the line that is wanted, what friction
 * costs, and a point that does not count yet. Line style and marker differ, so that grey tells the curves apart.
 */
export function strokeCurve(curve: StrokeCurve): string {
  const scales = curveScales(curve);
  const bandEnd = curve.wanted[1];
  const bandLabel = { x: scales.x(bandEnd.signal) - 64, y: scales.y(bandEnd.travel) + 7 };
  const { left, right, top, bottom } = CURVE;
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${CURVE.width} ${CURVE.height}`,
      role: 'img',
      'aria-label': curve.sentence,
      class: 'curve',
    },
    [
      letters({ x: 4, y: 22, class: 't16 bold ink-fill' }, curve.title),
      ...grid(curve, scales),
      ...tolerance(curve, scales),
      shape('path', { d: `M${left} ${top - 8}V${bottom}H${right}`, 'stroke-width': 1.6, class: 'ink-line' }),
      ...strokes(curve, scales),
      ...(curve.seat ? seatContact(curve.seat, scales) : []),
      ...(curve.friction ? frictionLine(curve.friction, scales) : []),
      letters({ ...bandLabel, 'text-anchor': 'end', class: 't14 ink2-fill halo' }, curve.words.band),
      name({ points: curve.goingUp, scales, text: curve.words.goingUp, side: 'right' }),
      name({ points: curve.comingDown, scales, text: curve.words.comingDown, side: 'left' }),
      ...(curve.uncounted ? uncounted(curve.uncounted, scales) : []),
    ],
  );
}
