import type { Catalogue } from '../patterns.ts';

/** Signing in, people, screens, more of it. */
export const morePeoplePages = {
  engineer: 'ingeniero',
  supervisor: 'supervisor',
} as const satisfies Catalogue;
