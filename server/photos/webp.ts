/** WebP (RFC 9649), read chunk by chunk: one still picture, lossy or lossless, and its transparency. */
import { orientationAlone, orientationIn, type Size } from './exif.ts';
import { broken, moreBehind, notTaken } from './refusals.ts';
import { requireSize } from './require-size.ts';
import type { Stripped } from './stripped.ts';

const FLAGS = { alpha: 0x10, exif: 0x08, animated: 0x02 } as const;
const EXTENDED_BYTES = 10;

interface Chunk {
  readonly type: string;
  readonly data: Buffer;
}

/** @throws Refusal PHO-004 to PHO-007 */
export function readWebp(bytes: Buffer): Stripped {
  const chunks = chunksOf(bytes);
  const pictures = chunks.filter(({ type }) => type === 'VP8 ' || type === 'VP8L');
  if (chunks.some(({ type }) => type === 'ANIM' || type === 'ANMF')) throw notTaken('a moving picture');
  const [picture, ...more] = pictures;
  if (picture === undefined || more.length > 0) throw broken('it does not hold one picture');
  const size = picture.type === 'VP8 ' ? lossySize(picture.data) : losslessSize(picture.data);
  if (size.widthPx === 0 || size.heightPx === 0) throw broken('it has no size');
  requireSize(size);
  if (chunks[0]?.type === picture.type) return { ...size, bytes: webp([picture]), orientation: 1 };
  return extended(chunks, { picture, size });
}

/** Other parts are dropped; which way is up is written anew. */
function extended(
  chunks: readonly Chunk[],
  { picture, size }: { readonly picture: Chunk; readonly size: Size },
): Stripped {
  const [head] = chunks;
  if (head?.type !== 'VP8X' || head.data.length !== EXTENDED_BYTES)
    throw broken('it does not begin as a WebP');
  const flags = head.data[0] ?? 0;
  if ((flags & FLAGS.animated) !== 0) throw notTaken('a moving picture');
  const canvas = { widthPx: head.data.readUIntLE(4, 3) + 1, heightPx: head.data.readUIntLE(7, 3) + 1 };
  if (canvas.widthPx !== size.widthPx || canvas.heightPx !== size.heightPx) throw broken('it says two sizes');
  const exif = chunks.find(({ type }) => type === 'EXIF');
  const orientation = exif === undefined ? 1 : orientationIn(withoutMark(exif.data));
  const alpha = chunks.filter(({ type }) => type === 'ALPH' && picture.type === 'VP8 ').slice(0, 1);
  const data = Buffer.from(head.data);
  data[0] = (flags & FLAGS.alpha) | (orientation === 1 ? 0 : FLAGS.exif);
  data.fill(0, 1, 4);
  const turned = orientation === 1 ? [] : [{ type: 'EXIF', data: orientationAlone(orientation) }];
  return {
    ...size,
    bytes: webp([{ type: 'VP8X', data }, ...alpha, picture, ...turned]),
    orientation,
  };
}

/** Some programs write the mark that JPEG has before it. */
function withoutMark(data: Buffer): Buffer {
  return data.toString('latin1', 0, 6) === 'Exif\0\0' ? data.subarray(6) : data;
}

function chunksOf(bytes: Buffer): readonly Chunk[] {
  const whole = 8 + bytes.readUInt32LE(4);
  if (whole > bytes.length) throw broken('it ends too early');
  if (whole + (whole % 2) < bytes.length) throw moreBehind(bytes.length - whole);
  const chunks: Chunk[] = [];
  for (let at = 12; at < whole; ) {
    if (at + 8 > whole) throw broken('it ends too early');
    const length = bytes.readUInt32LE(at + 4);
    const end = at + 8 + length;
    if (end > whole) throw broken('it ends too early');
    chunks.push({ type: bytes.toString('latin1', at, at + 4), data: bytes.subarray(at + 8, end) });
    at = end + (length % 2);
  }
  return chunks;
}

/** RFC 6386, 9.1: a key frame, its start code, 14 bits for each side. */
function lossySize(data: Buffer): Size {
  if (data.length < 10) throw broken('it ends too early');
  const tag = data.readUIntLE(0, 3);
  const isKeyFrame = (tag & 1) === 0 && data.readUIntBE(3, 3) === 0x9d012a;
  if (!isKeyFrame || 10 + (tag >> 5) > data.length) throw broken('its picture is not whole');
  return { widthPx: data.readUInt16LE(6) & 0x3fff, heightPx: data.readUInt16LE(8) & 0x3fff };
}

/** RFC 9649, 3.4: a signature, 14 bits for each side less one, a version of 0. */
function losslessSize(data: Buffer): Size {
  if (data.length < 6) throw broken('it ends too early');
  const bits = data.readUInt32LE(1);
  if (data[0] !== 0x2f || bits >>> 29 !== 0) throw broken('its picture is not whole');
  return { widthPx: (bits & 0x3fff) + 1, heightPx: ((bits >>> 14) & 0x3fff) + 1 };
}

function webp(chunks: readonly Chunk[]): Buffer {
  const body = chunks.flatMap(({ type, data }) => {
    const head = Buffer.alloc(8);
    head.write(type, 0, 'latin1');
    head.writeUInt32LE(data.length, 4);
    return [head, data, Buffer.alloc(data.length % 2)];
  });
  const riff = Buffer.from('RIFF\0\0\0\0WEBP', 'latin1');
  riff.writeUInt32LE(
    body.reduce((sum, part) => sum + part.length, 4),
    4,
  );
  return Buffer.concat([riff, ...body]);
}
