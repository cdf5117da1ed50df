import type { CauseId } from '../../troubleshooting/causes.ts';
import type { Build } from '../build.ts';
import type { Random } from '../random.ts';

/** From hardly there to as bad as it gets: 0 to 1. */
export type Severity = number;

/** Changes a sound valve into a faulty one, in place. */
export interface Fault {
  readonly does: (build: Build, of: { readonly severity: Severity; readonly random: Random }) => void;
}

export type Faults = { readonly [C in CauseId]?: Fault };

/** Where between two figures a severity stands; holes and openings go by their logarithm. */
export function grown(severity: Severity, [least, most]: readonly [number, number]): number {
  return least + (most - least) * severity;
}

export function grownHole(severity: Severity, [leastM, mostM]: readonly [number, number]): number {
  return leastM * (mostM / leastM) ** severity;
}
