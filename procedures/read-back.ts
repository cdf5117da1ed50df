/**
 * Whether two codes are the same as a person heard and wrote them: case, blanks and dashes do not count, nor do letters
 * that sound or look like a digit.
 *
 * @example isSameCode('k7o 491', 'K70-49I') // true
 */
export function isSameCode(one: string, other: string): boolean {
  return plain(one) === plain(other);
}

function plain(code: string): string {
  return code
    .toUpperCase()
    .replace(/[^0-9A-Z]/g, '')
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1');
}
