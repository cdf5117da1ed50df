import type { Dimension } from '../unit-table.ts';

/** Holds for every signal here. */
export const LIVE_ZERO = 'Linear signals with a live zero. 3-15 psi is not 20-100 kPa.';

/** A number input whose dimension is not in its name: signals are compared in any one unit. */
export function quantity<const N extends string, const D extends Dimension>(
  name: N,
  { title, dimension }: { readonly title: string; readonly dimension: D },
): Readonly<Record<N, { readonly kind: 'number'; readonly title: string; readonly dimension: D }>> {
  const spec = { kind: 'number', title, dimension } as const;
  return { [name]: spec } as Record<N, typeof spec>;
}
