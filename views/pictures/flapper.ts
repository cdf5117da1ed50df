import { group, letters, shape } from './svg.ts';

/** What the drawing says, read out in its place. */
export const FLAPPER_SENTENCE =
  'A flapper over its nozzle, twice. Square: the light goes out all round at once. Not square: light stays on one side.';

interface Side {
  readonly left: number;
  /** How far the free end of the flapper stands up, in drawing units. */
  readonly tilt: number;
  readonly word: string;
  readonly light: string;
}

const SIDES: readonly Side[] = [
  { left: 10, tilt: 0, word: 'square', light: 'light goes out all round at once' },
  { left: 10, tilt: 18, word: 'not square', light: 'light stays on one side' },
];

const ROW = 118;

/** Nozzle and flapper against the light, twice: as they should meet, and as they should not. */
export function flapper({ sentence }: { readonly sentence: string }): string {
  return group(
    { is: 'svg', viewBox: `0 0 344 ${2 * ROW}`, role: 'img', 'aria-label': sentence, class: 'detail' },
    SIDES.flatMap((side, at) => drawn(side, at * ROW)),
  );
}

function drawn({ left, tilt, word, light }: Side, top: number): readonly string[] {
  const rim = top + 52;
  const end = rim - 4 - tilt;
  return [
    // The nozzle: a cone with its bore.
    shape('path', {
      d: `M${left + 20} ${top + 108}L${left + 36} ${rim}H${left + 72}L${left + 88} ${top + 108}`,
      'stroke-width': 2,
      class: 'ink-line',
    }),
    shape('path', {
      d: `M${left + 50} ${top + 108}V${rim}M${left + 58} ${top + 108}V${rim}`,
      'stroke-width': 1,
      class: 'edge-line',
    }),
    ...(tilt === 0
      ? []
      : [
          shape('path', {
            d: `M${left + 36} ${rim}H${left + 72}L${left + 36} ${end + 6}Z`,
            class: 'livetint-fill',
          }),
        ]),
    shape('path', {
      d: `M${left} ${end - (tilt === 0 ? 0 : 2)}L${left + 110} ${rim - 2}`,
      'stroke-width': 5,
      class: 'ink-line',
    }),
    letters({ x: left + 128, y: rim - 2, class: 't16 bold ink-fill' }, word),
    letters({ x: left + 128, y: rim + 20, class: 't14 ink-fill' }, light),
  ];
}
