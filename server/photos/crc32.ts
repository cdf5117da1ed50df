/** Sums of the chunks of a PNG (ISO/IEC 15948, annex D). Node has its own only from 22 on. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? 0xedb88320 ^ (sum >>> 1) : sum >>> 1;
  return sum;
});

/** @example crc32(Buffer.from('123456789')).toString(16) // 'cbf43926' */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (TABLE[(sum ^ byte) & 255] ?? 0) ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
