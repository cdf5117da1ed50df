import { group, shape } from './svg.ts';

/** One box stands for one chance in ten. */
const BOXES = 10;
const SIZE = 12;
const PITCH = 15;

/**
 * How likely, as boxes filled out of ten; half a box counts. Beside it the same stands in words, so that it is hidden
 * from a reader of the page.
 * @param fraction  0 to 1
 * @example chanceBar(0.6) // six boxes filled
 */
export function chanceBar(fraction: number): string {
  const filled = Math.round(Math.min(1, Math.max(0, fraction)) * BOXES * 2) / 2;
  const boxes = Array.from({ length: BOXES }, (_, at) => {
    const part = Math.min(1, Math.max(0, filled - at));
    const x = at * PITCH + 0.5;
    return [
      shape('rect', { x, y: 0.5, width: SIZE, height: SIZE, class: 'chance__box' }),
      part === 0
        ? ''
        : shape('rect', {
            x: x + 2,
            y: 2.5,
            width: (SIZE - 4) * part,
            height: SIZE - 4,
            class: 'chance__full',
          }),
    ].join('');
  });
  const width = BOXES * PITCH;
  return group(
    {
      is: 'svg',
      class: 'chance',
      viewBox: `0 0 ${width} ${SIZE + 1}`,
      width,
      height: SIZE + 1,
      'aria-hidden': 'true',
    },
    boxes,
  );
}

/** How much something weighs, as one to three strokes; three is the most. */
export function weightStrokes(weight: number): string {
  const strokes = [1, 2, 3].map((at) =>
    shape('rect', {
      x: (at - 1) * 6,
      y: at <= weight ? 0 : 8,
      width: at <= weight ? 3 : 1,
      height: at <= weight ? 12 : 4,
      class: 'chance__full',
    }),
  );
  return group(
    { is: 'svg', class: 'weight', viewBox: '0 0 16 12', width: 16, height: 12, 'aria-hidden': 'true' },
    strokes,
  );
}
