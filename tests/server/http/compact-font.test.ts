import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { compactFont } from '../../../server/http/compact-font.ts';
import { equalFigures, glyphsOfLetters, LETTERS, tableOfLetters } from '../../../server/http/font-letters.ts';
import { ASSET_FILES } from '../../../views/assets.ts';
import { es } from '../../../views/language/es.ts';

const FONTS = Object.values(ASSET_FILES).flatMap((source) =>
  'module' in source && source.type === 'font/woff2' ? [source.module] : [],
);
const bytesOf = (module: string) => readFileSync(createRequire(import.meta.url).resolve(module));

/** Where the head of a WOFF2 file says how long it is, how many tables it has, and how long they are packed. */
const saysOf = (font: Buffer) => ({
  bytes: font.readUInt32BE(8),
  tables: font.readUInt16BE(12),
  sfntBytes: font.readUInt32BE(16),
});

test('the letters are served in half the bytes, without the table of other glyphs for them, and the file says rightly how long it is', () => {
  expect(FONTS).toHaveLength(2);
  for (const module of FONTS) {
    const before = bytesOf(module);
    const after = compactFont(before);
    expect(after.length).toBeLessThan(before.length * 0.7);
    expect(after.length % 4).toBe(0);
    expect(saysOf(after).bytes).toBe(after.length);
    expect(saysOf(after).tables).toBe(saysOf(before).tables - 1);
    expect(saysOf(after).sfntBytes).toBeLessThan(saysOf(before).sfntBytes);
  }
});

test('without kerning they are a quarter shorter, with two tables less', () => {
  for (const module of FONTS) {
    const [kerned, plain] = [compactFont(bytesOf(module)), compactFont(bytesOf(module), false)];
    expect(plain.length).toBeLessThan(kerned.length * 0.76);
    expect(saysOf(plain)).toEqual({
      ...saysOf(plain),
      bytes: plain.length,
      tables: saysOf(kerned).tables - 2,
    });
  }
});

test('packed a second time they are the same', () => {
  for (const module of FONTS) {
    const once = compactFont(bytesOf(module));
    expect(compactFont(once).equals(once)).toBe(true);
  }
});

test('what is no such file is refused, and not served as one', () => {
  expect(() => compactFont(Buffer.from('wOFF and something else'))).toThrow(TypeError);
});

test('kerning stays, to the hundredth of the size, and the places of loose accents go', () => {
  for (const module of FONTS) {
    const plain = compactFont(bytesOf(module), false);
    const kerned = compactFont(bytesOf(module));
    // Kerning as it came is some 2,400 bytes of it, to the hundredth 2,100; the marks were 500.
    expect(kerned.length - plain.length).toBeGreaterThan(1800);
    expect(kerned.length - plain.length).toBeLessThan(2300);
    expect(bytesOf(module).length - kerned.length).toBeGreaterThan(1200);
  }
});

test('every letter and sign of the texts of the pages, in both languages, is kept if the typeface has it', () => {
  /** Signs of equations and the marks of feet and inches: no glyph of the typeface, before or after. */
  const drawnByOthers = 'ΓΔΣΦΩγζμνπρτ√∓≤≥″⁴⁵⁷⁻₂⅛⅜⅝⅞';
  const texts = Object.entries(es).flat().join('');
  const notKept = new Set(
    [...texts].filter((letter) => !LETTERS.includes(letter) && !drawnByOthers.includes(letter)),
  );
  expect([...notKept]).toEqual([]);
});

test('a typeface without figures of one width, or with letters in another list, is refused', () => {
  expect(() => equalFigures(Buffer.alloc(40))).toThrow(TypeError);
  expect(() => glyphsOfLetters(Buffer.from([0, 0, 0, 1, 0, 3, 0, 1, 0, 0, 0, 12, 0, 12]))).toThrow(TypeError);
});

test('a list of letters says the same of each when it is read again, and knows no other', () => {
  const glyphs = new Map([
    [0x41, 7],
    [0x42, 3],
    [0x43, 9],
    [0x61, 12],
    [0xf1, 5],
  ]);
  expect(glyphsOfLetters(tableOfLetters(glyphs))).toEqual(glyphs);
});
