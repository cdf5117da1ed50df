import type { ActionClass } from './action-classes.ts';
import type { AnyState, ConditionId } from './conditions.ts';

/** A step as the proof sees it. */
export interface ProofStep {
  readonly action: ActionClass | null;
  /** Steps where a job may close. */
  readonly end: boolean;
  /** An end after which another procedure goes on: locks, bypass and air stand on, and its own proof covers them. */
  readonly handsOver?: boolean;
  /** Steps from which nothing more must be done to be safe; a stop must lead here unguarded. */
  readonly safe: boolean;
}

/** A way from one step to another. A guard is taken as possible, whatever it says. */
export interface ProofEdge {
  readonly from: string;
  readonly to: string;
  /** The states that each named condition may be in after it; a condition not named keeps its state. */
  readonly sets: { readonly [C in ConditionId]?: readonly AnyState[] };
  /** False only where no guard can block the way and the person can always take it. */
  readonly guarded: boolean;
  /** How a person would name the way: `ANSWER shown`, `STOP`. */
  readonly by: string;
}

export interface Beginning {
  readonly at: string;
  readonly standing: { readonly [C in ConditionId]?: readonly AnyState[] };
}

export interface ProofGraph {
  readonly start: string;
  /** What is known at opening; everything else begins at its worst. */
  readonly known?: { readonly [C in ConditionId]?: AnyState };
  /** Steps at which it may also begin, with the states that may be met there; others stand as at the start. */
  readonly takesOver?: readonly Beginning[];
  readonly steps: Readonly<Record<string, ProofStep>>;
  readonly edges: readonly ProofEdge[];
}
