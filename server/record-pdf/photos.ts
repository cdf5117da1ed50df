import type { JobRecord } from '../jobs/record/schema.ts';
import type { Paper } from './paper.ts';

type Photo = JobRecord['photos'][number];

/** A document takes JPEG as it is; a PNG is unpacked for it, so that only a small one is printed. */
const PNG_PIXELS_MAX = 8_000_000;
/** Points of a heading with a row of photos below it. */
const PHOTO_ROOM = 300;

/** Whether the document can show it; what it cannot is named with its hash. */
export function isPrintable({ type, widthPx, heightPx }: Photo): boolean {
  return type === 'jpeg' || (type === 'png' && widthPx * heightPx <= PNG_PIXELS_MAX);
}

/** Two side by side, each with what stands below it. */
export function photoPages(
  paper: Paper,
  of: { readonly photos: readonly Photo[]; readonly bytes: ReadonlyMap<number, Uint8Array> },
): void {
  if (of.photos.length === 0) return;
  paper.room(PHOTO_ROOM);
  paper.heading('Photos');
  const shown = of.photos.map((photo) => ({
    image: of.bytes.get(photo.place) ?? null,
    title: titleOf(photo),
    text: [of.bytes.has(photo.place) ? '' : 'Not printed: see the page of this record.', detailsOf(photo)]
      .filter((text) => text !== '')
      .join(' '),
  }));
  for (let at = 0; at < shown.length; at += 2) paper.images(shown.slice(at, at + 2));
}

function titleOf({ words, about, struck }: Photo): string {
  return [struck.toUpperCase(), words, about === null ? '' : `Of line ${about}`]
    .filter((text) => text !== '')
    .join('. ');
}

function detailsOf({ place, person, at, type, widthPx, heightPx, bytes, sha256 }: Photo): string {
  return `Line ${place}, ${person}, ${at}. ${type.toUpperCase()}, ${widthPx} by ${heightPx} pixels, ${bytes} bytes, SHA-256 ${sha256}`;
}
