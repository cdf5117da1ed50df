/**
 * Largest of a list of any length; a spread into Math.max overflows the stack on a long one.
 */
export function most(values: readonly number[]): number {
  return values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
}

/** Smallest of a list of any length. */
export function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}

/** Mean of a list that is not empty. */
export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
