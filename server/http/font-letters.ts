/** Which letters a page may ask for, and the table of a typeface that says which glyph each of them is. */

const between = (first: string, last: string): string =>
  Array.from({ length: last.charCodeAt(0) - first.charCodeAt(0) + 1 }, (_, nth) =>
    String.fromCharCode(first.charCodeAt(0) + nth),
  ).join('');

/**
 * What English and Spanish are written with, and the signs and units of the trade that the typeface has. A name with another
 * letter has that one in the stand-in, which is as wide.
 */
export const LETTERS = `${between(' ', '~')}\u00a0¡¿«»ªº°±²³·×½¼¾–—‘’“”…−µÁÉÍÓÚÑÜáéíóúñü`;

/** Platform and encoding of Unicode, as every browser looks it up. */
const UNICODE = [3, 1] as const;
const FORM = 4;
/** Of the table: its list, an entry of it, and in one of form 4 the parts in a row. */
const AT = { many: 2, list: 4, entryBytes: 8, twiceSegments: 6, ends: 14 };
/** Of `GSUB`: its lists of features and of lookups; the bytes of a feature in its list, and of what leads to a first lookup. */
const GSUB = { features: 6, lookups: 8, entryBytes: 6, nameBytes: 4, first: 4, subtable: 6 };
const LAST = 0xffff;

/** The glyph of each letter. @throws TypeError where they are listed in another form than 4 */
export function glyphsOfLetters(cmap: Buffer): ReadonlyMap<number, number> {
  const at = cmap.readUInt32BE(AT.list + 4);
  if (cmap.readUInt16BE(at) !== FORM) throw new TypeError('The letters are listed in another form.');
  const twice = cmap.readUInt16BE(at + AT.twiceSegments);
  const found = new Map<number, number>();
  for (let end = at + AT.ends; end < at + AT.ends + twice; end += 2) {
    const start = end + twice + 2;
    const [delta, offset] = [start + twice, start + 2 * twice];
    const first = cmap.readUInt16BE(start);
    const isListed = cmap.readUInt16BE(offset) !== 0;
    for (let letter = first; letter <= cmap.readUInt16BE(end) && letter < LAST; letter += 1) {
      const listed = offset + cmap.readUInt16BE(offset) + 2 * (letter - first);
      const glyph = isListed ? cmap.readUInt16BE(listed) : letter + cmap.readInt16BE(delta);
      found.set(letter, glyph & 0xffff);
    }
  }
  return found;
}

/** A table that says so of these letters and of no other, as ISO/IEC 14496-22 (Open Font Format) has it, chapter 5. */
export function tableOfLetters(glyphs: ReadonlyMap<number, number>): Buffer {
  const letters = [...glyphs.keys()].sort((a, b) => a - b);
  const runs: { readonly first: number; last: number }[] = [];
  for (const letter of letters) {
    const run = runs.at(-1);
    if (run?.last === letter - 1) run.last = letter;
    else runs.push({ first: letter, last: letter });
  }
  const many = runs.length + 1;
  const listAt = (nth: number): number => 2 * (many - nth) + 2 * letters.indexOf(runs[nth]?.first ?? LAST);
  const power = 2 ** Math.floor(Math.log2(many));
  const parts = [
    [0, 1, ...UNICODE, 0, AT.list + AT.entryBytes],
    [FORM, AT.ends + 2 + 8 * many + 2 * letters.length, 0],
    [2 * many, 2 * power, Math.log2(power), 2 * (many - power)],
    [...runs.map(({ last }) => last), LAST, 0],
    [...runs.map(({ first }) => first), LAST],
    [...runs.map(() => 0), 1],
    [...runs.map((_, nth) => listAt(nth)), 0],
    letters.map((letter) => glyphs.get(letter) ?? 0),
  ];
  return wordsOf(parts.flat());
}

/**
 * Which glyph stands in the place of each figure where all are to be equally wide, from `GSUB`.
 *
 * @throws TypeError where the typeface offers none, or in another form than one range moved by one number
 */
export function equalFigures(gsub: Buffer): (glyph: number) => number {
  const features = gsub.readUInt16BE(GSUB.features);
  const entry = Array.from(
    { length: gsub.readUInt16BE(features) },
    (_, nth) => features + 2 + nth * GSUB.entryBytes,
  ).find((at) => gsub.toString('latin1', at, at + GSUB.nameBytes) === 'tnum');
  if (entry === undefined) throw new TypeError('The typeface has no figures of one width.');
  const feature = features + gsub.readUInt16BE(entry + GSUB.nameBytes);
  const lookups = gsub.readUInt16BE(GSUB.lookups);
  const lookup = lookups + gsub.readUInt16BE(lookups + 2 + 2 * gsub.readUInt16BE(feature + GSUB.first));
  const moved = lookup + gsub.readUInt16BE(lookup + GSUB.subtable);
  const range = moved + gsub.readUInt16BE(moved + 2);
  const [form, rangeForm, ranges] = [
    gsub.readUInt16BE(moved),
    gsub.readUInt16BE(range),
    gsub.readUInt16BE(range + 2),
  ];
  if (form !== 1 || rangeForm !== 2 || ranges !== 1)
    throw new TypeError('The figures of one width are listed in another form.');
  const [first, last, by] = [
    gsub.readUInt16BE(range + 4),
    gsub.readUInt16BE(range + 6),
    gsub.readInt16BE(moved + 4),
  ];
  return (glyph) => (glyph >= first && glyph <= last ? glyph + by : glyph);
}

function wordsOf(words: readonly number[]): Buffer {
  const bytes = Buffer.alloc(2 * words.length);
  words.forEach((word, nth) => {
    bytes.writeUInt16BE(word, 2 * nth);
  });
  return bytes;
}
