/** What a picture is, by its first bytes alone: a name and a declared type say nothing. */
export const PHOTO_TYPES = {
  jpeg: { mime: 'image/jpeg', end: 'jpg', says: 'JPEG' },
  png: { mime: 'image/png', end: 'png', says: 'PNG' },
  webp: { mime: 'image/webp', end: 'webp', says: 'WebP' },
} as const;

export type PhotoType = keyof typeof PHOTO_TYPES;

export const PNG_SIGNATURE = Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a);

/** @returns null for anything that is none of the three */
export function typeOf(bytes: Uint8Array): PhotoType | null {
  const head = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (head.length < 16) return null;
  if (head[0] === 0xff && head[1] === 0xd8 && head[2] === 0xff) return 'jpeg';
  if (head.subarray(0, 8).equals(PNG_SIGNATURE)) return 'png';
  const isRiff = head.toString('latin1', 0, 4) === 'RIFF' && head.toString('latin1', 8, 12) === 'WEBP';
  return isRiff ? 'webp' : null;
}

/** @example fileEndOf(jpegBytes) // 'jpg' */
export function fileEndOf(bytes: Uint8Array): string {
  const type = typeOf(bytes);
  return type === null ? 'bin' : PHOTO_TYPES[type].end;
}
