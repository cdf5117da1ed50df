import { group, letters, round, shape } from './svg.ts';

/** One reading on its gauge. Number and unit stand in `text`: the pointer alone is never the only sign. */
export interface GaugePicture {
  /** Unlike any other on the page: a pointer that moves is known by it. */
  readonly id: string;
  readonly label: string;
  readonly kind: 'dial' | 'scale';
  /** Of the whole scale, 0 to 1. */
  readonly fraction: number;
  readonly text: string;
  readonly from: string;
  readonly to: string;
}

const RADIUS = 62;
/** The pointer turns from down left over the top to down right. */
const FROM_DEGREES = -135;
const SWEEP_DEGREES = 270;
const TICKS = 10;

/**
 * A gauge as it hangs beside the valve: a dial with its pointer, or the travel scale of a yoke with its own.
 * @example gauge({ id: 'g1', label: 'Supply gauge', kind: 'dial', fraction: 0.5, text: '15.0 psi', from: '0', to: '30 psi' })
 */
export function gauge(of: GaugePicture): string {
  return of.kind === 'dial' ? dial(of) : scale(of);
}

function dial({ id, label, fraction, text, from, to }: GaugePicture): string {
  const degrees = FROM_DEGREES + SWEEP_DEGREES * within(fraction);
  return group(
    { is: 'svg', class: 'gauge', viewBox: '0 0 176 176', role: 'img', 'aria-label': `${label}: ${text}` },
    [
      group({ transform: 'translate(88 84)' }, [
        shape('circle', { r: RADIUS + 14, class: 'gauge__rim' }),
        ...Array.from({ length: TICKS + 1 }, (_, at) => tick(at)),
        group({ id, class: 'gauge__pointer', transform: `rotate(${round(degrees)})` }, [
          shape('path', { d: 'M-3 12 L0 -58 L3 12 Z', class: 'gauge__needle' }),
        ]),
        shape('circle', { r: 5, class: 'gauge__needle' }),
        letters({ x: -46, y: 88, class: 'gauge__end', 'text-anchor': 'middle' }, from),
        letters({ x: 46, y: 88, class: 'gauge__end', 'text-anchor': 'middle' }, to),
      ]),
    ],
  );
}

function tick(at: number): string {
  const long = at % 5 === 0;
  return group({ transform: `rotate(${FROM_DEGREES + (SWEEP_DEGREES * at) / TICKS})` }, [
    shape('line', { x1: 0, x2: 0, y1: -RADIUS - 6, y2: -RADIUS + (long ? 8 : 2), class: 'gauge__tick' }),
  ]);
}

const SCALE_TOP = 24;
const SCALE_HIGH = 120;

/** Shut below, open above, as on the leg of the yoke. */
function scale({ id, label, fraction, text, from, to }: GaugePicture): string {
  const y = SCALE_TOP + SCALE_HIGH * (1 - within(fraction));
  return group(
    { is: 'svg', class: 'gauge', viewBox: '0 0 176 176', role: 'img', 'aria-label': `${label}: ${text}` },
    [
      shape('rect', { x: 84, y: SCALE_TOP - 8, width: 32, height: SCALE_HIGH + 16, class: 'gauge__rim' }),
      ...Array.from({ length: 5 }, (_, at) => {
        const high = SCALE_TOP + (SCALE_HIGH * at) / 4;
        return shape('line', {
          x1: 84,
          x2: at % 2 === 0 ? 104 : 94,
          y1: high,
          y2: high,
          class: 'gauge__tick',
        });
      }),
      group({ id, class: 'gauge__pointer', transform: `translate(0 ${round(y)})` }, [
        shape('path', { d: 'M84 0 L60 -8 L60 8 Z', class: 'gauge__needle' }),
      ]),
      letters({ x: 124, y: SCALE_TOP + 5, class: 'gauge__end' }, to),
      letters({ x: 124, y: SCALE_TOP + SCALE_HIGH + 5, class: 'gauge__end' }, from),
    ],
  );
}

function within(fraction: number): number {
  return Math.min(1, Math.max(0, fraction));
}
