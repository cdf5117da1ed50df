import { Refusal } from '../../safety/refusal.ts';

/** 10 MiB: what the camera of a phone gives, with room. Common practice, no source. */
export const PHOTO_BYTES_MAX = 10 * 1024 * 1024;
/** 50 megapixels: more than a phone gives in the usual way; a screen unpacks it to 200 MB. Common practice, no source. */
export const PHOTO_PIXELS_MAX = 50_000_000;
/** What no decoder balks at. */
export const PHOTO_SIDE_MAX = 16_384;

const NOTHING = 'Nothing was recorded.';
const KEPT = `${NOTHING} What you wrote stands in the form; choose the photo again.`;

function photoRefusal(code: string, what: string, next: string): Refusal {
  return new Refusal({ kind: 'unreadable', code, what, kept: KEPT, next, fields: { photo: what } });
}

export function noPhoto(): Refusal {
  return photoRefusal('PHO-001', 'No photo came with the form.', 'Choose or take one, then send it.');
}

export function notAPhoto(): Refusal {
  return photoRefusal(
    'PHO-002',
    'This is no JPEG, PNG or WebP picture, whatever its name says.',
    'Take the photo with the camera, or save the picture as JPEG.',
  );
}

export function tooManyBytes(): Refusal {
  return photoRefusal(
    'PHO-003',
    `The photo is larger than ${PHOTO_BYTES_MAX / 1024 / 1024} MiB.`,
    'Take it with fewer pixels, or save it smaller.',
  );
}

export function tooManyPixels({
  widthPx,
  heightPx,
}: {
  readonly widthPx: number;
  readonly heightPx: number;
}): Refusal {
  return photoRefusal(
    'PHO-004',
    `The picture has ${widthPx} by ${heightPx} pixels; at most ${PHOTO_PIXELS_MAX / 1e6} million are taken, and ${PHOTO_SIDE_MAX} along a side.`,
    'Take it with fewer pixels, or save it smaller.',
  );
}

/** @param why as a clause: `it ends too early` */
export function broken(why: string): Refusal {
  return photoRefusal(
    'PHO-005',
    `The picture cannot be read: ${why}.`,
    'Take the photo anew, or open and save it once more.',
  );
}

/** @param what it is: `a moving picture` */
export function notTaken(what: string): Refusal {
  return photoRefusal('PHO-006', `This is ${what}, which is not taken.`, 'Save one plain picture of it.');
}

export function moreBehind(bytes: number): Refusal {
  return photoRefusal(
    'PHO-007',
    `Behind the picture stand ${bytes} bytes of something else.`,
    'Open the picture and save it once more, or take the photo anew.',
  );
}

export function oddName(): Refusal {
  return photoRefusal(
    'PHO-008',
    'The name of the file holds a path or characters that cannot be seen.',
    'Give the file a plain name, or take the photo anew.',
  );
}
