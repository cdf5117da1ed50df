import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { ASSET_FILES } from '../../../views/assets.ts';
import { both, contrast, declarations, NAMES, PALETTES, plain, read, rule, sun } from './palettes.ts';

const folder = fileURLToPath(new URL('../../../views', import.meta.url));

/** Floors in light, dark, sun light, sun dark: what each pair was drawn with, rounded to one decimal. */
const FLOORS: readonly (readonly [string, string, readonly [number, number, number, number]])[] = [
  ['ink', 'sheet', [17.2, 14.6, 21, 21]],
  ['ink2', 'sheet', [8.3, 9, 13, 14.9]],
  ['ink2', 'desk', [6.7, 10, 13, 14.9]],
  ['ink2', 'tint', [7.6, 7.9, 11.6, 12.7]],
  ['edge', 'sheet', [4.6, 5.3, 21, 21]],
  ['edge', 'desk', [3.6, 5.9, 21, 21]],
  ['live', 'sheet', [7.9, 7.8, 10.7, 11.1]],
  ['onlive', 'live', [8.2, 9, 10.7, 11.1]],
  ['live', 'livetint', [6.1, 6.5, 10.7, 11.1]],
  ['hatch', 'sheet', [5.7, 4.8, 13, 10.9]],
  ['ondanger', 'danger', [5.9, 5.9, 7.8, 7.8]],
  ['onwarning', 'warning', [6.7, 6.7, 7.8, 7.8]],
  ['oncaution', 'caution', [14.4, 14.4, 14.4, 14.4]],
  ['onnotice', 'notice', [6.9, 6.9, 9.3, 9.3]],
];

test('the contrast formula gives the published extremes', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

// UI-39 for the panels of the signal words.
describe.each(FLOORS)('%s on %s', (front, ground, floors) => {
  test.each(NAMES.map((name, at) => ({ name, at })))(
    'is not fainter than it was drawn, in $name',
    ({ at }) => {
      const { [front]: one, [ground]: other } = PALETTES[at] ?? {};
      if (!one || !other) throw new Error(`${front} or ${ground} is no token`);
      expect(Math.round(contrast(one, other) * 10) / 10).toBeGreaterThanOrEqual(floors[at] ?? 99);
    },
  );
});

test('text is 7 to 1 in the sun and 4.5 to 1 elsewhere, borders of controls 3 to 1 everywhere (UI-02, UI-03, UI-33)', () => {
  for (const [at, colours] of PALETTES.entries()) {
    const ratio = (one: string, other: string) => contrast(colours[one] ?? '', colours[other] ?? '');
    for (const ground of ['sheet', 'desk', 'tint']) {
      for (const text of ['ink', 'ink2'])
        expect(ratio(text, ground)).toBeGreaterThanOrEqual(at > 1 ? 7 : 4.5);
      expect(ratio('edge', ground)).toBeGreaterThanOrEqual(3);
      expect(ratio('live', ground)).toBeGreaterThanOrEqual(3);
    }
  }
});

test('who asks the machine for more contrast gets the same colours as who chooses sun', () => {
  expect(declarations(rule(':root:not([data-contrast="plain"])'), 0)).toEqual(declarations(sun, 0));
  expect(declarations(rule(':root:not([data-contrast="plain"])'), 1)).toEqual(declarations(sun, 1));
});

test('a browser without paired colours gets the light ones', () => {
  const light = declarations(both, 0);
  expect(Object.keys(light).length).toBe(12);
  expect(declarations(plain, 0)).toMatchObject(light);
});

const parts = readdirSync(`${folder}/assets/style`);

test('the sheet that is served is made of every part of the style folder', () => {
  const names = Object.entries(ASSET_FILES).flatMap(([name, source]) =>
    name.endsWith('.css') && 'parts' in source ? source.parts : [],
  );
  expect([...names].sort()).toEqual(parts.map((part) => `assets/style/${part}`).sort());
});

test.each(parts.filter((part) => part !== '1-tokens.css' && part !== '9-print.css'))(
  'no colour is named outside the tokens, in %s',
  (part) => {
    const text = read(`assets/style/${part}`).replace(/\/\*[\s\S]*?\*\//g, '');
    expect(text).not.toMatch(/#[0-9a-f]{3,8}\b|rgb\(|hsl\(/i);
    expect(text).not.toMatch(/https?:|@import/);
  },
);

test('a token that is used is a token that exists', () => {
  const used = new Set(
    parts.flatMap((part) => [...read(`assets/style/${part}`).matchAll(/var\(--([\w]+)/g)].map((m) => m[1])),
  );
  const known = new Set([...plain.matchAll(/--([\w]+):/g)].map((match) => match[1]));
  expect([...used].filter((name) => !known.has(name))).toEqual([]);
});
