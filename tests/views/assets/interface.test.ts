/** What the style sheet alone decides of how a page is seen. */
import { expect, test } from 'vitest';
import { contrast, declarations, NAMES, PALETTES, read } from './palettes.ts';

/** Colours with a meaning: live energy and the four signal words. */
const SIREN = ['live', 'livetint', 'onlive', 'danger', 'warning', 'caution', 'notice'];

/** How far a colour is from grey, 0 to 1: the largest of red, green and blue less the smallest. */
function chroma(hex: string): number {
  const channels = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  return Math.max(...channels) - Math.min(...channels);
}

test.each(NAMES.map((name, at) => ({ name, at })))(
  'only live energies and signal words have a strong colour, in $name (UI-23)',
  ({ at }) => {
    const strong = Object.entries(PALETTES[at] ?? {}).filter(([, hex]) => chroma(hex) > 0.08);
    expect(strong.map(([name]) => name).filter((name) => !SIREN.includes(name))).toEqual([]);
    expect(strong.length).toBeGreaterThanOrEqual(5);
  },
);

/** Tokens that lines of pictures are drawn with. */
function strokes(): readonly string[] {
  const drawing = read('assets/style/8-drawing.css');
  return [...drawing.matchAll(/stroke: var\(--(\w+)\)/g)].map((match) => match[1] ?? '');
}

test('lines of pictures are 3 to 1 on their sheet in each theme; fainter ones are ruling and say nothing (UI-48)', () => {
  expect(strokes()).toEqual(expect.arrayContaining(['ink', 'edge', 'live', 'hatch']));
  // The ground itself cuts a line out of a live face, where it stands on live.
  const saying = strokes().filter((name) => !['rule', 'faint', 'sheet', 'onlive'].includes(name));
  for (const colours of PALETTES)
    for (const name of saying)
      expect(contrast(colours[name] ?? '', colours.sheet ?? ''), name).toBeGreaterThanOrEqual(3);
});

test('a picture has one colour that is not a grey, so no two things in it differ by hue alone (UI-49)', () => {
  const coloured = strokes().filter((name) => PALETTES.some((colours) => chroma(colours[name] ?? '') > 0.08));
  expect([...new Set(coloured)].filter((name) => !['live', 'onlive', 'livetint'].includes(name))).toEqual([]);
});

test('a print is black, white and grey, its signal words in a box (UI-37, UI-44)', () => {
  const print = read('assets/style/9-print.css');
  const greys = [...print.matchAll(/#([0-9a-f]{3,6})\b/gi)].map((match) => match[1] ?? '');
  expect(greys.length).toBeGreaterThan(15);
  const spread = (hex: string) => new Set(hex.length === 3 ? hex : (hex.match(/../g) ?? [])).size;
  expect(greys.filter((hex) => spread(hex) > 1)).toEqual([]);
  const printed = declarations(print.slice(print.indexOf('--desk')), 0);
  for (const word of ['danger', 'warning', 'caution', 'notice'])
    expect([printed[word], printed[`on${word}`]]).toEqual(['#fff', '#000']);
});

test('nothing that belongs together is parted by the end of a printed page (UI-43)', () => {
  const print = read('assets/style/9-print.css');
  const selectorsOf = (rule: string) => {
    const at = print.indexOf(rule);
    expect(at, rule).toBeGreaterThan(-1);
    return print.slice(print.lastIndexOf('}', at) + 1, at);
  };
  for (const part of ['.signal', '.signature', '.card__head', 'tr'])
    expect(selectorsOf('{\n    break-inside: avoid;')).toContain(part);
  for (const part of ['.signal', 'h2', 'caption'])
    expect(selectorsOf('{\n    break-after: avoid;')).toContain(part);
});

test('an instruction is 20 minutes of arc high at 0.7 m, its capitals 4.07 mm (UI-25)', () => {
  const ground = read('assets/style/2-ground.css');
  const rem = Number(/\nh2 \{\n {2}font-size: ([\d.]+)rem/.exec(ground)?.[1]);
  // Height of a capital in the typeface, 668 of 1000: published, its OS/2 table. 96 CSS pixels to 25.4 mm.
  const capitalMm = rem * 16 * 0.668 * (25.4 / 96);
  const seenMinutes = (Math.atan(capitalMm / 700) * 180 * 60) / Math.PI;
  expect(seenMinutes).toBeGreaterThanOrEqual(20);
});
