import type { CheckId } from './checks.ts';
import type { ValveFacts } from './valve-facts.ts';

/** Share of a cause that reads evenly between two places on the axis of a measured check. */
export type Piece = readonly [share: number, low: number, high: number];

/** What a measured check reads, where physics says more than a word: stretches of the axis, and words beside it. */
export interface Spread {
  readonly pieces: readonly Piece[];
  readonly words?: Readonly<Record<string, number>>;
}

/** Shares of the outcomes that are not those of a sound valve; what is left up to 1 is the sound one. */
export type Row = Readonly<Record<string, number>> | Spread;

export type Shows = { readonly [C in CheckId]?: Row };

export type Family =
  | 'sound'
  | 'controller'
  | 'signal'
  | 'air'
  | 'positioner'
  | 'actuator'
  | 'stem'
  | 'packing'
  | 'trim'
  | 'process'
  | 'test rig';

/** How bad: a leak ties several checks together within one cause, so that each grade is a hypothesis of its own. */
export interface Grade {
  readonly id: string;
  readonly share: number;
  readonly shows: Shows;
}

/**
 * A possible fault. What it shows is a function of the valve's facts: no table is kept for a kind of valve.
 * Everything that it does not name reads as on a sound valve.
 */
export interface Cause {
  readonly words: string;
  readonly family: Family;
  /** Weight among all causes before anything was looked at, given that somebody complained. */
  readonly prior: number | ((v: ValveFacts) => number);
  /** Where the weight comes from. */
  readonly basis: string;
  readonly when?: (v: ValveFacts) => boolean;
  readonly shows: (v: ValveFacts) => Shows;
  /** In place of one set of effects. Shares add up to 1. */
  readonly grades?: (v: ValveFacts) => readonly Grade[];
  /** Checks that this cause keeps from showing a second fault: no air, no bubbles. */
  readonly hides?: readonly CheckId[];
  /** What lies inside it and no check of the list tells apart. */
  readonly inside?: string;
}

export function isSpread(row: Row): row is Spread {
  return Array.isArray((row as Spread).pieces);
}

export function priorOf(cause: Cause, v: ValveFacts): number {
  return typeof cause.prior === 'number' ? cause.prior : cause.prior(v);
}
