/** Draws the pictures of `views/pictures/` on paper, from the very text that the page shows: the same paths, as vectors. */
import type { Hatch, Move, Outline, Pen } from './pen.ts';

interface Token {
  readonly name: string;
  readonly isEnd: boolean;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text: string;
}

const TOKEN = /<(\/?)(g|defs|path|circle|rect|text|svg)\b([^>]*?)\/?>([^<]*)/g;
const ATTRIBUTE = /([\w:-]+)="([^"]*)"/g;

/** Greys for paper, by the class that the style sheet colours; what is live is black there, as in print. */
const FILLS: Readonly<Record<string, string>> = {
  'ink-fill': '#000000',
  'ink2-fill': '#444444',
  'tint-fill': '#eeeeee',
  'tint-ground': '#eeeeee',
  'sheet-fill': '#ffffff',
  'sheet-ground': '#ffffff',
  'live-fill': '#000000',
  'onlive-fill': '#ffffff',
  'livetint-fill': '#ffffff',
  'livetint-ground': '#ffffff',
};
const LINES: Readonly<Record<string, string>> = {
  'ink-line': '#000000',
  cut: '#000000',
  'ink2-line': '#444444',
  'edge-line': '#666666',
  'faint-line': '#dddddd',
  'sheet-line': '#ffffff',
  'live-line': '#000000',
  'onlive-line': '#ffffff',
};
const LETTERS: Readonly<Record<string, number>> = { t14: 14, t16: 16, t18: 18 };

/** Letters in circles for a screen too narrow for the tags; paper has room for these. */
const ONLY_NARROW = 'valve-letters';

/** Metal in section, live and held spaces, by the end of the pattern's name. */
const HATCHES: Readonly<Record<string, Hatch>> = {
  metal: { every: 7, angleDegrees: -45, lineWidth: 0.7, dots: false },
  fine: { every: 5, angleDegrees: 45, lineWidth: 0.7, dots: false },
  held: { every: 7.5, angleDegrees: -45, lineWidth: 4.6, dots: false },
  live: { every: 5.66, angleDegrees: 45, lineWidth: 2.4, dots: true },
};

function tokensOf(svg: string): readonly Token[] {
  return [...svg.matchAll(TOKEN)].map(([, end = '', name = '', attributes = '', text = '']) => ({
    name,
    isEnd: end === '/',
    attributes: Object.fromEntries(
      [...attributes.matchAll(ATTRIBUTE)].map(([, key = '', value = '']) => [key, value]),
    ),
    text: plainText(text),
  }));
}

/** What a picture says in words, for whoever cannot see it. */
export function sentenceOf(svg: string): string {
  const [, label = ''] = /aria-label="([^"]*)"/.exec(svg) ?? [];
  return plainText(label);
}

function plainText(text: string): string {
  return text.replace(/&#(\d+);/g, (_, code: string) => String.fromCharCode(Number(code)));
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
    /** How deep inside something that is not drawn. */
    let hidden = 0;
    for (const token of tokensOf(svg)) {
      const { name, isEnd, attributes } = token;
      const isGroup = name === 'g' || name === 'defs';
      if (isGroup && (hidden > 0 || name === 'defs' || attributes.class === ONLY_NARROW))
        hidden += isEnd ? -1 : 1;
      else if (hidden > 0) continue;
      else if (isGroup) {
        if (isEnd) pen.leaveGroup();
        else pen.enterGroup(movesOf(attributes.transform ?? ''));
      } else if (!isEnd) draw(pen, token);
    }
  });
}

/** @example movesOf('translate(0 14) scale(-1 1)') // [{ name: 'translate', by: [0, 14] }, { name: 'scale', by: [-1, 1] }] */
function movesOf(transform: string): readonly Move[] {
  return [...transform.matchAll(/(translate|scale|rotate)\(([^)]*)\)/g)].map(([, name, numbers = '']) => ({
    name: name as Move['name'],
    by: numbers.split(/[\s,]+/).map(Number),
  }));
}

function draw(pen: Pen, { name, attributes, text }: Token): void {
  const classes = (attributes.class ?? '').split(' ');
  const pick = (of: Readonly<Record<string, string>>) =>
    classes.map((each) => of[each]).find((color) => color !== undefined);
  const at = (key: string) => Number(attributes[key] ?? 0);
  const outline = outlineOf(name, attributes);
  if (outline !== null) {
    const [, pattern] = /^url\(#.*-(\w+)\)$/.exec(attributes.fill ?? '') ?? [];
    const hatch = HATCHES[pattern ?? ''];
    if (hatch !== undefined) pen.hatch(outline, hatch);
    pen.shape({
      ...outline,
      fill: pick(FILLS),
      line: pick(LINES),
      lineWidth: Number(attributes['stroke-width'] ?? 1),
      dash: (attributes['stroke-dasharray'] ?? '').split(' ').filter(Boolean).map(Number),
    });
  }
  if (name === 'text')
    pen.letters(text, {
      x: at('x'),
      y: at('y'),
      size: LETTERS[classes.find((each) => each in LETTERS) ?? ''] ?? 14,
      isBold: classes.includes('bold'),
      anchor:
        attributes['text-anchor'] === 'end'
          ? 'end'
          : attributes['text-anchor'] === 'middle'
            ? 'middle'
            : 'start',
      hasHalo: classes.includes('halo'),
      color: pick(FILLS) ?? '#000000',
    });
}

function outlineOf(name: string, attributes: Token['attributes']): Outline | null {
  const at = (key: string) => Number(attributes[key] ?? 0);
  if (name === 'path') return { path: attributes.d ?? '' };
  if (name === 'circle') return { circle: [at('cx'), at('cy'), at('r')] };
  return name === 'rect' ? { rect: [at('x'), at('y'), at('width'), at('height')] } : null;
}
