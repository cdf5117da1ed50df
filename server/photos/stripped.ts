import type { Size } from './exif.ts';

/** The picture alone. */
export interface Stripped extends Size {
  readonly bytes: Buffer;
  readonly orientation: number;
}
