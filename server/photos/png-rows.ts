/** The packed rows of a PNG, counted as they are unpacked, so that no picture unpacks to more than its head says. */
import { Readable } from 'node:stream';
import { createInflate } from 'node:zlib';
import type { Size } from './exif.ts';
import { broken } from './refusals.ts';

/** First pixel and step, across and down, of the seven passes of an interlaced picture (ISO/IEC 15948, 8.2). */
const PASSES: readonly (readonly [number, number, number, number])[] = [
  [0, 8, 0, 8],
  [4, 8, 0, 8],
  [0, 4, 4, 8],
  [2, 4, 0, 4],
  [0, 2, 2, 4],
  [1, 2, 0, 2],
  [0, 1, 1, 2],
];
const FILTERS_MAX = 4;

export interface Packed extends Size {
  readonly bitsPerPixel: number;
  readonly isInterlaced: boolean;
}

interface Pass {
  readonly rows: number;
  /** With the byte before it that names its filter. */
  readonly rowBytes: number;
}

/** @throws Refusal PHO-005 where a row is missing, or more comes than the picture has */
export async function requireWholeRows(parts: readonly Buffer[], packed: Packed): Promise<void> {
  const passes = passesOf(packed);
  const expected = passes.reduce((sum, { rows, rowBytes }) => sum + rows * rowBytes, 0);
  const filters = new Filters(passes);
  const inflate = createInflate();
  let count = 0;
  try {
    for await (const piece of Readable.from(parts).pipe(inflate) as AsyncIterable<Buffer>) {
      count += piece.length;
      if (count > expected) throw broken('it unpacks to more than it says');
      filters.take(piece);
    }
  } catch (error) {
    throw error instanceof Error && 'code' in error ? broken('it cannot be unpacked') : error;
  } finally {
    inflate.destroy();
  }
  if (count < expected) throw broken('rows of the picture are missing');
  const length = parts.reduce((sum, part) => sum + part.length, 0);
  if (inflate.bytesWritten !== length) throw broken('something else stands among its rows');
}

function passesOf({ widthPx, heightPx, bitsPerPixel, isInterlaced }: Packed): readonly Pass[] {
  const pass = (width: number, rows: number): Pass => ({
    rows: width === 0 ? 0 : rows,
    rowBytes: 1 + Math.ceil((width * bitsPerPixel) / 8),
  });
  if (!isInterlaced) return [pass(widthPx, heightPx)];
  const along = (length: number, first: number, step: number) =>
    Math.max(0, Math.ceil((length - first) / step));
  return PASSES.map(([x, stepX, y, stepY]) => pass(along(widthPx, x, stepX), along(heightPx, y, stepY)));
}

/** Looks at the first byte of each row, however the rows come in pieces. */
class Filters {
  readonly #passes: Pass[];
  #left: number;
  #untilNext = 0;

  constructor(passes: readonly Pass[]) {
    this.#passes = passes.filter(({ rows }) => rows > 0);
    this.#left = this.#passes[0]?.rows ?? 0;
  }

  take(piece: Buffer): void {
    let at = this.#untilNext;
    while (at < piece.length) {
      if ((piece[at] ?? 0) > FILTERS_MAX) throw broken('a row of it is filtered in an unknown way');
      at += this.#nextRow();
    }
    this.#untilNext = at - piece.length;
  }

  #nextRow(): number {
    const bytes = this.#passes[0]?.rowBytes ?? Number.POSITIVE_INFINITY;
    this.#left -= 1;
    if (this.#left <= 0) {
      this.#passes.shift();
      this.#left = this.#passes[0]?.rows ?? 0;
    }
    return bytes;
  }
}
