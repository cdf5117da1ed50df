import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('../../../views', import.meta.url));
/** A file below `views`. */
export const read = (path: string) => readFileSync(`${folder}/${path}`, 'utf8');
const tokens = read('assets/style/1-tokens.css');

export type Palette = Readonly<Record<string, string>>;

/** The declarations of one rule; of a `light-dark(a, b)` the side that is asked for. */
export function declarations(block: string, side: 0 | 1): Palette {
  const pairs = [...block.matchAll(/--([\w]+):\s*([^;]+);/g)].map((match): [string, string] => {
    const both = /light-dark\((#\w+), (#\w+)\)/.exec(match[2] ?? '');
    return [match[1] ?? '', both?.[side + 1] ?? match[2] ?? ''];
  });
  return Object.fromEntries(pairs.filter(([, value]) => value.startsWith('#')));
}

/** The text of one rule of the tokens, from where these words stand. */
export function rule(after: string): string {
  const start = tokens.indexOf(after);
  if (start < 0) throw new Error(`${after} does not stand in the tokens`);
  return tokens.slice(start, tokens.indexOf('}', start));
}

export const plain = rule(':root {');
export const both = rule('@supports');
export const sun = rule(':root[data-contrast="sun"]');
const palette = (side: 0 | 1, contrast: string): Palette => ({
  ...declarations(plain, 0),
  ...declarations(both, side),
  ...declarations(contrast, side),
});
/** In light, dark, sun light, sun dark. */
export const PALETTES = [palette(0, ''), palette(1, ''), palette(0, sun), palette(1, sun)] as const;
export const NAMES = ['light', 'dark', 'sun, light', 'sun, dark'] as const;

/** WCAG 2.2, relative luminance and contrast ratio: published, https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio */
function luminance(hex: string): number {
  const channels = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  const [r = 0, g = 0, b = 0] = channels.map((c) =>
    c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** WCAG 2.2, contrast ratio, 1 to 21. */
export function contrast(one: string, other: string): number {
  const [high = 0, low = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (high + 0.05) / (low + 0.05);
}
