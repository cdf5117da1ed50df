import type { Dimension } from './calculations/unit-table.ts';
import type { Job } from './job.ts';

/** A number of this valve that a text or a card may name. */
export interface Figure {
  readonly label: string;
  readonly dimension: Dimension | 'text';
  of(job: Job): number | string | null;
}
