/** Small true pictures, made by a general image library, and such as are put together here byte by byte. */
import { readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import { crc32 } from '../../../server/photos/crc32.ts';
import { PNG_SIGNATURE } from '../../../server/photos/kind.ts';

/** @example fixture('camera.jpg') */
export function fixture(name: string): Buffer {
  return readFileSync(new URL(`fixtures/${name}`, import.meta.url));
}

export function pngChunk(type: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

export interface PngOf {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly interlaced?: boolean;
  /** Unpacked rows; by default all of a grey picture of one byte a pixel. */
  readonly rows?: Uint8Array;
  readonly packed?: Uint8Array;
  readonly before?: readonly Buffer[];
}

/** Grey, 8 bits. */
export function png({ widthPx, heightPx, interlaced = false, rows, packed, before = [] }: PngOf): Buffer {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(widthPx, 0);
  head.writeUInt32BE(heightPx, 4);
  head.set([8, 0, 0, 0, interlaced ? 1 : 0], 8);
  const data = packed ?? deflateSync(rows ?? Buffer.alloc((widthPx + 1) * heightPx));
  const chunks = [
    pngChunk('IHDR', head),
    ...before,
    pngChunk('IDAT', data),
    pngChunk('IEND', Buffer.alloc(0)),
  ];
  return Buffer.concat([PNG_SIGNATURE, ...chunks]);
}

/** The first frame header of a JPEG says another size. */
export function withSize(
  jpeg: Buffer,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
): Buffer {
  const changed = Buffer.from(jpeg);
  const frame = changed.indexOf(Buffer.of(0xff, 0xc0));
  changed.writeUInt16BE(heightPx, frame + 5);
  changed.writeUInt16BE(widthPx, frame + 7);
  return changed;
}

export function joined(...parts: readonly (Uint8Array | string)[]): Buffer {
  return Buffer.concat(parts.map((part) => (typeof part === 'string' ? Buffer.from(part, 'latin1') : part)));
}
