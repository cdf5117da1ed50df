/** PNG (ISO/IEC 15948), read chunk by chunk with its sums, and unpacked once to see that all of the picture is there. */
import { crc32 } from './crc32.ts';
import { orientationAlone, orientationIn, type Size } from './exif.ts';
import { PNG_SIGNATURE, typeOf } from './kind.ts';
import { requireWholeRows } from './png-rows.ts';
import { broken, moreBehind } from './refusals.ts';
import { requireSize } from './require-size.ts';
import type { Stripped } from './stripped.ts';

/** Chunks that the picture cannot be drawn without, and how light its numbers are. */
const KEPT: readonly string[] = ['IHDR', 'PLTE', 'tRNS', 'IDAT', 'gAMA', 'sRGB'];
/** Bits a sample that each colour type may have. */
const DEPTHS: Readonly<Record<number, readonly number[]>> = {
  0: [1, 2, 4, 8, 16],
  2: [8, 16],
  3: [1, 2, 4, 8],
  4: [8, 16],
  6: [8, 16],
};
const SAMPLES: Readonly<Record<number, number>> = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 };

export interface PngHead extends Size {
  readonly bitsPerPixel: number;
  readonly isInterlaced: boolean;
  readonly colour: number;
}

interface Chunk {
  readonly type: string;
  readonly data: Buffer;
  readonly whole: Buffer;
}

/** @throws Refusal PHO-004, PHO-005, PHO-007 */
export async function readPng(bytes: Buffer): Promise<Stripped> {
  const chunks = chunksOf(bytes);
  const [first, ...others] = chunks;
  if (first?.type !== 'IHDR' || others.some(({ type }) => type === 'IHDR'))
    throw broken('it does not begin as a PNG');
  const head = headOf(first.data);
  requireSize(head);
  requireOrder(chunks, head);
  await requireWholeRows(
    chunks.filter(({ type }) => type === 'IDAT').map(({ data }) => data),
    head,
  );
  const exif = chunks.find(({ type }) => type === 'eXIf');
  const orientation = exif === undefined ? 1 : orientationIn(exif.data);
  const kept = others.filter(({ type }) => KEPT.includes(type)).map(({ whole }) => whole);
  const turned = orientation === 1 ? [] : [chunk('eXIf', orientationAlone(orientation))];
  return {
    bytes: Buffer.concat([PNG_SIGNATURE, first.whole, ...turned, ...kept, chunk('IEND', Buffer.alloc(0))]),
    orientation,
    widthPx: head.widthPx,
    heightPx: head.heightPx,
  };
}

function chunksOf(bytes: Buffer): readonly Chunk[] {
  const chunks: Chunk[] = [];
  for (let at = 8; ; ) {
    if (at + 12 > bytes.length) throw broken('it ends too early');
    const end = at + 12 + bytes.readUInt32BE(at);
    if (end > bytes.length) throw broken('it ends too early');
    const type = bytes.toString('latin1', at + 4, at + 8);
    if (!/^[A-Za-z]{4}$/.test(type)) throw broken('a part of it has no name');
    if (crc32(bytes.subarray(at + 4, end - 4)) !== bytes.readUInt32BE(end - 4))
      throw broken(`a sum in it is wrong, at ${type}`);
    chunks.push({ type, data: bytes.subarray(at + 8, end - 4), whole: bytes.subarray(at, end) });
    at = end;
    if (type !== 'IEND') continue;
    if (at < bytes.length) throw moreBehind(bytes.length - at);
    return chunks;
  }
}

function headOf(data: Buffer): PngHead {
  const [depth = 0, colour = -1, packing = -1, filter = -1, interlace = -1] = data.subarray(8);
  const isKnown = data.length === 13 && packing === 0 && filter === 0 && (interlace === 0 || interlace === 1);
  if (!isKnown || !DEPTHS[colour]?.includes(depth)) throw broken('its head is not that of a PNG');
  const size = { widthPx: data.readUInt32BE(0), heightPx: data.readUInt32BE(4) };
  if (size.widthPx === 0 || size.heightPx === 0) throw broken('it has no size');
  return { ...size, bitsPerPixel: depth * (SAMPLES[colour] ?? 0), isInterlaced: interlace === 1, colour };
}

/** The parts of the picture stand in one run, its palette before them; a part that must be understood is known. */
function requireOrder(chunks: readonly Chunk[], { colour }: PngHead): void {
  const types = chunks.map(({ type }) => type);
  const unknown = types.find(
    (type) => /^[A-Z]/.test(type) && !['IHDR', 'PLTE', 'IDAT', 'IEND'].includes(type),
  );
  if (unknown !== undefined) throw broken(`it has a part of a kind unknown here, ${unknown}`);
  const [first, last] = [types.indexOf('IDAT'), types.lastIndexOf('IDAT')];
  if (first < 0) throw broken('there is no picture in it');
  if (types.slice(first, last).some((type) => type !== 'IDAT'))
    throw broken('its picture is not in one piece');
  const palettes = chunks.filter(({ type }) => type === 'PLTE');
  const isRight = palettes.every(
    ({ data }) => data.length > 0 && data.length % 3 === 0 && data.length <= 768,
  );
  const isPlaced = types.indexOf('PLTE') < first && palettes.length <= 1;
  if (!isRight || !isPlaced || (colour === 3 && palettes.length === 0))
    throw broken('its palette is not right');
}

function chunk(type: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

/** Whether one of ours lies otherwise than it is seen: what knows nothing of that would show it on its side. */
export function isTurnedPng(bytes: Uint8Array): boolean {
  const after = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1', 37, 41);
  return typeOf(bytes) === 'png' && after === 'eXIf';
}
