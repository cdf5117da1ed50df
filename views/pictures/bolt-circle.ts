import { group, letters, round, shape } from './svg.ts';

/** Bolts on their circle and the order in which they are tightened. */
export interface BoltCircle {
  /** Numbered from 1, with where each stands: all in one unit, to the right and upwards of the middle. */
  readonly bolts: readonly {
    readonly bolt: number;
    readonly right: number;
    readonly up: number;
    /** Its place in the order, from 1. */
    readonly rank: number;
  }[];
  readonly sentence: string;
}

const MIDDLE = 190;
const RADIUS = 150;

/** Seen from above, bolt 1 at the top; the large number is the place in the order, lines lead from each to the next. */
export function boltCircle({ bolts, sentence }: BoltCircle): string {
  const largest = Math.max(...bolts.map(({ right, up }) => Math.hypot(right, up)));
  const at = ({ right, up }: { readonly right: number; readonly up: number }) => ({
    x: round(MIDDLE + (RADIUS * right) / largest),
    y: round(MIDDLE - (RADIUS * up) / largest),
  });
  const inOrder = bolts.toSorted((one, other) => one.rank - other.rank).map(at);
  const nut = Math.max(2, Math.min(20, (Math.PI * RADIUS) / bolts.length - 3));
  return group(
    {
      is: 'svg',
      viewBox: `0 0 ${2 * MIDDLE} ${2 * MIDDLE}`,
      role: 'img',
      'aria-label': sentence,
      class: 'bolts',
    },
    [
      shape('circle', { cx: MIDDLE, cy: MIDDLE, r: RADIUS + 32, 'stroke-width': 2, class: 'ink-line' }),
      shape('circle', {
        cx: MIDDLE,
        cy: MIDDLE,
        r: RADIUS,
        'stroke-width': 1,
        'stroke-dasharray': '10 3 3 3',
        class: 'edge-line',
      }),
      shape('path', {
        d: inOrder.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x} ${y}`).join(''),
        'stroke-width': 1,
        class: 'rule-line',
      }),
      ...bolts.flatMap((bolt) => {
        const { x, y } = at(bolt);
        return [
          shape('circle', {
            cx: x,
            cy: y,
            r: nut,
            'stroke-width': bolt.rank === 1 ? 4 : 2,
            class: 'ink-line sheet-ground',
          }),
          // Where the nuts are too small for a number, the list beside the picture has it.
          nut < 11
            ? ''
            : letters(
                {
                  x,
                  y: y + 5,
                  'text-anchor': 'middle',
                  class: nut < 16 ? 't14 ink-fill' : 't16 bold ink-fill',
                },
                String(bolt.rank),
              ),
        ];
      }),
    ],
  );
}
