import { createHash } from 'node:crypto';

/**
 * The number of an advisory lock, from what it is for: the same on every server, and unlike those of other programs
 * that use the same database.
 *
 * @returns a signed number of 64 bits, in digits
 */
export function lockKey(schema: string, what: string): string {
  const digest = createHash('sha256').update(`yokeside\n${schema}\n${what}`, 'utf8').digest();
  return digest.readBigInt64BE().toString();
}
