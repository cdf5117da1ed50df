import type { Requirement } from './requirement.ts';

/** What law and practice ask before hands go in. */
export const ENERGY_ISOLATION: readonly Requirement[] = [];
