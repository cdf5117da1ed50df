import { group, round, shape } from '../svg.ts';
import { STROKE_U, stemUpFraction, type ValveSection } from './model.ts';

const COILS = 6;
const RADIUS = 25;
const WIRE = 7.5;

/** The two faces that the spring stands between, upper and lower. One is fixed, the other moves with the stem. */
function faces(valve: ValveSection): { topU: number; bottomU: number } {
  const up = STROKE_U * stemUpFraction(valve);
  return valve.airMovesStem === 'up' ? { topU: 416, bottomU: 297 + up } : { topU: 353 + up, bottomU: 276 };
}

/** Distance between neighbouring coils: what the length leaves for five and a half of them. */
export function coilPitch(valve: ValveSection): number {
  const { topU, bottomU } = faces(valve);
  const slack = valve.spring === 'released' ? 8 : 0;
  return (topU - bottomU - WIRE - slack) / (COILS - 0.5);
}

/** Seat plate at the end that stands still, and the coils in section: cut wire left and right, back half between. */
export function spring(valve: ValveSection): string {
  const { topU } = faces(valve);
  const seatY = valve.airMovesStem === 'up' ? 416 : 270;
  const seat = shape('rect', {
    x: -34,
    y: seatY,
    width: 68,
    height: 6,
    'stroke-width': 1.6,
    class: 'ink-line sheet-ground',
  });
  if (valve.spring === 'absent') return seat;
  const pitch = coilPitch(valve);
  const first = topU - WIRE / 2 - (valve.spring === 'released' ? 8 : 0);
  const coils = Array.from({ length: COILS }, (_, at) =>
    group(
      {
        id: `${valve.id}-coil-${at}`,
        transform: `translate(0 ${round(first - at * pitch)})`,
        class: 'moves',
      },
      coil(valve.spring, pitch / 2),
    ),
  );
  return seat + coils.join('');
}

function coil(state: ValveSection['spring'], drop: number): string[] {
  const wire = WIRE / 2;
  const back = `M${-RADIUS} ${wire}L${RADIUS} ${round(wire - drop)}V${round(-wire - drop)}L${-RADIUS} ${-wire}Z`;
  const loaded = state === 'loaded';
  const ends = { released: 'ink-line sheet-ground', loaded: 'live-fill', contained: 'ink-fill', absent: '' }[
    state
  ];
  const end = (cx: number, cy: number) =>
    shape('circle', { cx, cy: round(cy), r: wire, 'stroke-width': 1.2, class: ends });
  return [
    shape('path', {
      d: back,
      'stroke-width': 1,
      class: loaded ? 'live-line livetint-ground' : 'ink-line sheet-ground',
    }),
    end(-RADIUS, 0),
    end(RADIUS, -drop),
  ];
}
