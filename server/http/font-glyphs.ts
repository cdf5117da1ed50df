/** The outlines of a WOFF2 file, of which those that no page asks for are emptied. */

/** In the head of the table: how many glyphs, and the lengths of its parts. */
const AT = { glyphs: 4, lengths: 8, parts: 36 };
const PARTS = ['contours', 'points', 'flags', 'places', 'compounds', 'boxes', 'instructions'] as const;
type Parts = Readonly<Record<(typeof PARTS)[number], Part>>;

const BOX_BYTES = 8;
/** Of one piece of a compound glyph: what its flags say of the bytes behind them. */
const PIECE = { words: 1, scale: 8, more: 32, twoScales: 64, matrix: 128, instructed: 256 };

/** One part of the table, gone through from its first byte; what belongs to glyphs that stay is put aside. */
class Part {
  readonly bytes: Buffer;
  readonly #kept: Buffer[] = [];
  #from = 0;
  at = 0;

  constructor(bytes: Buffer) {
    this.bytes = bytes;
  }

  word(): number {
    this.at += 2;
    return this.bytes.readUInt16BE(this.at - 2);
  }

  byte(): number {
    this.at += 1;
    return this.bytes.readUInt8(this.at - 1);
  }

  /** One to three bytes, `255UInt16` of the format. */
  number(): number {
    const first = this.byte();
    if (first === 253) return this.word();
    if (first === 254) return this.byte() + 506;
    return first === 255 ? this.byte() + 253 : first;
  }

  /** Here ends what belongs to one glyph. */
  end(isKept: boolean): void {
    if (isKept) this.#kept.push(this.bytes.subarray(this.#from, this.at));
    this.#from = this.at;
  }

  get kept(): Buffer {
    return Buffer.concat(this.#kept);
  }
}

/**
 * The same table with nothing in the glyphs that are not kept; every glyph keeps its number. As W3C's WOFF File Format 2.0 has
 * it, section 5.1.
 *
 * @param kept numbers of glyphs; what they are put together of stays too, and is added to them
 * @throws TypeError where outlines carry instructions: nothing here reads them
 */
export function onlyGlyphs(table: Buffer, kept: Set<number>): Buffer {
  const many = table.readUInt16BE(AT.glyphs);
  const pieces = Array.from({ length: many }, () => [] as number[]);
  const once = partsOf(table);
  for (let glyph = 0; glyph < many; glyph += 1) pieces[glyph]?.push(...walk(once));
  for (const glyph of kept) for (const piece of pieces[glyph] ?? []) kept.add(piece);

  const parts = partsOf(table);
  const { contours, boxes } = parts;
  const shapes = Buffer.from(contours.bytes);
  const mask = Buffer.from(boxes.bytes.subarray(0, Math.ceil(many / 32) * 4));
  boxes.at = mask.length;
  boxes.end(false);
  for (let glyph = 0; glyph < many; glyph += 1) {
    const isKept = kept.has(glyph);
    const [byte, bit] = [glyph >> 3, 0x80 >> (glyph & 7)];
    const hasBox = (mask.readUInt8(byte) & bit) !== 0;
    walk(parts);
    if (hasBox) boxes.at += BOX_BYTES;
    for (const part of Object.values(parts)) part.end(isKept);
    if (isKept) continue;
    shapes.writeInt16BE(0, 2 * glyph);
    if (hasBox) mask.writeUInt8(mask.readUInt8(byte) & ~bit, byte);
  }
  return joined(table, { ...keptOf(parts), contours: shapes, boxes: Buffer.concat([mask, boxes.kept]) });
}

function partsOf(table: Buffer): Parts {
  let from = AT.parts;
  const parts = PARTS.map((name, nth) => {
    const part = new Part(table.subarray(from, from + table.readUInt32BE(AT.lengths + 4 * nth)));
    from += part.bytes.length;
    return [name, part] as const;
  });
  return Object.fromEntries(parts) as unknown as Parts;
}

/** Goes over one glyph in each part. @returns what it is put together of */
function walk({ contours, points, flags, places, compounds }: Parts): readonly number[] {
  const many = contours.word();
  if (many === 0) return [];
  if (many === 0xffff) return walkPieces(compounds);
  let count = 0;
  for (let contour = 0; contour < many; contour += 1) count += points.number();
  for (let point = 0; point < count; point += 1) places.at += placeBytes(flags.byte());
  if (places.number() !== 0) throw new TypeError('The outlines carry instructions.');
  return [];
}

/** How many bytes the place of a point takes, by its flag. */
function placeBytes(flag: number): number {
  const kind = flag & 127;
  if (kind < 84) return 1;
  if (kind < 120) return 2;
  return kind < 124 ? 3 : 4;
}

function walkPieces(compounds: Part): readonly number[] {
  const pieces: number[] = [];
  for (;;) {
    const flags = compounds.word();
    if (flags & PIECE.instructed) throw new TypeError('The outlines carry instructions.');
    pieces.push(compounds.word());
    compounds.at += flags & PIECE.words ? 4 : 2;
    if (flags & PIECE.scale) compounds.at += 2;
    else if (flags & PIECE.twoScales) compounds.at += 4;
    else if (flags & PIECE.matrix) compounds.at += 8;
    if (!(flags & PIECE.more)) return pieces;
  }
}

type Bytes = Readonly<Record<(typeof PARTS)[number], Buffer>>;

function keptOf(parts: Parts): Bytes {
  return Object.fromEntries(PARTS.map((name) => [name, parts[name].kept])) as unknown as Bytes;
}

function joined(table: Buffer, bytes: Bytes): Buffer {
  const head = Buffer.from(table.subarray(0, AT.parts));
  PARTS.forEach((name, nth) => {
    head.writeUInt32BE(bytes[name].length, AT.lengths + 4 * nth);
  });
  return Buffer.concat([head, ...PARTS.map((name) => bytes[name])]);
}
