/**
 * The check number: the short form of a hash that people can copy by hand and read out by radio.
 * Twelve characters of an alphabet without I, L, O and U carry the first 60 bits of the hash.
 */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/**
 * @param hash 64 hexadecimal digits
 * @example checkNumber('ffffffffffffffff…') // 'ZZZZ-ZZZZ-ZZZZ'
 */
export function checkNumber(hash: string): string {
  if (!/^[0-9a-f]{64}$/.test(hash)) throw new TypeError(`A hash has 64 hexadecimal digits, not "${hash}".`);
  const bits = BigInt(`0x${hash.slice(0, 15)}`);
  const text = Array.from(
    { length: 12 },
    (_, index) => ALPHABET[Number((bits >> BigInt(55 - 5 * index)) & 31n)],
  ).join('');
  return `${text.slice(0, 4)}-${text.slice(4, 8)}-${text.slice(8)}`;
}

/**
 * Whether a check number, as somebody typed it, is that of the hash. Case, spaces and dashes do not count, and a
 * character that was left out of the alphabet is taken for the one that it is mistaken for.
 *
 * @example isCheckNumberOf('zzzz zzzz zzzz', 'ffffffffffffffff…') // true
 */
export function isCheckNumberOf(typed: string, hash: string): boolean {
  return plain(typed) === plain(checkNumber(hash));
}

function plain(text: string): string {
  return text.toUpperCase().replace(/[\s-]/g, '').replaceAll('O', '0').replace(/[IL]/g, '1');
}
