import { createHash } from 'node:crypto';
import { checkNumber } from '../log/check-number.ts';

/**
 * The code that is read out by radio and read back: it follows from the one-time number of the page and from what the
 * page shows, so it belongs to these readings and to this call alone.
 *
 * @example radioCode({ nonce: 'lq2x.a7.seal', digest: 'ab…' }) // 'K7Q-49X'
 */
export function radioCode({ nonce, digest }: { readonly nonce: string; readonly digest: string }): string {
  const hash = createHash('sha256').update(`${nonce} ${digest}`).digest('hex');
  const letters = checkNumber(hash).replaceAll('-', '');
  return `${letters.slice(0, 3)}-${letters.slice(3, 6)}`;
}
