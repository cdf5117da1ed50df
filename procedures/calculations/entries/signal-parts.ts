import { AIR_ACTIONS, splitRange } from '../signal-travel.ts';
import { choice, results, told } from '../specs.ts';
import type { Dimension } from '../unit-table.ts';

/** Holds for every signal here. */
export const LIVE_ZERO = 'Linear signals with a live zero. 3-15 psi is not 20-100 kPa.';

/** A number input whose dimension is not in its name: signals are compared in one unit, whichever it is. */
export function quantity<const N extends string, const D extends Dimension>(
  name: N,
  { title, dimension }: { readonly title: string; readonly dimension: D },
): Readonly<Record<N, { readonly kind: 'number'; readonly title: string; readonly dimension: D }>> {
  const spec = { kind: 'number', title, dimension } as const;
  return { [name]: spec } as Record<N, typeof spec>;
}

/** The valves of a split range, each with its own part of a signal. */
export function valvesOn<const D extends Dimension>(dimension: D) {
  return {
    kind: 'rows',
    title: 'Valves',
    columns: {
      name: { kind: 'text', title: 'Valve' },
      ...quantity('rangeLow', { title: 'Lower end of its part', dimension }),
      ...quantity('rangeHigh', { title: 'Upper end of its part', dimension }),
      ...choice('airAction', AIR_ACTIONS),
    },
  } as const;
}

/** A split range is worked out alike for pressure and for current. */
export const SPLIT_RANGE = {
  topic: 'signal and travel',
  outputs: {
    valves: {
      kind: 'rows',
      title: 'Valves',
      dimension: null,
      columns: { ...told('word', 'name'), ...results('openPercent', 'openPercentClamped') },
    },
  },
  answers: ['valves'],
  equation: 'percent = 100 · (signal − low)/(high − low) of each valve’s own part',
  validity: 'Each valve stands still outside its own part of the signal.',
  sources: ['S-02'],
  run: (values: Parameters<typeof splitRange>[0]) => ({ valves: splitRange(values) }),
} as const;
