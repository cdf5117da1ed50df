import type { Requirement } from './requirement.ts';

/** What an inspector asks of a signature and of the records behind it. */
export const SIGNATURES: readonly Requirement[] = [];
