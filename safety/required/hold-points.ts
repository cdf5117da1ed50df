import type { Requirement } from './requirement.ts';

/** What the quality trade asks of a hold, and of the writing of a procedure. */
export const HOLD_POINTS: readonly Requirement[] = [];
