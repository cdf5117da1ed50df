import type { Size } from './exif.ts';
import { PHOTO_PIXELS_MAX, PHOTO_SIDE_MAX, tooManyPixels } from './refusals.ts';

/** Asked as soon as a header says its size, before anything is unpacked. @throws Refusal PHO-004 */
export function requireSize(size: Size): void {
  const { widthPx, heightPx } = size;
  const isBounded = Math.max(widthPx, heightPx) <= PHOTO_SIDE_MAX && widthPx * heightPx <= PHOTO_PIXELS_MAX;
  if (!isBounded) throw tooManyPixels(size);
}
