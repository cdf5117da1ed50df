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
  /** A record has less height for it than the open card. */
  readonly form?: 'card' | 'record';
  /** The same in one sentence; the table beside it carries every number. */
  readonly sentence: string;
}

export const CURVE = { width: 344, left: 42, right: 332, top: 62, below: 44 } as const;

/** From the highest travel that is wanted to the foot of the band's name: no grid line runs through its letters. */
const BAND_NAME_BELOW = 18;

/** Where the plot ends, in screen dots from the top. */
export function footOf(curve: Pick<StrokeCurve, 'form'>): number {
  return curve.form === 'record' ? 232 : 286;
}

/** Signal and travel to screen dots. The travel axis reaches as far as the band does, so that it is never cut. */
export function curveScales(
  curve: Pick<StrokeCurve, 'signalTicks' | 'travelTicks' | 'goingUp' | 'comingDown' | 'form'>,
) {
  const points = [...curve.goingUp, ...curve.comingDown];
  const reach = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)];
  const signals = reach([...curve.signalTicks, ...points.map((point) => point.signal)]);
  const travels = reach([...curve.travelTicks, ...points.map((point) => point.travel)]);
  return {
    x: scaleLinear(signals, [CURVE.left, CURVE.right]),
    y: scaleLinear(travels, [footOf(curve), CURVE.top]),
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
  const { left, right, top } = CURVE;
  const bottom = footOf(curve);
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

/** A line from end to end of the signal, as far as it stays above the lowest travel of the axis. */
function aboveFloor(ends: readonly [CurvePoint, CurvePoint], floor: number): CurvePoint[] {
  const [from, to] = ends;
  const cut = (point: CurvePoint): CurvePoint =>
    point.travel >= floor
      ? point
      : {
          signal:
            from.signal + ((floor - from.travel) / (to.travel - from.travel)) * (to.signal - from.signal),
          travel: floor,
        };
  return [cut(from), cut(to)];
}

/** The band runs along the wanted line, half its width to each side, and ends at the foot of the plot. */
function tolerance(curve: StrokeCurve, scales: Scales): string[] {
  const floor = Math.min(...curve.travelTicks);
  const [from, to] = curve.wanted;
  const shifted = (by: number): [CurvePoint, CurvePoint] => [
    { ...from, travel: from.travel + by },
    { ...to, travel: to.travel + by },
  ];
  const upper = aboveFloor(shifted(curve.band), floor);
  const lower = aboveFloor(shifted(-curve.band), floor);
  const corners = [from, to].filter(({ travel }) => travel - curve.band < floor);
  const foot = corners.map(({ signal }) => ({ signal, travel: floor }));
  const around =
    from.travel < to.travel
      ? [...upper, ...[...lower].reverse(), ...foot]
      : [...upper, ...foot, ...[...lower].reverse()];
  return [
    shape('path', { d: `${pathOf(scales, around)}Z`, class: 'tint-fill' }),
    shape('path', {
      d: pathOf(scales, upper) + pathOf(scales, lower),
      'stroke-width': 1,
      class: 'edge-line',
    }),
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

/** Does travel rise with the signal? Names and dimension stand where the curves leave room. */
function rises(curve: StrokeCurve): boolean {
  return curve.wanted[1].travel >= curve.wanted[0].travel;
}

/** Where the name of a curve stands: beside one of its points, on the side away from the other curve. */
function nameOf(curve: StrokeCurve, at: { scales: Scales; direction: 'up' | 'down' }): string {
  const { scales, direction } = at;
  const up = direction === 'up';
  const wish = CURVE.left + (up ? 0.3 : 0.6) * (CURVE.right - CURVE.left);
  const away = (point: CurvePoint) => Math.abs(scales.x(point.signal) - wish);
  const point = [...(up ? curve.goingUp : curve.comingDown)].sort((a, b) => away(a) - away(b))[0];
  if (point === undefined) return '';
  return letters(
    {
      x: scales.x(point.signal) + (up ? 13 : -14),
      y: scales.y(point.travel) + (up === rises(curve) ? 17 : -8),
      'text-anchor': up ? 'start' : 'end',
      class: 't14 bold ink-fill halo',
    },
    up ? curve.words.goingUp : curve.words.comingDown,
  );
}

function bandName(curve: StrokeCurve, { x, y }: Scales): string {
  const [low, high] = rises(curve) ? curve.wanted : [curve.wanted[1], curve.wanted[0]];
  const inward = high.signal > low.signal ? -64 : 64;
  return letters(
    {
      x: x(high.signal) + inward,
      y: y(high.travel) + BAND_NAME_BELOW,
      'text-anchor': inward < 0 ? 'end' : 'start',
      class: 't14 ink2-fill halo',
    },
    curve.words.band,
  );
}

function frictionLine(curve: StrokeCurve, { x, y }: Scales): string[] {
  const { friction } = curve;
  if (friction === undefined) return [];
  const at = round(y(friction.travel));
  const [from, to] = [round(x(friction.fromSignal)), round(x(friction.toSignal))];
  const label = rises(curve)
    ? { x: Math.min(CURVE.right - 52, Math.max(from, to) + 8), y: Math.min(footOf(curve) - 26, at + 46) }
    : { x: Math.max(CURVE.left + 8, Math.min(from, to) - 84), y: Math.min(footOf(curve) - 26, at + 46) };
  return [
    shape('path', {
      d: `M${from} ${at}H${to}M${from} ${at - 6}V${at + 6}M${to} ${at - 6}V${at + 6}`,
      'stroke-width': 1.4,
      class: 'ink-line',
    }),
    shape('path', {
      d: `M${round((from + to) / 2)} ${at}L${round(label.x + (rises(curve) ? 6 : 40))} ${label.y - 13}`,
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

function seatContact(curve: StrokeCurve, { x, y }: Scales): string[] {
  const { seat } = curve;
  if (seat === undefined) return [];
  const [to, at] = [round(x(seat.untilSignal)), round(y(seat.travel))];
  return [
    shape('path', {
      d: `M${to} ${at - 7}V${footOf(curve)}`,
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
  const { left, right, top } = CURVE;
  const bottom = footOf(curve);
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${CURVE.width} ${bottom + CURVE.below}`,
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
      ...seatContact(curve, scales),
      ...frictionLine(curve, scales),
      bandName(curve, scales),
      nameOf(curve, { scales, direction: 'up' }),
      nameOf(curve, { scales, direction: 'down' }),
      ...(curve.uncounted ? uncounted(curve.uncounted, scales) : []),
    ],
  );
}
