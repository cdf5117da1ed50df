import type { BlobFault } from './blobs.ts';

/** Names each photo that is not whole, and has the command end as one that went wrong. */
export function sayPhotos(photos: readonly BlobFault[]): void {
  for (const { seq, stream, place, hash, what } of photos)
    console.error(`PHOTO: of entry ${seq} (${stream}, place ${place}), SHA-256 ${hash}, ${what}.`);
  if (photos.length > 0) process.exitCode = 1;
}
