/** A typeface in fewer bytes: what a page never asks of it is left out, letters and figures stay as they are. */
import { brotliCompressSync, brotliDecompressSync, constants } from 'node:zlib';
import { onlyGlyphs } from './font-glyphs.ts';
import { equalFigures, glyphsOfLetters, LETTERS, tableOfLetters } from './font-letters.ts';

/** Where the number of tables and the two sums of lengths stand in the head of a WOFF2 file. */
const AT = { lengthBytes: 8, tables: 12, sfntBytes: 16, packedBytes: 20, directory: 48 };
/** Numbers of the tables that have one, as the format counts them; 63 says that four letters follow. */
const KNOWN = {
  cmap: 0,
  hmtx: 3,
  name: 5,
  post: 7,
  glyf: 10,
  loca: 11,
  GDEF: 26,
  GPOS: 27,
  GSUB: 28,
  named: 63,
};

/** A table of names with none in it, and the head of `post` in the form that names no glyph. */
const NO_NAMES = Buffer.from([0, 0, 0, 0, 0, 6]);
const POST_BYTES = 32;
const POST_WITHOUT_NAMES = 0x0003_0000;
/** What is drawn for a letter that a typeface does not have. */
const MISSING_GLYPH = 0;
/** Where letters stand to each other, and which of their glyphs are marks: the one is read with the other. */
const OF_PLACES: readonly number[] = [KNOWN.GPOS, KNOWN.GDEF];

interface Table {
  readonly known: number;
  /** Number, letters and lengths, as they stand in the directory. */
  readonly entry: Buffer;
  readonly bytes: Buffer;
}

/** In `GPOS`: where the offset of its list of lookups stands, and the kinds that put a loose mark above or below a letter. */
const LOOKUPS_AT = 8;
const OF_MARKS: readonly number[] = [4, 5, 6];
const OF_PAIRS = 2;
const LOOKUP_HEAD_BYTES = 6;
/** A pair whose first letter alone moves, and only along the line. */
const ONE_ADVANCE = 0x0004_0000;
/** Pairs close up to the hundredth of the size: a tenth of a pixel at most is lost in letters of 24. */
const KERNED_TO = 10;

/**
 * The same typeface with the letters that pages ask for and no others, figures in one width, without the names of its glyphs and
 * without what it says of itself (its licence is served beside it), with pairs closed up to the hundredth, without the places of
 * loose accents, since letters with accents are glyphs of their own, and packed again as tightly as can be. As W3C's WOFF File
 * Format 2.0 has it, sections 4 and 5.
 *
 * @param isKerned false leaves out how pairs of letters close up, a sixth of all bytes
 * @throws TypeError where it is no WOFF2 file, or one that was made otherwise than those that are served
 */
export function compactFont(font: Uint8Array, isKerned = true): Buffer {
  const file = Buffer.from(font);
  if (file.toString('latin1', 0, 4) !== 'wOF2') throw new TypeError('This is no WOFF2 file.');
  const tables = withFewLetters(tablesOf(file))
    .filter(({ known }) => isKerned || !OF_PLACES.includes(known))
    .map(shortened);
  const entries = Buffer.concat(tables.map(({ entry }) => entry));
  const data = Buffer.concat(tables.map(({ bytes }) => bytes));
  const packed = brotliCompressSync(data, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
      [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_FONT,
      [constants.BROTLI_PARAM_SIZE_HINT]: data.length,
    },
  });
  const head = Buffer.from(file.subarray(0, AT.directory));
  const bytes = AT.directory + entries.length + packed.length;
  const padding = Buffer.alloc((4 - (bytes % 4)) % 4);
  head.writeUInt32BE(bytes + padding.length, AT.lengthBytes);
  head.writeUInt16BE(tables.length, AT.tables);
  head.writeUInt32BE(12 + tables.length * 16 + data.length, AT.sfntBytes);
  head.writeUInt32BE(packed.length, AT.packedBytes);
  return Buffer.concat([head, entries, packed, padding]);
}

/** Those of the letters that pages ask for; one packed before has no other figures and stays as it is. */
function withFewLetters(tables: readonly Table[]): readonly Table[] {
  const bytesOf = (wanted: number) => tables.find(({ known }) => known === wanted)?.bytes ?? Buffer.alloc(0);
  const substitutes = bytesOf(KNOWN.GSUB);
  if (substitutes.length === 0) return tables;
  const figure = equalFigures(substitutes);
  const all = glyphsOfLetters(bytesOf(KNOWN.cmap));
  const letters = new Map(
    [...all]
      .filter(([letter]) => LETTERS.includes(String.fromCharCode(letter)))
      .map(([letter, glyph]) => [letter, figure(glyph)]),
  );
  const kept = new Set([MISSING_GLYPH, ...letters.values()]);
  const outlines = onlyGlyphs(bytesOf(KNOWN.glyf), kept);
  return tables
    .filter(({ known }) => known !== KNOWN.GSUB)
    .map((table) => {
      if (table.known === KNOWN.cmap) return plainTable(KNOWN.cmap, tableOfLetters(letters));
      if (table.known === KNOWN.hmtx) return { ...table, bytes: withoutWidths(table.bytes, kept) };
      return table.known === KNOWN.glyf
        ? { ...table, entry: packedEntry(table, outlines.length), bytes: outlines }
        : table;
    });
}

/** Widths, two words a glyph, none for those that are not kept. */
function withoutWidths(widths: Buffer, kept: ReadonlySet<number>): Buffer {
  const fewer = Buffer.from(widths);
  for (let at = 0; at < fewer.length; at += 4) if (!kept.has(at / 4)) fewer.fill(0, at, at + 4);
  return fewer;
}

function tablesOf(file: Buffer): readonly Table[] {
  const found: { known: number; entry: Buffer; length: number }[] = [];
  let at = AT.directory;
  for (let left = file.readUInt16BE(AT.tables); left > 0; left -= 1) {
    const from = at;
    const flags = file.readUInt8(at);
    const known = flags & 63;
    at += known === KNOWN.named ? 5 : 1;
    const plain = numberAt(file, at);
    // Letters and their places are always packed in another form, the rest where its flag says so.
    const isPacked = known === KNOWN.glyf || known === KNOWN.loca ? flags >> 6 === 0 : flags >> 6 !== 0;
    const last = isPacked ? numberAt(file, plain.next) : plain;
    at = last.next;
    found.push({ known, entry: file.subarray(from, at), length: last.value });
  }
  const data = brotliDecompressSync(file.subarray(at, at + file.readUInt32BE(AT.packedBytes)));
  let start = 0;
  return found.map(({ known, entry, length }) => {
    const bytes = data.subarray(start, start + length);
    start += length;
    return { known, entry, bytes };
  });
}

function shortened(table: Table): Table {
  if (table.known === KNOWN.name) return plainTable(KNOWN.name, NO_NAMES);
  if (table.known === KNOWN.GPOS) return { ...table, bytes: coarselyKerned(withoutMarks(table.bytes)) };
  if (table.known !== KNOWN.post) return table;
  const bytes = Buffer.from(table.bytes.subarray(0, POST_BYTES));
  bytes.writeUInt32BE(POST_WITHOUT_NAMES, 0);
  return plainTable(KNOWN.post, bytes);
}

/**
 * The table of places as long as it was, with nothing in its lookups of marks: what is blank packs to nothing. A lookup reaches
 * only what stands behind it, so that all before the first other lookup is theirs alone. As ISO/IEC 14496-22 (Open Font Format)
 * has it, chapter 6.
 */
function withoutMarks(places: Buffer): Buffer {
  const list = places.readUInt16BE(LOOKUPS_AT);
  const lookups = offsetsAt(places, list, list);
  const ofMarks = lookups.filter((at) => OF_MARKS.includes(places.readUInt16BE(at)));
  const end = Math.min(places.length, ...lookups.filter((at) => !ofMarks.includes(at)));
  const blank = Buffer.from(places);
  for (const at of ofMarks.filter((one) => one < end)) {
    const next = Math.min(end, ...lookups.filter((other) => other > at));
    // Kind and flags stay, the count of its parts is none.
    blank.fill(0, at + LOOKUP_HEAD_BYTES - 2, next);
  }
  return blank;
}

/** The same pairs in fewer different steps. The typeface counts 1,000 to the size. */
function coarselyKerned(places: Buffer): Buffer {
  const rounded = Buffer.from(places);
  const round = (at: number) =>
    rounded.writeInt16BE(Math.round(places.readInt16BE(at) / KERNED_TO) * KERNED_TO, at);
  const list = places.readUInt16BE(LOOKUPS_AT);
  for (const lookup of offsetsAt(places, list, list))
    if (places.readUInt16BE(lookup) === OF_PAIRS)
      for (const pairs of offsetsAt(places, lookup + LOOKUP_HEAD_BYTES - 2, lookup))
        valuesOf(places, pairs).forEach(round);
  return rounded;
}

/** Where the values of one table of pairs stand: by letters, or by kinds of letters. */
function valuesOf(places: Buffer, at: number): readonly number[] {
  if (places.readUInt32BE(at + 4) !== ONE_ADVANCE) return [];
  const byKinds = places.readUInt16BE(at) === 2;
  if (byKinds) {
    const many = places.readUInt16BE(at + 12) * places.readUInt16BE(at + 14);
    return Array.from({ length: many }, (_, nth) => at + 16 + 2 * nth);
  }
  return [...new Set(offsetsAt(places, at + 8, at))].flatMap((set) =>
    Array.from({ length: places.readUInt16BE(set) }, (_, nth) => set + 4 + 4 * nth),
  );
}

/** A count and so many offsets, as places from the start of the table. */
function offsetsAt(places: Buffer, at: number, from: number): readonly number[] {
  return Array.from(
    { length: places.readUInt16BE(at) },
    (_, nth) => from + places.readUInt16BE(at + 2 + 2 * nth),
  );
}

function plainTable(known: number, bytes: Buffer): Table {
  return { known, entry: Buffer.concat([Buffer.from([known]), packedNumber(bytes.length)]), bytes };
}

/** What the directory says of a packed table: its flags, its length unpacked, which is not less than before, and as it is. */
function packedEntry({ entry }: Table, length: number): Buffer {
  const unpacked = numberAt(entry, 1);
  return Buffer.concat([entry.subarray(0, unpacked.next), packedNumber(length)]);
}

/** The shortest form of a number, as `numberAt` reads it. */
function packedNumber(value: number): Buffer {
  const bytes = [value & 127];
  for (let rest = value >> 7; rest > 0; rest >>= 7) bytes.unshift((rest & 127) | 128);
  return Buffer.from(bytes);
}

/** Seven bits a byte, the highest bit says that more follow. */
function numberAt(file: Buffer, from: number): { readonly value: number; readonly next: number } {
  let value = 0;
  let at = from;
  for (;;) {
    const byte = file.readUInt8(at);
    value = value * 128 + (byte & 127);
    at += 1;
    if (byte < 128) return { value, next: at };
  }
}
