/** Reads what came as a photo by its structure, from the first byte to the last, and writes it anew without anything but the picture. */
import { blobHash } from '../log/blobs.ts';
import { asSeen, type Size } from './exif.ts';
import { readJpeg } from './jpeg.ts';
import { type PhotoType, typeOf } from './kind.ts';
import { readPng } from './png.ts';
import { notAPhoto, PHOTO_BYTES_MAX, tooManyBytes } from './refusals.ts';
import type { Stripped } from './stripped.ts';
import { readWebp } from './webp.ts';

export interface CleanPhoto extends Size {
  readonly type: PhotoType;
  readonly hash: string;
  readonly bytes: Uint8Array;
}

/**
 * A photo without its metadata, turned as it is seen, under the hash of what is left.
 * @throws Refusal PHO-002 to PHO-007
 */
export async function cleanPhoto(given: Uint8Array): Promise<CleanPhoto> {
  if (given.length > PHOTO_BYTES_MAX) throw tooManyBytes();
  const type = typeOf(given);
  if (type === null) throw notAPhoto();
  const bytes = Buffer.from(given.buffer, given.byteOffset, given.byteLength);
  const { orientation, ...read } = await READ[type](bytes);
  return { type, hash: blobHash(read.bytes), bytes: read.bytes, ...asSeen(read, orientation) };
}

const READ: Readonly<Record<PhotoType, (bytes: Buffer) => Stripped | Promise<Stripped>>> = {
  jpeg: readJpeg,
  png: readPng,
  webp: readWebp,
};
