/** Draws the pictures of `views/pictures/` on paper, from the very text that the page shows: the same paths, as vectors. */
import type { Pen } from './pen.ts';

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

const ELEMENT = /<(path|circle|rect|text|svg)\b([^>]*?)(?:\/>|>([^<]*))/g;
const ATTRIBUTE = /([\w:-]+)="([^"]*)"/g;

/** Greys for paper, by the class that the style sheet colours. */
const FILLS: Readonly<Record<string, string>> = {
  'ink-fill': '#000000',
  'ink2-fill': '#444444',
  'tint-fill': '#eeeeee',
  'sheet-ground': '#ffffff',
};
const LINES: Readonly<Record<string, string>> = {
  'ink-line': '#000000',
  'ink2-line': '#444444',
  'edge-line': '#666666',
  'faint-line': '#dddddd',
};

function elementsOf(svg: string): readonly Element[] {
  return [...svg.matchAll(ELEMENT)].map(([, name = '', attributes = '', text = '']) => ({
    name,
    attributes: Object.fromEntries(
      [...attributes.matchAll(ATTRIBUTE)].map(([, key = '', value = '']) => [key, value]),
    ),
    text: text.replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code))),
  }));
}

/** Width and height of a picture in its own dots. */
export function sizeOf(svg: string): { readonly width: number; readonly height: number } {
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  if (width === undefined || height === undefined) throw new TypeError('A picture says its size in viewBox.');
  return { width: Number(width), height: Number(height) };
}

/** @param place  of its left upper corner, in points, and how large a dot is drawn */
export function drawSvg(
  pen: Pen,
  svg: string,
  place: { readonly x: number; readonly y: number; readonly scale: number },
): void {
  pen.within(place, () => {
    for (const element of elementsOf(svg)) draw(pen, element);
  });
}

function draw(pen: Pen, { name, attributes, text }: Element): void {
  const classes = (attributes.class ?? '').split(' ');
  const pick = (of: Readonly<Record<string, string>>) =>
    classes.map((each) => of[each]).find((color) => color !== undefined);
  const look = {
    fill: pick(FILLS),
    line: pick(LINES),
    lineWidth: Number(attributes['stroke-width'] ?? 1),
    dash: (attributes['stroke-dasharray'] ?? '').split(' ').filter(Boolean).map(Number),
  };
  const at = (key: string) => Number(attributes[key] ?? 0);
  if (name === 'path') pen.shape({ path: attributes.d ?? '', ...look });
  if (name === 'circle') pen.shape({ circle: [at('cx'), at('cy'), at('r')], ...look });
  if (name === 'rect') pen.shape({ rect: [at('x'), at('y'), at('width'), at('height')], ...look });
  if (name === 'text')
    pen.letters(text, {
      x: at('x'),
      y: at('y'),
      size: classes.includes('t16') ? 16 : 14,
      isBold: classes.includes('bold'),
      anchor:
        attributes['text-anchor'] === 'end'
          ? 'end'
          : attributes['text-anchor'] === 'middle'
            ? 'middle'
            : 'start',
      hasHalo: classes.includes('halo'),
      color: look.fill ?? '#000000',
    });
}
