import { group, shape } from '../svg.ts';
import { fillingClass } from './fillings.ts';
import { STROKE_U, stemUpFraction, type ValveSection } from './model.ts';

/**
 * The body with its flanges, web and seat ring, and the plug. Drawing units, up positive; the origin is
 * where the stem crosses the pipe. Drawn for flow under the plug and mirrored for flow over it.
 */
const OUTER =
  'M-104 45H-91V35H-75C-60 35 -52 44 -52 58V64H52V58C52 44 60 35 75 35H91V45H104V-45H91V-35H78C58 -35 50 -71 0 -71C-50 -71 -58 -35 -78 -35H-91V-45H-104Z';

const UPPER_WALL = 'C-38 36 -40 40 -40 50V64H40V50C46 36 56 24 70 24H104V-24H73C56 -24 52 6 35 10';
const LOWER_WALL =
  'C42 -12 43 -20 43 -30C43 -47 24 -59 0 -59C-26 -59 -38 -24 -64 -24H-104V24H-64C-50 24 -44 4 -31 -4';

const RING = {
  down: {
    half: 'M-35 15.5V.5H-31V-12H-19V8.5L-25 15.5Z',
    lower: 'V-12H-19V11H19V-12H31',
    upper: 'V15.5H25L19 11H-19L-25 15.5H-35',
  },
  up: {
    half: 'M-35 15.5V.5H-31V-12H-25L-19 -5.5V15.5Z',
    lower: 'V-12H-25L-19 -9H19L25 -12H31',
    upper: 'V15.5H19V-9H-19V15.5H-35',
  },
} as const;

/** Plug in its lowest place, drawn from the seat: a plug that closes upward starts one stroke lower. */
const PLUG = {
  down: {
    outline:
      'M-4.5 36V36H-9V22H-24.5V13L-19 6.5C-17 -6 -12 -20 -6 -20H6C12 -20 17 -6 19 6.5L24.5 13V22H9V36H4.5Z',
    edges: 'M-24.5 13H24.5M-19 6.5H19',
    stemFrom: 36,
  },
  up: {
    outline:
      'M-6 -8C-14 -12 -17 -22 -19 -33L-24.5 -39V-45L-19 -48H19L24.5 -45V-39L19 -33C17 -22 14 -12 6 -8Z',
    edges: 'M-24.5 -39H24.5M-19 -33H19',
    stemFrom: -8,
  },
} as const;

const cut = { 'stroke-width': 1.6 };

/** The spaces on both sides of the seat, as far as the pressure reaches. */
function spaces(valve: ValveSection): string[] {
  const ring = RING[valve.plugCloses];
  const lower = `M31 -12${LOWER_WALL}${ring.lower}Z`;
  const upper = `M-35 15.5${UPPER_WALL}${ring.upper}Z`;
  const [below, above] = valve.flow === 'under' ? [valve.inlet, valve.outlet] : [valve.outlet, valve.inlet];
  return [
    shape('path', { d: lower, ...fillingClass(valve.id, below) }),
    shape('path', { d: upper, ...fillingClass(valve.id, above) }),
    shape('path', { d: `M31 -12${LOWER_WALL}M-35 15.5${UPPER_WALL}`, ...cut, class: 'ink-line' }),
  ];
}

export function body(valve: ValveSection): string {
  const ring = RING[valve.plugCloses].half;
  const hatched = { class: 'ink-line', ...cut };
  return group({ transform: valve.flow === 'over' ? 'scale(-1 1)' : undefined }, [
    shape('path', { d: OUTER, class: 'sheet-fill' }),
    shape('path', { d: OUTER, ...hatched, fill: `url(#${valve.id}-metal)`, class: 'cut' }),
    ...spaces(valve),
    ...[undefined, 'scale(-1 1)'].map((transform) =>
      group({ transform }, [
        shape('path', { d: ring, class: 'sheet-fill' }),
        shape('path', { d: ring, ...cut, fill: `url(#${valve.id}-fine)`, class: 'cut' }),
        shape('rect', { x: -114.5, y: -45, width: 10.5, height: 90, ...cut, class: 'ink-line sheet-ground' }),
        shape('path', { d: 'M-120 38H-86M-120 -38H-86M-127 0H-106', ...centre, class: 'edge-line' }),
      ]),
    ),
  ]);
}

const centre = { 'stroke-width': 0.8, 'stroke-dasharray': '14 3 3 3' };

/** Plug with its stem up to the connector: it moves with the stem. */
export function plug(valve: ValveSection): string {
  const { outline, edges, stemFrom } = PLUG[valve.plugCloses];
  return group({}, [
    shape('rect', {
      x: -4,
      y: stemFrom,
      width: 8,
      height: 200 - stemFrom,
      'stroke-width': 1.6,
      class: 'ink-line sheet-ground',
    }),
    shape('path', { d: outline, ...cut, class: 'ink-line sheet-ground' }),
    shape('path', { d: edges, 'stroke-width': 0.9, class: 'ink-line' }),
  ]);
}

/** Which way the process goes through the body. */
export function flowArrow(flow: 'under' | 'over'): string {
  return group({ transform: flow === 'over' ? 'scale(1 -1)' : undefined }, [
    shape('path', { d: 'M-97 -6H-66C-54 -6 -47 -14 -40 -24', 'stroke-width': 2, class: 'ink-line' }),
    shape('path', { d: 'M-33 -34L-46.5 -26.5L-37.5 -20Z', class: 'ink-fill' }),
  ]);
}

/** The transform of all parts that move with the stem. */
export function stemTransform(valve: ValveSection): string {
  return `translate(0 ${Math.round(STROKE_U * stemUpFraction(valve) * 100) / 100})`;
}
