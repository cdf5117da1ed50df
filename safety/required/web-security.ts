import type { Requirement } from './requirement.ts';

/** What is asked of a server on a local network that people enter by name and PIN. */
export const WEB_SECURITY: readonly Requirement[] = [];
