/**
 * Of all that a camera writes into a photo, only which way is up is kept (CIPA DC-008, tag 274): place, time, owner and
 * the small picture inside are dropped with everything else.
 */

const ORIENTATION = 274;
const SHORT = 3;
const FIELDS_MAX = 1000;

/** 1 to 8; 1 for upright, and wherever nothing readable is said. */
export function orientationIn(tiff: Buffer): number {
  const order = tiff.toString('latin1', 0, 2);
  if (tiff.length < 14 || (order !== 'II' && order !== 'MM')) return 1;
  const isLittle = order === 'II';
  const u16 = (at: number) => (isLittle ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const u32 = (at: number) => (isLittle ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at));
  const directory = u32(4);
  if (u16(2) !== 42 || directory + 2 > tiff.length) return 1;
  const count = Math.min(u16(directory), FIELDS_MAX);
  for (let field = 0; field < count; field += 1) {
    const at = directory + 2 + 12 * field;
    if (at + 12 > tiff.length) return 1;
    if (u16(at) !== ORIENTATION || u16(at + 2) !== SHORT) continue;
    const value = u16(at + 8);
    return value >= 1 && value <= 8 ? value : 1;
  }
  return 1;
}

/** A directory of one field and nothing else, always the same bytes for the same value. */
export function orientationAlone(orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write('MM\0*', 0, 'latin1');
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(ORIENTATION, 10);
  tiff.writeUInt16BE(SHORT, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  return tiff;
}

/** From 5 on the picture lies on its side: as it is seen, width and height change places. */
export function asSeen(size: Size, orientation: number): Size {
  return orientation >= 5 ? { widthPx: size.heightPx, heightPx: size.widthPx } : size;
}

export interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}
